package lualib

import (
	"fmt"
	"slices"
	"strings"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// rawRows gives the rows of the table under a heading.
func rawRows(s *session, L *lua.LState) int {
	heading, ok := L.Get(1).(lua.LString)
	if !ok {
		return s.raise(L, &diag.Fault{Subject: "rows", Message: fmt.Sprintf("got %s, want the text of a heading", s.describe(L.Get(1))), Hint: `write rows "Budget"`})
	}
	input := s.current.job.Tables[strings.TrimSpace(string(heading))]
	if input == nil && slices.Contains(s.current.job.Headings, strings.TrimSpace(string(heading))) || input == nil && s.current.job.Headings == nil {
		return s.raise(L, &diag.Fault{
			Subject: "rows", Message: fmt.Sprintf("got the heading %q through a function that cannot be followed to its definition", string(heading)),
			Hint: "give the function a name of its own, as in function my_rows(heading) … end, and call it by that name",
		})
	}
	if input == nil {
		hint := didYouMean(string(heading), s.current.job.Headings)
		if hint == "" && len(s.current.job.Headings) > 0 {
			hint = "headings with a table: " + strings.Join(s.current.job.Headings, ", ")
		} else if hint == "" {
			hint = "the notebook has no table under a heading yet"
		}
		return s.raise(L, &diag.Fault{Subject: "rows", Message: fmt.Sprintf("got the heading %q, under which no table stands", string(heading)), Hint: hint})
	}
	if len(input.Many) > 1 {
		return s.raise(L, &diag.Fault{Subject: "rows", Message: fmt.Sprintf("got the heading %q with %d tables under it, want one", string(heading), len(input.Many)), Hint: "give each table a heading of its own"})
	}
	if err := s.meter.step(64 * len(input.Table.Rows) * max(len(input.Table.Keys), 1)); err != nil {
		return s.raise(L, err)
	}
	L.Push(s.tableRows(input))
	return 1
}

func (s *session) tableRows(input *notebook.TableInput) *lua.LTable {
	list := s.state.CreateTable(len(input.Table.Rows), 0)
	for i, row := range input.Table.Rows {
		t := s.state.CreateTable(0, len(row.Cells))
		info := &rowOf{heading: input.Table.Heading, row: i}
		for k, cell := range row.Cells {
			if k >= len(input.Table.Keys) || input.Table.Keys[k] == "" {
				continue
			}
			value := s.cellValue(input, i, k, cell)
			if value != lua.LNil {
				t.RawSetString(input.Table.Keys[k], value)
			}
		}
		s.current.rows[t] = info
		list.RawSetInt(i+1, t)
	}
	return list
}

// cellValue reads a table cell: the value of its expression, else a quantity, a
// number, a date or a text.
func (s *session) cellValue(input *notebook.TableInput, row, column int, cell notebook.TableCell) lua.LValue {
	if v, ok := input.Values[[2]int{row, column}]; ok {
		return s.thaw(v, "a table")
	}
	text := strings.TrimSpace(cell.Text)
	if text == "" {
		return lua.LNil
	}
	if c := text[0]; (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.' || c > 127 || len(text) > 4 && text[3] == ' ' {
		if v := s.numberCell(text); v != nil {
			return v
		}
	}
	return lua.LString(text)
}

// numberCell reads a quantity, a number or a date; nil for a text. What was
// typed is kept where the number does not show it.
func (s *session) numberCell(text string) lua.LValue {
	if d, err := quantity.ParseDate(text); err == nil {
		return s.wrapDate(d)
	}
	q, err := quantity.Parse(text)
	if err != nil {
		return nil
	}
	if q.Unit() == nil && q.String() == text {
		return lua.LNumber(q.Value())
	}
	return s.wrap(q.WithOrigin(quantity.Typed(text)))
}

// noteFault makes a caution at a place.
func noteFault(place plan.Place, f *diag.Fault) notebook.Fault {
	return notebook.Fault{Fault: *f, Place: place, Caution: true}
}
