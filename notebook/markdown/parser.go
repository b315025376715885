package markdown

import (
	"bytes"
	"regexp"

	"weirbook/notebook"
)

// Parser reads one notebook again and again. It keeps what it read of every
// section and reads only the sections that changed.
type Parser struct {
	sections map[string]*section
}

// section is the text from one heading to the next, read on its own.
type section struct {
	doc  *notebook.Document
	used bool
}

// NewParser gives a Parser that has read nothing.
func NewParser() *Parser { return &Parser{sections: map[string]*section{}} }

// Parse gives the same document as the function Parse.
func (p *Parser) Parse(file string, content []byte) *notebook.Document {
	content = normalise(content)
	parts := split(content)
	if parts == nil {
		return Parse(file, content)
	}
	doc := &notebook.Document{File: file, Source: sourceLines(content)}
	line := 0
	for _, part := range parts {
		s, ok := p.sections[string(part)]
		if !ok {
			s = &section{doc: Parse("", part)}
			p.sections[string(part)] = s
		}
		s.used = true
		join(doc, s.doc, line)
		line += bytes.Count(part, []byte("\n"))
	}
	for text, s := range p.sections {
		if !s.used {
			delete(p.sections, text)
		}
		s.used = false
	}
	return doc
}

// join adds a section's document, whose lines begin after the given count.
func join(doc, part *notebook.Document, lines int) {
	first := len(doc.Cells)
	for _, c := range part.Cells {
		moved := *c
		moved.Index += first
		moved.Lines = make([]notebook.CodeLine, len(c.Lines))
		for i, l := range c.Lines {
			moved.Lines[i] = notebook.CodeLine{Number: l.Number + lines, Indent: l.Indent}
		}
		doc.Cells = append(doc.Cells, &moved)
	}
	heading := ""
	if len(doc.Headings) > 0 {
		heading = doc.Headings[len(doc.Headings)-1]
	}
	for _, t := range part.Tables {
		doc.Tables = append(doc.Tables, t.Moved(heading, lines, first))
	}
	doc.Headings = append(doc.Headings, part.Headings...)
	if doc.Title == "" {
		doc.Title = part.Title
	}
	for _, problem := range part.Problems {
		problem.Pos.File = doc.File
		problem.Pos.Line += lines
		doc.Problems = append(doc.Problems, problem)
	}
}

// fenceLine is a line that may open or close a fenced block.
var fenceLine = regexp.MustCompile("^( {0,3})(`{3,}|~{3,})(.*)$")

// reachesOut reports whether a line makes one section depend on another: it
// begins a block of HTML that may span blank lines, or defines a link.
func reachesOut(line []byte) bool {
	trimmed := bytes.TrimLeft(line, " ")
	if len(line)-len(trimmed) > 3 || len(trimmed) < 2 {
		return false
	}
	switch trimmed[0] {
	case '[':
		return bytes.Contains(trimmed, []byte("]:"))
	case '<':
		return trimmed[1] == '!' || trimmed[1] == '?' || htmlBlock.Match(trimmed)
	}
	return false
}

var htmlBlock = regexp.MustCompile(`(?i)^<(?:script|pre|style|textarea)`)

// isHeading reports whether a line at the left margin is a heading.
func isHeading(line []byte) bool {
	marks := 0
	for marks < len(line) && line[marks] == '#' {
		marks++
	}
	return marks >= 1 && marks <= 6 && (marks == len(line) || line[marks] == ' ' || line[marks] == '\t')
}

// mayFence is a cheap look at a line before the exact one.
func mayFence(line []byte) bool {
	for i, c := range line {
		if c != ' ' || i > 3 {
			return c == '`' || c == '~'
		}
	}
	return false
}

// split cuts a notebook before the headings at which a reader of CommonMark
// starts afresh: at the left margin, after a blank line, outside fenced code. It
// gives nil where the sections cannot be read alone.
func split(content []byte) [][]byte {
	var parts [][]byte
	start, blank := 0, true
	fence := "" // the opening fence of the block that is open
	for at := 0; at < len(content); {
		end := at + len(content[at:])
		if i := bytes.IndexByte(content[at:], '\n'); i >= 0 {
			end = at + i + 1
		}
		line := bytes.TrimSuffix(content[at:end], []byte("\n"))
		var m [][]byte
		if mayFence(line) {
			m = fenceLine.FindSubmatch(line)
		}
		if fence == "" && reachesOut(line) {
			return nil
		}
		if m != nil {
			if len(m[1]) > 0 {
				return nil // may be the fence of a list item
			}
			fence = fenceAfter(fence, string(m[2]), string(m[3]))
		} else if fence == "" && blank && at > start && isHeading(line) {
			parts = append(parts, content[start:at])
			start = at
		}
		blank = len(bytes.TrimSpace(line)) == 0
		at = end
	}
	return append(parts, content[start:])
}

// fenceAfter gives the open fence after a fence line.
func fenceAfter(open, marks, rest string) string {
	if open == "" {
		if marks[0] == '`' && bytes.ContainsRune([]byte(rest), '`') {
			return "" // a code span, no fence
		}
		return marks
	}
	if marks[0] == open[0] && len(marks) >= len(open) && len(bytes.TrimSpace([]byte(rest))) == 0 {
		return ""
	}
	return open
}
