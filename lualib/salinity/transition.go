package salinity

import (
	"errors"
	"fmt"
	"math"
)

// Transition is a wish to bring a tank from one salinity to another in steps.
type Transition struct {
	// WaterM3 is the net water of the tank and its sump, m3, kept constant
	// where water is changed.
	WaterM3 float64
	// FromPSU and ToPSU are the salinities now and in the end.
	FromPSU, ToPSU float64
	// TemperatureC is that of the tank and of the new water, °C.
	TemperatureC float64

	// Dissolve puts the mix into the tank's own water and draws none.
	// Otherwise each step changes the share Change of the volume.
	Dissolve bool
	Change   float64
	// EveryDays is the time from one step to the next.
	EveryDays float64

	// AtMostPerDayPSU and StepAtMostPSU bound the steps; 0 is no limit, and at
	// least one has to be given.
	AtMostPerDayPSU, StepAtMostPSU float64

	// SourcePSU is the salinity of the water that new water is made of.
	SourcePSU float64
	// MixMaxPSU is the saltiest new water to make; 0 is 42 PSU.
	MixMaxPSU float64
	// WaterFraction is the water in the salt mix, as a fraction of its mass.
	WaterFraction float64
	// Scale is that on which the steps' specific gravity is given; its zero
	// value is 0/0 °C.
	Scale SGScale
}

// maxSteps bounds a plan.
const maxSteps = 1000

func (t Transition) rising() bool { return t.ToPSU > t.FromPSU }

// mixMax is the saltiest new water.
func (t Transition) mixMax() float64 {
	if t.MixMaxPSU == 0 {
		return MaxPSU
	}
	return t.MixMaxPSU
}

// check refuses what no plan can be made of.
func (t Transition) check() error {
	if err := checkMix(t.WaterM3, t.WaterFraction); err != nil {
		return err
	}
	if err := salinities([]string{"from", "to", "source", "new water at most"}, t.FromPSU, t.ToPSU, t.SourcePSU, t.MixMaxPSU); err != nil {
		return err
	}
	if err := within("temperature", "degC", t.TemperatureC, MinC, MaxC); err != nil {
		return err
	}
	if err := positive("every", "d", t.EveryDays, 365); err != nil {
		return err
	}
	if err := t.Scale.check(); err != nil {
		return err
	}
	if err := t.checkLimits(); err != nil {
		return err
	}
	if t.Dissolve {
		return t.checkDissolving()
	}
	return t.checkChanging()
}

func (t Transition) checkLimits() error {
	if t.AtMostPerDayPSU == 0 && t.StepAtMostPSU == 0 {
		return errors.New("limits: got none, want a most per day, a most per step, or both")
	}
	if err := within("at most per day", "PSU", t.AtMostPerDayPSU, 0, MaxPSU); err != nil {
		return err
	}
	return within("step at most", "PSU", t.StepAtMostPSU, 0, MaxPSU)
}

func (t Transition) checkDissolving() error {
	if t.Change != 0 {
		return fmt.Errorf("change: got %.6g of the water, want none drawn where the mix is dissolved in the tank's own water", t.Change)
	}
	if t.ToPSU < t.FromPSU {
		return fmt.Errorf("to: got %.6g PSU, want at least the %.6g PSU of now; salt cannot lower salinity: change water instead", t.ToPSU, t.FromPSU)
	}
	return nil
}

func (t Transition) checkChanging() error {
	if err := share("change", t.Change); err != nil {
		return err
	}
	if t.rising() && t.ToPSU > t.mixMax() {
		return fmt.Errorf("to: got %.6g PSU, want at most the %.6g PSU that new water may have", t.ToPSU, t.mixMax())
	}
	if t.ToPSU < t.FromPSU && t.SourcePSU > t.ToPSU {
		return fmt.Errorf("source: got %.6g PSU, want at most the %.6g PSU that the tank is to reach; take fresher source water", t.SourcePSU, t.ToPSU)
	}
	return nil
}

// steps is the least number of equal steps within the limits.
func (t Transition) steps() (int, error) {
	most := math.Inf(1)
	if t.StepAtMostPSU > 0 {
		most = t.StepAtMostPSU
	}
	if t.AtMostPerDayPSU > 0 {
		most = min(most, t.AtMostPerDayPSU*t.EveryDays)
	}
	// Three tenths in steps of a tenth are three steps, whatever rounding says.
	needed := math.Ceil(math.Abs(t.ToPSU-t.FromPSU) / most * (1 - 1e-12))
	if needed > maxSteps {
		return 0, fmt.Errorf("steps: got %.0f of at most %.6g PSU, want at most %d; raise the limits or step less often", needed, most, maxSteps)
	}
	return int(needed), nil
}
