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
	s.across(prose, "Oxygen and feed are those of the whole group, from the mass of its fish; they are estimates to size air and filter, not rations. Peak is the hour after feeding.")
	s.heads(1, []string{
		"Tank", "Species", "Common name", "Count", "Length of one (" + u.length + ")", "Mass of one (g)", "Oxygen, mean (mg/h)", "Oxygen, peak (mg/h)",
		"Dry feed, low (g/d)", "Dry feed, high (g/d)", "Mass of all (g)",
	})
	for _, group := range b.plan.Fish {
		b.fishLine(s, group, u)
	}
}

func (b *book) fishLine(s *sheet, f *plan.Fish, u tankUnits) {
	l, row := s.look, s.next()
	all := l.words(body, "")
	if grams, ok := in(f.Mass, "g"); ok {
		all = l.formula(body, fmt.Sprintf("D%d*F%d", row, row), float64(f.Count)*grams, decimalsFormat(1))
	}
	s.fit(s.words(0, f.Tank), s.words(1, f.Species), s.words(2, f.Common), l.count(float64(f.Count)),
		l.quantityIn(f.Length, u.length, u.lengthFormat), l.reading(f.Mass, "g"), l.reading(f.Oxygen, "mg/h"), l.reading(f.OxygenPeak, "mg/h"),
		l.reading(f.FeedLow, "g/d"), l.reading(f.FeedHigh, "g/d"), all)
}
