package filter

import "fmt"

// Conditions are those under which a filter works.
type Conditions struct {
	TemperatureC float64
	TANMgPerL    float64 // level to be held in the water, as N
	// SurfaceM2PerM3 is the specific surface of the media as sold; 0 takes the
	// media table's where it has one.
	SurfaceM2PerM3 float64
}

// Size is how much media a load needs; what a kind of media is not counted in
// is 0.
type Size struct {
	AreaM2  Range
	VolumeL Range
	MassKg  Range
}

// MediaFor gives the media that a day's TAN needs, as a range: the low end is
// for media at their best.
//
// Units: g of TAN per day; m2, L or kg.
// Valid range: above 0 to 100,000 g/d; surface 10 to 50,000 m2/m3; otherwise as
// Rate.
// Accuracy: as Rate; build for the high end.
// Source: load over Rate; volume as surface over specific surface.
func MediaFor(m Media, tanGPerDay float64, at Conditions) (Size, error) {
	if err := positive("TAN", "g/d", tanGPerDay, maxGPerDay); err != nil {
		return Size{}, err
	}
	perDay, err := Rate(m, at.TemperatureC, at.TANMgPerL)
	if err != nil {
		return Size{}, err
	}
	need := Range{tanGPerDay / perDay.High, tanGPerDay / perDay.Low}
	if m.Basis == PerKg {
		return Size{MassKg: need}, nil
	}
	surface, err := surfaceOf(m, at.SurfaceM2PerM3)
	if err != nil {
		return Size{}, err
	}
	if m.Basis == PerM3 {
		return Size{AreaM2: Range{need.Low * surface.Low, need.High * surface.High}, VolumeL: need.times(1000)}, nil
	}
	return Size{AreaM2: need, VolumeL: Range{1000 * need.Low / surface.High, 1000 * need.High / surface.Low}}, nil
}

// Feed is what an amount of media carries in a day, as ranges.
type Feed struct {
	TANGPerDay  Range
	FeedGPerDay Range // dry feed
}

// FeedFor gives the feed per day that an amount of media carries.
//
// Units: L of media (kg for live rock), protein as a share of the feed; g/d.
// Valid range: above 0 to 10,000,000 L or kg, protein 0.2 to 0.7; otherwise as
// MediaFor.
// Accuracy: as Rate; feed by the low end and test the water.
// Source: Rate times amount, over TANGPerDay.
func FeedFor(m Media, mediaAmount, proteinShare float64, at Conditions) (Feed, error) {
	err := first(positive("media", mediaUnit(m), mediaAmount, maxL), checkProtein(proteinShare))
	if err != nil {
		return Feed{}, err
	}
	perDay, err := Rate(m, at.TemperatureC, at.TANMgPerL)
	if err != nil {
		return Feed{}, err
	}
	carried := perDay.times(mediaAmount)
	switch m.Basis {
	case PerM2:
		surface, err := surfaceOf(m, at.SurfaceM2PerM3)
		if err != nil {
			return Feed{}, err
		}
		carried = Range{carried.Low * surface.Low / 1000, carried.High * surface.High / 1000}
	case PerM3:
		carried = carried.times(1.0 / 1000)
	}
	return Feed{carried, Range{feedGPerDay(carried.Low, proteinShare), feedGPerDay(carried.High, proteinShare)}}, nil
}

func mediaUnit(m Media) string {
	if m.Basis == PerKg {
		return "kg"
	}
	return "L"
}

// surfaceOf gives the specific surface: as stated, else the table's.
func surfaceOf(m Media, stated float64) (Range, error) {
	if stated != 0 {
		return Range{stated, stated}, within("specific surface", "m2/m3", stated, 10, 50_000)
	}
	if m.SurfaceM2PerM3.Low == 0 {
		return Range{}, fmt.Errorf("specific surface: got none, want the m2/m3 of the media as sold; %s differs too much for a default", m.Name)
	}
	return m.SurfaceM2PerM3, nil
}
