package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// parsed is a text and the number and unit that Parse gives for it.
type parsed struct {
	text  string
	value float64
	unit  string
}

func requireParsed(t *testing.T, rows []parsed) {
	t.Helper()
	for _, row := range rows {
		q, err := quantity.Parse(row.text)
		require.NoError(t, err, row.text)
		require.Equal(t, row.value, q.Value(), row.text)
		require.Equal(t, row.unit, q.Unit().Symbol(), row.text)
	}
}

func TestParseNumbers(t *testing.T) {
	requireParsed(t, []parsed{
		{"72 in", 72, "in"}, {"72in", 72, "in"}, {"  72   in ", 72, "in"}, {"+72 in", 72, "in"},
		{"-72 in", -72, "in"}, {"−72 in", -72, "in"}, {".5 in", 0.5, "in"}, {"5. in", 5, "in"}, {"0.5 in", 0.5, "in"},
		{"1e3 m", 1000, "m"}, {"1e3m", 1000, "m"}, {"1E-3 m", 0.001, "m"}, {"1.5e+2 m", 150, "m"},
		{"5 eq", 5, "eq"}, {"5eq", 5, "eq"}, {"5 EUR", 5, "EUR"}, {"5EUR", 5, "EUR"},
		{"12", 12, ""}, {"-0.25", -0.25, ""}, {"1 200", 1200, ""},
	})
}

func TestParseGroupedNumbers(t *testing.T) {
	requireParsed(t, []parsed{
		{"1 200 L/h", 1200, "L/h"}, {"12 000 000 L", 12000000, "L"}, {"1 200.5 L", 1200.5, "L"}, {"-1 200 L", -1200, "L"},
		{"1\u00a0200 L", 1200, "L"}, {"1\u202f200\u00a0L", 1200, "L"}, {"1\u2009200 L", 1200, "L"},
	})
}

func TestParseFractions(t *testing.T) {
	requireParsed(t, []parsed{
		{"1/2 in", 0.5, "in"}, {"-1/2 in", -0.5, "in"}, {"3 1/4 in", 3.25, "in"}, {"3-1/4 in", 3.25, "in"}, {"-3 1/4 in", -3.25, "in"},
		{"1 / 2 in", 0.5, "in"}, {"2½ in", 2.5, "in"}, {"½ in", 0.5, "in"}, {"-½ in", -0.5, "in"}, {"5 ⅜ in", 5.375, "in"}, {"2/3 cup", 2.0 / 3, "cup"},
		{"15/16 in", 0.9375, "in"}, {"5/4 in", 1.25, "in"}, {"1/2", 0.5, ""},
	})
}

func TestParseFallingParts(t *testing.T) {
	requireParsed(t, []parsed{
		{"6 ft 2 1/2 in", 74.5, "in"}, {"6 ft 2.5 in", 74.5, "in"}, {`5' 6"`, 66, "in"}, {`5'6"`, 66, "in"}, {"5′ 6″", 66, "in"}, {"5’ 6”", 66, "in"}, {"5' 6''", 66, "in"},
		{`6"`, 6, "in"}, {"5'", 5, "ft"}, {`5' 6 1/2"`, 66.5, "in"}, {"6ft 2in", 74, "in"},
		{"-6 ft 2 in", -74, "in"}, {"−6 ft 2 in", -74, "in"}, {"-0 ft 6 in", -6, "in"},
		{"1 h 30 min", 90, "min"}, {"5 lb 3 oz", 83, "oz"}, {"1 m 20 cm 5 mm", 1205, "mm"}, {"2 gal 1 qt", 9, "qt"},
	})
}

func TestParseTemperatures(t *testing.T) {
	for _, row := range []struct {
		text  string
		value float64
		unit  string
		point bool
	}{
		{"25 degC", 25, "degC", true}, {"25°C", 25, "degC", true}, {"25 ° C", 25, "degC", true}, {"25 ℃", 25, "degC", true}, {"25 deg C", 25, "degC", true},
		{"77 °F", 77, "degF", true}, {"77 degF", 77, "degF", true}, {"77 ℉", 77, "degF", true}, {"-5 degC", -5, "degC", true},
		{"3 K", 3, "K", false}, {"300 K", 300, "K", false}, {"5 degF_diff", 5, "degF_diff", false},
		{"1 degC/h", 1, "K/h", false}, {"1 W/degC", 1, "W/K", false}, {"1 BTU/(h.degF)", 1, "BTU/(h.degF_diff)", false},
	} {
		q, err := quantity.Parse(row.text)
		require.NoError(t, err, row.text)
		require.Equal(t, row.value, q.Value(), row.text)
		require.Equal(t, row.unit, q.Unit().Symbol(), row.text)
		require.Equal(t, row.point, q.IsPoint(), row.text)
	}
}

func TestParseProductsOfUnits(t *testing.T) {
	requireParsed(t, []parsed{
		{"9 h/d", 9, "h/d"}, {"0.31 EUR/kWh", 0.31, "EUR/kWh"}, {"0.31 EUR / kWh", 0.31, "EUR/kWh"}, {"0.31 EUR /kWh", 0.31, "EUR/kWh"}, {"0.31 EUR/ kWh", 0.31, "EUR/kWh"},
		{"5.7 W/(m2.K)", 5.7, "W/(m2.K)"}, {"5.7 W/m2/K", 5.7, "W/(m2.K)"}, {"5.7 W.m-2.K-1", 5.7, "W/(m2.K)"}, {"5.7 W·m^-2·K^-1", 5.7, "W/(m2.K)"},
		{"5.7 W/(m².K)", 5.7, "W/(m2.K)"}, {"5.7 W/(m2*K)", 5.7, "W/(m2.K)"}, {"5.7 W/(m2·°C)", 5.7, "W/(m2.K)"},
		{"2 m³", 2, "m3"}, {"2 m^3", 2, "m3"}, {"2 m.m", 2, "m2"}, {"4 N.m", 4, "N.m"}, {"7 1/s", 7, "1/s"}, {"7 s-1", 7, "1/s"}, {"7 1/(m2.s)", 7, "1/(m2.s)"},
		{"3 kg.m/m", 3, "kg"}, {"5 W.h/Wh", 5, ""}, {"5 g/kg", 5, "g/kg"}, {"5 mL/L", 5, "mL/L"}, {"3 mH2O2", 3, "mH2O2"},
	})
}

// A unit of three factors that cancel may leave a number behind.
func TestParseKeepsTheFactorOfACancellingUnit(t *testing.T) {
	for text, want := range map[string]float64{"5 kWh/(W.h)": 5000, "5 W.h/Wh": 5, "1 m.mm/m2": 0.001, "2 L/(dm.dm.dm)": 2} {
		q, err := quantity.Parse(text)
		require.NoError(t, err, text)
		v, ok := q.Number()
		require.True(t, ok, text)
		require.InEpsilon(t, want, v, 1e-15, text)
	}
}

func TestParseMoney(t *testing.T) {
	requireParsed(t, []parsed{
		{"40 EUR", 40, "EUR"}, {"40 USD", 40, "USD"}, {"12.50 GBP", 12.5, "GBP"}, {"900 JPY", 900, "JPY"}, {"1.5 KWD", 1.5, "KWD"}, {"7 PLN", 7, "PLN"},
		{"€ 40", 40, "EUR"}, {"€40", 40, "EUR"}, {"40 €", 40, "EUR"}, {"40€", 40, "EUR"}, {"£ 12.50", 12.5, "GBP"}, {"EUR 40", 40, "EUR"}, {"USD 1 200.50", 1200.5, "USD"},
		{"2 EUR/kg", 2, "EUR/kg"}, {"2 €/m2", 2, "EUR/m2"}, {"0.92 EUR/USD", 0.92, "EUR/USD"}, {"12 EUR/mo", 12, "EUR/mo"},
	})
}
