package filter

import (
	"fmt"
	"slices"
	"strings"
)

// Basis says what a rate of nitrification is counted per.
type Basis string

// The bases of the media table; each rate is in g of TAN per day and this.
const (
	PerM2 Basis = "m2" // of surface
	PerM3 Basis = "m3" // of media
	PerKg Basis = "kg" // of rock
)

// Media is a kind of filter material.
type Media struct {
	ID, Name string
	Basis    Basis
	// SurfaceM2PerM3 is the specific surface; 0 to 0 where it must be given.
	SurfaceM2PerM3 Range
	Bands          []Band // from cold to warm
	Known          string // where the rates come from
}

// Band is a range of rates for a range of temperatures.
type Band struct {
	MinC, MaxC    float64
	TANMgPerL     Range // level in the water for which the rates are told
	RateTANPerDay Range // g of TAN per day and basis
}

// AllMedia gives the media table. Its rates are defaults, recalled ranges that
// scatter by a factor of 2 to 3; they are no promise of any make.
func AllMedia() []Media {
	all := slices.Clone(media)
	for i := range all {
		all[i].Bands = slices.Clone(all[i].Bands)
	}
	return all
}

// MediaOf gives one kind of media by its ID.
func MediaOf(id string) (Media, error) {
	for _, m := range AllMedia() {
		if m.ID == id {
			return m, nil
		}
	}
	var ids []string
	for _, m := range media {
		ids = append(ids, m.ID)
	}
	return Media{}, fmt.Errorf("media: got %q, want %s or %s", id, strings.Join(ids[:len(ids)-1], ", "), ids[len(ids)-1])
}

var media = []Media{
	{"trickling", "trickling filter / RBC", PerM2, Range{}, []Band{
		{15, 20, Range{1, 2.5}, Range{0.2, 1}},
		{25, 30, Range{1, 2.5}, Range{1, 2}},
	}, "recalled"},
	{"moving-bed", "moving bed carriers (500-800 m2/m3 protected)", PerM2, Range{500, 800}, []Band{
		{20, 28, Range{0.5, 2}, Range{0.3, 0.8}},
	}, "recalled; 0.4 used as design value in public RAS code (seen)"},
	{"bead", "floating bead filter (1150 m2/m3)", PerM3, Range{1150, 1150}, []Band{
		{20, 30, Range{0.5, 1}, Range{140, 350}},
	}, "recalled"},
	{"fluidised-sand", "fluidised sand (11500 m2/m3 at 1 mm class)", PerM3, Range{11500, 11500}, []Band{
		{15, 15, Range{0.5, 1}, Range{300, 700}},
		{25, 30, Range{0.5, 1}, Range{700, 1500}},
	}, "recalled"},
	{"sponge", "aquarium sponge/foam, canister media", PerM2, Range{}, []Band{
		{24, 27, Range{0.02, 0.2}, Range{0.02, 0.2}},
	}, "common practice estimate, scaled from first-order behaviour"},
	{"live-rock", "live rock", PerKg, Range{}, []Band{
		{25, 25, Range{0.02, 0.2}, Range{0.001, 0.020}},
	}, "common practice, very uncertain"},
}
