package salinity

import (
	"errors"
	"fmt"
)

// Water is an amount of water: m3, practical salinity, degrees Celsius.
type Water struct {
	M3, PSU, C float64
}

// Mixed is what waters poured together give.
type Mixed struct {
	// Water is the mixture: its volume, salinity and temperature.
	Water
	// Kg is its mass, SaltKg the salt in it.
	Kg, SaltKg float64
}

// Mix pours waters together.
//
// Units: m3, practical salinity (PSU) read as g per kg of solution, degrees
// Celsius (ITS-90); m3, PSU, °C and kg.
// Valid range: each volume above 0 to 10,000 m3, 0 to 42 PSU, -2 to 40 °C.
// Accuracy: exact for salt and mass; the temperature takes every kilogram to
// hold the same heat, off by 0.3 °C at most where fresh and sea water 20 °C
// apart meet.
// Source: balances of salt, mass and heat; volumes by DensityKgPerM3.
func Mix(waters ...Water) (Mixed, error) {
	if len(waters) == 0 {
		return Mixed{}, errors.New("waters: got none, want at least one")
	}
	var kg, gramsOfSalt, heat float64
	for i, w := range waters {
		if err := w.check(); err != nil {
			return Mixed{}, fmt.Errorf("water %d: %w", i+1, err)
		}
		mass := w.M3 * density90(w.PSU, w.C)
		kg, gramsOfSalt, heat = kg+mass, gramsOfSalt+mass*w.PSU, heat+mass*w.C
	}
	// Rounding must not carry an average past the largest of equal parts.
	psu, c := min(gramsOfSalt/kg, MaxPSU), min(max(heat/kg, MinC), MaxC)
	m3 := kg / density90(psu, c)
	return Mixed{Water: Water{M3: m3, PSU: psu, C: c}, Kg: kg, SaltKg: gramsOfSalt / 1000}, nil
}

func (w Water) check() error {
	if err := positive("volume", "m3", w.M3, maxAmount); err != nil {
		return err
	}
	_, err := DensityKgPerM3(w.PSU, w.C)
	return err
}
