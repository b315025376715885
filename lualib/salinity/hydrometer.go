package salinity

// glassPerC is the cubic expansion of a glass hydrometer per °C.
// Source: ISO 1768:1975, conventional value.
const glassPerC = 25e-6

// HydrometerResult is what a hydrometer's reading says of the water.
type HydrometerResult struct {
	// DensityKgPerM3 is the density of the sample at its own temperature.
	DensityKgPerM3 float64
	// PSU is its salinity.
	PSU float64
	// SG is the specific gravity it would have at the scale's temperature.
	SG float64
}

// CorrectHydrometer turns the reading of a glass hydrometer in a sample that
// is warmer or colder than its scale into salinity and true specific gravity.
// A plastic swing-arm device does not follow it.
//
// Units: reading as a ratio of densities, degrees Celsius (ITS-90); kg/m3, PSU
// and a ratio.
// Valid range: samples and reference temperatures of -2 to 40 °C, readings
// that 0 to 42 PSU give.
// Accuracy: about 0.01 PSU against TEOS-10; a glass of 23e-6 per °C would change
// the salinity by 0.003 PSU per °C; reading the stem to 0.0005 is worth 0.7 PSU.
// Source: the float's balance, rho = reading rho_water/(1 + g (t - t_scale)),
// g of ISO 1768:1975, with EOS-80 solved for salinity at the sample's
// temperature.
func CorrectHydrometer(reading, sampleC float64, scale SGScale) (HydrometerResult, error) {
	if err := checkHydrometer(sampleC, scale); err != nil {
		return HydrometerResult{}, err
	}
	low, high := shown(MinPSU, sampleC, scale, glassPerC), shown(MaxPSU, sampleC, scale, glassPerC)
	if err := within("reading", "at "+scale.String(), reading, low, high); err != nil {
		return HydrometerResult{}, err
	}
	return corrected(reading, sampleC, scale, glassPerC), nil
}

// HydrometerShows gives the reading that a glass hydrometer shows in water of
// a salinity and temperature: the mark to mix to.
//
// Units: PSU, degrees Celsius (ITS-90); a ratio of densities.
// Valid range: 0 to 42 PSU, samples and reference temperatures of -2 to 40 °C.
// Accuracy and source: as CorrectHydrometer, which undoes it.
func HydrometerShows(salinityPSU, sampleC float64, scale SGScale) (float64, error) {
	if err := within("salinity", "PSU", salinityPSU, MinPSU, MaxPSU); err != nil {
		return 0, err
	}
	if err := checkHydrometer(sampleC, scale); err != nil {
		return 0, err
	}
	return shown(salinityPSU, sampleC, scale, glassPerC), nil
}

func checkHydrometer(sampleC float64, scale SGScale) error {
	if err := within("temperature", "degC", sampleC, MinC, MaxC); err != nil {
		return err
	}
	return scale.check()
}

// shown is the mark at which a float of a glass swims.
func shown(psu, sampleC float64, scale SGScale, glass float64) float64 {
	return density90(psu, sampleC) * (1 + glass*(sampleC-scale.SampleC)) / density90(0, scale.WaterC)
}

// corrected undoes shown.
func corrected(reading, sampleC float64, scale SGScale, glass float64) HydrometerResult {
	psu := solve(func(s float64) float64 { return shown(s, sampleC, scale, glass) }, reading, MinPSU, MaxPSU)
	return HydrometerResult{DensityKgPerM3: density90(psu, sampleC), PSU: psu, SG: scale.sg(psu)}
}
