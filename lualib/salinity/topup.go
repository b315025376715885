package salinity

import "fmt"

// Left is what evaporation leaves: the water that remains, and what was lost.
type Left struct {
	M3, PSU float64
	// LostKg is the pure water that left; the same mass of fresh water, topped
	// up, brings the salinity back.
	LostKg float64
}

// AfterEvaporation gives the salinity once pure water has left and the salt
// has stayed.
//
// Units: m3 of water before, practical salinity (PSU) read as g per kg of
// solution, degrees Celsius (ITS-90), m3 of pure water lost; m3, PSU and kg.
// Valid range: volume above 0 to 10,000 m3, 0 to 42 PSU before and after, -2
// to 40 °C, a loss of 0 to below the volume.
// Accuracy: exact for the balance; spray and leaks take salt along.
// Source: mass balance S M/(M - lost); EOS-80 densities.
func AfterEvaporation(volumeM3, salinityPSU, temperatureC, lostM3 float64) (Left, error) {
	if err := (Water{volumeM3, salinityPSU, temperatureC}).check(); err != nil {
		return Left{}, err
	}
	if err := within("loss", "m3", lostM3, 0, volumeM3); err != nil {
		return Left{}, err
	}
	kg, lost := volumeM3*density90(salinityPSU, temperatureC), lostM3*density90(0, temperatureC)
	if lost >= kg {
		return Left{}, fmt.Errorf("loss: got %.6g m3, want less than the water there is", lostM3)
	}
	psu := salinityPSU * kg / (kg - lost)
	if err := within("salinity after the loss", "PSU", psu, MinPSU, MaxPSU); err != nil {
		return Left{}, err
	}
	return Left{M3: (kg - lost) / density90(psu, temperatureC), PSU: psu, LostKg: lost}, nil
}

// TopUp is fresh water to add, and the volume it leads to.
type TopUp struct {
	FreshKg, FreshM3, AfterM3 float64
}

// TopUpTo gives the fresh water that brings water down to a salinity with
// nothing drawn: what evaporation took, or a dilution with room for it.
//
// Units: m3 of water as it is now, practical salinity (PSU) read as g per kg
// of solution, degrees Celsius (ITS-90); kg and m3.
// Valid range: volume above 0 to 10,000 m3, from 0 to 42 PSU, to above 0 to
// from, -2 to 40 °C.
// Accuracy: exact for the balance, if the top-up holds no salt.
// Source: mass balance M (from - to)/to; EOS-80 densities.
func TopUpTo(volumeM3, fromPSU, toPSU, temperatureC float64) (TopUp, error) {
	if err := (Water{volumeM3, fromPSU, temperatureC}).check(); err != nil {
		return TopUp{}, err
	}
	if !(toPSU > 0 && toPSU <= fromPSU) {
		return TopUp{}, fmt.Errorf("to: got %.6g PSU, want more than 0 and at most the %.6g PSU of now", toPSU, fromPSU)
	}
	kg := volumeM3 * density90(fromPSU, temperatureC)
	fresh := kg * (fromPSU - toPSU) / toPSU
	return TopUp{
		FreshKg: fresh, FreshM3: fresh / density90(0, temperatureC),
		AfterM3: (kg + fresh) / density90(toPSU, temperatureC),
	}, nil
}
