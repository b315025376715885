package salinity

import "fmt"

// SGScale says what a specific gravity compares: the density of the sample at
// SampleC with that of pure water at WaterC, both in degrees Celsius (ITS-90).
type SGScale struct {
	SampleC, WaterC float64
}

// fahrenheit60C is 60 °F.
const fahrenheit60C = (60.0 - 32) / 1.8

// At is the scale whose sample and water have the same temperature, as on most
// instruments that name one reference temperature.
func At(referenceC float64) SGScale {
	return SGScale{SampleC: referenceC, WaterC: referenceC}
}

// UsualScales are the scales on which instruments for aquariums and
// laboratories are commonly made (common practice, from memory).
func UsualScales() []SGScale {
	return []SGScale{At(fahrenheit60C), At(20), At(25), {SampleC: 20, WaterC: 4}}
}

// String names the scale the way instruments are marked: 25/25 degC.
func (s SGScale) String() string {
	if s == At(fahrenheit60C) {
		return "60/60 degF"
	}
	return fmt.Sprintf("%.6g/%.6g degC", s.SampleC, s.WaterC)
}

// check refuses reference temperatures outside the equation of state.
func (s SGScale) check() error {
	if err := within("reference temperature of the sample", "degC", s.SampleC, MinC, MaxC); err != nil {
		return err
	}
	return within("reference temperature of the water", "degC", s.WaterC, MinC, MaxC)
}

// sg is the ratio of densities that the scale stands for.
func (s SGScale) sg(psu float64) float64 {
	return density90(psu, s.SampleC) / density90(0, s.WaterC)
}

// psu turns the ratio back, between the ends of the equation of state.
func (s SGScale) psu(sg float64) float64 {
	return solve(s.sg, sg, MinPSU, MaxPSU)
}

// holds refuses a specific gravity that no water in range has on the scale.
func (s SGScale) holds(sg float64) error {
	return within("specific gravity", "at "+s.String(), sg, s.sg(MinPSU), s.sg(MaxPSU))
}
