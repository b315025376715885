// Package diag holds what every layer of Weirbook uses to speak of a mistake:
// where it is, what it is about, what was got and wanted, and what to type
// instead. It is a leaf: it imports nothing of the project.
//
// Every message follows one grammar:
//
//	room.md:43:12: tank: height: got 600 without a unit, want a length
//	  hint: write "600 mm"
package diag

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// Pos is a place in a notebook. Line and Column count from 1, the column in
// characters; 0 means not known.
type Pos struct {
	File   string
	Line   int
	Column int
}

// String gives file:line:column with the parts that are known.
func (p Pos) String() string {
	text := p.File
	if p.Line > 0 {
		text += fmt.Sprintf(":%d", p.Line)
		if p.Column > 0 {
			text += fmt.Sprintf(":%d", p.Column)
		}
	}
	return text
}

// Related is a second place that a problem is about.
type Related struct {
	Pos  Pos
	Text string
}

// Problem is one mistake at one place.
type Problem struct {
	Pos     Pos
	Subject string // what it is about: a function and its argument, a cell
	Message string // lower case, no full stop: "got X, want Y"
	Hint    string // what to type or do; may be empty
	Source  string // the line of the notebook itself; may be empty
	Also    []Related
	Caution bool // worth a look, but nothing stopped
}

// Error gives the first line of the problem.
func (p Problem) Error() string {
	var parts []string
	for _, part := range []string{p.Pos.String(), p.Subject, p.Message} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, ": ")
}

// Text gives the whole problem over several lines: place and message, the
// source line with a mark under the column, further places, the hint.
func (p Problem) Text() string {
	var b strings.Builder
	b.WriteString(p.Error())
	if source := strings.TrimRight(p.Source, " \t\r\n"); source != "" {
		shown, column := window(strings.ReplaceAll(source, "\t", " "), p.Pos.Column)
		b.WriteString("\n    " + shown)
		if column > 0 {
			b.WriteString("\n    " + strings.Repeat(" ", column-1) + "^")
		}
	}
	for _, also := range p.Also {
		fmt.Fprintf(&b, "\n  %s: %s", also.Pos, also.Text)
	}
	if p.Hint != "" {
		b.WriteString("\n  hint: " + p.Hint)
	}
	return b.String()
}

// window cuts the part around a column out of a very long line; the column is
// then that of the part.
func window(line string, column int) (string, int) {
	const most, ahead = 120, 60
	runes := []rune(line)
	if len(runes) <= most {
		return line, column
	}
	from := min(max(column-1-ahead, 0), len(runes)-most)
	shown := string(runes[from : from+most])
	if from > 0 {
		shown, column = "…"+shown, column+1
	}
	if from+most < len(runes) {
		shown += "…"
	}
	return shown, max(column-from, 0)
}

// Sort puts problems in the order of the page, then of their words, so that
// the same notebook always gives the same list.
func Sort(problems []Problem) {
	slices.SortStableFunc(problems, func(a, b Problem) int {
		return cmp.Or(
			cmp.Compare(a.Pos.File, b.Pos.File),
			cmp.Compare(a.Pos.Line, b.Pos.Line),
			cmp.Compare(a.Pos.Column, b.Pos.Column),
			cmp.Compare(a.Subject, b.Subject),
			cmp.Compare(a.Message, b.Message),
		)
	})
}

// Fault is a mistake whose place is not known yet: the layer that knows it
// makes a Problem of it.
type Fault struct {
	Subject string
	Message string
	Hint    string
}

// Error gives the subject and the message.
func (f *Fault) Error() string {
	if f.Subject == "" {
		return f.Message
	}
	return f.Subject + ": " + f.Message
}

// Advice gives the hint, so that other packages can carry one without
// importing this one.
func (f *Fault) Advice() string { return f.Hint }

// AsFault turns any error into a Fault, keeping its hint when it has one.
func AsFault(err error) *Fault {
	var fault *Fault
	if errors.As(err, &fault) {
		return fault
	}
	fault = &Fault{Message: err.Error()}
	var advised interface{ Advice() string }
	if errors.As(err, &advised) {
		fault.Hint = advised.Advice()
	}
	return fault
}

// Cut bounds a text that came from a notebook.
func Cut(text string, limit int) string {
	if len(text) <= limit {
		return text
	}
	runes := []rune(text)
	if len(runes) <= limit {
		return text
	}
	return string(runes[:limit-1]) + "…"
}
