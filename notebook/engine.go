package notebook

import (
	"context"
	"time"

	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// Engine is the language of the cells as the runner sees it: it analyses a
// cell, runs it in a session, and concludes a plan.
type Engine interface {
	// Analyse reads a cell's syntax. The result depends on the cell's kind and
	// code alone and may be shared.
	Analyse(kind CellKind, code string) *Analysis
	// Names lists the names that the library takes.
	Names() []string
	// Begin starts a session: the cells of one run share it.
	Begin(ctx context.Context, limits Limits) Session
	// Conclude works out what follows from the records of the whole plan:
	// checks and problems. It may set the order of steps.
	Conclude(p *plan.Plan) ([]*plan.Check, []diag.Problem)
}

// Session runs cells.
type Session interface {
	Run(job *Job) *Outcome
	Close()
}

// Limits bound a run.
type Limits struct {
	CellTime time.Duration // of one cell
	RunTime  time.Duration // of all cells of a run
	Memory   uint64        // bytes of live objects of the whole process
}

// DefaultLimits are those used when the person gives none.
func DefaultLimits() Limits {
	return Limits{CellTime: 10 * time.Second, RunTime: 30 * time.Second, Memory: 512 << 20}
}

// Ident is a name used in a cell, with its place in the cell's code: line from
// 0 and column in characters from 1 (0 unknown).
type Ident struct {
	Name   string
	Line   int
	Column int
}

// Effects are what a piece of code can do to the plan and which names of other
// cells it leans on for that.
type Effects struct {
	Makes []plan.Kind
	Reads []plan.Kind
	Uses  []string // global names whose effects are added when they are functions

	Tables    []string // headings that are read
	AllTables bool     // some heading is not a literal
}

// CodeProblem is a mistake in a cell's code, placed within the code.
type CodeProblem struct {
	diag.Fault
	Line   int // from 0
	Column int // from 1, 0 unknown
}

// Analysis is what the syntax of a cell tells.
type Analysis struct {
	Digest      Digest // of the code without comments and spacing, but with its lines
	Code        []int  // the lines (from 0) that hold code, in order
	Assigns     []Ident
	Reads       []Ident
	Assumptions []string           // names assigned by assume statements
	Own         Effects            // of the code that runs with the cell
	Functions   map[string]Effects // of what the cell assigns to a name, where that holds functions
	Problems    []CodeProblem
	Program     any // the engine's own compiled form
}

// LineOf gives the line of the cell's code (from 0) for a place's count of code
// lines; -1 when not known.
func (a *Analysis) LineOf(code int) int {
	if code < 0 || code >= len(a.Code) {
		return -1
	}
	return a.Code[code]
}

// Job is a cell to run with all that it may see.
type Job struct {
	Cell      *Cell
	Analysis  *Analysis
	Key       Digest  // fingerprint of code and inputs
	Inputs    []Named // data of other cells
	Owners    map[string]string
	Functions []Borrowed                  // names whose values are functions of other cells
	Lenders   []*Job                      // the cells they come from, each after those it leans on
	Records   map[plan.Kind][]plan.Record // of all other cells, for the kinds it reads
	Tables    map[string]*TableInput      // by heading; for headings read
	Headings  []string                    // all headings with a table, for suggestions
	Makes     map[plan.Kind]bool          // what the syntax says that it can make and reads
	Reads     map[plan.Kind]bool
	Overrides map[string]string // new values of the cell's assumptions by name
}

// Borrowed is a name whose value is a function of another cell.
type Borrowed struct {
	Name   string
	Lender *Job
}

// TableInput is a table with the values of its expressions.
type TableInput struct {
	Table  *Table
	Values map[[2]int]Value // by row and column, for cells that are expressions
	Digest Digest
	Many   []int // lines of all tables under the heading when there are several
}

// Fault is a problem of a cell's run with its place.
type Fault struct {
	diag.Fault
	Place   plan.Place
	Caution bool
}

// Outcome is what running a cell gave. It is immutable.
type Outcome struct {
	Values    []Named // of the names it assigns; for an expression one without a name
	Functions bool    // some value holds functions
	Records   []plan.Record
	Kinds     map[plan.Kind]Digest // fingerprint of the records of each kind
	Printed   string
	Faults    []Fault
	Failed    bool
	Abandoned bool // the run was given up; the outcome must not be remembered
	Passing   bool // a bound of the whole run or process was met; not remembered either
}
