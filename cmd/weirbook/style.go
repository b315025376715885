package main

import (
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"

	"weirbook/notebook/plan"
)

// style colours words for a terminal; the plain style leaves them alone. Colour
// is never the only carrier of a meaning.
type style struct{ colours bool }

var plainStyle = style{}

// styleOf uses colours only on a terminal, and not where NO_COLOR is set.
func styleOf(w io.Writer) style {
	f, ok := w.(*os.File)
	if !ok || os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" || !term.IsTerminal(int(f.Fd())) {
		return plainStyle
	}
	return style{colours: true}
}

func (s style) paint(code, text string) string {
	if !s.colours {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

func (s style) strong(text string) string  { return s.paint("1", text) }
func (s style) faint(text string) string   { return s.paint("2", text) }
func (s style) alarm(text string) string   { return s.paint("31;1", text) }
func (s style) warning(text string) string { return s.paint("33", text) }
func (s style) fine(text string) string    { return s.paint("32", text) }

// outcome paints a word by the outcome of a check.
func (s style) outcome(o plan.Outcome, text string) string {
	switch o {
	case plan.Fail:
		return s.alarm(text)
	case plan.Caution:
		return s.warning(text)
	}
	return s.fine(text)
}

// clean takes control characters out of a text of the notebook, so that it
// cannot move the cursor or paint the terminal. Line feeds and tabs stay.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return r
		case r < 0x20 || (r >= 0x7f && r < 0xa0) || (r >= 0x202a && r <= 0x202e) || (r >= 0x2066 && r <= 0x2069) || r == utf8.RuneError:
			return '\ufffd'
		}
		return r
	}, text)
}

// pad fills a text with spaces up to a width in characters.
func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text)))
}

// short cuts a text to a width in characters.
func short(text string, width int) string {
	text = strings.Join(strings.Fields(text), " ")
	if utf8.RuneCountInString(text) <= width {
		return text
	}
	return string([]rune(text)[:width-1]) + "…"
}
