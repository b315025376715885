package run

import (
	"fmt"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// findNames notes which cell assigns which name, and what is wrong with names
// and code before anything runs.
func (n *state) findNames() {
	for _, name := range n.runner.engine.Names() {
		n.known[name] = true
	}
	for i := range n.cells {
		c := &n.cells[i]
		for _, p := range c.analysis.Problems {
			n.codeProblem(c, p.Fault, p.Line, p.Column)
		}
		for _, name := range c.analysis.Assigns {
			first, taken := n.owner[name.Name]
			if !taken {
				n.owner[name.Name] = i
				continue
			}
			n.assignedTwice(i, first, name)
		}
	}
	for i := range n.cells {
		n.unknownNames(i)
	}
}

func (n *state) assignedTwice(i, first int, name notebook.Ident) {
	c, f := &n.cells[i], &n.cells[first]
	p := n.codeProblem(c, diag.Fault{
		Message: fmt.Sprintf("got a second assignment to %s, want one cell for each name", name.Name),
		Hint:    "give one of them another name, or make it local",
	}, name.Line, name.Column)
	for _, other := range f.analysis.Assigns {
		if other.Name == name.Name {
			p.Also = append(p.Also, diag.Related{Pos: n.codePos(f, other.Line, other.Column), Text: fmt.Sprintf("the first is here, in the cell %q", f.Label())})
		}
	}
	c.bad, f.bad = true, true
}

// unknownNames tells of names that nothing assigns; each name once a line.
func (n *state) unknownNames(i int) {
	c := &n.cells[i]
	type spot struct {
		name string
		line int
	}
	told := map[spot]bool{}
	for _, read := range c.analysis.Reads {
		if _, ok := n.owner[read.Name]; ok || told[spot{read.Name, read.Line}] {
			continue
		}
		told[spot{read.Name, read.Line}] = true
		candidates := append(sortedNames(n.owner), sortedNames(n.known)...)
		hint := diag.DidYouMean(read.Name, candidates)
		if hint == "" {
			hint = fmt.Sprintf("assign it in a cell, as in %s = …", read.Name)
		}
		n.codeProblem(c, diag.Fault{Message: fmt.Sprintf("unknown name %s", read.Name), Hint: hint}, read.Line, read.Column)
		c.bad = true
	}
}

// maxMessage bounds each part of a message: what a cell throws may be long.
const maxMessage = 600

// codeProblem notes a problem at a place of a cell's code.
func (n *state) codeProblem(c *cell, f diag.Fault, line, column int) *diag.Problem {
	pos := n.codePos(c, line, column)
	n.problems = append(n.problems, diag.Problem{Pos: pos, Subject: diag.Cut(f.Subject, maxMessage), Message: diag.Cut(f.Message, maxMessage), Hint: diag.Cut(f.Hint, maxMessage), Source: n.doc.Line(pos.Line)})
	return &n.problems[len(n.problems)-1]
}

// codePos turns a place of a cell's code into one of the notebook.
func (n *state) codePos(c *cell, line, column int) diag.Pos {
	pos := diag.Pos{File: n.doc.File, Line: c.Line()}
	if line >= 0 && line < len(c.Lines) {
		at := c.Lines[line]
		pos.Line = at.Number
		if column > 0 {
			pos.Column = at.Indent + column
		}
	}
	return pos
}

// placePos turns a place of a record or fault of a cell into one of the
// notebook.
func (n *state) placePos(c *cell, p plan.Place) diag.Pos {
	if p.Table != "" {
		return n.tablePos(p)
	}
	if p.Cell != "" {
		if i, ok := n.owner[p.Cell]; ok {
			c = &n.cells[i]
		}
	}
	column := 0
	if p.Line < 0 && c.Kind == notebook.Expression {
		p.Line = 0
	}
	if c.Kind == notebook.Expression {
		column = 1
	}
	return n.codePos(c, c.analysis.LineOf(p.Line), column)
}

func (n *state) tablePos(p plan.Place) diag.Pos {
	pos := diag.Pos{File: n.doc.File}
	for _, t := range n.doc.TablesUnder(p.Table) {
		pos.Line = t.Line
		if p.Row < 0 || p.Row >= len(t.Rows) {
			return pos
		}
		row := t.Rows[p.Row]
		pos.Line = row.Line
		for k, key := range t.Keys {
			if key == p.Column && p.Column != "" && k < len(row.Cells) {
				pos.Column = row.Cells[k].Column
			}
		}
	}
	return pos
}
