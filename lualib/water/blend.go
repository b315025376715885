package water

import (
	"fmt"
	"math"
)

// Source is a water that can be had, with the property to blend for.
type Source struct {
	Name    string
	Value   float64 // hardness, alkalinity or salinity, in the unit of the target
	Osmosis bool    // made by reverse osmosis, to be used as little as may be
}

// Blend is a recipe.
type Blend struct {
	Shares       []float64 // of the sources, in their order; they sum to 1
	OsmosisShare float64   // the sum over those made by reverse osmosis
}

// BlendTo gives the shares of sources that meet a target with the least water
// from reverse osmosis. At most two sources are used: with one property more
// never help.
//
// Units: any amount per litre, the same for all, and shares by volume; for
// salinity per kilogram, and shares by mass (see BlendSalinity).
// Valid range: values 0 to 100,000; one to fifty sources; a target between the
// lowest and the highest source.
// Accuracy: exact for what adds up by volume, as hardness and alkalinity do;
// pH does not.
// Source: mass balance; the best of all pairs of sources.
func BlendTo(sources []Source, target float64) (Blend, error) {
	if err := checkSources(sources, target); err != nil {
		return Blend{}, err
	}
	best := Blend{OsmosisShare: 2}
	for i := range sources {
		for j := i; j < len(sources); j++ {
			share, ok := pair(sources[i].Value, sources[j].Value, target)
			if !ok {
				continue
			}
			b := recipe(sources, i, j, share)
			if b.OsmosisShare < best.OsmosisShare-1e-12 {
				best = b
			}
		}
	}
	return best, nil
}

// pair gives the share of the first of two waters that meets a target; two
// equal waters are one.
func pair(a, b, target float64) (share float64, ok bool) {
	if a == b {
		return 1, a == target
	}
	share = (target - b) / (a - b)
	return share, share >= 0 && share <= 1
}

func recipe(sources []Source, i, j int, share float64) Blend {
	b := Blend{Shares: make([]float64, len(sources))}
	b.Shares[i] += share
	b.Shares[j] += 1 - share
	for k, s := range sources {
		if s.Osmosis {
			b.OsmosisShare += b.Shares[k]
		}
	}
	return b
}

func checkSources(sources []Source, target float64) error {
	if err := within("number of sources", "", float64(len(sources)), 1, 50); err != nil {
		return err
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range sources {
		if err := within(fmt.Sprintf("source %q", s.Name), "", s.Value, 0, 100_000); err != nil {
			return err
		}
		low, high = math.Min(low, s.Value), math.Max(high, s.Value)
	}
	if !(target >= low && target <= high) {
		return fmt.Errorf("target: got %.6g, want %.6g to %.6g, the lowest and the highest source; no blend of them reaches it", target, low, high)
	}
	return nil
}

// Blended gives another property of a blend, for example the alkalinity of a
// recipe made for hardness.
//
// Units: any amount per litre, the same in and out.
// Valid range: as many values as shares, shares that sum to 1, values 0 to
// 100,000.
// Accuracy and source: as BlendTo.
func Blended(shares, values []float64) (float64, error) {
	if len(shares) != len(values) || len(shares) == 0 {
		return 0, fmt.Errorf("values: got %d for %d shares, want one for each", len(values), len(shares))
	}
	total, sum := 0.0, 0.0
	for i, share := range shares {
		if err := first(within("share", "", share, 0, 1), within("value", "", values[i], 0, 100_000)); err != nil {
			return 0, err
		}
		total += share
		sum += share * values[i]
	}
	if math.Abs(total-1) > 1e-9 {
		return 0, fmt.Errorf("shares: got a sum of %.9g, want 1", total)
	}
	return sum, nil
}
