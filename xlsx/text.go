package xlsx

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// cellLimit is the number of characters (UTF-16 units) that a cell holds.
const cellLimit = 32767

// clean makes a text fit for a cell: characters that XML does not allow are
// shown as the replacement character, line ends are line feeds, and a text that
// is too long is cut and ends in "…".
func clean(s string) string {
	if !plainASCII(s) {
		s = strings.Map(cleanRune, strings.ReplaceAll(s, "\r\n", "\n"))
	}
	if len(s) <= cellLimit {
		return s
	}
	return cut(s, cellLimit)
}

func plainASCII(s string) bool {
	for i := range len(s) {
		if s[i] < 0x20 && s[i] != '\n' && s[i] != '\t' || s[i] >= 0x7f {
			return false
		}
	}
	return true
}

func cleanRune(r rune) rune {
	switch {
	case r == '\r':
		return '\n'
	case r < 0x20 && r != '\n' && r != '\t', r >= 0x7f && r < 0xa0, r == 0xfffe, r == 0xffff:
		return utf8.RuneError
	}
	return r
}

// cut shortens a text to a count of UTF-16 units, the last of which is "…".
func cut(s string, limit int) string {
	units, end := 0, 0
	for i, r := range s {
		n := 1
		if r > 0xffff {
			n = 2
		}
		units += n
		if units <= limit-1 {
			end = i + utf8.RuneLen(r)
		}
		if units > limit {
			return s[:end] + "…"
		}
	}
	return s
}

// cutWords shortens a text to a count of characters, the last of which is "…".
func cutWords(s string, limit int) string {
	if len(s) <= limit {
		return s
	}
	return cut(s, limit)
}

// sentence begins a text with a capital and ends it with a full stop.
func sentence(s string) string {
	s = capital(s)
	if strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}

// capital begins a text with a capital letter.
func capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if !unicode.IsLower(first) {
		return s
	}
	return string(unicode.ToUpper(first)) + s[size:]
}

// looksLikeFormula reports whether a spreadsheet would read the text as a
// formula if a person typed it. Such a cell is marked as text, so that editing
// it leaves it one.
func looksLikeFormula(s string) bool {
	s = strings.TrimLeft(s, " \t\r\n'")
	return s != "" && strings.IndexByte("=+-@", s[0]) >= 0
}

// width gives the width of a text in characters, its longest line; letters of
// East Asian scripts count twice.
func width(s string) int {
	longest, n := 0, 0
	for _, r := range s {
		switch {
		case r == '\n':
			longest, n = max(longest, n), 0
		case r >= 0x1100:
			n += 2
		default:
			n++
		}
	}
	return max(longest, n)
}
