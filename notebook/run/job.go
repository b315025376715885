package run

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// cell runs one cell, or takes its outcome from memory.
func (n *state) cell(session notebook.Session, i int) {
	c := &n.cells[i]
	if c.bad {
		c.status = notebook.Failed
		return
	}
	if c.waits = n.waitsFor(i); len(c.waits) > 0 {
		c.status = notebook.Waiting
		return
	}
	c.job = n.newJob(i)
	memory := n.runner.memory
	if m, ok := memory[c.job.Key]; ok {
		m.used = n.runner.generation
		c.outcome = m.outcome
	} else {
		n.complete(i)
		c.outcome = session.Run(c.job)
		c.ran = true
		n.ran++
		if !c.outcome.Abandoned && !c.outcome.Passing {
			memory[c.job.Key] = &remembered{c.outcome, n.runner.generation}
		}
	}
	c.status = notebook.Done
	if c.outcome.Failed {
		c.status = notebook.Failed
	}
	n.faults(c)
}

// waitsFor says which cells that failed or wait a cell leans on.
func (n *state) waitsFor(i int) []string {
	var waits []string
	add := func(j int, what string) {
		c := &n.cells[j]
		if j == i || (c.status != notebook.Failed && c.status != notebook.Waiting) {
			return
		}
		waits = append(waits, fmt.Sprintf("%sthe cell %q (line %d)", what, c.Label(), c.Line()))
	}
	for _, e := range n.edges[i] {
		switch {
		case e.to >= len(n.cells):
			for _, maker := range n.makers[e.kind] {
				add(maker, fmt.Sprintf("%s records of ", e.kind))
			}
		case e.kind != "":
			add(e.to, fmt.Sprintf("%s records of ", e.kind))
		case e.name != "":
			add(e.to, e.name+" of ")
		default:
			add(e.to, "a table's value, ")
		}
	}
	return waits
}

// newJob gathers what a cell may see, as far as its key needs it.
func (n *state) newJob(i int) *notebook.Job {
	c := &n.cells[i]
	job := &notebook.Job{Cell: c.Cell, Analysis: c.analysis, Owners: map[string]string{}, Makes: c.makes, Reads: c.reads}
	h := notebook.NewHasher()
	h.Digest(c.analysis.Digest)
	h.Text(c.Title)
	for _, e := range n.edges[i] {
		if e.name != "" {
			n.input(job, h, e)
		}
	}
	n.tableInputs(i, job, h)
	for _, kind := range plan.Kinds() {
		if c.reads[kind] {
			h.Text(string(kind))
			h.Digest(n.recordsDigest(kind, i))
		}
	}
	for _, name := range c.analysis.Assumptions {
		if text, ok := n.overrides[name]; ok {
			if job.Overrides == nil {
				job.Overrides = map[string]string{}
			}
			job.Overrides[name] = text
			h.Text("set " + name)
			h.Text(text)
		}
	}
	job.Key = h.Sum()
	return job
}

// input adds the value of a name of another cell.
func (n *state) input(job *notebook.Job, h *notebook.Hasher, e edge) {
	owner := &n.cells[e.to]
	h.Text(e.name)
	for _, v := range owner.outcome.Values {
		if v.Name != e.name {
			continue
		}
		if _, function := v.Value.(notebook.Function); function {
			job.Functions = append(job.Functions, notebook.Borrowed{Name: e.name, Lender: owner.job})
			job.Lenders = append(job.Lenders, owner.job)
			h.Digest(owner.job.Key)
			return
		}
		h.Value(v.Value)
		if _, table := v.Value.(*notebook.Data); table {
			job.Owners[e.name] = owner.Label()
			h.Text(owner.Label())
		}
		job.Inputs = append(job.Inputs, v)
		return
	}
	h.Bool(false)
}

// tableInputs adds the tables that a cell reads.
func (n *state) tableInputs(i int, job *notebook.Job, h *notebook.Hasher) {
	headings := n.cells[i].tables
	if n.cells[i].allTables {
		headings = n.headings
	}
	if len(headings) == 0 {
		return
	}
	job.Tables, job.Headings = map[string]*notebook.TableInput{}, n.headings
	for _, heading := range headings {
		h.Text(heading)
		input := n.table(heading)
		if input == nil {
			h.Text(strings.Join(n.headings, "\n")) // the suggestion names them
			continue
		}
		job.Tables[heading] = input
		h.Digest(input.Digest)
	}
}

// table gives the table under a heading with the values of its expressions.
func (n *state) table(heading string) *notebook.TableInput {
	if input, ok := n.tables[heading]; ok {
		return input
	}
	found := n.doc.TablesUnder(heading)
	if len(found) == 0 {
		return nil
	}
	input := &notebook.TableInput{Table: found[0], Values: map[[2]int]notebook.Value{}}
	for _, t := range found {
		input.Many = append(input.Many, t.Line)
	}
	h := notebook.NewHasher()
	h.Number(float64(len(found)))
	h.Digest(found[0].Content())
	for r, row := range found[0].Rows {
		for k, c := range row.Cells {
			if c.Expression < 0 || n.cells[c.Expression].outcome == nil {
				continue
			}
			if values := n.cells[c.Expression].outcome.Values; len(values) == 1 {
				input.Values[[2]int{r, k}] = values[0].Value
				h.Number(float64(r))
				h.Number(float64(k))
				h.Value(values[0].Value)
			}
		}
	}
	input.Digest = h.Sum()
	n.tables[heading] = input
	return input
}

// recordsDigest is the fingerprint of the records of a kind that a cell sees
// from the other cells.
func (n *state) recordsDigest(kind plan.Kind, reader int) notebook.Digest {
	own := n.cells[reader].makes[kind]
	if d, ok := n.kinds[kind]; ok && !own {
		return d
	}
	h := notebook.NewHasher()
	for _, maker := range n.makers[kind] {
		if out := n.cells[maker].outcome; maker != reader && out != nil && !out.Failed {
			if d, ok := out.Kinds[kind]; ok {
				h.Digest(d)
			}
		}
	}
	d := h.Sum()
	if !own {
		n.kinds[kind] = d
	}
	return d
}

// complete adds what only a cell that really runs needs: the records it reads.
func (n *state) complete(i int) {
	c := &n.cells[i]
	c.job.Records = map[plan.Kind][]plan.Record{}
	for _, kind := range plan.Kinds() {
		if !c.reads[kind] {
			continue
		}
		var list []plan.Record
		for _, maker := range n.makers[kind] {
			if out := n.cells[maker].outcome; maker != i && out != nil && !out.Failed {
				for _, r := range out.Records {
					if r.Kind() == kind {
						list = append(list, r)
					}
				}
			}
		}
		c.job.Records[kind] = list
	}
	for _, lender := range c.job.Lenders {
		if lender.Records == nil {
			n.complete(lender.Cell.Index)
		}
	}
}

// faults notes the faults of a cell's outcome at their places of the page.
func (n *state) faults(c *cell) {
	for _, f := range c.outcome.Faults {
		pos := n.placePos(c, f.Place)
		p := n.codeProblem(c, f.Fault, -1, 0)
		p.Pos, p.Caution = pos, f.Caution
		p.Source = n.doc.Line(pos.Line)
		if pos.Column == 0 {
			p.Pos.Column = wordColumn(p.Source, f.Subject)
		}
	}
}

// wordColumn finds the column of what a problem is about: the argument, else the
// function, where the line names it. The cells' machine knows lines only.
func wordColumn(line, subject string) int {
	parts := strings.Split(subject, ": ")
	for i := len(parts) - 1; i >= 0; i-- {
		word := parts[i]
		if word == "" {
			continue
		}
		for from := 0; from+len(word) <= len(line); {
			at := strings.Index(line[from:], word)
			if at < 0 {
				break
			}
			at += from
			if !partOfName(line, at-1) && !partOfName(line, at+len(word)) {
				return utf8.RuneCountInString(line[:at]) + 1
			}
			from = at + 1
		}
	}
	return 0
}

// partOfName reports whether the byte at an offset continues a name.
func partOfName(line string, at int) bool {
	if at < 0 || at >= len(line) {
		return false
	}
	c := line[at]
	return c == '_' || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')
}
