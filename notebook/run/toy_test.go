package run_test

import (
	"context"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
	"weirbook/notebook/run"
)

// toy is an engine for a language of four statements, one a line:
//
//	a = b + 2      item 3      total t      fail
//
// It shows what the runner does without the cells' real language.
type toy struct{ runs []string }

func (*toy) Names() []string { return []string{"library"} }

func (*toy) Conclude(p *plan.Plan) ([]*plan.Check, []diag.Problem) { return nil, nil }

func (e *toy) Begin(ctx context.Context, _ notebook.Limits) notebook.Session {
	return &toySession{e, ctx}
}

func (*toy) Analyse(kind notebook.CellKind, code string) *notebook.Analysis {
	h := notebook.NewHasher()
	h.Text(code)
	a := &notebook.Analysis{Digest: h.Sum()}
	for i, line := range strings.Split(code, "\n") {
		a.Code = append(a.Code, i)
		w := strings.Fields(line)
		switch {
		case len(w) > 2 && w[1] == "=":
			a.Assigns = append(a.Assigns, notebook.Ident{Name: w[0], Line: i, Column: 1})
			for k := 2; k < len(w); k += 2 {
				if _, err := strconv.Atoi(w[k]); err != nil {
					a.Reads = append(a.Reads, notebook.Ident{Name: w[k], Line: i, Column: 1 + strings.Index(line, w[k])})
					a.Own.Uses = append(a.Own.Uses, w[k])
				}
			}
		case len(w) == 2 && w[0] == "item":
			a.Own.Makes = append(a.Own.Makes, plan.KindItem)
		case len(w) == 2 && w[0] == "total":
			a.Own.Reads = append(a.Own.Reads, plan.KindItem)
			a.Assigns = append(a.Assigns, notebook.Ident{Name: w[1], Line: i, Column: 7})
		}
	}
	return a
}

type toySession struct {
	engine *toy
	ctx    context.Context
}

func (s *toySession) Close() {}

func (s *toySession) Run(job *notebook.Job) *notebook.Outcome {
	s.engine.runs = append(s.engine.runs, job.Cell.Title)
	values := map[string]float64{}
	for _, in := range job.Inputs {
		values[in.Name] = in.Value.(float64)
	}
	out := &notebook.Outcome{Kinds: map[plan.Kind]notebook.Digest{}}
	h := notebook.NewHasher()
	for i, line := range strings.Split(job.Cell.Code, "\n") {
		w := strings.Fields(line)
		switch {
		case line == "fail":
			return &notebook.Outcome{Failed: true, Faults: []notebook.Fault{{Fault: diag.Fault{Message: "failed"}, Place: plan.Place{Line: i}}}}
		case w[0] == "item":
			price, _ := strconv.ParseFloat(w[1], 64)
			out.Records = append(out.Records, &plan.Item{Source: plan.Source{Place: plan.Place{Line: i}}, Name: w[1], Count: 1, Price: quantity.Must(price, "EUR")})
			h.Number(price)
		case w[0] == "total":
			sum := 0.0
			for _, r := range job.Records[plan.KindItem] {
				sum += r.(*plan.Item).Price.Value()
			}
			out.Values = append(out.Values, notebook.Named{Name: w[1], Value: sum})
		default:
			sum := 0.0
			for k := 2; k < len(w); k += 2 {
				n, err := strconv.ParseFloat(w[k], 64)
				if err != nil {
					n = values[w[k]]
				}
				sum += n
			}
			values[w[0]] = sum
			out.Values = append(out.Values, notebook.Named{Name: w[0], Value: sum})
		}
	}
	out.Kinds[plan.KindItem] = h.Sum()
	return out
}

// page makes a document of cells named A, B, C …, one every ten lines.
func page(codes ...string) *notebook.Document {
	d := &notebook.Document{File: "toy.md", Source: make([]string, 10*len(codes)+10)}
	for i, code := range codes {
		c := &notebook.Cell{Title: string(rune('A' + i)), Code: code, Index: i}
		for k := range strings.Split(code, "\n") {
			c.Lines = append(c.Lines, notebook.CodeLine{Number: 10*i + k + 1})
		}
		d.Cells = append(d.Cells, c)
	}
	return d
}

func do(t *testing.T, r *run.Runner, d *notebook.Document) *notebook.Result {
	t.Helper()
	result, err := r.Run(context.Background(), d, nil)
	require.NoError(t, err)
	return result
}

func runner(e *toy) *run.Runner { return run.New(e, notebook.DefaultLimits()) }

func values(r *notebook.Result) string {
	var parts []string
	for _, v := range r.Values {
		parts = append(parts, fmt.Sprintf("%s=%v", v.Name, v.Value))
	}
	return strings.Join(parts, " ")
}

func problems(r *notebook.Result) string {
	var lines []string
	for _, p := range r.Problems {
		lines = append(lines, p.Error())
	}
	return strings.Join(lines, "\n")
}
