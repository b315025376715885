package lualib_test

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"math/big"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func sorted[K cmp.Ordered, V any](m map[K]V) []K {
	var keys []K
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// rowsOf reads a reference table; lines that start with # name its source.
func rowsOf(t *testing.T, folder, name string) []map[string]string {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "testdata", folder, name))
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(lines), 1)
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, column := range lines[0] {
			row[column] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return f
}

// in gives a named value as a number in a unit.
func in(t *testing.T, r *notebook.Result, name, unit string) float64 {
	t.Helper()
	q, ok := value(t, r, name).(quantity.Quantity)
	require.True(t, ok, name)
	return q.MustIn(unit)
}

// TestEnergyCost: rows of testdata/engineering/energy_cost_examples.csv.
func TestEnergyCost(t *testing.T) {
	for _, row := range rowsOf(t, "engineering", "energy_cost_examples.csv") {
		r := good(t, cell("load", fmt.Sprintf("power.load{name = %q, power = \"%s W\", count = %s, hours = \"%s h/d\"}\npower.tariff \"%s EUR/kWh\"", row["load"], row["W"], row["qty"], row["hours_per_day"], row["rate_per_kWh"]))+
			cell("cost", `yearly = power.cost "yr" energy = power.total{per = "yr"}.energy daily = power.total{per = "d"}.energy monthly = power.cost()`))
		require.InDelta(t, number(t, row["cost_year"]), in(t, r, "yearly", "EUR"), 1e-9)
		require.InDelta(t, number(t, row["cost_year"])/12, in(t, r, "monthly", "EUR"), 1e-9)
		require.InDelta(t, number(t, row["kWh_year"]), in(t, r, "energy", "kWh"), 1e-9)
		require.InDelta(t, number(t, row["kWh_day"]), in(t, r, "daily", "kWh"), 1e-12)
	}
}

// TestCircuitLoads: rows of testdata/engineering/circuit_load_examples.csv, and
// the two sides of both limits.
func TestCircuitLoads(t *testing.T) {
	circuit := func(volts, amps, watts string) *plan.Check {
		r := runText(t, cell("one", fmt.Sprintf(`power.circuit{name = "C", voltage = "%s V", breaker = "%s A"} power.load{name = "All", power = "%s W", circuit = "C"}`, volts, amps, watts)))
		require.Empty(t, problems(r))
		require.Len(t, r.Plan.Checks, 1)
		return r.Plan.Checks[0]
	}
	for _, row := range rowsOf(t, "engineering", "circuit_load_examples.csv") {
		k := circuit(row["V"], row["breaker_A"], row["total_W"])
		require.InDelta(t, number(t, row["ratio"])*0.80, k.Value.Q.MustIn("%")/100, 5e-5, "the row's ratio is of 80 % of the breaker")
		require.Equal(t, row["verdict"] == "OK", k.Outcome == plan.Pass)
	}
	require.Equal(t, plan.Pass, circuit("120", "20", "1920").Outcome, "16 A of 20 A at 120 V")
	require.Equal(t, plan.Caution, circuit("120", "20", "1921").Outcome)
	require.Equal(t, plan.Caution, circuit("230", "16", "3680").Outcome)
	require.Equal(t, plan.Fail, circuit("230", "16", "3681").Outcome)
}

// TestTankMasses: water by the rows of testdata/engineering/
// tank_floor_load_examples.csv, glass by its volume: outside less inside.
func TestTankMasses(t *testing.T) {
	for _, row := range rowsOf(t, "engineering", "tank_floor_load_examples.csv") {
		l, w, h, glass := number(t, row["L_m"]), number(t, row["W_m"]), number(t, row["H_m"]), number(t, row["t_m"])
		r := goodCell(t, fmt.Sprintf(`t = tank{name = "T", length = "%s m", width = "%s m", height = "%s m", glass = "%s m", fill = "%s m", temperature = "25 degC"} held, empty, filled, gross, base = t.water, t.empty, t.filled, t.gross, t.footprint`, row["L_m"], row["W_m"], row["H_m"], row["t_m"], row["water_h_m"]))
		litres := 1000 * number(t, row["water_kg"]) / number(t, row["rho"])
		require.InEpsilon(t, litres, in(t, r, "held", "L"), 5e-6)
		panes := 2500 * (l*w*h - (l-2*glass)*(w-2*glass)*(h-glass))
		require.InEpsilon(t, panes, in(t, r, "empty", "kg"), 1e-9)
		require.InEpsilon(t, panes+in(t, r, "held", "m3")*997.0464, in(t, r, "filled", "kg"), 1e-5, "EOS-80 at 25 degC")
		require.InEpsilon(t, l*w*h*1000, in(t, r, "gross", "L"), 1e-12)
		require.InEpsilon(t, l*w, in(t, r, "base", "m2"), 1e-12)
	}
}

// TestTankContents by hand: sand of 4 cm at porosity 0.40, rock of 2600 kg/m3.
func TestTankContents(t *testing.T) {
	r := goodCell(t, `t = tank{name = "T", length = "120 cm", width = "50 cm", height = "50 cm", glass = "10 mm", fill = "45 cm", substrate = "4 cm", rock = "13 kg", temperature = "25 degC"} held, empty, filled = t.water, t.empty, t.filled`)
	floor := 1.18 * 0.48
	water := floor*0.45 - floor*0.04*0.6 - 13.0/2600
	require.InEpsilon(t, water*1000, in(t, r, "held", "L"), 1e-9)
	require.InEpsilon(t, in(t, r, "empty", "kg")+water*997.0464+floor*0.04*0.6*2650+13, in(t, r, "filled", "kg"), 1e-6)
}

// TestSaltMasses: rows of testdata/water/salt_mass.csv.
func TestSaltMasses(t *testing.T) {
	seen := 0
	for _, row := range rowsOf(t, "water", "salt_mass.csv") {
		if row["mode"] != "into_fresh_volume" {
			continue
		}
		seen++
		r := goodCell(t, fmt.Sprintf(`s = salinity.salt{water = "%s L", to = "%s ppt", temperature = "%s degC"} mass, after = s.mass, s.final_volume`, row["V_L"], row["S"], row["t_C"]))
		require.InEpsilon(t, number(t, row["salt_kg_simple"]), in(t, r, "mass", "kg"), 5e-5)
		require.InEpsilon(t, number(t, row["V_final_L_simple"]), in(t, r, "after", "L"), 1e-6)
	}
	require.Positive(t, seen)
}

// cents rounds half away from zero, exactly.
func cents(r *big.Rat) *big.Rat {
	n := new(big.Rat).Mul(r, big.NewRat(100, 1))
	twice := new(big.Int).Quo(new(big.Int).Add(new(big.Int).Mul(n.Num(), big.NewInt(2)), n.Denom()), new(big.Int).Mul(n.Denom(), big.NewInt(2)))
	return new(big.Rat).SetFrac(twice, big.NewInt(100))
}

func rat(t *testing.T, s string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	require.True(t, ok, s)
	return r
}

// TestBudgetsToTheCent compares totals with exact decimal arithmetic: every line
// with its tax is rounded half away from zero, and a total is their sum.
func TestBudgetsToTheCent(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	for _, tax := range []string{"0.0825", "0.2", "0.19", "0.055", "0"} {
		factor := new(big.Rat).Add(big.NewRat(1, 1), rat(t, tax))
		var code strings.Builder
		fmt.Fprintf(&code, "cost.tax{rate = %s, included = false}\ncost.contingency \"7.5 %%\"\n", tax)
		total, toBuy := new(big.Rat), new(big.Rat)
		for i := range 60 {
			price := fmt.Sprintf("%d.%03d", random.IntN(300), random.IntN(200)*5)
			count, have := random.IntN(9)+1, 0
			if i%3 == 0 {
				have = random.IntN(count + 1)
			}
			fmt.Fprintf(&code, "cost.item{name = 'i%d', price = '%s EUR', count = %d, have = %d}\n", i, price, count, have)
			line := func(n int) *big.Rat {
				return cents(new(big.Rat).Mul(new(big.Rat).Mul(rat(t, price), factor), big.NewRat(int64(n), 1)))
			}
			total.Add(total, line(count))
			toBuy.Add(toBuy, line(count-have))
		}
		r := good(t, cell("items", code.String())+cell("sums", "total = cost.total() left = cost.to_spend()"))
		require.Equal(t, total.FloatString(2), fmt.Sprintf("%.2f", in(t, r, "total", "EUR")))
		left := new(big.Rat).Add(toBuy, cents(new(big.Rat).Mul(toBuy, rat(t, "0.075"))))
		require.Equal(t, left.FloatString(2), fmt.Sprintf("%.2f", in(t, r, "left", "EUR")))
	}
}
