package xlsx_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
	"weirbook/xlsx/recalc"
)

// awkward is a plan whose lines lie at half a coin and whose names are no plain
// words, beside the texts that try to become something else.
func awkward() *notebook.Result {
	r := hostile("=1+1")
	random := rand.New(rand.NewPCG(11, 7))
	names := []string{"Tanks", "tanks", "1", "01", "*", "<5", "2027-03-06", "March 2027", "Éclairage", "TRUE", "", "a~b", "Lids"}
	for i := range 300 {
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

// Every formula is worked out by LibreOffice from a copy without values and
// must give the value that we wrote.
func TestLibreOfficeAgrees(t *testing.T) {
	for name, r := range map[string]*notebook.Result{
		"without tax": awkward(), "yen, tax included, no tariff": yen(), "nothing": {}, "incomplete": incomplete(),
	} {
		t.Run(name, func(t *testing.T) {
			file := write(t, r)
			recalc.Compare(t, file, recalc.LibreOffice(t, file))
		})
	}
}
