package lualib

import (
	"fmt"
	"strings"

	"weirbook/lualib/salinity"
	"weirbook/lualib/water"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func phArg(need bool) Arg {
	return Arg{Name: "pH", Column: "ph", Kind: ArgNumber, Need: need, Low: 4, Top: 11, Doc: "a bare number; a meter's error of 0.1 is 25 % of un-ionised ammonia and of CO2"}
}

// saltOr is an optional salinity of the water, fresh without it.
var saltOr = Arg{Name: "salinity", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Default: "0 ppt", Doc: "of the water"}

// property makes a function of temperature and salinity that gives one quantity.
func property(name, brief, unit, rangeText, accuracy, source, example string, salted bool, calc func(psu, c float64) (float64, error)) *Function {
	args := []Arg{temperatureArg(true, "")}
	if salted {
		args = append(args, saltOr)
	}
	return &Function{
		Module: "water", Name: name, Brief: brief, Args: args, Result: unit, Range: rangeText, Accuracy: accuracy, Source: source, Example: example,
		run: func(c *callArgs) (any, error) {
			v, err := calc(c.or("salinity", quantity.Must(0, "ppt")).MustIn("ppt"), c.in("temperature", "degC"))
			if err != nil {
				return nil, err
			}
			return quantity.Must(v, unit), nil
		},
	}
}

func waterProperties() []*Function {
	return []*Function{
		property("vapour_pressure", "the vapour pressure over water", "kPa", "0 to 40 degC, 0 to 40 ppt", "0.1 %", "IAPWS saturation; Raoult's law for salt, as the water reference gives it",
			`water.vapour_pressure{temperature = "25 degC"}`, true, func(psu, c float64) (float64, error) {
				pa, err := water.VapourPressurePa(psu, c)
				return pa / 1000, err
			}),
		property("density", "the density of pure water", "kg/m3", "-2 to 40 degC", "0.01 kg/m3", "EOS-80 at salinity 0", `water.density{temperature = "20 degC"}`, false,
			func(_, c float64) (float64, error) { return water.PureDensityKgPerM3(c) }),
		property("viscosity", "the dynamic viscosity of water", "Pa.s", "0 to 40 degC, 0 to 42 ppt", "1 to 2 %", "pure water by IAPWS; the part of salt rests on recalled coefficients", `water.viscosity{temperature = "25 degC", salinity = "35 ppt"}`, true,
			func(psu, c float64) (float64, error) {
				mPas, err := water.ViscosityMPaS(psu, c)
				return mPas / 1000, err
			}),
		property("heat_capacity", "the specific heat of water", "J/(kg.K)", "0 to 40 degC, 0 to 40 ppt", "5 J/(kg.K)", "UNESCO Technical Papers in Marine Science 44 (1983), equation 26", `water.heat_capacity{temperature = "25 degC"}`, true, water.HeatCapacityJPerKgK),
		property("latent_heat", "the heat that evaporates water", "kJ/kg", "0 to 40 degC", "0.1 kJ/kg", "fit to IAPWS-IF97", `water.latent_heat{temperature = "25 degC"}`, false,
			func(_, c float64) (float64, error) { return water.LatentHeatKJPerKg(c) }),
	}
}

func waterFunctions() []*Function {
	return append(waterProperties(),
		&Function{
			Module: "water", Name: "oxygen", Brief: "the oxygen that water holds in balance with air",
			Args: []Arg{
				temperatureArg(true, ""), saltOr,
				{Name: "pressure", Kind: ArgQuantity, Unit: "kPa", Low: 50, Top: 110, Default: "101.325 kPa", Doc: "of the air; or give altitude"},
				{Name: "altitude", Kind: ArgQuantity, Unit: "m", Low: -500, Top: 5000, Doc: "above the sea, for the pressure of the standard atmosphere; instead of pressure"},
			},
			Result: "mg/L", Range: "0 to 40 degC, 0 to 40 ppt", Accuracy: "0.3 %", Source: "Benson & Krause 1984, as in APHA Standard Methods and ISO 5814",
			Example: `water.oxygen{temperature = "25 degC", altitude = "600 m"}`, run: runOxygen,
		},
		&Function{
			Module: "water", Name: "ammonia", Brief: "how much of a total ammonia reading is un-ionised, and what that means",
			Args: []Arg{
				{Name: "total", Kind: ArgQuantity, Unit: "mg/L", Need: true, Low: 0, Top: 100, Doc: "total ammonia as the test gives it"},
				phArg(true), temperatureArg(true, ""), saltOr,
				{Name: "as", Kind: ArgText, Default: "N", Doc: `what the reading counts: "N" or "NH3"`},
			},
			Fields: []Field{{"fraction", "%", "un-ionised share"}, {"unionised", "mg/L", "un-ionised, as NH3"}, {"low", "mg/L", "un-ionised, if the pH is 0.1 lower"}, {"high", "mg/L", "un-ionised, if the pH is 0.1 higher"}, {"outcome", "", "pass, caution or fail"}, {"sentence", "", "what it was compared with, and where the limit comes from"}},
			Range:  "pH 4 to 10, -2 to 40 degC, 0 to 40 ppt", Accuracy: "0.01 in pKa; a pH meter's error of 0.1 is 25 %", Source: "Clegg & Whitfield 1995 on the free scale, one formula from fresh to marine",
			Caution: "thresholds are for planning; a fish in distress needs a water change, not a figure", Example: `water.ammonia{total = "0.5 mg/L", pH = 8.1, temperature = "25 degC", salinity = "12 ppt"}.unionised`, run: runAmmonia,
		},
		&Function{
			Module: "water", Name: "co2", Brief: "the carbon dioxide that pH and alkalinity imply in fresh water",
			Args: []Arg{phArg(true), {Name: "alkalinity", Kind: ArgQuantity, Unit: "dKH", Need: true, Above: true, Top: 56, Doc: "carbonate hardness"}, temperatureArg(true, "")},
			Fields: []Field{
				{"co2", "mg/L", "dissolved"}, {"low", "mg/L", "dissolved, if the pH is 0.1 higher"}, {"high", "mg/L", "dissolved, if the pH is 0.1 lower"}, {"rule", "mg/L", "by the trade's rule, 3 x dKH x 10^(7 - pH)"}, {"rule_off", "%", "how far the rule stands from co2"},
			},
			Range: "fresh water, pH 6 to 8, 0.05 to 20 meq/L; all alkalinity must be carbonate", Accuracy: "26 % for 0.1 in pH", Source: "Plummer & Busenberg 1982",
			Example: `water.co2{pH = 6.8, alkalinity = "4 dKH", temperature = "25 degC"}.co2`, run: runCO2,
		},
		&Function{
			Module: "water", Name: "dechlorinate", Brief: "the agent that takes chlorine or chloramine out of tap water",
			Args: []Arg{
				volumeArg("water", "net volume of tap water"),
				{Name: "chlorine", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 10, Default: "0 mg/L", Doc: "free chlorine as Cl2"}, {Name: "chloramine", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 10, Default: "0 mg/L", Doc: "chloramine as Cl2"},
				{Name: "agent", Kind: ArgText, Default: string(water.ThiosulfatePentahydrate), Doc: "pure agent: " + agentNames()},
			},
			Fields: []Field{{"mass", "g", "pure agent to dose, the safe end"}, {"mass_low", "g", "the least that may do, where an agent reacts in two ways"}, {"ammonia", "mg/L", "as N, that chloramine leaves in the water"}},
			Range:  "0 to 10 mg/L each", Accuracy: "stoichiometry is exact; practice takes half as much again", Source: "reaction stoichiometry", Caution: "follow the label; chloramine leaves ammonia that the filter must take",
			Example: `water.dechlorinate{water = "200 L", chlorine = "0.5 mg/L"}.mass`, run: runDechlorinate,
		},
		&Function{
			Module: "water", Name: "dose", Brief: "what to add for a concentration in the net volume",
			Args: []Arg{
				volumeArg("water", "net volume, not the tank's nominal one"), {Name: "concentration", Kind: ArgQuantity, Unit: "mg/L", Need: true, Above: true, Top: 1e5, Doc: "wanted"},
				{Name: "strength", Kind: ArgQuantity, Unit: "%", Also: "g/L", Above: true, Top: 100, Default: "100 %", Doc: "active share of a powder, or g/L of a solution"},
			},
			Fields: []Field{{"mass", "g", "of a powder"}, {"volume", "mL", "of a solution"}}, Range: "net volume only; a solution to 2000 g/L", Accuracy: "exact for the strength given", Source: "mass balance",
			Caution: "treatments follow the label and a vet; medicine, invertebrates and filter do not always get on", Example: `water.dose{water = "240 L", concentration = "2 mg/L", strength = "50 g/L"}.volume`, run: runDose,
		},
		sourceFunction(), blendFunction(), readingFunction(),
	)
}

func agentNames() string {
	return strings.Join([]string{string(water.ThiosulfatePentahydrate), string(water.ThiosulfateAnhydrous), string(water.SodiumBisulfite), string(water.SodiumSulfite), string(water.SodiumMetabisulfite), string(water.AscorbicAcid), string(water.SodiumAscorbate)}, ", ")
}

// salt gives an optional salinity, 0 without it.
func (c *callArgs) salt() float64 { return c.or("salinity", quantity.Must(0, "ppt")).MustIn("ppt") }

func runOxygen(c *callArgs) (any, error) {
	var v float64
	var err error
	switch {
	case c.has("pressure") && c.has("altitude"):
		return nil, wrong("altitude", "got a pressure and an altitude, want one of them", "leave the altitude out where a barometer at the place gives the pressure")
	case c.has("altitude"):
		v, err = water.OxygenSaturationAtAltitudeMgPerL(c.salt(), c.in("temperature", "degC"), c.in("altitude", "m"))
	default:
		v, err = water.OxygenSaturationMgPerL(c.salt(), c.in("temperature", "degC"), c.or("pressure", quantity.Must(water.SeaLevelKPa, "kPa")).MustIn("kPa"))
	}
	if err != nil {
		return nil, err
	}
	return quantity.Must(v, "mg/L"), nil
}

// nitrogenAs reads what a nitrogen reading counts.
func (c *callArgs) nitrogenAs(allowed ...water.NitrogenBasis) (water.NitrogenBasis, error) {
	given := c.text("as")
	if given == "" {
		return water.AsN, nil
	}
	var names []string
	for _, b := range allowed {
		if strings.EqualFold(string(b), given) {
			return b, nil
		}
		names = append(names, fmt.Sprintf("%q", string(b)))
	}
	return "", wrong("as", fmt.Sprintf("got %q, want %s", given, strings.Join(names, " or ")), "read it on the test's leaflet")
}

func runAmmonia(c *callArgs) (any, error) {
	basis, err := c.nitrogenAs(water.AsN, water.AsNH3)
	if err != nil {
		return nil, err
	}
	asN, err := water.ConvertNitrogen(c.in("total", "mg/L"), basis, water.AsN)
	if err != nil {
		return nil, err
	}
	a, err := water.UnionisedAmmonia(asN, c.number("pH", 0), c.in("temperature", "degC"), c.salt())
	if err != nil {
		return nil, err
	}
	v, err := water.JudgeAmmonia(a.MgPerL, c.salt())
	if err != nil {
		return nil, err
	}
	mg := func(x float64) quantity.Quantity { return quantity.Must(x, "mg/L") }
	return new(result).set("fraction", quantity.Must(100*a.Fraction, "%")).set("unionised", mg(a.MgPerL)).set("low", mg(a.LowMgPerL)).set("high", mg(a.HighMgPerL)).
		set("outcome", string(v.Outcome)).set("sentence", verdictSentence(v, "un-ionised ammonia")), nil
}

// verdictSentence tells a judgement with its limit and where that is from.
func verdictSentence(v water.Verdict, what string) string {
	meaning := v.Limit.Meaning
	if meaning != "" {
		meaning += "; "
	}
	return fmt.Sprintf("%s %s %s against %s (%s%s, %s)", what, quantity.Bare(quantity.Round(v.Value, 4)).Short(), v.Limit.Unit, quantity.Bare(v.Bound).Short(), meaning, v.Limit.Source, v.Limit.Known)
}

func runCO2(c *callArgs) (any, error) {
	d, err := water.CarbonDioxideOf(c.number("pH", 0), c.in("alkalinity", "meq/L"), c.in("temperature", "degC"), 0)
	if err != nil {
		return nil, err
	}
	mg := func(x float64) quantity.Quantity { return quantity.Must(x, "mg/L") }
	return new(result).set("co2", mg(d.MgPerL)).set("low", mg(d.LowMgPerL)).set("high", mg(d.HighMgPerL)).set("rule", mg(d.RuleMgPerL)).set("rule_off", quantity.Must(d.RuleOffPercent, "%")), nil
}

func runDechlorinate(c *callArgs) (any, error) {
	if !c.has("chlorine") && !c.has("chloramine") {
		return nil, wrong("chlorine", "the argument is missing, want chlorine or chloramine", `add chlorine = "0.5 mg/L", as the waterworks states it`)
	}
	agent := water.Agent(c.text("agent"))
	if agent == "" {
		agent = water.ThiosulfatePentahydrate
	}
	if _, err := water.Reactions(agent); err != nil {
		return nil, wrong("agent", fmt.Sprintf("got %q, want one of %s", agent, agentNames()), didYouMean(string(agent), strings.Split(agentNames(), ", ")))
	}
	none := quantity.Must(0, "mg/L")
	d, err := water.Dechlorinate(agent, c.in("water", "L"), c.or("chlorine", none).MustIn("mg/L"), c.or("chloramine", none).MustIn("mg/L"))
	if err != nil {
		return nil, err
	}
	return new(result).set("mass", quantity.Must(d.HighG, "g")).set("mass_low", quantity.Must(d.LowG, "g")).set("ammonia", quantity.Must(d.AmmoniaMgNPerL, "mg/L")), nil
}

// maxStockGPerL bounds a stock solution: nothing dissolves to more.
const maxStockGPerL = 2000

func runDose(c *callArgs) (any, error) {
	want, litres := c.in("concentration", "mg/L"), c.in("water", "L")
	strength := c.or("strength", quantity.Must(100, "%"))
	if gPerL, err := strength.In("g/L"); err == nil {
		if !(gPerL > 0 && gPerL <= maxStockGPerL) {
			return nil, wrong("strength", fmt.Sprintf("got %s, want more than 0 and at most %d g/L", strength.Short(), maxStockGPerL), "")
		}
		mL, err := water.DoseML(want, litres, gPerL)
		return new(result).set("volume", quantity.Must(mL, "mL")), err
	}
	share, _ := strength.Number()
	g, err := water.DoseG(want, litres, share)
	if err != nil {
		return nil, err
	}
	return new(result).set("mass", quantity.Must(g, "g")), nil
}

// hardnessArg takes hardness or alkalinity in any unit of equivalents.
func hardnessArg(name, unit, doc string) Arg {
	return Arg{Name: name, Kind: ArgQuantity, Unit: unit, Low: 0, Top: 200, Doc: doc + `; in dGH, dKH, meq/L or mg/L_CaCO3`}
}

func sourceFunction() *Function {
	return &Function{
		Module: "water", Name: "source", Brief: "records a water that can be had: tap, rain, reverse osmosis",
		Args: []Arg{
			{Name: "name", Kind: ArgText, Need: true, Place: 1, Doc: "its name"}, hardnessArg("hardness", "dGH", "total hardness"), hardnessArg("alkalinity", "dKH", "carbonate hardness"), phArg(false),
			{Name: "chlorine", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 10, Doc: "free chlorine"}, {Name: "chloramine", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 10, Doc: "chloramine"},
			{Name: "salinity", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Doc: "practical salinity"},
			{Name: "nitrate", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 500, Doc: "as N"}, {Name: "osmosis", Kind: ArgBool, Default: "false", Doc: "made by reverse osmosis, to be used as little as may be"},
		},
		Fields: []Field{{"name", "", "its name"}, {"hardness", "dGH", "as given"}, {"alkalinity", "dKH", "as given"}, {"pH", "", "as given"}, {"chlorine", "mg/L", "as given"}, {"chloramine", "mg/L", "as given"}, {"salinity", "ppt", "as given"}, {"nitrate", "mg/L", "as given"}, {"osmosis", "", "true or false"}},
		Makes:  []plan.Kind{plan.KindWaterSource}, Checks: "one source of a name", Source: "none", Example: `tap = water.source{name = "Tap", hardness = "14 dGH", alkalinity = "9 dKH", pH = 7.6}`,
		run: func(c *callArgs) (any, error) {
			r := &plan.WaterSource{
				Name: c.text("name"), Hardness: c.optional("hardness"), Alkalinity: c.optional("alkalinity"), PH: c.number("pH", 0),
				Chlorine: c.optional("chlorine"), Chloramine: c.optional("chloramine"), Salinity: c.optional("salinity"), Nitrate: c.optional("nitrate"),
			}
			out := new(result).set("name", r.Name).setIf("hardness", r.Hardness).setIf("alkalinity", r.Alkalinity).setIf("chlorine", r.Chlorine).
				setIf("chloramine", r.Chloramine).setIf("salinity", r.Salinity).setIf("nitrate", r.Nitrate).set("osmosis", c.truth("osmosis", false))
			if c.has("pH") {
				out.set("pH", r.PH)
			}
			return out, c.record(r)
		},
	}
}
