// Package run runs a notebook: it finds which cells lean on which, runs them in
// that order, remembers what they gave, and puts the plan together. A second run
// of a changed notebook runs only the cells whose code or inputs changed.
package run

import (
	"context"
	"fmt"
	"sort"
	"time"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// Runner runs notebooks and remembers the outcomes of cells. It is for one run
// at a time.
type Runner struct {
	engine     notebook.Engine
	limits     notebook.Limits
	memory     map[notebook.Digest]*remembered
	generation int
}

// remembered is the outcome of a cell with the run that last used it.
type remembered struct {
	outcome *notebook.Outcome
	used    int
}

// keepRuns is for how many runs an unused outcome is kept: undoing an edit finds
// it again.
const keepRuns = 16

// New gives a Runner with an empty memory.
func New(engine notebook.Engine, limits notebook.Limits) *Runner {
	return &Runner{engine: engine, limits: limits, memory: map[notebook.Digest]*remembered{}}
}

// OverrideError is an override of a name that no assumption has.
type OverrideError struct{ Name, Hint string }

// Error names the override.
func (e *OverrideError) Error() string {
	return fmt.Sprintf("--set %s: no assumption of the notebook has this name", e.Name)
}

// Advice suggests a name.
func (e *OverrideError) Advice() string { return e.Hint }

// Run runs a document with new values for some of its assumptions. The error is
// an *OverrideError, or that of the context when the run was given up; all else
// is in the result.
func (r *Runner) Run(ctx context.Context, doc *notebook.Document, overrides map[string]string) (*notebook.Result, error) {
	start := time.Now()
	n := r.newRun(doc, overrides)
	if err := n.checkOverrides(); err != nil {
		return nil, err
	}
	n.findNames()
	n.findEffects()
	n.findEdges()
	order := n.arrange()
	r.generation++
	session := r.engine.Begin(ctx, r.limits)
	defer session.Close()
	for _, i := range order {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		n.cell(session, i)
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	r.forget()
	result := n.result()
	result.Took = time.Since(start)
	return result, nil
}

// forget drops outcomes that no recent run used.
func (r *Runner) forget() {
	for key, m := range r.memory {
		if r.generation-m.used > keepRuns {
			delete(r.memory, key)
		}
	}
}

// state is one run under way.
type state struct {
	runner    *Runner
	doc       *notebook.Document
	overrides map[string]string
	cells     []cell
	owner     map[string]int // the cell that assigns a name
	known     map[string]bool
	edges     [][]edge
	makers    map[plan.Kind][]int
	kinds     map[plan.Kind]notebook.Digest
	tables    map[string]*notebook.TableInput
	headings  []string
	problems  []diag.Problem
	ran       int
}

// cell is one cell of a run under way.
type cell struct {
	*notebook.Cell
	analysis  *notebook.Analysis
	makes     map[plan.Kind]bool
	reads     map[plan.Kind]bool
	tables    []string // headings that it reads, also through functions
	allTables bool
	bad       bool // has a mistake that shows before anything runs
	status    notebook.Status
	waits     []string
	job       *notebook.Job
	outcome   *notebook.Outcome
	ran       bool
}

func (r *Runner) newRun(doc *notebook.Document, overrides map[string]string) *state {
	n := &state{
		runner: r, doc: doc, overrides: overrides, owner: map[string]int{}, known: map[string]bool{},
		makers: map[plan.Kind][]int{}, kinds: map[plan.Kind]notebook.Digest{}, tables: map[string]*notebook.TableInput{},
	}
	n.problems = append(n.problems, doc.Problems...)
	for _, c := range doc.Cells {
		a := r.engine.Analyse(c.Kind, c.Code)
		n.cells = append(n.cells, cell{Cell: c, analysis: a, bad: len(a.Problems) > 0})
	}
	seen := map[string]bool{}
	for _, t := range doc.Tables {
		if !seen[t.Heading] {
			seen[t.Heading] = true
			n.headings = append(n.headings, t.Heading)
		}
	}
	sort.Strings(n.headings)
	return n
}

func (n *state) checkOverrides() error {
	var names []string
	for _, c := range n.cells {
		names = append(names, c.analysis.Assumptions...)
		if c.bad { // what cannot be read may be an assumption; its mistake is told
			for _, name := range c.analysis.Assigns {
				names = append(names, name.Name)
			}
		}
	}
	for _, wanted := range sortedNames(n.overrides) {
		found := false
		for _, name := range names {
			found = found || name == wanted
		}
		if !found {
			hint := diag.DidYouMean(wanted, names)
			if hint == "" {
				hint = "an assumption is a statement NAME = assume{…} at the top level of a cell"
			}
			return &OverrideError{wanted, hint}
		}
	}
	return nil
}

func sortedNames[V any](m map[string]V) []string {
	names := make([]string, 0, len(m))
	for name := range m {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}
