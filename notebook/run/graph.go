package run

import (
	"fmt"
	"sort"
	"strings"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// edge says that a cell leans on another, and for what. A kind of records is a
// node of its own, numbered after the cells, which leans on all its makers.
type edge struct {
	to   int
	name string // the name that is read, "" for records and tables
	kind plan.Kind
}

// findEdges works out what each cell leans on.
func (n *state) findEdges() {
	kinds := plan.Kinds()
	n.edges = make([][]edge, len(n.cells)+len(kinds))
	for k, kind := range kinds {
		for _, maker := range n.makers[kind] {
			n.edges[len(n.cells)+k] = append(n.edges[len(n.cells)+k], edge{to: maker, kind: kind})
		}
	}
	for i := range n.cells {
		n.edges[i] = append(n.nameEdges(i), n.tableEdges(i)...)
		for k, kind := range kinds {
			switch {
			case !n.cells[i].reads[kind]:
			case !n.cells[i].makes[kind]:
				n.edges[i] = append(n.edges[i], edge{to: len(n.cells) + k, kind: kind})
			default: // a cell sees its own records without waiting for itself
				for _, maker := range n.makers[kind] {
					if maker != i {
						n.edges[i] = append(n.edges[i], edge{to: maker, kind: kind})
					}
				}
			}
		}
	}
}

func (n *state) nameEdges(i int) []edge {
	var edges []edge
	seen := map[string]bool{}
	for _, read := range n.cells[i].analysis.Reads {
		owner, ok := n.owner[read.Name]
		if !ok || owner == i || seen[read.Name] {
			continue
		}
		seen[read.Name] = true
		edges = append(edges, edge{to: owner, name: read.Name})
	}
	return edges
}

// tableEdges are those to the expressions in tables that a cell reads.
func (n *state) tableEdges(i int) []edge {
	var edges []edge
	for _, t := range n.tablesOf(i) {
		for _, row := range t.Rows {
			for _, c := range row.Cells {
				if c.Expression >= 0 && c.Expression != i {
					edges = append(edges, edge{to: c.Expression})
				}
			}
		}
	}
	return edges
}

// tablesOf lists the tables that a cell reads.
func (n *state) tablesOf(i int) []*notebook.Table {
	if n.cells[i].allTables {
		return n.doc.Tables
	}
	var tables []*notebook.Table
	for _, heading := range n.cells[i].tables {
		tables = append(tables, n.doc.TablesUnder(heading)...)
	}
	return tables
}

// arrange gives the cells in an order in which each comes after those it leans
// on, as near to the page as that allows. Cells of a circle are told of and
// marked as bad.
func (n *state) arrange() []int {
	components := n.components()
	var order []int
	for _, members := range components {
		var cells []int
		for _, m := range members {
			if m < len(n.cells) {
				cells = append(cells, m)
			}
		}
		if len(members) > 1 {
			sort.Ints(cells)
			n.circle(cells)
		}
		order = append(order, cells...)
	}
	return order
}

// components finds the groups of nodes that lean on each other (Tarjan's
// algorithm), each after those it leans on.
func (n *state) components() [][]int {
	count := len(n.edges)
	index, low, on := make([]int, count), make([]int, count), make([]bool, count)
	next := 1
	var stack []int
	var groups [][]int
	type frame struct{ node, edge int }
	for root := range count {
		if index[root] != 0 {
			continue
		}
		work := []frame{{root, 0}}
		for len(work) > 0 {
			f := &work[len(work)-1]
			v := f.node
			if f.edge == 0 {
				index[v], low[v] = next, next
				next++
				stack = append(stack, v)
				on[v] = true
			}
			if f.edge < len(n.edges[v]) {
				to := n.edges[v][f.edge].to
				f.edge++
				if index[to] == 0 {
					work = append(work, frame{to, 0})
				} else if on[to] {
					low[v] = min(low[v], index[to])
				}
				continue
			}
			if f.edge == 0 {
				f.edge = 1
			}
			if low[v] == index[v] {
				groups = append(groups, pop(&stack, on, v))
			}
			work = work[:len(work)-1]
			if len(work) > 0 {
				parent := work[len(work)-1].node
				low[parent] = min(low[parent], low[v])
			}
		}
	}
	return groups
}

func pop(stack *[]int, on []bool, v int) []int {
	var members []int
	for {
		top := (*stack)[len(*stack)-1]
		*stack = (*stack)[:len(*stack)-1]
		on[top] = false
		members = append(members, top)
		if top == v {
			return members
		}
	}
}

// circle tells of cells that lean on each other.
func (n *state) circle(cells []int) {
	inside := map[int]bool{}
	for _, i := range cells {
		inside[i] = true
		n.cells[i].bad = true
	}
	first := &n.cells[cells[0]]
	p := n.codeProblem(first, diag.Fault{Message: "got a circle of cells, each of which waits for the other: " + n.circleNames(cells)}, 0, 0)
	p.Hint = "take the part that both need into a cell of its own"
	for _, i := range cells {
		c := &n.cells[i]
		for _, e := range n.edges[i] {
			if text := n.circleReason(e, inside, i); text != "" {
				p.Also = append(p.Also, diag.Related{Pos: n.codePos(c, 0, 0), Text: fmt.Sprintf("the cell %q %s", c.Label(), text)})
				if e.kind != "" {
					p.Hint = fmt.Sprintf("move the reading of %s records into a cell of its own", e.kind)
				}
			}
		}
	}
}

func (n *state) circleNames(cells []int) string {
	var names []string
	for _, i := range cells {
		names = append(names, fmt.Sprintf("%q", n.cells[i].Label()))
	}
	return strings.Join(names, ", ")
}

// circleReason says what an edge inside a circle is for.
func (n *state) circleReason(e edge, inside map[int]bool, from int) string {
	switch {
	case e.kind != "" && e.to >= len(n.cells):
		for _, maker := range n.makers[e.kind] {
			if inside[maker] && maker != from {
				return fmt.Sprintf("reads %s records, which %q makes", e.kind, n.cells[maker].Label())
			}
		}
	case !inside[e.to]:
	case e.kind != "":
		return fmt.Sprintf("reads %s records, which %q makes", e.kind, n.cells[e.to].Label())
	case e.name != "":
		return fmt.Sprintf("reads %s of %q", e.name, n.cells[e.to].Label())
	default:
		return fmt.Sprintf("reads a table with %q in it", n.cells[e.to].Label())
	}
	return ""
}
