package lualib_test

// waterCalls are full calls of the functions of salinity, water and filter: they
// set all that a result can show, where one call can.
var waterCalls = map[string]map[string]string{
	"salinity.from_sg":           {"sg": `1.010`, "reference": `"25 degC"`},
	"salinity.to_sg":             {"salinity": `"15 ppt"`, "reference": `"25 degC"`},
	"salinity.hydrometer":        {"reading": `1.009`, "temperature": `"18 degC"`, "reference": `"25 degC"`},
	"salinity.from_conductivity": {"conductivity": `"24 mS/cm"`, "temperature": `"25 degC"`},
	"salinity.conductivity":      {"salinity": `"15 ppt"`, "temperature": `"25 degC"`},
	"salinity.mix":               {"waters": `{{volume = "80 L", salinity = "12 ppt", temperature = "24 degC"}, {volume = "20 L", salinity = "0 ppt", temperature = "15 degC"}}`},
	"salinity.topup":             {"water": `"240 L"`, "salinity": `"15 ppt"`, "temperature": `"25 degC"`, "evaporated": `"9 L"`},
	"salinity.class":             {"salinity": `"12 ppt"`},
	"salinity.plan": {
		"tank": `north`, "water": `"200 L"`, "from": `"1 ppt"`, "to": `"4 ppt"`, "change": `"20 %"`, "every": `"3 d"`, "at_most": `"1 ppt/d"`, "step_at_most": `"1 ppt"`, "start": `"2027-03-06"`,
		"method": `"water change"`, "price": `"4 EUR/kg"`, "bought": `"5 kg"`, "species": `"Guppy; Figure-8 puffer"`, "temperature": `"26 degC"`, "reference": `"25 degC"`, "source": `"0.2 ppt"`, "moisture": `"6 %"`, "after": `"Level"`, "work": `"30 min"`,
	},
	"water.vapour_pressure": {"temperature": `"25 degC"`, "salinity": `"15 ppt"`},
	"water.density":         {"temperature": `"20 degC"`},
	"water.viscosity":       {"temperature": `"25 degC"`, "salinity": `"35 ppt"`},
	"water.heat_capacity":   {"temperature": `"25 degC"`, "salinity": `"15 ppt"`},
	"water.latent_heat":     {"temperature": `"25 degC"`},
	"water.oxygen":          {"temperature": `"25 degC"`, "salinity": `"15 ppt"`, "pressure": `"98 kPa"`},
	"water.ammonia":         {"total": `"0.5 mg/L"`, "pH": `8.1`, "temperature": `"25 degC"`, "salinity": `"12 ppt"`, "as": `"N"`},
	"water.co2":             {"pH": `6.8`, "alkalinity": `"4 dKH"`, "temperature": `"25 degC"`},
	"water.dechlorinate":    {"water": `"200 L"`, "chlorine": `"0.5 mg/L"`, "chloramine": `"1 mg/L"`, "agent": `"ascorbic acid"`},
	"water.dose":            {"water": `"240 L"`, "concentration": `"2 mg/L"`, "strength": `"50 g/L"`},
	"water.source": {
		"name": `"Tap"`, "hardness": `"14 dGH"`, "alkalinity": `"9 dKH"`, "pH": `7.6`, "chlorine": `"0.3 mg/L"`, "chloramine": `"0.2 mg/L"`, "salinity": `"0.3 ppt"`, "nitrate": `"4 mg/L"`, "osmosis": `false`,
	},
	"water.blend": {
		"sources": `{{name = "Tap", hardness = "14 dGH", alkalinity = "9 dKH"}, {name = "RO", hardness = "0 dGH", osmosis = true}}`, "hardness": `"6 dGH"`, "water": `"120 L"`, "temperature": `"15 degC"`, "osmosis_flow": `"8 L/h"`, "reject": `3`,
	},
	"water.reading": {
		"tank": `"North"`, "date": `"2027-03-06"`, "temperature": `"24 degC"`, "salinity": `"0.2 ppt"`, "pH": `7.2`, "ammonia": `"0.1 mg/L"`, "nitrite": `"0.1 mg/L"`, "nitrate": `"10 mg/L"`, "oxygen": `"7 mg/L"`,
		"hardness": `"8 dGH"`, "alkalinity": `"5 dKH"`, "as": `"ions"`,
	},
	"water.nitrate": {
		"tank": `north`, "water": `"200 L"`, "production": `"0.4 g/d"`, "change": `"25 %"`, "every": `"7 d"`, "source": `"2 mg/L"`, "initial": `"20 mg/L"`, "changes": `6`, "as": `"NO3"`,
	},
	"water.change_for": {"tank": `north`, "water": `"200 L"`, "limit": `"80 mg/L"`, "production": `"0.4 g/d"`, "every": `"7 d"`, "source": `"2 mg/L"`, "as": `"NO3"`},
	"filter.tan":       {"feed": `"12 g/d"`, "protein": `"42 %"`},
	"filter.nitrify":   {"tan": `"0.46 g/d"`},
	"filter.media":     {"tan": `"0.46 g/d"`, "media": `"moving-bed"`, "rate": `"0.4 g/(m2.d)"`, "temperature": `"24 degC"`, "surface": `"500 m2/m3"`, "level": `"0.5 mg/L"`},
	"filter.turnover":  {"tank": `north`, "water": `"240 L"`, "flow": `"900 L/h"`},
	"filter.fishless":  {"water": `"240 L"`, "target": `"2 mg/L"`, "agent": `"ammonia solution"`, "strength": `"9.5 %"`, "temperature": `"25 degC"`},
	"filter.capacity":  {"tank": `north`, "media": `"moving-bed"`, "volume": `"10 L"`, "protein": `"42 %"`, "temperature": `"25 degC"`, "surface": `"500 m2/m3"`, "level": `"0.5 mg/L"`, "flow": `"900 L/h"`},
}

// otherCalls change a full call where no one call shows all fields: rock goes by
// its mass, a powder too.
var otherCalls = map[string][][]string{
	"filter.media": {{"media", `"live-rock"`, "rate", "", "surface", ""}},
	"water.dose":   {{"strength", `"40 %"`}},
}
