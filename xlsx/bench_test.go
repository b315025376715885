package xlsx

import (
	"fmt"
	"io"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// benchResult is a plan of 5,000 budget lines and 200 tanks, with 1,000 values.
func benchResult() *notebook.Result {
	p := &plan.Plan{Taxes: []*plan.Tax{{Rate: quantity.Must(19, "%")}}, Contingencies: []*plan.Contingency{{Rate: quantity.Must(10, "%")}}}
	for i := range 5000 {
		p.Items = append(p.Items, &plan.Item{Name: fmt.Sprintf("Item number %d of the list", i), Price: quantity.Must(float64(i%977)+0.35, "EUR"),
			Count: float64(i%9 + 1), Have: float64(i % 3), Phase: fmt.Sprintf("Phase %d", i%7), Tank: fmt.Sprintf("Tank %d", i%200), Supplier: "Glazier"})
	}
	for i := range 200 {
		p.Tanks = append(p.Tanks, &plan.Tank{Name: fmt.Sprintf("Tank %d", i), Length: quantity.Must(100, "cm"), Width: quantity.Must(50, "cm"), Height: quantity.Must(50, "cm"),
			Glass: quantity.Must(10, "mm"), Bottom: quantity.Must(10, "mm"), Fill: quantity.Must(45, "cm"), Water: quantity.Must(201.3, "L"), Empty: quantity.Must(44.2, "kg"),
			Filled: quantity.Must(245.5, "kg"), Salinity: quantity.Must(0, "ppt"), Temperature: quantity.Must(25, "degC"), Room: "Attic", Defaults: []string{"bottom 10 mm"}})
	}
	r := &notebook.Result{Plan: p}
	for i := range 1000 {
		r.Values = append(r.Values, notebook.Named{Name: fmt.Sprintf("value_%d", i), Value: quantity.Must(float64(i)*1.37, "L")})
	}
	return r
}

func BenchmarkWrite(b *testing.B) {
	r := benchResult()
	b.ReportAllocs()
	for b.Loop() {
		require.NoError(b, Write(io.Discard, r))
	}
}

// BenchmarkBare writes the same cells of the three long lists with nothing but
// the library's stream writer: the yardstick for BenchmarkWrite.
func BenchmarkBare(b *testing.B) {
	r := benchResult()
	b.ReportAllocs()
	for b.Loop() {
		bare(b, r)
	}
}

func bare(b *testing.B, r *notebook.Result) {
	f := excelize.NewFile()
	format, edge := `#,##0.00 "EUR"`, []excelize.Border{{Type: "bottom", Color: hairline, Style: 1}}
	money, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format, Border: edge})
	require.NoError(b, err)
	plain, err := f.NewStyle(&excelize.Style{Border: edge})
	require.NoError(b, err)
	text := func(s string) excelize.Cell {
		if s == "" {
			return excelize.Cell{StyleID: plain}
		}
		return excelize.Cell{StyleID: plain, Value: s}
	}
	number := func(v float64) excelize.Cell { return excelize.Cell{StyleID: plain, Value: v} }
	bareSheet(b, f, "Budget", len(r.Plan.Items), func(i int) []any {
		item, n := r.Plan.Items[i], strconv.Itoa(i+1)
		line := item.Cost(1.19)
		return []any{text(item.Phase), text(item.Name), text(item.Tank), text(item.Supplier), number(item.Count), excelize.Cell{StyleID: money, Value: item.Price.Value()},
			excelize.Cell{StyleID: money, Formula: "ROUND(E" + n + "*F" + n + "*(1+tax_rate),2)", Value: line.Total}, number(item.Have),
			excelize.Cell{StyleID: money, Formula: "ROUND(MAX(E" + n + "-H" + n + ",0)*F" + n + "*(1+tax_rate),2)", Value: line.ToSpend}}
	})
	bareSheet(b, f, "Tanks", len(r.Plan.Tanks), func(i int) []any {
		t := r.Plan.Tanks[i]
		return []any{text(t.Name), text(t.Room), number(t.Length.Value()), number(t.Width.Value()), number(t.Height.Value()), number(t.Glass.Value()),
			number(t.Fill.Value()), number(t.Water.Value()), number(t.Empty.Value()), number(t.Filled.Value()), number(t.Temperature.Value()),
			text(t.Defaults[0])}
	})
	bareSheet(b, f, "Values", len(r.Values), func(i int) []any {
		v := r.Values[i].Value.(quantity.Quantity)
		return []any{text(r.Values[i].Name), number(v.Value()), text(v.Unit().Symbol()), text("fixed"), text(""), text(r.Values[i].Name)}
	})
	require.NoError(b, f.Write(io.Discard))
	require.NoError(b, f.Close())
}

func bareSheet(b *testing.B, f *excelize.File, name string, rows int, row func(i int) []any) {
	_, err := f.NewSheet(name)
	require.NoError(b, err)
	w, err := f.NewStreamWriter(name)
	require.NoError(b, err)
	for i := range rows {
		require.NoError(b, w.SetRow("A"+strconv.Itoa(i+1), row(i)))
	}
	require.NoError(b, w.Flush())
}
