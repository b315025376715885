package quantity_test

import (
	"sort"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// gnuNames writes each unit of ours, and the SI unit it is compared in, as GNU
// units (2.22) does, spelt out where its short names mean something else. Its
// water columns are conventional like ours.
var gnuNames = map[string][2]string{
	"m": {"meter", "m"}, "in": {"inch", "m"}, "ft": {"foot", "m"}, "yd": {"yard", "m"}, "mi": {"mile", "m"}, "ha": {"hectare", "m^2"},
	"L": {"liter", "m^3"}, "gal": {"usgallon", "m^3"}, "qt": {"usquart", "m^3"}, "pt": {"uspint", "m^3"}, "cup": {"uscup", "m^3"}, "fl_oz": {"usfloz", "m^3"}, "gal_imp": {"brgallon", "m^3"},
	"g": {"gram", "kg"}, "t": {"tonne", "kg"}, "lb": {"pound", "kg"}, "oz": {"ounce", "kg"},
	"s": {"second", "s"}, "min": {"minute", "s"}, "h": {"hour", "s"}, "d": {"day", "s"}, "wk": {"week", "s"},
	"K": {"kelvin", "K"}, "degF_diff": {"degF", "K"}, "degC": {"tempC(1)", "K"}, "degF": {"tempF(1)", "K"},
	"N": {"newton", "kg m/s^2"}, "lbf": {"lbf", "N"}, "kgf": {"kgf", "N"},
	"Pa": {"pascal", "N/m^2"}, "bar": {"bar", "Pa"}, "atm": {"atm", "Pa"}, "mmHg": {"mmHg", "Pa"}, "inHg": {"inHg", "Pa"}, "psi": {"psi", "Pa"}, "psf": {"lbf/ft^2", "Pa"},
	"mH2O": {"meter water", "Pa"}, "cmH2O": {"centimeter water", "Pa"}, "ftH2O": {"foot water", "Pa"}, "inH2O": {"inH2O", "Pa"},
	"J": {"joule", "N m"}, "Wh": {"watt hour", "J"}, "BTU": {"btu", "J"}, "W": {"watt", "J/s"}, "hp": {"horsepower", "W"},
	"A": {"ampere", "A"}, "Ah": {"ampere hour", "A s"}, "V": {"volt", "W/A"}, "VA": {"volt ampere", "W"}, "ohm": {"ohm", "V/A"}, "S": {"siemens", "A/V"}, "Hz": {"hertz", "1/s"},
	"lm": {"lumen", "cd sr"}, "cd": {"candela sr", "lumen"}, "lx": {"lux", "lumen/m^2"}, "fc": {"footcandle", "lux"},
	"mol": {"mole", "mol"}, "%": {"percent", "1"}, "rad": {"radian", "radian"}, "deg": {"degree", "radian"},
}

// notInGNU are the units that GNU units lacks or means otherwise, each with the
// factor to SI and its source.
var notInGNU = map[string]struct {
	factor float64
	source string
}{
	"mo":         {31536000.0 / 12, "a twelfth of 365 d, set here for money and energy; there a tropical year"},
	"yr":         {31536000, "NIST SP 811 (2008) B.8, year (365 days); there a tropical year"},
	"ppt":        {1e-3, "g/kg, Practical Salinity Scale 1978 usage; there parts per trillion"},
	"eq":         {1, "IUPAC Gold Book, equivalent entity: an amount of charges; recalled"},
	"mg/L_CaCO3": {2 / 100.0869, "CaCO3 100.0869 g/mol (CRC Handbook), two charges; recalled"},
	"dGH":        {2 * 10 / 56.0774, "10 mg/L CaO, two charges each, 56.0774 g/mol (CRC Handbook); recalled"},
	"dKH":        {2 * 10 / 56.0774, "10 mg/L CaO, two charges each, 56.0774 g/mol (CRC Handbook); recalled"},
}

// gnuPrefixes are the SI prefixes in full.
var gnuPrefixes = map[string]string{"G": "giga", "M": "mega", "k": "kilo", "h": "hecto", "d": "deci", "c": "centi", "m": "milli", "u": "micro", "n": "nano"}

// gnuPairs lists every symbol with a counterpart and how to ask for it.
func gnuPairs() (symbols []string, pairs [][2]string) {
	asked := map[string][2]string{}
	for symbol, name := range gnuNames {
		asked[symbol] = name
	}
	for symbol, parts := range quantity.PrefixedSymbols() {
		if name, ok := gnuNames[parts[1]]; ok {
			asked[symbol] = [2]string{gnuPrefixes[parts[0]] + " " + name[0], name[1]}
		}
	}
	for symbol := range asked {
		symbols = append(symbols, symbol)
	}
	sort.Strings(symbols)
	for _, symbol := range symbols {
		pairs = append(pairs, asked[symbol])
	}
	return symbols, pairs
}

func TestFactorsOfGNUUnits(t *testing.T) {
	symbols, pairs := gnuPairs()
	for i, want := range gnuUnits(t, pairs) {
		require.InEpsilon(t, want, quantity.Must(1, symbols[i]).SI(), 1e-12, symbols[i])
	}
}

func TestCompoundUnitsOfGNUUnits(t *testing.T) {
	rows := [][4]string{
		{"gal/h", "L/h", "usgallon/hour", "liter/hour"}, {"gal/min", "L/h", "usgallon/minute", "liter/hour"}, {"ft3/min", "m3/h", "ft^3/min", "m^3/hour"},
		{"BTU/(h.ft2.degF_diff)", "W/(m2.K)", "btu/(hour ft^2 degF)", "W/(m^2 K)"}, {"BTU/h", "W", "btu/hour", "W"}, {"kWh", "BTU", "kilowatt hour", "btu"},
		{"lb/ft3", "kg/m3", "pound/ft^3", "kg/m^3"}, {"lb/gal", "g/L", "pound/usgallon", "gram/liter"}, {"in3", "mL", "inch^3", "milliliter"},
		{"in4", "mm4", "inch^4", "mm^4"}, {"uS/cm", "mS/m", "microsiemens/cm", "millisiemens/m"}, {"umol/(m2.s)", "mol/(m2.d)", "micromole/(m^2 s)", "mole/(m^2 day)"},
		{"N/mm2", "psi", "newton/mm^2", "psi"}, {"mH2O", "psi", "meter water", "psi"}, {"ftH2O", "psi", "foot water", "psi"}, {"bar", "psi", "bar", "psi"},
	}
	var pairs [][2]string
	for _, row := range rows {
		pairs = append(pairs, [2]string{row[2], row[3]})
	}
	for i, want := range gnuUnits(t, pairs) {
		got, err := quantity.Must(1, rows[i][0]).In(rows[i][1])
		require.NoError(t, err)
		require.InEpsilon(t, want, got, 1e-12, "%s to %s", rows[i][0], rows[i][1])
	}
}

func TestTemperaturePointsOfGNUUnits(t *testing.T) {
	values := []float64{-40, 0, 18.5, 25, 77, 212}
	var pairs [][2]string
	for _, v := range values {
		text := quantity.Bare(v).String()
		pairs = append(pairs, [2]string{"tempC(" + text + ")", "tempF"}, [2]string{"tempF(" + text + ")", "tempC"})
	}
	answers := gnuUnits(t, pairs)
	for i, v := range values {
		f, err := quantity.Must(v, "degC").In("degF")
		require.NoError(t, err)
		require.InDelta(t, answers[2*i], f, 1e-12*459)
		c, err := quantity.Must(v, "degF").In("degC")
		require.NoError(t, err)
		require.InDelta(t, answers[2*i+1], c, 1e-12*459)
	}
}

func TestUnitsOutsideGNUUnits(t *testing.T) {
	for symbol, row := range notInGNU {
		require.NotEmpty(t, row.source)
		require.InEpsilon(t, row.factor, quantity.Must(1, symbol).SI(), 1e-12, symbol)
	}
}

// Published anchors, recalled: 2.804 dKH to the meq/L, 0.357 meq/L to a degree.
// A degree of hardness counts charges, so it is compared in meq/L.
func TestHardnessDegrees(t *testing.T) {
	for _, symbol := range []string{"dGH", "dKH"} {
		meq, err := quantity.Must(1, symbol).In("meq/L")
		require.NoError(t, err)
		require.InDelta(t, 0.35665, meq, 0.00007)
		degrees, err := quantity.Must(1, "meq/L").In(symbol)
		require.NoError(t, err)
		require.InDelta(t, 2.80387, degrees, 0.00056)
	}
}

// No unit stands in the table without an outside source that is checked here.
func TestEveryUnitHasASource(t *testing.T) {
	covered := map[string]bool{}
	for _, row := range nistFactors {
		covered[row.from] = true
	}
	for symbol := range gnuNames {
		covered[symbol] = true
	}
	for symbol := range notInGNU {
		require.False(t, covered[symbol] && symbol != "yr", "%s is listed twice", symbol)
		covered[symbol] = true
	}
	for _, symbol := range quantity.AtomSymbols() {
		require.True(t, covered[symbol], "%s has no outside source", symbol)
		delete(covered, symbol)
	}
	for _, parts := range quantity.PrefixedSymbols() {
		require.Contains(t, gnuPrefixes, parts[0])
	}
}
