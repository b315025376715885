package quantity_test

import (
	"sort"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// kinds are the units that a keeper may expect, under the words by which a
// message calls what they measure.
var kinds = map[string][]string{
	"a length":                      {"mm", "cm", "m", "km", "in", "ft", "yd", "mi"},
	"an area":                       {"mm2", "cm2", "m2", "in2", "ft2", "ha", "sqft", "sqm"},
	"a volume":                      {"L", "mL", "m3", "gal", "qt", "pt", "fl_oz", "gal_imp", "ft3", "in3", "cup", "cbm"},
	"a mass":                        {"mg", "g", "kg", "t", "lb", "oz"},
	"a time":                        {"s", "min", "h", "d", "wk", "mo", "yr"},
	"a temperature":                 {"degC", "degF", "K", "degF_diff"},
	"a power":                       {"W", "mW", "kW", "MW", "hp", "VA", "BTU/h"},
	"an energy":                     {"Wh", "kWh", "MWh", "J", "kJ", "MJ", "BTU", "W.h"},
	"a pressure":                    {"Pa", "hPa", "kPa", "MPa", "bar", "mbar", "psi", "psf", "mH2O", "ftH2O", "cmH2O", "inH2O", "atm", "mmHg", "inHg", "N/mm2"},
	"a flow":                        {"L/h", "L/min", "m3/h", "gal/h", "gal/min", "gph", "lph", "gpm", "gpd", "cfm"},
	"a voltage":                     {"V", "mV", "kV"},
	"a current":                     {"A", "mA"},
	"a resistance":                  {"ohm", "mohm", "kohm", "Ω"},
	"an illuminance":                {"lx", "klx", "fc", "lm/m2"},
	"a luminous flux":               {"lm", "klm"},
	"an amount of substance":        {"mol", "mmol", "umol", "µmol"},
	"an amount of equivalents":      {"eq", "meq", "ueq"},
	"a density or concentration":    {"mg/L", "g/L", "kg/m3", "lb/ft3", "ug/L"},
	"an amount per volume":          {"mmol/L", "mol/m3"},
	"a hardness or alkalinity":      {"meq/L", "dGH", "dKH", "mg/L_CaCO3"},
	"a bare number":                 {"g/kg", "ppt", "psu", "PSU", "‰", "%", "mg/kg", "deg", "rad", "h/d"},
	"a conductivity":                {"mS/cm", "uS/cm"},
	"a force":                       {"N", "kN", "lbf", "kgf"},
	"a line load":                   {"kN/m"},
	"a heat transmission (U value)": {"W/(m2.K)", "BTU/(h.ft2.degF)"},
	"an amount of EUR":              {"EUR", "€"},
}

func TestUnitsMeasureWhatTheySay(t *testing.T) {
	for kind, units := range kinds {
		for _, unit := range units {
			u, err := quantity.ParseUnit(unit)
			require.NoError(t, err, unit)
			require.Equal(t, kind, u.Dimension().String(), unit)
		}
	}
}

func TestEveryNameIsAUnit(t *testing.T) {
	names := quantity.UnitNames()
	require.True(t, sort.StringsAreSorted(names))
	require.Subset(t, names, []string{"in", "kWh", "gph", "psu", "€"})
	for _, name := range names {
		u, err := quantity.ParseUnit(name)
		require.NoError(t, err, name)
		require.NotEmpty(t, u.Symbol(), name)
	}
}

func TestAliasesMeanTheUnitTheyStandFor(t *testing.T) {
	for alias, plain := range quantity.AliasTexts() {
		a, err := quantity.ParseUnit(alias)
		require.NoError(t, err, alias)
		b, err := quantity.ParseUnit(plain)
		require.NoError(t, err, plain)
		require.Equal(t, b.Symbol(), a.Symbol(), alias)
	}
}

func TestUnitsOfTwoWords(t *testing.T) {
	requireParsed(t, []parsed{
		{"12 sq ft", 12, "ft2"}, {"5 cu ft", 5, "ft3"}, {"12 fl oz", 12, "fl_oz"}, {"5 imp gal", 5, "gal_imp"}, {"5 US gal", 5, "gal"}, {"20 per cent", 20, "%"},
		{"3 m of water", 3, "mH2O"}, {"10 ft of water", 10, "ftH2O"}, {"5 ft of water", 5, "ftH2O"},
	})
}

// Digits after the point as in ISO 4217 (2018), list one; recalled.
func TestMinorDigits(t *testing.T) {
	for code, digits := range map[string]int{"EUR": 2, "USD": 2, "GBP": 2, "CHF": 2, "PLN": 2, "AUD": 2, "JPY": 0, "KRW": 0, "CLP": 0, "KWD": 3, "BHD": 3, "TND": 3} {
		require.Equal(t, digits, quantity.MinorDigits(code), code)
	}
	require.Equal(t, 2, quantity.MinorDigits("nonsense"))
}

// Each currency is a dimension of its own: a rate turns one into the other.
func TestMoneyOfTwoCurrenciesDiffers(t *testing.T) {
	eur, usd := quantity.Must(1, "EUR"), quantity.Must(1, "USD")
	require.NotEqual(t, eur.Dimension(), usd.Dimension())
	require.Equal(t, "EUR", eur.Dimension().Currency())
	require.True(t, eur.Dimension().IsMoney())
	require.False(t, quantity.Must(1, "EUR/kWh").Dimension().IsMoney())
	require.Empty(t, quantity.Must(1, "EUR/USD").Dimension().Currency())
}
