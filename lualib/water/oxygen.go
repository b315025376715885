package water

import (
	"fmt"
	"math"
)

// OxygenSaturationMgPerL gives the dissolved oxygen of water in balance with
// moist air.
//
// Units: practical salinity (PSU), degrees Celsius (ITS-90), air pressure as a
// barometer shows it at the place (not reduced to sea level) in kPa; mg/L.
// Valid range: 0 to 40 PSU, 0 to 40 °C, 50 to 110 kPa.
// Accuracy: 0.0015 mg/L of the printed freshwater table, 0.005 mg/L of its
// saline columns, 0.003 mg/L of the fit of Garcia & Gordon as in TEOS-10's
// library; the pressure term has only coarse printed tables (0.2 mg/L).
// Source: Benson & Krause 1980 and 1984 as in Standard Methods 4500-O, at
// 101.325 kPa (seen); pressure term of the same method (from memory), with
// the temperature of theta in degrees Celsius.
func OxygenSaturationMgPerL(salinityPSU, temperatureC, pressureKPa float64) (float64, error) {
	err := first(
		within("salinity", "PSU", salinityPSU, 0, 40),
		within("temperature", "degC", temperatureC, 0, 40),
		within("pressure", "kPa", pressureKPa, 50, 110))
	if err != nil {
		return 0, err
	}
	return oxygenAtSeaLevel(salinityPSU, temperatureC) * oxygenPressureFactor(temperatureC, pressureKPa/SeaLevelKPa), nil
}

// OxygenSaturationAtAltitudeMgPerL is OxygenSaturationMgPerL in the standard
// atmosphere.
//
// Units: as there, with m above sea level; mg/L.
// Valid range: as there, -500 to 5,000 m.
// Accuracy: the weather adds about 3 %.
// Source: as there, with StandardPressureKPa.
func OxygenSaturationAtAltitudeMgPerL(salinityPSU, temperatureC, altitudeM float64) (float64, error) {
	if err := within("altitude", "m", altitudeM, -500, 5000); err != nil {
		return 0, err
	}
	pressure, err := StandardPressureKPa(altitudeM)
	if err != nil {
		return 0, err
	}
	return OxygenSaturationMgPerL(salinityPSU, temperatureC, pressure)
}

// OxygenPercent gives a dissolved oxygen as a share of saturation.
//
// Units: mg/L, otherwise as OxygenSaturationMgPerL; percent.
// Valid range: 0 to 60 mg/L, otherwise as there.
// Accuracy: that of the reading; saturation itself is better than 0.1 %.
// Source: the definition.
func OxygenPercent(oxygenMgPerL, salinityPSU, temperatureC, pressureKPa float64) (float64, error) {
	if err := within("oxygen", "mg/L", oxygenMgPerL, 0, 60); err != nil {
		return 0, err
	}
	full, err := OxygenSaturationMgPerL(salinityPSU, temperatureC, pressureKPa)
	if err != nil {
		return 0, fmt.Errorf("saturation: %w", err)
	}
	return 100 * oxygenMgPerL / full, nil
}

// oxygenAtSeaLevel is the saturation at one atmosphere of moist air.
func oxygenAtSeaLevel(salinityPSU, temperatureC float64) float64 {
	x := 1 / (temperatureC + kelvinAt0C)
	fresh := poly(x, -139.34411, 1.575701e5, -6.642308e7, 1.243800e10, -8.621949e11)
	return math.Exp(fresh - salinityPSU*poly(x, 0.017674, -10.754, 2140.7))
}

// oxygenPressureFactor is the saturation at p atmospheres over that at one:
// less water vapour (u) and less deviation from the ideal gas (theta).
func oxygenPressureFactor(temperatureC, p float64) float64 {
	u := math.Exp(poly(1/(temperatureC+kelvinAt0C), 11.8571, -3840.70, -216961))
	theta := poly(temperatureC, 0.000975, -1.426e-5, 6.436e-8)
	return (p - u) * (1 - theta*p) / ((1 - u) * (1 - theta))
}
