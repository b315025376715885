package notebook

import (
	"time"

	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// Status says what became of a cell in a run.
type Status string

// The statuses of a cell.
const (
	Done    Status = "done"
	Failed  Status = "failed"  // it has a mistake of its own
	Waiting Status = "waiting" // it leans on a cell that failed
)

// CellResult is what became of one cell.
type CellResult struct {
	Cell     *Cell
	Analysis *Analysis
	Outcome  *Outcome // nil unless it ran
	Status   Status
	WaitsFor []string // what it waits for, in words
	Ran      bool     // it was run just now, not remembered
}

// Result is the result of a run.
type Result struct {
	Document *Document
	Cells    []CellResult
	Values   []Named // every named value, in the order of the page
	Plan     *plan.Plan
	Problems []diag.Problem // errors and cautions in the order of the page
	Ran      int            // cells that were run just now
	Took     time.Duration  // for the terminal only; no other output has it
}

// Value gives a named value.
func (r *Result) Value(name string) (Value, bool) {
	for _, v := range r.Values {
		if v.Name == name {
			return v.Value, true
		}
	}
	return nil, false
}

// Errors counts the problems that are no cautions.
func (r *Result) Errors() int {
	n := 0
	for _, p := range r.Problems {
		if !p.Caution {
			n++
		}
	}
	return n
}

// Outcomes counts the checks by outcome.
func (r *Result) Outcomes() (pass, caution, fail int) {
	for _, c := range r.Plan.Checks {
		switch c.Outcome {
		case plan.Pass:
			pass++
		case plan.Caution:
			caution++
		case plan.Fail:
			fail++
		}
	}
	return pass, caution, fail
}
