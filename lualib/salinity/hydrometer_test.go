package salinity

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Rows computed from the float's balance and EOS-80, for three glasses; they
// hold to the printed digit.
func TestReadingsAgreeWithHydrometerCorrection(t *testing.T) {
	rows := table(t, "hydrometer_correction.csv")
	require.Len(t, rows, 48)
	for _, r := range rows {
		scale, sample, reading := At(r.Num(t, "t_ref_C")), r.Num(t, "t_sample_C"), r.Num(t, "reading")
		if r["scale"] == "60F/60F" {
			scale = At(fahrenheit60C) // printed to four decimals only
		}
		got, err := CorrectHydrometer(reading, sample, scale)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "rho_sample_kg_m3"), got.DensityKgPerM3, 0.51e-4, "%v", r)
		require.InDelta(t, r.Num(t, "S_gamma25e-6"), got.PSU, 0.51e-4, "%v", r)
		require.InDelta(t, r.Num(t, "sg_corrected_gamma25e-6"), got.SG, 0.51e-6, "%v", r)
		require.InDelta(t, r.Num(t, "S_gamma23e-6"), corrected(reading, sample, scale, 23e-6).PSU, 0.51e-4, "%v", r)
		require.InDelta(t, r.Num(t, "S_gamma0"), corrected(reading, sample, scale, 0).PSU, 0.51e-4, "%v", r)
	}
}

func TestHydrometerRoundTrip(t *testing.T) {
	for _, scale := range UsualScales() {
		for sample := -2.0; sample <= MaxC; sample += 3 {
			for s := 0.0; s <= MaxPSU; s += 1.5 {
				reading, err := HydrometerShows(s, sample, scale)
				require.NoError(t, err)
				back, err := CorrectHydrometer(reading, sample, scale)
				require.NoError(t, err)
				require.InDelta(t, s, back.PSU, 1e-9)
			}
		}
	}
}

// At its own temperature a hydrometer needs no correction.
func TestHydrometerAtItsOwnTemperature(t *testing.T) {
	got, err := CorrectHydrometer(1.0213, 25, At(25))
	require.NoError(t, err)
	require.InDelta(t, 1.0213, got.SG, 1e-12)
	want, err := FromSG(1.0213, At(25))
	require.NoError(t, err)
	require.InDelta(t, want, got.PSU, 1e-12)
}

func TestHydrometerRefusals(t *testing.T) {
	_, err := CorrectHydrometer(1.02, 78, At(25))
	require.EqualError(t, err, "temperature: got 78 degC, want -2 to 40 degC")
	_, err = CorrectHydrometer(1.02, 25, At(60))
	require.EqualError(t, err, "reference temperature of the sample: got 60 degC, want -2 to 40 degC")
	_, err = CorrectHydrometer(35, 25, At(25))
	require.EqualError(t, err, "reading: got 35 at 25/25 degC, want 1 to 1.03169 at 25/25 degC")
	_, err = HydrometerShows(-1, 25, At(25))
	require.EqualError(t, err, "salinity: got -1 PSU, want 0 to 42 PSU")
	_, err = HydrometerShows(35, -5, At(25))
	require.EqualError(t, err, "temperature: got -5 degC, want -2 to 40 degC")
}
