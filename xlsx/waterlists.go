package xlsx

import (
	"strconv"

	"weirbook/notebook/plan"
)

// nitratePerNitrogen is the mass of nitrate that holds a mass of nitrogen,
// unitless, for every mass, to its last digit; 62.0049 g/mol over 14.0067 g/mol
// (standard atomic weights, from memory).
const nitratePerNitrogen = 4.4268

func (b *book) sourceColumns() []column {
	columns := []column{
		{head: "Water", min: 14, kind: long}, {head: "Hardness (dGH)"}, {head: "Alkalinity (dKH)"}, {head: "Salinity (ppt)"}, {head: "pH"},
		{head: "Chlorine (mg/L)"}, {head: "Chloramine (mg/L)"}, {head: "Nitrate, as N (mg/L)"}, {head: "Remark", min: 10, kind: long, off: true},
	}
	for i := range columns[1:8] {
		c := &columns[1+i]
		c.kind, c.min, c.off = numeric, 10, true
	}
	for _, w := range b.plan.WaterSources {
		for i, o := range sourceValues(w) {
			columns[1+i].off = columns[1+i].off && !o.Has
		}
		columns[4].off = columns[4].off && w.PH == 0
		columns[8].off = columns[8].off && w.Note == ""
	}
	return columns
}

// sourceValues lists the quantities of a source in the order of the columns,
// with a gap where pH stands.
func sourceValues(w *plan.WaterSource) []plan.Optional {
	return []plan.Optional{w.Hardness, w.Alkalinity, w.Salinity, {}, w.Chlorine, w.Chloramine, w.Nitrate}
}

// sources adds the waters that new water is made of.
func (s *waterList) sources() {
	s.sectionHead("Sources of water")
	s.across(prose, "The waters that new water is made of, as they come. Chlorine and chloramine must be taken out before the water goes to fish or filter.")
	s.begin(s.book.sourceColumns())
	for _, w := range s.book.plan.WaterSources {
		l, v := s.look, sourceValues(w)
		s.line(s.words(0, w.Name), l.optional(v[0], "dGH", decimalsFormat(1)), l.optional(v[1], "dKH", decimalsFormat(1)), l.optional(v[2], "ppt", decimalsFormat(2)), l.acidity(w.PH),
			l.optional(v[4], "mg/L", decimalsFormat(2)), l.optional(v[5], "mg/L", decimalsFormat(2)), l.optional(v[6], "mg/L", decimalsFormat(2)), l.words(wrapped, w.Note))
		s.toTheEnd()
	}
	s.end(s.next() - 1)
}

func nitrateColumns() []column {
	return []column{
		{head: "Tank", min: 14, kind: long}, {head: "Water changed", min: 10, kind: numeric}, {head: "Every", min: 10, kind: numeric},
		{head: "Before a change, as N (mg/L)", min: 12, kind: numeric}, {head: "After it, as N (mg/L)", min: 12, kind: numeric},
		{head: "Before a change, as NO3 (mg/L)", min: 12, kind: numeric}, {head: "After it, as NO3 (mg/L)", min: 12, kind: numeric},
	}
}

// nitrates adds what nitrate comes to under the water changes.
func (s *waterList) nitrates() {
	s.sectionHead("Nitrate in the long run")
	s.across(prose, "What the nitrate of a tank settles at under its water changes: highest right before a change, lowest right after it. Most test kits show it as NO3, which is 4.4268 times the nitrogen (N) in it.")
	s.begin(nitrateColumns())
	for _, n := range s.book.plan.Nitrates {
		l, row, tenth := s.look, strconv.Itoa(s.next()), decimalsFormat(1)
		change, _ := n.Change.Number()
		factor := "*" + strconv.FormatFloat(nitratePerNitrogen, 'f', -1, 64)
		s.line(s.words(0, n.Tank), l.number(body, change, percentFormat(100*change)), s.reading(n.Every.Short()), l.quantityIn(n.Before, "mg/L", decimalsFormat(2)), l.quantityIn(n.After, "mg/L", decimalsFormat(2)),
			l.formula(body, "D"+row+factor, orZero(n.Before, "mg/L")*nitratePerNitrogen, tenth), l.formula(body, "E"+row+factor, orZero(n.After, "mg/L")*nitratePerNitrogen, tenth))
	}
	s.end(s.next() - 1)
}

func (b *book) filterColumns() []column {
	flow := false
	for _, f := range b.plan.Filters {
		flow = flow || f.Turnover.Has
	}
	return []column{
		{head: "Tank", min: 14, kind: long}, {head: "Dry feed, low (g/d)", min: 10, kind: numeric}, {head: "Dry feed, high (g/d)", min: 10, kind: numeric},
		{head: "Turnover (times an hour)", min: 10, kind: numeric, off: !flow},
	}
}

// filters adds what the filters carry.
func (s *waterList) filters() {
	s.sectionHead("Filters")
	s.across(prose, "The dry food a day whose waste the media of a filter turn into nitrate: low for certain, high at their best. Plan with the low one. "+
		"Turnover is how often in an hour all the water passes the filter.")
	s.begin(s.book.filterColumns())
	for _, f := range s.book.plan.Filters {
		turnover := s.look.words(body, "")
		if f.Turnover.Has {
			turnover = s.look.twoDigits(f.Turnover.Q, "1/h")
		}
		s.line(s.words(0, f.Tank), s.look.twoDigits(f.FeedLow, "g/d"), s.look.twoDigits(f.FeedHigh, "g/d"), turnover)
	}
	s.end(s.next() - 1)
}
