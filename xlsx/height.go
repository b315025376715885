package xlsx

import (
	"strings"

	"github.com/xuri/excelize/v2"
)

// lineHeight is the height of a line of text in points.
const lineHeight = 13.5

// room gives how many characters of running text a column takes: letters are
// narrower than the digits by which widths are measured.
func room(wide int) int { return wide * 13 / 10 }

// height gives the height of a row in points, 0 where one line is enough.
func (s *sheet) height(r sheetRow) float64 {
	lines, extra := 1, 2.0
	switch r.height {
	case fitCells:
		for i, c := range s.cells[r.from:r.to] {
			wide := s.wide[i]
			if r.spread == i+1 {
				wide = total(s.wide[i:])
			}
			if text, ok := c.Value.(string); ok && len(text) > wide && (s.look.shown[c.StyleID].wraps || r.spread == i+1) {
				lines = max(lines, linesIn(text, room(wide)))
			}
		}
		if lines == 1 {
			return 0
		}
	case fitAcross:
		text, _ := s.cells[r.from].Value.(string)
		lines = linesIn(text, room(total(s.wide)))
	case fitHeads:
		extra = 6
		for i, c := range s.cells[r.from:r.to] {
			text, _ := c.Value.(string)
			lines = max(lines, linesIn(text, s.wide[i]))
		}
	default:
		return r.height
	}
	return min(lineHeight*float64(lines)+extra, excelize.MaxRowHeight)
}

// total adds up the widths of columns.
func total(wide []int) int {
	sum := 0
	for _, n := range wide {
		sum += n
	}
	return sum
}

// linesIn counts the lines of a text broken between words.
func linesIn(text string, room int) int {
	room = max(room, 4)
	lines := 0
	for paragraph := range strings.SplitSeq(text, "\n") {
		lines++
		used := 0
		for word := range strings.FieldsSeq(paragraph) {
			n := width(word)
			if used > 0 && used+1+n > room {
				lines++
				used = 0
			}
			if used > 0 {
				used++
			}
			used += n
			lines += max(n-1, 0) / room
		}
	}
	return lines
}
