package quantity_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// nistRow is a line of NIST SP 811 (2008) Appendix B.8: a unit here, the SI
// unit it converts to, and the factor as it is printed there.
type nistRow struct{ from, to, printed string }

// nistFactors are recalled from NIST SP 811 (2008) Appendix B.8, not copied
// from it; seven digits are printed there, or fewer where the factor is exact.
var nistFactors = []nistRow{
	// length, area, volume
	{"in", "m", "2.54E-02"},          // exact
	{"ft", "m", "3.048E-01"},         // exact
	{"yd", "m", "9.144E-01"},         // exact
	{"mi", "m", "1.609344E+03"},      // exact
	{"in2", "m2", "6.4516E-04"},      // exact
	{"ft2", "m2", "9.290304E-02"},    // exact
	{"ha", "m2", "1.0E+04"},          // exact
	{"in3", "m3", "1.638706E-05"},    // cubic inch
	{"ft3", "m3", "2.831685E-02"},    // cubic foot
	{"L", "m3", "1.0E-03"},           // exact
	{"gal", "m3", "3.785412E-03"},    // gallon (U.S.)
	{"qt", "m3", "9.463529E-04"},     // quart (U.S. liquid)
	{"pt", "m3", "4.731765E-04"},     // pint (U.S. liquid)
	{"cup", "m3", "2.365882E-04"},    // cup (U.S.)
	{"fl_oz", "m3", "2.957353E-05"},  // fluid ounce (U.S.)
	{"gal_imp", "m3", "4.54609E-03"}, // exact; gallon [Canadian and U.K. (Imperial)]
	// mass and density
	{"lb", "kg", "4.535924E-01"},            // pound (avoirdupois)
	{"oz", "kg", "2.834952E-02"},            // ounce (avoirdupois)
	{"t", "kg", "1.0E+03"},                  // exact; tonne
	{"lb/ft3", "kg/m3", "1.601846E+01"},     // pound per cubic foot
	{"lb/gal", "kg/m3", "1.198264E+02"},     // pound per gallon (U.S.)
	{"oz/gal", "kg/m3", "7.489152E+00"},     // ounce (avoirdupois) per gallon (U.S.)
	{"lb/gal_imp", "kg/m3", "9.977637E+01"}, // pound per gallon (U.K.)
	// time, speed and flow
	{"min", "s", "6.0E+01"},             // exact
	{"h", "s", "3.6E+03"},               // exact
	{"d", "s", "8.64E+04"},              // exact
	{"yr", "s", "3.1536E+07"},           // exact; year (365 days)
	{"mi/h", "m/s", "4.4704E-01"},       // exact
	{"gal/min", "m3/s", "6.309020E-05"}, // gallon (U.S.) per minute
	{"gal/d", "m3/s", "4.381264E-08"},   // gallon (U.S.) per day
	{"ft3/min", "m3/s", "4.719474E-04"}, // cubic foot per minute
	// temperature difference
	{"degF_diff", "K", "5.555556E-01"},
	// force and pressure
	{"lbf", "N", "4.448222E+00"},      // pound-force
	{"kgf", "N", "9.80665E+00"},       // exact
	{"lbf/ft", "N/m", "1.459390E+01"}, // pound-force per foot
	{"bar", "Pa", "1.0E+05"},          // exact
	{"atm", "Pa", "1.01325E+05"},      // exact
	{"psi", "Pa", "6.894757E+03"},     // pound-force per square inch
	{"psf", "Pa", "4.788026E+01"},     // pound-force per square foot
	{"mmHg", "Pa", "1.333224E+02"},    // conventional
	{"inHg", "Pa", "3.386389E+03"},    // conventional
	{"cmH2O", "Pa", "9.80665E+01"},    // conventional
	{"ftH2O", "Pa", "2.989067E+03"},   // conventional
	{"inH2O", "Pa", "2.490889E+02"},   // conventional
	// energy, power, heat transmission
	{"BTU", "J", "1.055056E+03"},                          // British thermal unit (IT)
	{"Wh", "J", "3.6E+03"},                                // exact
	{"kWh", "J", "3.6E+06"},                               // exact
	{"hp", "W", "7.456999E+02"},                           // horsepower (550 ft.lbf/s)
	{"BTU/h", "W", "2.930711E-01"},                        // BtuIT per hour
	{"BTU/(h.ft2.degF_diff)", "W/(m2.K)", "5.678263E+00"}, // the U value
	{"BTU/ft2", "J/m2", "1.135653E+04"},                   // BtuIT per square foot
	// electricity, light, angle
	{"Ah", "A.s", "3.6E+03"},       // exact; ampere hour, coulombs
	{"fc", "lx", "1.076391E+01"},   // footcandle
	{"deg", "rad", "1.745329E-02"}, // degree
}

func TestFactorsOfNIST(t *testing.T) {
	for _, row := range nistFactors {
		got, err := quantity.Must(1, row.from).In(row.to)
		require.NoError(t, err, row.from)
		rounded, err := strconv.ParseFloat(strconv.FormatFloat(got, 'e', 6, 64), 64)
		require.NoError(t, err)
		printed, err := strconv.ParseFloat(row.printed, 64)
		require.NoError(t, err)
		require.Equal(t, printed, rounded, "%s to %s", row.from, row.to)
	}
}

// NIST SP 811 (2008) Appendix B.8: t/°C = (t/°F - 32)/1.8; the fixed points and
// the crossing at -40 follow from it.
func TestTemperaturePointsOfNIST(t *testing.T) {
	for _, row := range []struct{ celsius, fahrenheit float64 }{{0, 32}, {100, 212}, {-40, -40}, {25, 77}, {37, 98.6}, {-273.15, -459.67}} {
		f, err := quantity.Must(row.celsius, "degC").In("degF")
		require.NoError(t, err)
		require.InDelta(t, row.fahrenheit, f, 1e-12*500)
		c, err := quantity.Must(row.fahrenheit, "degF").In("degC")
		require.NoError(t, err)
		require.InDelta(t, row.celsius, c, 1e-12*500)
		require.InDelta(t, row.celsius+273.15, quantity.Must(row.celsius, "degC").SI(), 1e-12*500)
	}
}

// Factors that no rounding may touch: one unit is a whole number of another.
func TestWholeFactorsAreExact(t *testing.T) {
	for _, row := range []struct {
		from, to string
		factor   float64
	}{
		{"ft", "in", 12}, {"yd", "ft", 3}, {"mi", "ft", 5280}, {"in", "mm", 25.4}, {"m", "mm", 1000}, {"km", "mm", 1e6}, {"m3", "L", 1000}, {"m2", "cm2", 10000},
		{"ft2", "in2", 144}, {"ft3", "in3", 1728}, {"gal", "in3", 231}, {"gal", "qt", 4}, {"qt", "pt", 2}, {"pt", "cup", 2}, {"gal", "fl_oz", 128}, {"gal", "L", 3.785411784},
		{"lb", "oz", 16}, {"kg", "g", 1000}, {"t", "kg", 1000}, {"yr", "d", 365}, {"yr", "mo", 12}, {"wk", "d", 7}, {"d", "h", 24}, {"h", "min", 60},
		{"kWh", "Wh", 1000}, {"kWh", "MJ", 3.6}, {"bar", "kPa", 100}, {"ftH2O", "inH2O", 12}, {"psi", "psf", 144}, {"g/kg", "ppt", 1}, {"mg/L", "g/m3", 1},
	} {
		got, err := quantity.Must(1, row.from).In(row.to)
		require.NoError(t, err, row.from)
		require.Equal(t, row.factor, got, "%s to %s", row.from, row.to)
	}
}
