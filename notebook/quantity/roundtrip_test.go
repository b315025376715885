package quantity_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// requireSame checks that two quantities agree bit for bit, with the same unit
// to show and the same factor behind it.
func requireSame(t testing.TB, want, got quantity.Quantity) {
	t.Helper()
	require.Equal(t, math.Float64bits(want.Value()), math.Float64bits(got.Value()), "%s and %s", want, got)
	require.Equal(t, want.Unit().Symbol(), got.Unit().Symbol())
	require.Equal(t, want.Dimension(), got.Dimension())
	require.Equal(t, math.Float64bits(want.SI()), math.Float64bits(got.SI()), "%s in SI", want)
}

// finite reports whether a number has a text that Parse reads; negative zero is
// printed as 0.
func finite(v float64) bool {
	return !math.IsNaN(v) && !math.IsInf(v, 0) && !(v == 0 && math.Signbit(v))
}

func randomValue(r *rand.Rand) float64 {
	switch r.IntN(4) {
	case 0:
		return math.Float64frombits(r.Uint64())
	case 1:
		return float64(r.IntN(2_000_001) - 1_000_000)
	case 2:
		return math.Round(r.NormFloat64()*1e5) / 1000
	default:
		return r.NormFloat64() * math.Pow(10, float64(r.IntN(40)-20))
	}
}

func randomUnit(r *rand.Rand, symbols []string) string {
	text := symbols[r.IntN(len(symbols))]
	for range r.IntN(4) {
		text += string(".*/"[r.IntN(3)]) + symbols[r.IntN(len(symbols))]
		if r.IntN(3) == 0 {
			text += string("23456"[r.IntN(5)])
		}
	}
	return text
}

func TestPrintedQuantitiesReadBackTheSame(t *testing.T) {
	r := rand.New(rand.NewPCG(811, 2008))
	symbols := append(quantity.UnitNames(), "EUR", "USD", "JPY")
	tried := 0
	for range 5000 {
		value, unit := randomValue(r), randomUnit(r, symbols)
		q, err := quantity.New(value, unit)
		if err != nil || !finite(value) {
			continue
		}
		tried++
		back, err := quantity.Parse(q.String())
		require.NoError(t, err, q.String())
		requireSame(t, q, back)
	}
	require.Greater(t, tried, 4000)
}

// Results of arithmetic have units that nobody typed; they too read back.
func TestResultsReadBackTheSame(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 6))
	symbols := []string{"m", "cm", "in", "ft", "L", "gal", "kg", "lb", "g/kg", "mg/L", "s", "h", "d", "W", "kWh", "V", "A", "ohm", "EUR", "EUR/kWh", "USD/EUR", "%", "K", "lm", "lx", "mol", "Pa", "psi", "W/(m2.K)", "L/h", ""}
	tried := 0
	for range 5000 {
		a := quantity.Must(float64(1+r.IntN(999)), symbols[r.IntN(len(symbols))])
		b := quantity.Must(float64(1+r.IntN(999))/8, symbols[r.IntN(len(symbols))])
		do := []operation{quantity.Quantity.Mul, quantity.Quantity.Div}[r.IntN(2)]
		q, err := do(a, b)
		if err != nil {
			continue
		}
		tried++
		back, err := quantity.Parse(q.String())
		require.NoError(t, err, q.String())
		requireSame(t, q, back)
		want := a.SI() * b.SI()
		if quotient, _ := a.Div(b); quotient.Same(q) {
			want = a.SI() / b.SI()
		}
		require.InEpsilon(t, want, q.SI(), 1e-13, "%s with %s", a, b)
	}
	require.Greater(t, tried, 4500)
}

func TestNegativeZeroPrintsAsZero(t *testing.T) {
	require.Equal(t, "0 m", quantity.Must(math.Copysign(0, -1), "m").String())
}

func FuzzParsePrint(f *testing.F) {
	for _, unit := range []string{"", "in", "EUR/kWh", "W/(m2.K)", "1/s", "mH2O2", "%", "degC", "degC.m/m", "kWh/(W.h)", "€", "rad12"} {
		f.Add(0.1, unit)
		f.Add(-1.5e300, unit)
	}
	f.Fuzz(func(t *testing.T, value float64, unit string) {
		q, err := quantity.New(value, unit)
		if err != nil || !finite(value) {
			return
		}
		back, err := quantity.Parse(q.String())
		require.NoError(t, err, q.String())
		requireSame(t, q, back)
	})
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"72 in", "1/2 in", "3 1/4 in", "6 ft 2 1/2 in", `5' 6"`, "1 200 L/h", "0.31 EUR/kWh", "9 h/d", "25 degC", "77 °F", "5.7 W/(m2.K)", "1,200", "1.200,5", "€ 40", "$40", "−½ in", "1e3m", "5 ((m", "2 mH2O2", "3 ‰", "\xff 1", "5 \xc2",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, err := quantity.Parse(text)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		require.NotEmpty(t, q.Short())
		require.False(t, math.IsNaN(q.Value()) || math.IsInf(q.Value(), 0), "%q gave %s", text, q)
		if finite(q.Value()) {
			back, err := quantity.Parse(q.String())
			require.NoError(t, err, "%q gave %s", text, q)
			requireSame(t, q, back)
		}
	})
}
