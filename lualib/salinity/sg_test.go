package salinity

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Density ratios computed from EOS-80; they hold to the printed digit.
func TestSpecificGravityAgreesWithSgTable(t *testing.T) {
	scales := map[string]SGScale{
		"sg_15_15": At(15), "sg_60F_60F": At(fahrenheit60C), "sg_20_20_eq_68F_68F": At(20), "sg_25_25_eq_77F_77F": At(25),
		"sg_15_4": {15, 4}, "sg_20_4": {20, 4}, "sg_25_4": {25, 4},
	}
	rows := table(t, "sg_table.csv")
	require.Len(t, rows, 43)
	for _, r := range rows {
		for column, scale := range scales {
			got, err := ToSG(r.Num(t, "S"), scale)
			require.NoError(t, err)
			require.InDelta(t, r.Num(t, column), got, 0.51e-6, "%s of %v", column, r)
		}
	}
}

// The round values quoted in oceanographic literature for salinity 35 (from
// memory; they stand in the header of sg_table.csv).
func TestSpecificGravityOfSeaWater(t *testing.T) {
	for scale, want := range map[SGScale]float64{At(25): 1.0264, At(20): 1.0266, At(fahrenheit60C): 1.0268} {
		got, err := ToSG(35, scale)
		require.NoError(t, err)
		require.InDelta(t, want, got, 0.7e-4, scale.String())
	}
	got, err := FromSG(1.025, At(25))
	require.NoError(t, err)
	require.InDelta(t, 33.19, got, 0.005)
}

func TestSpecificGravityRoundTrip(t *testing.T) {
	for _, sample := range []float64{-2, 0, 15, fahrenheit60C, 25, 40} {
		for _, scale := range []SGScale{At(sample), {sample, 4}} {
			for s := 0.0; s <= MaxPSU; s += 0.25 {
				sg, err := ToSG(s, scale)
				require.NoError(t, err)
				back, err := FromSG(sg, scale)
				require.NoError(t, err)
				require.InDelta(t, s, back, 1e-9, scale.String())
			}
		}
	}
}

func TestScaleNames(t *testing.T) {
	want := []string{"60/60 degF", "20/20 degC", "25/25 degC", "20/4 degC"}
	for i, scale := range UsualScales() {
		require.Equal(t, want[i], scale.String())
	}
}

// About 0.7 PSU lie between the two most common scales, and more where water
// of 4 degC is meant.
func TestAmbiguityOfSpecificGravity(t *testing.T) {
	readings, err := SGReadings(1.025)
	require.NoError(t, err)
	require.Len(t, readings, 4)
	byName := map[string]float64{}
	for _, r := range readings {
		byName[r.Scale.String()] = r.PSU
		sg, err := ToSG(r.PSU, r.Scale)
		require.NoError(t, err)
		require.InDelta(t, 1.025, sg, 1e-12)
	}
	require.InDelta(t, 0.7, byName["25/25 degC"]-byName["60/60 degF"], 0.1)
	spread, err := SGAmbiguityPSU(1.025)
	require.NoError(t, err)
	require.InDelta(t, byName["20/4 degC"]-byName["60/60 degF"], spread, 1e-12)
	require.Greater(t, spread, 2.0)

	only, err := SGReadings(0.999)
	require.NoError(t, err)
	require.Len(t, only, 1)
	require.Equal(t, "20/4 degC", only[0].Scale.String())
}

func TestSpecificGravityRefusals(t *testing.T) {
	_, err := ToSG(43, At(25))
	require.EqualError(t, err, "salinity: got 43 PSU, want 0 to 42 PSU")
	_, err = ToSG(35, At(77))
	require.EqualError(t, err, "reference temperature of the sample: got 77 degC, want -2 to 40 degC")
	_, err = FromSG(1.02, SGScale{25, 60})
	require.EqualError(t, err, "reference temperature of the water: got 60 degC, want -2 to 40 degC")
	_, err = FromSG(0.9, At(25))
	require.EqualError(t, err, "specific gravity: got 0.9 at 25/25 degC, want 1 to 1.03169 at 25/25 degC")
	_, err = FromSG(1.2, At(25))
	require.Error(t, err)
	_, err = SGReadings(1025)
	require.EqualError(t, err, "specific gravity: got 1025, want 0.99823 to 1.03227")
	_, err = SGAmbiguityPSU(0)
	require.EqualError(t, err, "specific gravity: got 0, want 0.99823 to 1.03227")
}
