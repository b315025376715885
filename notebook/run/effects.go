package run

import (
	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// effect is what code can do to the plan, with the names it leans on followed.
type effect struct {
	makes, reads map[plan.Kind]bool
	tables       map[string]bool
	allTables    bool
}

func newEffect() *effect {
	return &effect{makes: map[plan.Kind]bool{}, reads: map[plan.Kind]bool{}, tables: map[string]bool{}}
}

func (e *effect) add(own notebook.Effects) {
	for _, k := range own.Makes {
		e.makes[k] = true
	}
	for _, k := range own.Reads {
		e.reads[k] = true
	}
	for _, heading := range own.Tables {
		e.tables[heading] = true
	}
	e.allTables = e.allTables || own.AllTables
}

// findEffects works out which kinds of records each cell can make and reads,
// also through functions of other cells.
func (n *state) findEffects() {
	names := map[string]notebook.Effects{}
	for i := range n.cells {
		for name, e := range n.cells[i].analysis.Functions {
			if n.owner[name] == i {
				names[name] = e
			}
		}
	}
	follow := func(own notebook.Effects) *effect {
		total := newEffect()
		total.add(own)
		seen := map[string]bool{}
		queue := own.Uses
		for len(queue) > 0 {
			name := queue[0]
			queue = queue[1:]
			e, holds := names[name]
			if seen[name] || !holds {
				continue
			}
			seen[name] = true
			total.add(e)
			queue = append(queue[:len(queue):len(queue)], e.Uses...)
		}
		return total
	}
	for i := range n.cells {
		c := &n.cells[i]
		e := follow(c.analysis.Own)
		c.makes, c.reads = e.makes, e.reads
		c.tables, c.allTables = sortedNames(e.tables), e.allTables
		for _, kind := range plan.Kinds() {
			if c.makes[kind] {
				n.makers[kind] = append(n.makers[kind], i)
			}
		}
	}
}
