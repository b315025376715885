package xlsx

import (
	"fmt"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// gaps is what a run with problems left out.
type gaps struct {
	banner  string // "" when nothing is missing
	unknown bool   // the run has no plan, so that records of every kind are missing
}

// findGaps says what is missing when the run had problems.
func findGaps(r *notebook.Result) gaps {
	var g gaps
	stopped := 0
	for i := range r.Cells {
		if r.Cells[i].Status != notebook.Done {
			stopped++
		}
	}
	errors := r.Errors()
	switch {
	case errors > 0:
		g.banner = fmt.Sprintf("incomplete: %s in the notebook", counted(errors, "problem"))
	case stopped > 0:
		g.banner = fmt.Sprintf("incomplete: %s of the notebook did not run", counted(stopped, "cell"))
	default:
		return g
	}
	g.banner += "; figures that need them are missing"
	g.unknown = r.Plan == nil
	return g
}

// banner is the line that every sheet of an incomplete workbook carries, "" for
// a complete one.
func (b *book) banner(sheet string) string {
	switch {
	case b.gaps.banner == "":
		return ""
	case sheet == startSheet:
		return b.gaps.banner + " — the list stands at the end of this sheet"
	}
	return b.gaps.banner + " — see " + startSheet
}

// bannerRows counts the rows that the banner takes.
func (b *book) bannerRows() int {
	if b.gaps.banner == "" {
		return 0
	}
	return 1
}

// lacking reports whether some records of one of the kinds may be missing.
func (b *book) lacking(kinds ...plan.Kind) bool {
	if b.gaps.unknown {
		return true
	}
	for _, kind := range kinds {
		if b.plan.Lacking[kind] {
			return true
		}
	}
	return false
}

// checksLack reports whether some checks may be missing: those that the library
// makes follow from records of other kinds.
func (b *book) checksLack() bool {
	return b.lacking(plan.KindCheck, plan.KindRoom, plan.KindRack, plan.KindTank, plan.KindFish, plan.KindCircuit, plan.KindLoad)
}

// note adds the row between the sentences and the list: that lines are missing,
// that there are none, or another sentence, "" for an empty row.
func (s *sheet) note(what string, lacks bool, lines int, text string) {
	s.hollow = lacks && lines == 0
	switch {
	case lacks:
		s.across(alarm, "Not all "+what+" are here: a part of the notebook that makes them did not run. Sums on this sheet add up what is here, and no more.")
	case lines == 0:
		s.across(prose, "The notebook has no "+what+".")
	case text != "":
		s.across(prose, text)
	default:
		s.skip(1)
	}
}
