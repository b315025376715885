package lualib

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"github.com/yuin/gopher-lua/parse"

	"weirbook/notebook"
)

// unclosedText places a text without its closing quote at the opening one. The
// scanner tells of it where the line has ended: on the next, or at the end of
// the code.
func unclosedText(pe *parse.Error, tokens []token, lines []string) *notebook.CodeProblem {
	line := len(lines) - 1
	if pe.Pos.Line >= 1 {
		line = min(max(pe.Pos.Line-2, 0), line)
	}
	from := 0 // bytes of the line that are read already
	if len(tokens) > 0 && tokens[len(tokens)-1].line == line {
		last := tokens[len(tokens)-1]
		from = byteOf(lines[line], last.column) + len(last.text)
	}
	at := len(lines[line]) - len(pe.Token) - 1
	if at < from || !strings.HasSuffix(lines[line], pe.Token) || !strings.ContainsRune(`"'`, rune(lines[line][at])) {
		at = min(from, len(lines[line]))
		at += max(strings.IndexAny(lines[line][at:], `"'`), 0)
	}
	return problemAt(line, column(lines, line, at+1), "got a text that is not closed, want its closing quote", `close it on the same line, as in "72 in"`)
}

var longOpening = regexp.MustCompile(`\[=*\[`)

// unclosedLong places a long text or remark without its end at its opening.
func unclosedLong(tokens []token, lines []string) *notebook.CodeProblem {
	line, from := 0, 0
	if len(tokens) > 0 {
		last := tokens[len(tokens)-1]
		line, from = last.line, byteOf(lines[last.line], last.column)
	}
	for ; line < len(lines); line, from = line+1, 0 {
		if found := longOpening.FindStringIndex(lines[line][from:]); found != nil {
			opening := lines[line][from+found[0] : from+found[1]]
			closing := strings.ReplaceAll(opening, "[", "]")
			return problemAt(line, column(lines, line, from+found[0]+1), "got a long text or remark that is not closed, want "+closing, "write "+closing+" where it ends")
		}
	}
	return problemAt(len(lines)-1, 0, "got a long text or remark that is not closed, want ]]", "write ]] where it ends")
}

// byteOf turns a column in characters (from 1) into an offset in bytes.
func byteOf(line string, column int) int {
	at := 0
	for ; column > 1 && at < len(line); column-- {
		_, size := utf8.DecodeRuneInString(line[at:])
		at += size
	}
	return at
}

// signAt gives the character at a column, for a scanner that knows bytes only.
func signAt(line string, column int, otherwise string) string {
	r, size := utf8.DecodeRuneInString(line[byteOf(line, column):])
	if size < 2 {
		return otherwise
	}
	return string(r)
}
