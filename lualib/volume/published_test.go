package volume

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Worked tanks: the walls stand on the bottom pane there, so the whole tank is
// higher by one thickness than its walls.
func TestFloorLoadExamples(t *testing.T) {
	rows := table(t, "tank_floor_load_examples.csv")
	require.Len(t, rows, 4)
	for _, r := range rows {
		thick := r.Num(t, "t_m")
		m := measure(t, Box{Length: r.Num(t, "L_m"), Width: r.Num(t, "W_m"), Height: r.Num(t, "H_m") + thick,
			Wall: thick, Bottom: thick, Fill: r.Num(t, "water_h_m")})
		water, glass := m.WaterM3*r.Num(t, "rho"), m.MaterialM3*GlassKgPerM3
		require.InEpsilon(t, r.Num(t, "water_kg"), water, 5e-6, r["case"])
		require.InEpsilon(t, r.Num(t, "glass_kg"), glass, 5e-6, r["case"])
		total := water + glass + r.Num(t, "substrate_kg") + r.Num(t, "rock_kg") + r.Num(t, "stand_kg")
		require.InEpsilon(t, r.Num(t, "total_kg"), total, 5e-6, r["case"])
		require.InEpsilon(t, r.Num(t, "footprint_kPa"), total*9.80665e-3/m.FootprintM2, 5e-5, r["case"])
	}
}

// Worked beds of substrate, to the printed digits.
func TestSubstrateExamples(t *testing.T) {
	rows := table(t, "substrate_examples.csv")
	require.Len(t, rows, 4)
	for _, r := range rows {
		volume := r.Num(t, "area_m2") * r.Num(t, "depth_m")
		got, err := Bed(volume, r.Num(t, "porosity"), r.Num(t, "grain_density"), r.Num(t, "water_density"))
		require.NoError(t, err)
		require.InEpsilon(t, r.Num(t, "dry_mass_kg"), got.DryKg, 5e-6, r["case"])
		require.InEpsilon(t, r.Num(t, "saturated_mass_kg"), got.SaturatedKg, 5e-6, r["case"])
		require.InEpsilon(t, r.Num(t, "net_increment_kg"), got.NetKg, 5e-6, r["case"])
		require.InEpsilon(t, r.Num(t, "displaced_L"), 1000*got.DisplacedM3, 5e-6, r["case"])
		displaced, err := Displaced(volume, r.Num(t, "porosity"))
		require.NoError(t, err)
		require.Equal(t, got.DisplacedM3, displaced)
	}
}

// Dry bulk densities, seen and recalled per row, are what porosity and grain
// density must give.
func TestSubstratesAgreeWithBulkDensities(t *testing.T) {
	bulk := map[string]row{}
	for _, r := range table(t, "densities.csv") {
		bulk[r["material"]] = r
	}
	tests := []struct {
		substrate, material string
		tolerance           float64
	}{
		{"silica sand", "silica sand dry bulk", 0.02},
		{"gravel", "gravel dry bulk", 0.02},
		{"aragonite", "aragonite/coral sand dry bulk", 0.10},
	}
	require.Len(t, Substrates(), len(tests))
	for i, s := range Substrates() {
		require.Equal(t, tests[i].substrate, s.Name)
		r := bulk[tests[i].material]
		require.NotNil(t, r)
		require.InEpsilon(t, r.Num(t, "low"), (1-s.PorosityHigh)*s.GrainKgPerM3, tests[i].tolerance, s.Name)
		require.InEpsilon(t, r.Num(t, "typical"), (1-s.Porosity)*s.GrainKgPerM3, tests[i].tolerance, s.Name)
		require.InEpsilon(t, r.Num(t, "high"), (1-s.PorosityLow)*s.GrainKgPerM3, tests[i].tolerance, s.Name)
	}
}

func TestMaterialDensities(t *testing.T) {
	seen := 0
	for _, r := range table(t, "densities.csv") {
		switch {
		case strings.HasPrefix(r["material"], "float glass"):
			require.Equal(t, r.Num(t, "typical"), GlassKgPerM3)
			seen++
		case strings.HasPrefix(r["material"], "PMMA"):
			require.Equal(t, r.Num(t, "typical"), AcrylicKgPerM3)
			seen++
		}
	}
	require.Equal(t, 2, seen)
}
