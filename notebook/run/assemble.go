package run

import (
	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// result puts the plan, the values and the problems together.
func (n *state) result() *notebook.Result {
	result := &notebook.Result{Document: n.doc, Plan: n.plan(), Ran: n.ran}
	checks, problems := n.runner.engine.Conclude(result.Plan)
	result.Plan.Checks = append(result.Plan.Checks, checks...)
	for _, p := range problems {
		p.Pos.File = n.doc.File
		for i := range p.Also {
			p.Also[i].Pos.File = n.doc.File
		}
		p.Source = n.doc.Line(p.Pos.Line)
		n.problems = append(n.problems, p)
	}
	for i := range n.cells {
		c := &n.cells[i]
		result.Cells = append(result.Cells, notebook.CellResult{Cell: c.Cell, Analysis: c.analysis, Outcome: c.outcome, Status: c.status, WaitsFor: c.waits, Ran: c.ran})
		if c.Kind == notebook.Calculation && c.status == notebook.Done {
			result.Values = append(result.Values, c.outcome.Values...)
		}
	}
	diag.Sort(n.problems)
	result.Problems = n.problems
	return result
}

// plan gathers the records of all cells that ran, each with its line.
func (n *state) plan() *plan.Plan {
	p := &plan.Plan{Lacking: map[plan.Kind]bool{}}
	for i := range n.cells {
		c := &n.cells[i]
		if c.status != notebook.Done {
			for kind := range c.makes {
				p.Lacking[kind] = true
			}
			continue
		}
		for _, r := range c.outcome.Records {
			r = r.Copy()
			o := r.Origin()
			pos := n.placePos(c, o.Place)
			o.Cell, o.Line, o.Col = i, pos.Line, pos.Column
			p.Add(r)
		}
	}
	return p
}
