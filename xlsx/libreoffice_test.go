package xlsx_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
	"weirbook/xlsx/recalc"
)

// awkward is a plan whose lines lie at half a coin and whose names are no plain
// words, beside the texts that try to become something else.
func awkward() *notebook.Result {
	r := hostile("=1+1")
	r.Problems, r.Cells = incomplete().Problems, incomplete().Cells
	random := rand.New(rand.NewPCG(11, 7))
	names := []string{"Tanks", "tanks", "1", "01", "*", "<5", "2027-03-06", "March 2027", "Éclairage", "TRUE", "", "a~b", "Lids"}
	for i := range 150 {
		price := float64(random.IntN(400_000)) / 1000
		r.Plan.Items = append(r.Plan.Items, &plan.Item{
			Name: fmt.Sprintf("Thing %d", i), Price: quantity.Must(price, "EUR"), Count: float64(random.IntN(40)) / 4, Have: float64(random.IntN(4)),
			Phase: names[i%len(names)], Tank: names[(i+3)%len(names)], Supplier: names[(i*5)%len(names)],
		})
	}
	// 185.5 x 0.19 is 35.245 to a spreadsheet, though not to the last binary digit
	r.Plan.Items = append(r.Plan.Items, item("Tanks", "Half a coin", "", "", 0.19, "185.5 EUR", 0), item("Tanks", "From over the sea", "", "", 1, "99 USD", 0))
	for i := range 40 {
		r.Plan.Loads = append(r.Plan.Loads, load(fmt.Sprintf("Load %d", i), fmt.Sprintf("%d W", 3+i), i%4, fmt.Sprintf("%d h/d", i%25), names[i%len(names)], names[(i+1)%len(names)]))
	}
	return r
}

// yen is the same in money without decimals, with tax included and no price of
// electricity.
func yen() *notebook.Result {
	r := awkward()
	r.Plan.Taxes[0].Included = true
	r.Plan.Tariffs = nil
	r.Plan.Running = nil
	for i, item := range r.Plan.Items {
		item.Price = quantity.Must(float64(i*37)+0.5, "JPY")
	}
	return r
}

// lacking is a room in inches of which a part is missing, without most of the
// columns that may be left out.
func lacking() *notebook.Result {
	r := incomplete()
	r.Plan.Lacking = map[plan.Kind]bool{plan.KindItem: true}
	r.Plan.Circuits = []*plan.Circuit{{Name: "Attic", Voltage: q("120 V"), Breaker: q("15 A")}}
	for _, t := range r.Plan.Tanks {
		t.Length, t.Room, t.Rack, t.Tier = q("48 in"), "", "", 0
	}
	for _, i := range r.Plan.Items {
		i.Phase, i.Supplier = "", ""
	}
	return r
}

// Every formula is worked out by LibreOffice from a copy without values and
// must give the value that we wrote.
func TestLibreOfficeAgrees(t *testing.T) {
	for name, r := range map[string]*notebook.Result{"incomplete, without tax": awkward(), "yen, tax included, no tariff": yen(), "nothing": {}, "lacking": lacking()} {
		t.Run(name, func(t *testing.T) {
			file := write(t, r)
			recalc.Compare(t, file, recalc.LibreOffice(t, file))
		})
	}
}

// Input cells drive the workbook: after a change of three of them LibreOffice
// gives what a run with the new assumptions gives.
func TestLibreOfficeFollowsInputs(t *testing.T) {
	changed := edit(t, write(t, followed("0.31 EUR/kWh", "12 %", "19 %")), map[string]string{
		`(<c r="B23"[^>]*><v>)0.31<`: "${1}0.47<", `(<c r="B25"[^>]*><v>)0.12<`: "${1}0.075<", `(<c r="B26"[^>]*><v>)0.19<`: "${1}0.2<",
	})
	recalc.Compare(t, write(t, followed("0.47 EUR/kWh", "7.5 %", "20 %")), recalc.LibreOffice(t, changed))
}

// followed is the sample with other assumptions, some of them used in more than
// one place.
func followed(electricity, spare, tax string) *notebook.Result {
	r := sample()
	price, share := q(electricity), q(spare)
	r.Plan.Assumptions[0].Value, r.Plan.Assumptions[2].Value = price, share
	r.Plan.Tariffs[0].Price = price.WithOrigin(quantity.Named("electricity"))
	r.Plan.Contingencies[0].Rate = share.WithOrigin(quantity.Named("spare"))
	r.Plan.Taxes[0].Rate = q(tax)
	for i, v := range r.Values {
		switch v.Name {
		case "electricity":
			r.Values[i].Value = r.Plan.Tariffs[0].Price
		case "spare":
			r.Values[i].Value = r.Plan.Contingencies[0].Rate
		}
	}
	return r
}

// edit changes the first sheet of a workbook.
func edit(t *testing.T, file []byte, changes map[string]string) []byte {
	t.Helper()
	from, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(t, err)
	var out bytes.Buffer
	to := zip.NewWriter(&out)
	for _, part := range from.File {
		if part.Name != "xl/worksheets/sheet1.xml" {
			require.NoError(t, to.Copy(part))
			continue
		}
		r, err := part.Open()
		require.NoError(t, err)
		content, err := io.ReadAll(r)
		require.NoError(t, err)
		for pattern, text := range changes {
			expression := regexp.MustCompile(pattern)
			require.Len(t, expression.FindAll(content, -1), 1, pattern)
			content = expression.ReplaceAll(content, []byte(text))
		}
		w, err := to.Create(part.Name)
		require.NoError(t, err)
		_, err = w.Write(content)
		require.NoError(t, err)
	}
	require.NoError(t, to.Close())
	return out.Bytes()
}
