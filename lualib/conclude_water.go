package lualib

import (
	"errors"
	"fmt"
	"strings"

	"weirbook/lualib/stocking"
	"weirbook/lualib/water"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// check adds a check that the library works out.
func (c *conclusion) check(from plan.Record, name string, outcome plan.Outcome, sentence, tank string) {
	k := &plan.Check{Source: *from.Origin(), Name: name, Outcome: outcome, Sentence: sentence, Tank: tank, ByLibrary: true}
	k.Note = ""
	c.checks = append(c.checks, k)
}

// worse gives the worse of two outcomes.
func worse(a, b plan.Outcome) plan.Outcome {
	rank := map[plan.Outcome]int{plan.Pass: 0, plan.Caution: 1, plan.Fail: 2}
	if rank[b] > rank[a] {
		return b
	}
	return a
}

// fishIn lists the groups of fish of a tank.
func (c *conclusion) fishIn(tank string) []*plan.Fish {
	var fish []*plan.Fish
	for _, f := range c.plan.Fish {
		if f.Tank == tank {
			fish = append(fish, f)
		}
	}
	return fish
}

// fishWater compares the water of each tank with what its fish are kept in.
func (c *conclusion) fishWater() {
	for _, t := range c.plan.Tanks {
		fish := c.fishIn(t.Name)
		if len(fish) == 0 {
			continue
		}
		outcome, words := plan.Pass, []string{}
		for _, f := range fish {
			s, err := stocking.Lookup(f.Species)
			if err != nil {
				continue
			}
			if temperature := t.Temperature.MustIn("degC"); !inside(temperature, s.TemperatureC) {
				outcome = worse(outcome, plan.Caution)
				words = append(words, fmt.Sprintf("%s is kept at %g to %g degC", s.CommonName, s.TemperatureC.Min, s.TemperatureC.Max))
			}
			o, text := salinityOf(s, t.Salinity.MustIn("ppt"))
			outcome = worse(outcome, o)
			if text != "" {
				words = append(words, text)
			}
		}
		sentence := fmt.Sprintf("%s and %s suit the ranges in which its fish are kept; hardness, pH and company are not compared here", t.Temperature.Short(), t.Salinity.Short())
		if len(words) > 0 {
			sentence = fmt.Sprintf("%s, %s: %s", t.Temperature.Short(), t.Salinity.Short(), strings.Join(words, "; "))
		}
		c.check(fish[0], "Water for the fish of "+t.Name, outcome, sentence, t.Name)
	}
}

func inside(v float64, r stocking.Range) bool { return v >= r.Min-1e-9 && v <= r.Max+1e-9 }

// salinityOf judges a salinity for a species. A bound that rests on the class of
// water alone is no tolerance: beyond it nothing is known.
func salinityOf(s stocking.Species, psu float64) (plan.Outcome, string) {
	if inside(psu, s.SalinityPSU) {
		return plan.Pass, ""
	}
	if strings.HasPrefix(s.SalinityBasis, "class") {
		return plan.Caution, fmt.Sprintf("tolerance not known; the table's %g to %g ppt for %s is by class of water only", s.SalinityPSU.Min, s.SalinityPSU.Max, s.CommonName)
	}
	return plan.Fail, fmt.Sprintf("%s bears %g to %g ppt", s.CommonName, s.SalinityPSU.Min, s.SalinityPSU.Max)
}

// The pace of a salinity change, ppt a day: common practice, no source.
const (
	usualPace = 1.0
	upperPace = 2.0
)

// waterPlans checks every salinity plan: its pace, its species, its mix.
func (c *conclusion) waterPlans() {
	for _, w := range c.plan.WaterPlans {
		if len(w.Steps) == 0 {
			continue
		}
		c.pace(w)
		c.planSpecies(w)
		c.planMix(w)
	}
}

func (c *conclusion) pace(w *plan.WaterPlan) {
	first := w.Steps[0]
	step := first.After.MustIn("ppt") - first.Before.MustIn("ppt")
	if step < 0 {
		step = -step
	}
	perDay := quantity.Must(step/w.Every.MustIn("d"), "ppt/d")
	k := &plan.Check{Source: w.Source, Name: "Pace of salinity, " + w.Name, Tank: w.Tank, ByLibrary: true, Value: plan.Some(perDay), AtMost: plan.Some(quantity.Must(upperPace, "ppt/d")), CautionAt: plan.Some(quantity.Must(usualPace*1.000001, "ppt/d"))}
	judge(k)
	k.CautionAt = plan.Some(quantity.Must(usualPace, "ppt/d"))
	k.Sentence = fmt.Sprintf("%s; filter bacteria are the slower partner: 1 ppt a day is the usual pace for all species, 2 the most (common practice); test ammonia and nitrite daily", perDay.Short())
	k.Note = ""
	c.checks = append(c.checks, k)
}

// planSpecies names the day on which a plan leaves what a species bears.
func (c *conclusion) planSpecies(w *plan.WaterPlan) {
	names := append([]string(nil), w.Species...)
	for _, f := range c.fishIn(w.Tank) {
		if w.Tank != "" {
			names = append(names, f.Species)
		}
	}
	seen := map[string]bool{}
	for _, name := range names {
		s, err := stocking.Lookup(name)
		if err != nil || seen[s.ScientificName] {
			continue
		}
		seen[s.ScientificName] = true
		outcome, sentence := speciesCourse(w, s)
		c.check(w, fmt.Sprintf("%s through the salinity plan of %s", s.CommonName, w.Name), outcome, sentence, w.Tank)
	}
}

// speciesCourse follows one species through the steps.
func speciesCourse(w *plan.WaterPlan, s stocking.Species) (plan.Outcome, string) {
	for _, step := range w.Steps {
		outcome, text := salinityOf(s, step.After.MustIn("ppt"))
		if outcome == plan.Pass {
			continue
		}
		day := fmt.Sprintf("day %g", quantity.Round(step.Day, 1))
		if step.Date.Has {
			day += " (" + step.Date.Date.String() + ")"
		}
		return outcome, fmt.Sprintf("on %s the water comes to %s: %s", day, step.After.Short(), text)
	}
	return plan.Pass, fmt.Sprintf("every step stays within %g to %g ppt (%s); watch the fish all the same", s.SalinityPSU.Min, s.SalinityPSU.Max, s.SalinityBasis)
}

func (c *conclusion) planMix(w *plan.WaterPlan) {
	if !w.Bought.Has {
		return
	}
	k := &plan.Check{Source: w.Source, Name: "Salt mix for the plan of " + w.Name, Tank: w.Tank, ByLibrary: true, Value: w.Bought, AtLeast: plan.Some(w.Salt)}
	judge(k)
	k.Note = ""
	if k.Outcome == plan.Fail {
		short, err := w.Salt.Sub(w.Bought.Q)
		if err == nil {
			k.Sentence += fmt.Sprintf("; buy %s more before the first step", short.Short())
		}
	}
	c.checks = append(c.checks, k)
}

// filters compares the feed of a tank's fish with what its media carry.
func (c *conclusion) filters() {
	for _, t := range c.plan.Tanks {
		fish := c.fishIn(t.Name)
		var first *plan.Filter
		low, high := 0.0, 0.0
		for _, f := range c.plan.Filters {
			if f.Tank == t.Name {
				low, high = low+f.FeedLow.MustIn("g/d"), high+f.FeedHigh.MustIn("g/d")
				if first == nil {
					first = f
				}
			}
		}
		if first == nil || len(fish) == 0 {
			continue
		}
		feedLow, feedHigh := 0.0, 0.0
		for _, f := range fish {
			feedLow, feedHigh = feedLow+f.FeedLow.MustIn("g/d"), feedHigh+f.FeedHigh.MustIn("g/d")
		}
		outcome := plan.Pass
		switch {
		case feedLow > high:
			outcome = plan.Fail
		case feedHigh > low:
			outcome = plan.Caution
		}
		gd := func(v float64) string { return quantity.Must(v, "g/d").Short() }
		c.check(first, "Filter for the feed of "+t.Name, outcome, fmt.Sprintf("the fish eat %s to %s of dry feed, the media carry %s to %s (ranges of the trade)", gd(feedLow), gd(feedHigh), gd(low), gd(high)), t.Name)
	}
}

// readings compares what was measured with the thresholds and the prediction.
func (c *conclusion) readings() {
	tanks := map[string]*plan.Tank{}
	for _, t := range c.plan.Tanks {
		tanks[t.Name] = t
	}
	for _, r := range c.plan.Readings {
		psu := 0.0
		temperature := defaultTempDegC
		if t := tanks[r.Tank]; t != nil {
			psu, temperature = t.Salinity.MustIn("ppt"), t.Temperature.MustIn("degC")
		}
		if r.Salinity.Has {
			psu = r.Salinity.Q.MustIn("ppt")
		}
		if r.Temperature.Has {
			temperature = r.Temperature.Q.MustIn("degC")
		}
		c.reading(r, psu, temperature)
		c.predicted(r)
	}
}

func (c *conclusion) reading(r *plan.Reading, psu, temperature float64) {
	outcome, words, any := plan.Pass, []string{}, false
	add := func(v water.Verdict, err error, what string) {
		any = true
		if err != nil {
			outcome = worse(outcome, plan.Caution)
			words = append(words, what+" cannot be judged: "+err.Error())
			return
		}
		outcome = worse(outcome, plan.Outcome(v.Outcome))
		if v.Outcome != water.Pass {
			words = append(words, verdictSentence(v, what))
		}
	}
	switch total := r.Ammonia; {
	case total.Has && total.Q.MustIn("mg/L") > 0 && r.PH == 0:
		add(water.Verdict{}, errors.New("the reading has no pH"), "un-ionised ammonia")
	case total.Has && r.PH == 0: // none in all is none un-ionised
		any = true
	case total.Has:
		a, err := water.UnionisedAmmonia(r.Ammonia.Q.MustIn("mg/L"), r.PH, temperature, psu)
		v := water.Verdict{}
		if err == nil {
			v, err = water.JudgeAmmonia(a.MgPerL, psu)
		}
		add(v, err, "un-ionised ammonia")
	}
	asIon := func(o plan.Optional, to water.NitrogenBasis) float64 {
		v, err := water.ConvertNitrogen(o.Q.MustIn("mg/L"), water.AsN, to)
		if err != nil {
			return 0
		}
		return v
	}
	if r.Nitrite.Has {
		v, err := water.JudgeNitrite(asIon(r.Nitrite, water.AsNO2), psu)
		add(v, err, "nitrite")
	}
	if r.Nitrate.Has {
		v, err := water.JudgeNitrate(asIon(r.Nitrate, water.AsNO3), psu)
		add(v, err, "nitrate")
	}
	if r.Oxygen.Has {
		v, err := water.JudgeOxygen(r.Oxygen.Q.MustIn("mg/L"))
		add(v, err, "oxygen")
	}
	if !any {
		return
	}
	sentence := "within the thresholds that were compared"
	if len(words) > 0 {
		sentence = strings.Join(words, "; ")
	}
	c.check(r, fmt.Sprintf("Water of %s on %s", r.Tank, r.Date), outcome, sentence, r.Tank)
}

// predicted compares a nitrate reading with the course that was worked out: more
// than half as much again says that feed, changes or test are not as planned.
func (c *conclusion) predicted(r *plan.Reading) {
	if !r.Nitrate.Has {
		return
	}
	for _, n := range c.plan.Nitrates {
		if n.Tank != r.Tank {
			continue
		}
		measured, before := r.Nitrate.Q.MustIn("mg/L"), n.Before.MustIn("mg/L")
		outcome := plan.Pass
		if measured > 1.5*before {
			outcome = plan.Caution
		}
		c.check(r, fmt.Sprintf("Nitrate of %s on %s against the plan", r.Tank, r.Date), outcome,
			fmt.Sprintf("measured %s, worked out at most %s in the long run (as NO3; as N %s and %s)", asNO3(measured), asNO3(before), r.Nitrate.Q.Short(), n.Before.Short()), r.Tank)
	}
}

// asNO3 shows nitrate nitrogen as the ion, as most test kits do.
func asNO3(mgN float64) string {
	v, err := water.ConvertNitrogen(mgN, water.AsN, water.AsNO3)
	if err != nil {
		return quantity.Must(mgN, "mg/L").Short() + " as N"
	}
	return quantity.Must(v, "mg/L").Short()
}
