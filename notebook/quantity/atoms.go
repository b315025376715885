package quantity

// atom is a unit with a symbol of its own. The number in SI base units is
// value*num/den, plus offset for a temperature point.
type atom struct {
	symbol   string
	dim      Dimension
	num, den float64
	offset   float64 // kelvin at zero of the scale; only for points
	point    bool    // a temperature point, not a difference
	prefixes string  // the SI prefixes it takes, one letter each
}

func base(which int) Dimension {
	var d Dimension
	d.exponent[which] = 1
	return d
}

var (
	none        = Dimension{}
	dimLength   = base(length)
	dimArea     = dimLength.timesKnown(dimLength, 1)
	dimVolume   = dimArea.timesKnown(dimLength, 1)
	dimMass     = base(mass)
	dimTime     = base(time)
	dimTemp     = base(temperature)
	dimCurrent  = base(current)
	dimLuminous = base(luminous)
	dimAmount   = base(amount)
	dimForce    = dimMass.timesKnown(dimLength, 1).timesKnown(dimTime, -2)
	dimPressure = dimForce.timesKnown(dimArea, -1)
	dimEnergy   = dimForce.timesKnown(dimLength, 1)
	dimPower    = dimEnergy.timesKnown(dimTime, -1)
	dimVoltage  = dimPower.timesKnown(dimCurrent, -1)
	dimOhm      = dimVoltage.timesKnown(dimCurrent, -1)
	dimSiemens  = none.timesKnown(dimOhm, -1)
	dimLux      = dimLuminous.timesKnown(dimArea, -1)
	dimFlow     = dimVolume.timesKnown(dimTime, -1)
	dimSpeed    = dimLength.timesKnown(dimTime, -1)
	dimDensity  = dimMass.timesKnown(dimVolume, -1)
	dimHertz    = none.timesKnown(dimTime, -1)
	dimCharge   = dimCurrent.timesKnown(dimTime, 1)
	dimAmountPV = dimAmount.timesKnown(dimVolume, -1)
	dimEq       = base(equivalents)
	dimEqPV     = dimEq.timesKnown(dimVolume, -1)
)

// dimensionNames are the words for the dimensions that a builder meets.
var dimensionNames = map[Dimension]string{
	none: "a bare number", dimLength: "a length", dimArea: "an area", dimVolume: "a volume", dimMass: "a mass", dimTime: "a time",
	dimTemp: "a temperature", dimCurrent: "a current", dimLuminous: "a luminous flux", dimAmount: "an amount of substance",
	dimForce: "a force", dimPressure: "a pressure", dimEnergy: "an energy", dimPower: "a power", dimVoltage: "a voltage",
	dimOhm: "a resistance", dimLux: "an illuminance", dimFlow: "a flow", dimSpeed: "a speed", dimDensity: "a density or concentration",
	dimAmountPV: "an amount per volume", dimEq: "an amount of equivalents", dimEqPV: "a hardness or alkalinity", dimHertz: "a rate per time", dimCharge: "an electric charge",
	dimMass.timesKnown(dimTime, -1): "a mass per time", dimSiemens.timesKnown(dimLength, -1): "a conductivity",
	dimPower.timesKnown(dimTemp, -1).timesKnown(dimArea, -1): "a heat transmission (U value)",
	none.timesKnown(dimLength, -1):                           "a surface per volume", dimMass.timesKnown(dimArea, -1).timesKnown(dimTime, -1): "a mass per area and time",
	dimForce.timesKnown(dimLength, -1): "a line load",
}

// asCalciumCarbonate is hardness as laboratories give it: molar mass 100.0869
// g/mol, two equivalents. Its symbol holds a stroke and is read as a whole.
const asCalciumCarbonate = "mg/L_CaCO3"

// atoms is the table of units. Factors: SI and NIST SP 811 (2008) Appendix B,
// exact where that is exact. Those of NIST that rest on the international
// table are so named; water columns are the conventional ones (1000 kg/m3 and
// standard gravity). Hardness degrees: 10 mg/L CaO, molar mass 56.0774 g/mol,
// two charges each: they are read in meq/L.
var atoms = []atom{
	// length
	{symbol: "m", dim: dimLength, num: 1, den: 1, prefixes: "kdcmun"},
	{symbol: "in", dim: dimLength, num: 254, den: 10000},
	{symbol: "ft", dim: dimLength, num: 3048, den: 10000},
	{symbol: "yd", dim: dimLength, num: 9144, den: 10000},
	{symbol: "mi", dim: dimLength, num: 1609344, den: 1000},
	// area beside the squares of lengths
	{symbol: "ha", dim: dimArea, num: 10000, den: 1},
	// volume beside the cubes of lengths
	{symbol: "L", dim: dimVolume, num: 1, den: 1000, prefixes: "hdcmu"},
	{symbol: "gal", dim: dimVolume, num: 3785411784, den: 1e12},
	{symbol: "qt", dim: dimVolume, num: 946352946, den: 1e12},
	{symbol: "pt", dim: dimVolume, num: 473176473, den: 1e12},
	{symbol: "cup", dim: dimVolume, num: 2365882365, den: 1e13},
	{symbol: "fl_oz", dim: dimVolume, num: 295735295625, den: 1e16},
	{symbol: "gal_imp", dim: dimVolume, num: 454609, den: 1e8},
	// mass
	{symbol: "g", dim: dimMass, num: 1, den: 1000, prefixes: "kmu"},
	{symbol: "t", dim: dimMass, num: 1000, den: 1},
	{symbol: "lb", dim: dimMass, num: 45359237, den: 1e8},
	{symbol: "oz", dim: dimMass, num: 28349523125, den: 1e12},
	// time; a year is 365 d and a month a twelfth of it, for money and energy
	{symbol: "s", dim: dimTime, num: 1, den: 1, prefixes: "mu"},
	{symbol: "min", dim: dimTime, num: 60, den: 1},
	{symbol: "h", dim: dimTime, num: 3600, den: 1},
	{symbol: "d", dim: dimTime, num: 86400, den: 1},
	{symbol: "wk", dim: dimTime, num: 604800, den: 1},
	{symbol: "mo", dim: dimTime, num: 2628000, den: 1},
	{symbol: "yr", dim: dimTime, num: 31536000, den: 1},
	// temperature: points and differences
	{symbol: "K", dim: dimTemp, num: 1, den: 1},
	{symbol: "degF_diff", dim: dimTemp, num: 5, den: 9},
	{symbol: "degC", dim: dimTemp, num: 1, den: 1, offset: 273.15, point: true},
	{symbol: "degF", dim: dimTemp, num: 5, den: 9, offset: 459.67 * 5 / 9, point: true},
	// mechanics
	{symbol: "N", dim: dimForce, num: 1, den: 1, prefixes: "km"},
	{symbol: "lbf", dim: dimForce, num: 44482216152605, den: 1e13},
	{symbol: "kgf", dim: dimForce, num: 980665, den: 1e5},
	{symbol: "Pa", dim: dimPressure, num: 1, den: 1, prefixes: "MGkhm"},
	{symbol: "bar", dim: dimPressure, num: 100000, den: 1, prefixes: "m"},
	{symbol: "atm", dim: dimPressure, num: 101325, den: 1},
	{symbol: "mmHg", dim: dimPressure, num: 133.322387415, den: 1},
	{symbol: "inHg", dim: dimPressure, num: 3386.388640341, den: 1},
	{symbol: "psi", dim: dimPressure, num: 44482216152605, den: 6451600000},
	{symbol: "psf", dim: dimPressure, num: 44482216152605, den: 929030400000},
	{symbol: "mH2O", dim: dimPressure, num: 980665, den: 100},
	{symbol: "cmH2O", dim: dimPressure, num: 980665, den: 10000},
	{symbol: "ftH2O", dim: dimPressure, num: 298906692, den: 1e5},
	{symbol: "inH2O", dim: dimPressure, num: 24908891, den: 1e5},
	// energy and power
	{symbol: "J", dim: dimEnergy, num: 1, den: 1, prefixes: "MGk"},
	{symbol: "Wh", dim: dimEnergy, num: 3600, den: 1, prefixes: "Mk"},
	{symbol: "BTU", dim: dimEnergy, num: 105505585262, den: 1e8},
	{symbol: "W", dim: dimPower, num: 1, den: 1, prefixes: "Mkm"},
	{symbol: "hp", dim: dimPower, num: 7456998715822702, den: 1e13},
	// electricity
	{symbol: "A", dim: dimCurrent, num: 1, den: 1, prefixes: "mu"},
	{symbol: "Ah", dim: dimCharge, num: 3600, den: 1, prefixes: "m"},
	{symbol: "V", dim: dimVoltage, num: 1, den: 1, prefixes: "km"},
	{symbol: "VA", dim: dimPower, num: 1, den: 1, prefixes: "k"},
	{symbol: "ohm", dim: dimOhm, num: 1, den: 1, prefixes: "Mkm"},
	{symbol: "S", dim: dimSiemens, num: 1, den: 1, prefixes: "mu"},
	{symbol: "Hz", dim: dimHertz, num: 1, den: 1, prefixes: "k"},
	// light
	{symbol: "lm", dim: dimLuminous, num: 1, den: 1, prefixes: "k"},
	{symbol: "cd", dim: dimLuminous, num: 1, den: 1},
	{symbol: "lx", dim: dimLux, num: 1, den: 1, prefixes: "k"},
	{symbol: "fc", dim: dimLux, num: 1e8, den: 9290304},
	// amount of substance, charge and hardness
	{symbol: "mol", dim: dimAmount, num: 1, den: 1, prefixes: "kmun"},
	{symbol: "eq", dim: dimEq, num: 1, den: 1, prefixes: "mu"},
	{symbol: "dGH", dim: dimEqPV, num: 200000, den: 560774},
	{symbol: "dKH", dim: dimEqPV, num: 200000, den: 560774},
	{symbol: asCalciumCarbonate, dim: dimEqPV, num: 20000, den: 1000869},
	// ratios and angle
	{symbol: "%", dim: none, num: 1, den: 100},
	{symbol: "ppt", dim: none, num: 1, den: 1000},
	{symbol: "rad", dim: none, num: 1, den: 1},
	{symbol: "deg", dim: none, num: 3.141592653589793, den: 180},
}

// prefixFactors are the SI prefixes used here, as numerator and denominator.
var prefixFactors = map[rune][2]float64{
	'G': {1e9, 1}, 'M': {1e6, 1}, 'k': {1e3, 1}, 'h': {100, 1}, 'd': {1, 10}, 'c': {1, 100}, 'm': {1, 1e3}, 'u': {1, 1e6}, 'n': {1, 1e9},
}

// aliases are other ways to write a unit that leave no doubt.
var aliases = map[string]string{
	"inch": "in", "inches": "in", "foot": "ft", "feet": "ft", "yard": "yd", "yards": "yd", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
	"l": "L", "ml": "mL", "dl": "dL", "cl": "cL", "litre": "L", "litres": "L", "liter": "L", "liters": "L", "cbm": "m3", "cc": "mL",
	"gallon": "gal", "gallons": "gal", "gals": "gal", "quart": "qt", "quarts": "qt", "pint": "pt", "pints": "pt",
	"floz": "fl_oz", "galimp": "gal_imp", "igal": "gal_imp",
	"sqft": "ft2", "sqin": "in2", "sqm": "m2", "cuft": "ft3", "cuin": "in3",
	"gram": "g", "grams": "g", "kilo": "kg", "kilos": "kg", "pound": "lb", "pounds": "lb", "lbs": "lb", "ounce": "oz", "ounces": "oz", "tonne": "t", "tonnes": "t",
	"sec": "s", "second": "s", "seconds": "s", "mins": "min", "minute": "min", "minutes": "min", "hr": "h", "hrs": "h", "hour": "h", "hours": "h",
	"day": "d", "days": "d", "week": "wk", "weeks": "wk", "wks": "wk", "month": "mo", "months": "mo", "year": "yr", "years": "yr", "yrs": "yr", "a": "yr",
	"watt": "W", "watts": "W", "Btu": "BTU", "volt": "V", "volts": "V", "amp": "A", "amps": "A", "Ω": "ohm", "ohms": "ohm",
	"gph": "gal/h", "gpm": "gal/min", "gpd": "gal/d", "lph": "L/h", "LPH": "L/h", "GPH": "gal/h", "GPM": "gal/min", "lpm": "L/min", "cfm": "ft3/min",
	"psu": "ppt", "PSU": "ppt", "‰": "ppt", "percent": "%", "€": "EUR", "£": "GBP",
	"℃": "degC", "°C": "degC", "℉": "degF", "°F": "degF", "°": "deg", "mwc": "mH2O", "°dH": "dGH", "°dGH": "dGH", "°dKH": "dKH", "lumen": "lm", "lumens": "lm", "lux": "lx",
}

// answers are units that keepers type and that are refused because they can
// mean two things; the text is the advice.
var answers = map[string]string{
	"F": "write degF for a temperature", "C": "write degC for a temperature", "T": "write t for tonnes, degC for a temperature",
	"$": "write USD (or AUD, CAD, …): the dollar sign does not say whose", "¥": "write JPY or CNY",
	"ppm": "write mg/L for something dissolved in water, mg/kg for something in salt or feed",
	"ppb": "write ug/L for something dissolved in water", "dH": "write dGH for hardness, dKH for carbonate hardness",
	"M": "write mol/L, or m for metres", "SG": "give a specific gravity as a bare number with its reference temperature", "sg": "give a specific gravity as a bare number with its reference temperature",
	"kw": "write kW", "kwh": "write kWh", "KWH": "write kWh", "w": "write W", "v": "write V", "hz": "write Hz", "mah": "write mAh", "pa": "write Pa", "j": "write J",
	"Kg": "write kg", "KG": "write kg", "CM": "write cm", "MM": "write mm", "Gal": "write gal", "GAL": "write gal",
	"PAR": "write umol/(m2.s)", "par": "write umol/(m2.s)", "btu": "write BTU", "amu": "write g",
}
