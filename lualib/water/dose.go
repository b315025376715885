package water

import (
	"fmt"

	"weirbook/lualib/salinity"
)

// DoseG gives the mass of a powder or liquid that brings a concentration.
//
// Units: mg/L wanted, net litres, active share of the product by mass; g.
// Valid range: 0 to 100,000 mg/L, above 0 to 10,000,000 L, share above 0 to 1.
// Accuracy: exact; the net volume is the usual error.
// Source: concentration times volume over strength.
func DoseG(wantMgPerL, waterL, activeShare float64) (float64, error) {
	err := first(
		within("dose", "mg/L", wantMgPerL, 0, 100_000),
		positive("water", "L", waterL, maxL),
		positive("active share", "", activeShare, 1))
	if err != nil {
		return 0, err
	}
	return wantMgPerL * waterL / 1000 / activeShare, nil
}

// DoseML gives the volume of a stock solution that brings a concentration.
//
// Units: mg/L wanted, net litres, g of active matter per litre of stock; mL.
// Valid range: 0 to 100,000 mg/L, above 0 to 10,000,000 L, above 0 to 2,000 g/L.
// Accuracy: the water that the stock adds is left out: a stock volume of 1 % of
// the tank is an error of 1 %.
// Source: concentration times volume over strength.
func DoseML(wantMgPerL, waterL, stockGPerL float64) (float64, error) {
	err := first(
		within("dose", "mg/L", wantMgPerL, 0, 100_000),
		positive("water", "L", waterL, maxL),
		positive("stock", "g/L", stockGPerL, 2000))
	if err != nil {
		return 0, err
	}
	return wantMgPerL * waterL / stockGPerL, nil
}

// MgPerLFromPPM turns parts per million by mass into mg/L; in sea water they
// differ by 2.3 %.
//
// Units: mg/kg, practical salinity (PSU), degrees Celsius; mg/L.
// Valid range: 0 to 1,000,000 mg/kg of a trace in water of 0 to 42 PSU and -2
// to 40 °C.
// Accuracy: 0.001 %, that of the density, while the trace is too little to
// change it.
// Source: salinity.DensityKgPerM3.
func MgPerLFromPPM(ppm, salinityPSU, temperatureC float64) (float64, error) {
	perLitre, err := kgPerL(ppm, salinityPSU, temperatureC)
	return ppm * perLitre, err
}

// PPMFromMgPerL is the inverse of MgPerLFromPPM.
//
// Units: mg/L, practical salinity (PSU), degrees Celsius; mg/kg.
// Valid range, accuracy and source: as MgPerLFromPPM.
func PPMFromMgPerL(mgPerL, salinityPSU, temperatureC float64) (float64, error) {
	perLitre, err := kgPerL(mgPerL, salinityPSU, temperatureC)
	if err != nil {
		return 0, err
	}
	return mgPerL / perLitre, nil
}

func kgPerL(value, salinityPSU, temperatureC float64) (float64, error) {
	if err := within("concentration", "", value, 0, 1e6); err != nil {
		return 0, err
	}
	density, err := salinity.DensityKgPerM3(salinityPSU, temperatureC)
	if err != nil {
		return 0, fmt.Errorf("density: %w", err)
	}
	return density / 1000, nil
}
