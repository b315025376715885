package xlsx

import (
	"fmt"

	"weirbook/notebook/plan"
)

// fish adds the fish below the tanks, in the same columns.
func (b *book) fish(s *sheet, u tankUnits) {
	if len(b.plan.Fish) == 0 {
		return
	}
	s.skip(1)
	s.sectionHead("Fish")
	s.across(prose, "Oxygen and feed are those of the whole group, from the mass of its fish; they are estimates to size air and filter, not rations. Peak is after a meal.")
	s.heads(1, []string{
		"Tank", "Species", "Common name", "Count", "Length of one (" + u.length + ")", "Mass of one (g)", "Oxygen, mean (mg/h)", "Oxygen, peak (mg/h)",
		"Dry feed, low (g/d)", "Dry feed, high (g/d)", "Mass of all (g)",
	})
	for _, group := range b.plan.Fish {
		b.fishLine(s, group, u)
	}
}

func (b *book) fishLine(s *sheet, f *plan.Fish, u tankUnits) {
	l, row, tenth, hundredth := s.look, s.next(), decimalsFormat(1), decimalsFormat(2)
	all := l.words(body, "")
	if grams, ok := in(f.Mass, "g"); ok {
		all = l.formula(body, fmt.Sprintf("D%d*F%d", row, row), float64(f.Count)*grams, tenth)
	}
	s.fit(s.words(0, f.Tank), s.words(1, f.Species), s.words(2, f.Common), l.count(float64(f.Count)),
		l.quantityIn(f.Length, u.length, u.lengthFormat), l.quantityIn(f.Mass, "g", hundredth), l.quantityIn(f.Oxygen, "mg/h", tenth), l.quantityIn(f.OxygenPeak, "mg/h", tenth),
		l.quantityIn(f.FeedLow, "g/d", hundredth), l.quantityIn(f.FeedHigh, "g/d", hundredth), all)
}
