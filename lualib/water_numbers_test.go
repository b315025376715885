package lualib_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/quantity"
)

// calculated gives the numbers of expressions, worked out in one cell.
func calculated(t *testing.T, expressions []string) []float64 {
	t.Helper()
	require.NotEmpty(t, expressions)
	var code strings.Builder
	code.WriteString("local function n(v, unit) if type(v) == 'number' then return v end return v:number(unit) end\ngot = {}\n")
	for i, e := range expressions {
		fmt.Fprintf(&code, "got[%d] = %s\n", i+1, e)
	}
	var numbers []float64
	for _, p := range value(t, goodCell(t, code.String()), "got").(*notebook.Data).Pairs {
		numbers = append(numbers, p.Value.(float64))
	}
	require.Len(t, numbers, len(expressions))
	return numbers
}

// bench collects expressions with what they must give.
type bench struct {
	expressions []string
	want, off   []float64
	about       []string
}

// add takes an expression that must give a value within a tolerance.
func (b *bench) add(want, tolerance float64, about any, format string, args ...any) {
	b.expressions = append(b.expressions, fmt.Sprintf(format, args...))
	b.want, b.off, b.about = append(b.want, want), append(b.off, tolerance), append(b.about, fmt.Sprint(about))
}

func (b *bench) check(t *testing.T) {
	t.Helper()
	for i, got := range calculated(t, b.expressions) {
		require.InDelta(t, b.want[i], got, b.off[i], "%s of %s", b.expressions[i], b.about[i])
	}
}

// waterRows checks what a test adds for the rows of a table of testdata/water.
func waterRows(t *testing.T, name string, add func(b *bench, row map[string]string, n func(column string) float64)) {
	t.Helper()
	b := &bench{}
	for _, row := range rowsOf(t, "water", name) {
		add(b, row, func(column string) float64 { return number(t, row[column]) })
	}
	b.check(t)
}

// TestSpecificGravities: rows of testdata/water/sg_table.csv, there and back.
func TestSpecificGravities(t *testing.T) {
	waterRows(t, "sg_table.csv", func(b *bench, row map[string]string, n func(string) float64) {
		for column, reference := range map[string]string{"sg_60F_60F": "60 degF", "sg_20_20_eq_68F_68F": "20 degC", "sg_25_25_eq_77F_77F": "77 degF"} {
			b.add(n(column), 6e-7, row, `salinity.to_sg{salinity = "%s ppt", reference = %q}`, row["S"], reference)
			if n("S") > 0 && n("S") < 42 { // the printed digits may lie beyond the ends
				b.add(n("S"), 1e-3, row, `n(salinity.from_sg{sg = %s, reference = %q}, "ppt")`, row[column], reference)
			}
		}
	})
}

// TestHydrometers: rows of testdata/water/hydrometer_correction.csv.
func TestHydrometers(t *testing.T) {
	waterRows(t, "hydrometer_correction.csv", func(b *bench, row map[string]string, n func(string) float64) {
		reference := map[string]string{"60F/60F": "60 degF", "20/20": "20 degC", "25/25": "25 degC"}[row["scale"]]
		if reference == "" || n("S_gamma25e-6") > 42 {
			return
		}
		call := fmt.Sprintf(`salinity.hydrometer{reading = %s, temperature = "%s degC", reference = %q}`, row["reading"], row["t_sample_C"], reference)
		b.add(n("S_gamma25e-6"), 6e-5, row, `n(%s.salinity, "ppt")`, call)
		b.add(n("sg_corrected_gamma25e-6"), 6e-7, row, `%s.sg`, call)
		b.add(n("rho_sample_kg_m3"), 6e-5, row, `n(%s.density, "kg/m3")`, call)
	})
}

// TestConductivities: rows at one atmosphere of testdata/water/conductivity.csv
// (PSS-78 by TEOS-10's library) and low_salinity_hill.csv, and the check values
// of UNESCO Technical Papers in Marine Science 44 in pss78_check.csv, whose
// ratio is of 42.914 mS/cm and whose temperatures are IPTS-68.
func TestConductivities(t *testing.T) {
	const from = `n(salinity.from_conductivity{conductivity = "%.12g mS/cm", temperature = "%.12g degC"}, "ppt")`
	const to = `n(salinity.conductivity{salinity = "%.12g ppt", temperature = "%.12g degC"}, "mS/cm")`
	inside := func(psu, c float64) bool { return psu >= 0 && psu <= 42 && c >= -2 && c <= 35 }
	waterRows(t, "conductivity.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if n("p_dbar") == 0 && row["quantity"] == "C_from_SP" && inside(n("x_in"), n("t90_C")) {
			b.add(n("value"), 2e-6, row, to, n("x_in"), n("t90_C"))
			b.add(n("x_in"), 2e-6, row, from, n("value"), n("t90_C"))
		}
	})
	waterRows(t, "low_salinity_hill.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if inside(n("SP_gsw"), n("t90_C")) {
			b.add(n("SP_gsw"), 1e-6, row, from, n("C_mS_cm"), n("t90_C"))
		}
	})
	waterRows(t, "pss78_check.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if row["quantity"] == "S_from_R" && n("p_dbar") == 0 && inside(n("published"), n("t68_C")) && n("published") >= 2 {
			b.add(n("published"), n("tol_abs"), row, from, 42.914*n("x_in"), n("t68_C")/1.00024)
		}
	})
}

// TestDensities: the printed check values of testdata/water/eos80_check.csv.
func TestDensities(t *testing.T) {
	waterRows(t, "eos80_check.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if row["quantity"] != "rho" {
			return
		}
		b.add(n("rho_published"), n("tol_abs"), row, `n(salinity.density{salinity = "%s ppt", temperature = "%.12g degC"}, "kg/m3")`, row["S"], n("t68_C")/1.00024)
		if n("S") == 0 {
			b.add(n("rho_published"), n("tol_abs"), row, `n(water.density{temperature = "%.12g degC"}, "kg/m3")`, n("t68_C")/1.00024)
		}
	})
}

// TestSaltMixes: rows of testdata/water/salt_mass.csv with a moist mix. The table
// leaves out that the mix's own water dilutes; the library counts it.
func TestSaltMixes(t *testing.T) {
	waterRows(t, "salt_mass.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if row["mode"] != "into_fresh_volume" {
			return
		}
		salt, wet := n("salt_kg_simple"), n("w_moisture")
		water := n("water_kg_simple")
		mix := water * n("S") / (1000*(1-wet) - n("S"))
		if wet == 0 {
			mix = salt
		}
		require.InEpsilon(t, n("mix_kg_simple"), mix, 0.007, "%v: the table's shortcut", row)
		b.add(mix, 5e-5*mix, row, `n(salinity.salt{water = "%s L", to = "%s ppt", temperature = "%s degC", moisture = %g}.mass, "kg")`, row["V_L"], row["S"], row["t_C"], wet)
	})
}

// TestEvaporation: rows of testdata/water/evaporation_salinity.csv.
func TestEvaporation(t *testing.T) {
	waterRows(t, "evaporation_salinity.csv", func(b *bench, row map[string]string, n func(string) float64) {
		switch row["quantity"] {
		case "S_after_evaporating":
			call := fmt.Sprintf(`salinity.topup{water = "%s L", salinity = "%s ppt", temperature = "%s degC", evaporated = "%s L"}`, row["V_L"], row["S0"], row["t_C"], row["d"])
			b.add(n("value"), 1e-6, row, `n(%s.salinity, "ppt")`, call)
			b.add(n("value2"), 1e-4, row, `n(%s.left, "L")`, call)
			b.add(n("d"), 1e-6*n("d"), row, `n(%s.fresh, "L")`, call)
		case "dry_salt_to_raise_kg":
			call := fmt.Sprintf(`salinity.salt{water = "%s L", from = "%s ppt", to = "%s ppt", temperature = "%s degC"}`, row["V_L"], row["S0"], row["d"], row["t_C"])
			b.add(n("value"), 1e-5, row, `n(%s.mass, "kg")`, call)
			b.add(n("value2"), 1e-3, row, `n(%s.final_volume, "L")`, call)
		}
	})
}

// TestMixingByChanges: rows of testdata/water/water_change_mixing.csv, changes of
// a share of the volume at 25 degC, mixed one by one.
func TestMixingByChanges(t *testing.T) {
	seen := 0
	for _, row := range rowsOf(t, "water", "water_change_mixing.csv") {
		if row["quantity"] != "S_after_n" {
			continue
		}
		seen++
		r := goodCell(t, fmt.Sprintf(`local now = Q"%s ppt"
for i = 1, %s do
  now = salinity.mix{{volume = Q"100 L" * (1 - %s), salinity = now, temperature = "25 degC"}, {volume = Q"100 L" * %[3]s, salinity = "%s ppt", temperature = "25 degC"}}.salinity
end
after = now`, row["a"], row["d"], row["c"], row["b"]))
		require.InDelta(t, number(t, row["value2"]), in(t, r, "after", "ppt"), 2e-3, "%v", row)
	}
	require.Positive(t, seen)
}

// TestHardnessUnits: rows of testdata/water/hardness_conversions.csv, and the one
// carbon dioxide whatever the unit of the alkalinity.
func TestHardnessUnits(t *testing.T) {
	units := map[string][2]string{"dGH_to_mgL_CaCO3": {"dGH", "mg/L_CaCO3"}, "dKH_to_meqL": {"dKH", "meq/L"}, "meqL_to_mgL_CaCO3": {"meq/L", "mg/L_CaCO3"}, "meqL_to_dKH": {"meq/L", "dKH"}}
	seen := 0
	waterRows(t, "hardness_conversions.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if u, ok := units[row["conversion"]]; ok {
			seen++
			b.add(n("value"), n("tol_abs"), row, `n(water.source{name = "W%d", hardness = "%s %s"}.hardness, %q)`, seen, row["x_in"], u[0], u[1])
			b.add(n("value"), n("tol_abs"), row, `n(Q"%s %s", %q)`, row["x_in"], u[0], u[1])
		}
	})
	require.GreaterOrEqual(t, seen, 4)
	b := &bench{}
	for _, alkalinity := range []string{"4 dKH", "4 dGH", "1.42660 meq/L", "71.392 mg/L_CaCO3"} {
		b.add(22.361, 5e-3, alkalinity, `n(water.co2{pH = 6.8, alkalinity = %q, temperature = "25 degC"}.co2, "mg/L")`, alkalinity)
	}
	b.check(t)
}

// TestCarbonDioxide: rows of testdata/water/carbonate_co2.csv.
func TestCarbonDioxide(t *testing.T) {
	fields := map[string]string{"CO2_rule_3KH": "rule", "CO2_thermo": "co2"}
	waterRows(t, "carbonate_co2.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if field := fields[row["quantity"]]; field != "" {
			b.add(n("value"), 1e-3*n("value"), row, `n(water.co2{pH = %s, alkalinity = "%s dKH", temperature = "%s degC"}.%s, "mg/L")`, row["pH"], row["dKH"], row["t_C"], field)
		}
	})
}

// TestOxygen: rows of testdata/water/do_saturation_apha.csv, and those by
// elevation of do_pressure.csv, a coarse table.
func TestOxygen(t *testing.T) {
	waterRows(t, "do_saturation_apha.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if n("S") <= 40 && n("t_C") <= 40 {
			b.add(n("published_mg_L"), n("tol_abs"), row, `n(water.oxygen{temperature = "%s degC", salinity = "%s ppt"}, "mg/L")`, row["t_C"], row["S"])
		}
	})
	waterRows(t, "do_pressure.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if row["kind"] == "elevation_m" {
			b.add(n("published_mg_L"), n("tol_abs"), row, `n(water.oxygen{temperature = "%s degC", altitude = "%s m"}, "mg/L")`, row["t_C"], row["x"])
			b.add(n("equation_mg_L"), 0.005, row, `n(water.oxygen{temperature = "%s degC", pressure = "%.10g kPa"}, "mg/L")`, row["t_C"], 101.325*n("P_atm"))
		}
	})
}

// TestAmmoniaFractions: the printed rows on the free scale of testdata/water/
// ammonia_clegg_whitfield.csv, and, within 5 %, those for sea water of Bower &
// Bidwell 1978.
func TestAmmoniaFractions(t *testing.T) {
	const call = `n(water.ammonia{total = "1 mg/L", pH = %s, temperature = "%s degC", salinity = "%s ppt"}.%s, %q)`
	waterRows(t, "ammonia_clegg_whitfield.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if row["pH_scale"] != "free" {
			return
		}
		b.add(100*n("published_fraction"), 100*n("tol_abs"), row, call, row["pH"], row["t_C"], row["S"], "fraction", "%")
		b.add(1.21588*n("published_fraction"), 1.3*n("tol_abs"), row, call, row["pH"], row["t_C"], row["S"], "unionised", "mg/L")
	})
	waterRows(t, "ammonia_seawater_bower_bidwell.csv", func(b *bench, row map[string]string, n func(string) float64) {
		b.add(n("published_percent"), 0.05*n("published_percent"), row, call, row["pH"], row["t_C"], row["S"], "fraction", "%")
	})
}

// TestDechlorination: rows of testdata/water/dechlorination_stoichiometry.csv and
// the doses of chemical_dosing.csv.
func TestDechlorination(t *testing.T) {
	agents := map[string]string{"Na2SO3": "sodium sulfite", "NaHSO3": "sodium bisulfite", "Na2S2O5": "sodium metabisulfite", "ascorbic acid": "ascorbic acid", "sodium ascorbate": "sodium ascorbate"}
	const call = `n(water.dechlorinate{water = "%s L", chlorine = "%s mg/L", agent = %q}.%s, "g")`
	waterRows(t, "dechlorination_stoichiometry.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if agent := agents[row["reagent"]]; agent != "" {
			b.add(n("mg_per_mg_Cl2"), 6e-5, row, call, "1000", "1", agent, "mass")
		}
	})
	waterRows(t, "chemical_dosing.csv", func(b *bench, row map[string]string, n func(string) float64) {
		field, agent := "mass", agents[row["note"]]
		switch row["note"] {
		case "Na2S2O3.5H2O (2:1)":
			agent = "sodium thiosulfate pentahydrate"
		case "Na2S2O3.5H2O (1:1)":
			field, agent = "mass_low", "sodium thiosulfate pentahydrate"
		}
		switch {
		case row["quantity"] == "reagent_g" && agent != "":
			b.add(n("value"), 1e-4*n("value"), row, call, row["a"], row["b"], agent, field)
		case row["quantity"] == "TAN_released_mg_per_L_from_monochloramine":
			b.add(n("value"), 6e-7+1e-5*n("value"), row, `n(water.dechlorinate{water = "%s L", chloramine = "%s mg/L"}.ammonia, "mg/L")`, row["a"], row["b"])
		case row["quantity"] == "dose_g_for_mg_per_L":
			strength := map[string]string{"25 % w/w stock": "25 %"}[row["note"]]
			if strength == "" {
				strength = "100 %"
			}
			b.add(n("value"), 6e-7, row, `n(water.dose{water = "%s L", concentration = "%s mg/L", strength = %q}.mass, "g")`, row["a"], row["b"], strength)
		case row["quantity"] == "stock_mL_for_mg_per_L":
			b.add(n("value"), 6e-7, row, `n(water.dose{water = "%s L", concentration = "%s mg/L", strength = %q}.volume, "mL")`, row["a"], row["b"], strings.TrimPrefix(row["note"], "stock "))
		}
	})
}

// TestNitrateByChanges: rows of testdata/water/nitrate_water_change.csv, in 100 L.
func TestNitrateByChanges(t *testing.T) {
	fields := map[string]string{"before_change": "before", "after_change": "after", "after_10_changes_from_5": "course[10].after"}
	waterRows(t, "nitrate_water_change.csv", func(b *bench, row map[string]string, n func(string) float64) {
		field := fields[row["quantity"]]
		require.NotEmpty(t, field, "%v", row)
		b.add(n("value"), 1e-6, row, `n(water.nitrate{water = "100 L", production = "%g mg/d", change = %s, source = "%s mg/L", every = "%s d", initial = "5 mg/L", changes = 10}.%s, "mg/L")`,
			100*n("p_per_day"), row["f"], row["C_tap"], row["days_between"], field)
		if row["quantity"] == "before_change" && n("C_tap") < n("value") {
			b.add(100*n("f"), 1e-5, row, `n(water.change_for{limit = "%s mg/L", water = "100 L", production = "%g mg/d", source = "%s mg/L", every = "%s d"}, "%%")`,
				row["value"], 100*n("p_per_day"), row["C_tap"], row["days_between"])
		}
	})
}

// TestNitrogen: rows of testdata/water/nitrogen_production.csv and, for what one
// filter carries, nitrification_rates.csv.
func TestNitrogen(t *testing.T) {
	waterRows(t, "nitrogen_production.csv", func(b *bench, row map[string]string, n func(string) float64) {
		tan := fmt.Sprintf(`filter.tan{feed = "%s kg/d", protein = %s}`, row["F_kg_day"], row["protein_fraction"])
		field := map[string]string{"O2_for_nitrification_kg_day": "oxygen", "alkalinity_kg_CaCO3_day": "alkalinity_as", "NO3_kg_day": "nitrate"}[row["quantity"]]
		switch {
		case row["quantity"] == "TAN_kg_per_day":
			b.add(n("value"), 1e-9, row, `n(%s, "kg/d")`, tan)
		case field != "" && row["param"] != "7.05":
			b.add(n("value"), 1e-5*n("value"), row, `n(filter.nitrify{tan = %s}.%s, "kg/d")`, tan, field)
		}
	})
	waterRows(t, "nitrification_rates.csv", func(b *bench, row map[string]string, n func(string) float64) {
		media := map[string]string{"bead": "floating bead filter (1150 m2/m3)", "moving-bed": "moving bed carriers (500-800 m2/m3 protected)"}
		for id, name := range media {
			if row["media"] != name {
				continue
			}
			perM3 := 1.0 // the rates of the bead filter are by volume
			if id == "moving-bed" {
				perM3 = 500
			}
			for low, rate := range map[string]float64{"volume_high": n("rate_low"), "volume_low": n("rate_high")} {
				b.add(1000/(rate*perM3), 1e-9, row, `n(filter.media{tan = "1 g/d", media = %q, surface = "%d m2/m3", temperature = "25 degC"}.%s, "L")`, id, map[string]int{"bead": 1150, "moving-bed": 500}[id], low)
			}
		}
	})
}

// TestWaterProperties: pure water against testdata/water/vapour_pressure_table.csv
// and latent_heat.csv (IAPWS-IF97), salt water against the printed
// seawater_cp_freezing.csv and the calculated seawater_viscosity.csv.
func TestWaterProperties(t *testing.T) {
	waterRows(t, "vapour_pressure_table.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if n("t_C") <= 40 {
			b.add(n("p_IF97")/1000, 1e-7, row, `n(water.vapour_pressure{temperature = "%s degC"}, "kPa")`, row["t_C"])
		}
	})
	waterRows(t, "latent_heat.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if n("t_C") <= 40 {
			b.add(n("hfg_IF97_fresh_kJ_kg"), 1e-3, row, `n(water.latent_heat{temperature = "%s degC"}, "kJ/kg")`, row["t_C"])
			b.add(n("psat_at_S_Pa"), 0.002, row, `n(water.vapour_pressure{temperature = "%s degC", salinity = "%s ppt"}, "Pa")`, row["t_C"], row["S"])
		}
	})
	waterRows(t, "seawater_cp_freezing.csv", func(b *bench, row map[string]string, n func(string) float64) {
		if row["quantity"] == "cp_J_per_kgK" {
			b.add(n("published"), n("tol_abs"), row, `n(water.heat_capacity{temperature = "%.12g degC", salinity = "%s ppt"}, "J/(kg.K)")`, n("t68_C")/1.00024, row["S"])
		}
	})
	waterRows(t, "seawater_viscosity.csv", func(b *bench, row map[string]string, n func(string) float64) {
		b.add(n("mu_sharqawy"), 0.01*n("mu_sharqawy"), row, `n(water.viscosity{temperature = "%s degC", salinity = "%s ppt"}, "mPa.s")`, row["t_C"], row["S"])
	})
}

// TestRangeOfAReading: what the error of a pH meter does.
func TestRangeOfAReading(t *testing.T) {
	r := goodCell(t, `a = water.ammonia{total = "1 mg/L", pH = 8, temperature = "25 degC"}
low, mid, high = a.low, a.unionised, a.high
nh3 = water.ammonia{total = "1.21588 mg/L", pH = 8, temperature = "25 degC", as = "NH3"}.unionised
word, sentence = a.outcome, a.sentence`)
	require.InDelta(t, 1.25, in(t, r, "high", "mg/L")/in(t, r, "mid", "mg/L"), 0.02)
	require.InDelta(t, math.Pow(10, -0.1), in(t, r, "low", "mg/L")/in(t, r, "mid", "mg/L"), 0.02)
	require.InEpsilon(t, in(t, r, "mid", "mg/L"), in(t, r, "nh3", "mg/L"), 1e-5)
	require.Equal(t, "fail", value(t, r, "word"))
	require.Contains(t, value(t, r, "sentence"), "un-ionised ammonia 0.0655 mg NH3/L against 0.05")
	require.IsType(t, quantity.Quantity{}, value(t, r, "mid"))
}
