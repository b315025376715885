package lualib

import (
	"fmt"
	"strings"

	lua "github.com/yuin/gopher-lua"

	"weirbook/lualib/salinity"
	"weirbook/notebook/quantity"
)

var referenceArg = Arg{Name: "reference", Kind: ArgQuantity, Unit: "degC", Low: 0, Top: 40, Doc: `the temperature that the scale names, of water and sample: "25 degC", "60 degF"; to be given, there is no default`}

func volumeArg(name, doc string) Arg {
	return Arg{Name: name, Kind: ArgQuantity, Unit: "L", Need: true, Top: 1e7, Above: true, Doc: doc}
}

var moistureArg = Arg{Name: "moisture", Kind: ArgQuantity, Unit: "%", Low: 0, Top: 50, Default: "0 %", Doc: "share of water in the mix as it is weighed"}

const asGramsPerKg = "practical salinity is taken as g of salt per kg of solution, 0.47 % below absolute salinity"

func salinityFunctions() []*Function {
	const sgSource = "the ratio of EOS-80 densities (Millero & Poisson 1981) at the reference"
	return []*Function{
		{
			Module: "salinity", Name: "density", Brief: "the density of fresh, brackish or sea water",
			Args:   []Arg{salinityArg("salinity", "practical salinity, read as g/kg", true), temperatureArg(true, "")},
			Result: "kg/m3", Range: "0 to 42 ppt, -2 to 40 degC, at one atmosphere", Accuracy: "0.01 kg/m3 against TEOS-10; artificial mixes differ more",
			Source:  "EOS-80: Millero & Poisson 1981; UNESCO Technical Papers in Marine Science 44 (1983), equations 13 and 14; ITS-90 turned into IPTS-68",
			Example: `salinity.density{salinity = "15 ppt", temperature = "25 degC"}`,
			run: func(c *callArgs) (any, error) {
				rho, err := salinity.DensityKgPerM3(c.in("salinity", "ppt"), c.in("temperature", "degC"))
				return quantity.Must(rho, "kg/m3"), err
			},
		},
		{
			Module: "salinity", Name: "from_sg", Brief: "the salinity of a specific gravity",
			Args:   []Arg{{Name: "sg", Kind: ArgNumber, Need: true, Place: 1, Doc: "specific gravity, a bare number such as 1.010"}, referenceArg},
			Result: "ppt", Range: "0 to 42 ppt; reference 0 to 40 degC", Accuracy: "as the density: 0.00001 in specific gravity; without a reference the answer would be off by some 2 ppt at 1.025", Source: sgSource,
			Example: `salinity.from_sg{sg = 1.010, reference = "25 degC"}`,
			run:     runFromSG,
		},
		{
			Module: "salinity", Name: "to_sg", Brief: "the specific gravity of a salinity",
			Args:   []Arg{salinityArg("salinity", "practical salinity", true), referenceArg},
			Result: "a bare number", Range: "0 to 42 ppt; reference 0 to 40 degC", Accuracy: "0.00001", Source: sgSource,
			Example: `salinity.to_sg{salinity = "15 ppt", reference = "25 degC"}`,
			run: func(c *callArgs) (any, error) {
				if !c.has("reference") {
					return nil, wrong("reference", "the argument is missing: specific gravity means little without the temperature it is referred to", `add reference = "25 degC", as your instrument names it`)
				}
				return salinity.ToSG(c.in("salinity", "ppt"), salinity.At(c.in("reference", "degC")))
			},
		},
		{
			Module: "salinity", Name: "hydrometer", Brief: "the true salinity and specific gravity of a glass hydrometer's reading",
			Args:   []Arg{{Name: "reading", Kind: ArgNumber, Need: true, Doc: "what it shows, a bare number such as 1.009"}, temperatureArg(true, ""), referenceArg},
			Fields: []Field{{"salinity", "ppt", "of the sample"}, {"sg", "", "specific gravity at the reference"}, {"density", "kg/m3", "of the sample as it is"}},
			Range:  "0 to 42 ppt, -2 to 40 degC", Accuracy: "the correction to 0.0001; a trade hydrometer itself is good to about 0.001 (common practice)", Source: "ISO 1768 (expansion of glass, 25e-6 per K) with EOS-80 densities",
			Example: `salinity.hydrometer{reading = 1.009, temperature = "18 degC", reference = "25 degC"}.salinity`,
			run:     runHydrometer,
		},
		{
			Module: "salinity", Name: "from_conductivity", Brief: "the salinity of a conductivity at a temperature",
			Args: []Arg{
				{Name: "conductivity", Kind: ArgQuantity, Unit: "mS/cm", Need: true, Top: 200, Low: 0, Doc: "as measured, not compensated for temperature"},
				{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Need: true, Low: salinity.MinConductivityC, Top: salinity.MaxConductivityC, Doc: "of the sample"},
			},
			Result: "ppt", Range: "0 to 42 ppt, -2 to 35 degC, at one atmosphere", Accuracy: "PSS-78 itself; below 2 ppt some per cent", Source: "PSS-78: UNESCO Technical Papers in Marine Science 44 (1983), equations 1 to 6; below 2 ppt Hill and others 1986 in the form of the TEOS-10 library",
			Example: `salinity.from_conductivity{conductivity = "24 mS/cm", temperature = "25 degC"}`,
			run: func(c *callArgs) (any, error) {
				psu, err := salinity.FromConductivity(c.in("conductivity", "mS/cm"), c.in("temperature", "degC"))
				return quantity.Must(psu, "ppt"), err
			},
		},
		{
			Module: "salinity", Name: "conductivity", Brief: "the conductivity of a salinity at a temperature",
			Args: []Arg{
				salinityArg("salinity", "practical salinity", true),
				{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Need: true, Low: salinity.MinConductivityC, Top: salinity.MaxConductivityC, Doc: "of the sample"},
			},
			Result: "mS/cm", Range: "0 to 42 ppt, -2 to 35 degC", Accuracy: "as from_conductivity, whose inverse it is", Source: "PSS-78, solved for the conductivity",
			Example: `salinity.conductivity{salinity = "15 ppt", temperature = "25 degC"}:to "uS/cm"`,
			run: func(c *callArgs) (any, error) {
				ms, err := salinity.ToConductivity(c.in("salinity", "ppt"), c.in("temperature", "degC"))
				return quantity.Must(ms, "mS/cm"), err
			},
		},
		{
			Module: "salinity", Name: "salt", Brief: "the salt that brings water from one salinity to another",
			Args: []Arg{
				volumeArg("water", "net volume that is in the tank now"),
				{Name: "from", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Default: "0 ppt", Doc: "salinity now"},
				salinityArg("to", "salinity wanted", true), temperatureArg(true, ""), moistureArg,
			},
			Fields: []Field{{"mass", "kg", "mix to weigh: g per kg of solution, not the shortcut of g/L"}, {"final_volume", "L", "water with the salt dissolved in it"}, {"reads_as", "", "how salinity is read, in words"}},
			Range:  "0 to 42 ppt, -2 to 40 degC; to not below from", Accuracy: "0.1 % for dry salt; " + asGramsPerKg,
			Source: "mass balance m (S2 - S1)/(1000 - S2) with EOS-80 densities", Caution: "raise salinity slowly: fish and filter bacteria bear a change of about 1 ppt a day (common practice, no source)",
			Example: `salinity.salt{water = "240 L", to = "3 ppt", temperature = "24 degC"}`,
			run:     runSalt,
		},
		{
			Module: "salinity", Name: "mix", Brief: "what several waters give when they are mixed",
			Args:   []Arg{{Name: "waters", Kind: ArgAny, Rest: true, Doc: "the waters one after another, or a list of them: each a table with volume, salinity and temperature; at least one"}},
			Fields: []Field{{"volume", "L", "of the mixture"}, {"salinity", "ppt", "of the mixture"}, {"temperature", "degC", "of the mixture"}},
			Range:  "0 to 42 ppt, -2 to 40 degC", Accuracy: "conserves salt and water; no heat of mixing", Source: "mass balance with EOS-80 densities",
			Example: `salinity.mix{{volume = "80 L", salinity = "12 ppt", temperature = "24 degC"}, {volume = "20 L", salinity = "0 ppt", temperature = "15 degC"}}`,
			run:     runMix,
		},
		{
			Module: "salinity", Name: "topup", Brief: "what evaporation does to salinity, and the fresh water that mends it",
			Args: []Arg{
				volumeArg("water", "net volume before"), salinityArg("salinity", "before", true), temperatureArg(true, ""),
				volumeArg("evaporated", "water that has gone into the air"),
			},
			Fields: []Field{{"salinity", "ppt", "after the loss"}, {"left", "L", "volume after the loss"}, {"fresh", "L", "fresh water that brings the salinity back"}},
			Range:  "0 to 42 ppt after the loss too", Accuracy: "conserves salt; only water evaporates", Source: "mass balance with EOS-80 densities", Caution: "replace what evaporates by fresh water, never by salt water",
			Example: `salinity.topup{water = "240 L", salinity = "15 ppt", temperature = "25 degC", evaporated = "9 L"}`,
			run:     runTopUp,
		},
		{
			Module: "salinity", Name: "class", Brief: "the name of a salinity in the Venice System",
			Args:   []Arg{{Name: "salinity", Kind: ArgQuantity, Unit: "ppt", Need: true, Place: 1, Low: salinity.MinPSU, Top: salinity.MaxPSU, Doc: "practical salinity"}},
			Result: "a text: limnetic (fresh), oligohaline, mesohaline …", Range: "0 to 42 ppt", Source: "Venice System 1958, recalled", Example: `salinity.class{"12 ppt"}`,
			run: func(c *callArgs) (any, error) { return salinity.Class(c.in("salinity", "ppt")) },
		},
		saltPlanFunction(),
	}
}

// runFromSG refuses a gravity without a reference, saying how far the usual ones
// lie apart, and a salinity given as a gravity.
func runFromSG(c *callArgs) (any, error) {
	sg, err := c.gravity("sg")
	if err != nil {
		return nil, err
	}
	psu, err := salinity.FromSG(sg, salinity.At(c.in("reference", "degC")))
	if err != nil {
		return nil, err
	}
	return quantity.Must(psu, "ppt"), nil
}

// gravity reads a specific gravity, which is nothing without its reference. It
// tells what else looks like one: a salinity, a density.
func (c *callArgs) gravity(name string) (float64, error) {
	sg := c.number(name, 0)
	if sg >= 0.9 && sg <= 1.2 {
		if !c.has("reference") {
			return sg, ambiguousSG(sg)
		}
		return sg, nil
	}
	hint, psu := "write it as in 1.010", sg
	if sg < 0.1 { // a quantity in ppt counts as parts of one
		psu = quantity.Round(1000*sg, 6)
	}
	switch {
	case psu > 0 && psu <= salinity.MaxPSU:
		hint = fmt.Sprintf("a salinity is written \"%g ppt\" where a salinity is wanted, without %s", psu, c.fn.FullName())
	case sg >= 900 && sg <= 1200:
		hint = fmt.Sprintf("a density in kg/m3 is no specific gravity; if the point is left out, write %.3f", sg/1000)
	}
	return sg, wrong(name, fmt.Sprintf("got %g, want a specific gravity between 0.98 and 1.04", sg), hint)
}

func ambiguousSG(sg float64) error {
	message := "the argument is missing: a specific gravity needs the temperature it is referred to"
	if readings, err := salinity.SGReadings(sg); err == nil {
		var parts []string
		for _, r := range readings {
			parts = append(parts, fmt.Sprintf("%s ppt at %s", quantity.FixedDecimals(r.PSU, 1), r.Scale))
		}
		message += fmt.Sprintf("; %g means %s", sg, strings.Join(parts, ", "))
	}
	return wrong("reference", message, `add reference = "25 degC", as your instrument names it`)
}

func runHydrometer(c *callArgs) (any, error) {
	reading, err := c.gravity("reading")
	if err != nil {
		return nil, err
	}
	h, err := salinity.CorrectHydrometer(reading, c.in("temperature", "degC"), salinity.At(c.in("reference", "degC")))
	if err != nil {
		return nil, err
	}
	return new(result).set("salinity", quantity.Must(h.PSU, "ppt")).set("sg", h.SG).set("density", quantity.Must(h.DensityKgPerM3, "kg/m3")), nil
}

func runSalt(c *callArgs) (any, error) {
	from := c.or("from", quantity.Must(0, "ppt")).MustIn("ppt")
	shown := c.q("water").Unit().Symbol()
	if moisture := c.share("moisture"); moisture > 0 {
		b, err := salinity.AddMix(c.q("water").SI(), from, c.in("to", "ppt"), c.in("temperature", "degC"), moisture)
		if err != nil {
			return nil, err
		}
		return saltResult(b.MixKg, b.M3, shown), nil
	}
	dose, err := salinity.SaltMass(c.q("water").SI(), from, c.in("to", "ppt"), c.in("temperature", "degC"))
	if err != nil {
		return nil, err
	}
	return saltResult(dose.SaltKg, dose.AfterM3, shown), nil
}

func saltResult(kg, m3 float64, unit string) *result {
	return new(result).set("mass", in(kg, "kg", massUnitFor(kg))).set("final_volume", in(m3, "m3", unit)).set("reads_as", asGramsPerKg)
}

// share gives an argument in per cent as a part of one.
func (c *callArgs) share(name string) float64 {
	if !c.has(name) {
		return 0
	}
	v, _ := c.q(name).Number()
	return v
}

// massUnitFor shows small masses in grams.
func massUnitFor(kg float64) string {
	if kg < 1 {
		return "g"
	}
	return "kg"
}

// list gives the values that a rest argument took, given one after another or
// as a list under its name.
func (c *callArgs) list(name string) []lua.LValue {
	switch v := c.values[name].(type) {
	case []lua.LValue:
		return v
	case lua.LValue:
		return c.session.items(v)
	}
	return nil
}

func runMix(c *callArgs) (any, error) {
	list := c.list("waters")
	if len(list) < 1 {
		return nil, wrong("waters", "got no water to mix, want at least one", `write salinity.mix{{volume = "80 L", salinity = "12 ppt", temperature = "24 degC"}, …}`)
	}
	args := []Arg{volumeArg("volume", ""), salinityArg("salinity", "", true), temperatureArg(true, "")}
	var waters []salinity.Water
	unit := "L"
	for i, v := range list {
		p, err := c.part("waters", args, v)
		if err != nil {
			return nil, err
		}
		if i == 0 {
			unit = p.q("volume").Unit().Symbol()
		}
		waters = append(waters, salinity.Water{M3: p.q("volume").SI(), PSU: p.in("salinity", "ppt"), C: p.in("temperature", "degC")})
	}
	m, err := salinity.Mix(waters...)
	if err != nil {
		return nil, err
	}
	return new(result).set("volume", in(m.M3, "m3", unit)).set("salinity", quantity.Must(m.PSU, "ppt")).set("temperature", quantity.Must(m.C, "degC")), nil
}

func runTopUp(c *callArgs) (any, error) {
	unit := c.q("water").Unit().Symbol()
	if c.q("evaporated").SI() >= c.q("water").SI() {
		return nil, wrong("evaporated", fmt.Sprintf("got %s, want less than the %s of water there was", c.q("evaporated").Short(), c.q("water").Short()), "")
	}
	left, err := salinity.AfterEvaporation(c.q("water").SI(), c.in("salinity", "ppt"), c.in("temperature", "degC"), c.q("evaporated").SI())
	if err != nil {
		return nil, err
	}
	fresh := c.q("evaporated").SI() // for fresh water, whose salinity needs no bringing back
	if left.PSU > 0 {
		top, err := salinity.TopUpTo(left.M3, left.PSU, c.in("salinity", "ppt"), c.in("temperature", "degC"))
		if err != nil {
			return nil, err
		}
		fresh = top.FreshM3
	}
	return new(result).set("salinity", quantity.Must(left.PSU, "ppt")).set("left", in(left.M3, "m3", unit)).set("fresh", in(fresh, "m3", unit)), nil
}
