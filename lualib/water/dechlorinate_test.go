package water

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// Stoichiometry, with the reactions that the table writes out.
func TestDechlorinationStoichiometry(t *testing.T) {
	names := map[string]struct {
		agent Agent
		index int
	}{
		"Na2S2O3.5H2O,S2O3 + Cl2 + H2O -> SO4 + S": {ThiosulfatePentahydrate, 1},
		"Na2S2O3.5H2O,S2O3 + 4 Cl2 -> 2 SO4":       {ThiosulfatePentahydrate, 0},
		"Na2S2O3 anhydrous,S2O3 + Cl2 -> SO4 + S":  {ThiosulfateAnhydrous, 1},
		"Na2S2O3 anhydrous,S2O3 + 4 Cl2":           {ThiosulfateAnhydrous, 0},
		"Na2SO3,SO3 + Cl2":                         {SodiumSulfite, 0},
		"ascorbic acid,C6H8O6 + HOCl":              {AscorbicAcid, 0},
		"sodium ascorbate,C6H7O6Na + HOCl":         {SodiumAscorbate, 0},
	}
	rows := table(t, "dechlorination_stoichiometry.csv")
	require.Equal(t, 7, len(rows))
	for _, r := range rows {
		name, ok := names[r["reagent"]+","+r["reaction"]]
		require.True(t, ok, "%v", r)
		ways, err := Reactions(name.agent)
		require.NoError(t, err)
		published.RequireDigits(t, r, "mg_per_mg_Cl2", ways[name.index].MgPerMgCl)
	}
}

// The factors that no row prints (from memory, as published for waterworks).
func TestOtherAgents(t *testing.T) {
	for agent, want := range map[Agent]float64{SodiumBisulfite: 1.468, SodiumMetabisulfite: 1.341} {
		ways, err := Reactions(agent)
		require.NoError(t, err)
		require.InDelta(t, want, ways[0].MgPerMgCl, 0.0006)
	}
	for agent, want := range map[Agent]float64{ThiosulfatePentahydrate: 7.00, ThiosulfateAnhydrous: 4.46} {
		ways, err := Reactions(agent)
		require.NoError(t, err)
		require.InDelta(t, want, ways[2].MgPerMgCl, 0.0051)
	}
}

// Doses, stock solutions and parts per million.
func TestChemicalDosing(t *testing.T) {
	rows := table(t, "chemical_dosing.csv")
	require.Equal(t, 22, len(rows))
	for _, r := range rows {
		published.RequireDigits(t, r, "value", dosed(t, r))
	}
}

// dosed computes the value of a row of the dosing table.
func dosed(t *testing.T, r row) float64 {
	t.Helper()
	a, b := r.Num(t, "a"), r.Num(t, "b")
	temperature := map[string]float64{"t=15 C": 15, "t=20 C": 20, "t=25 C": 25, "t=30 C": 30}
	strength := map[string]float64{"mg/L dose": 1, "pure": 1, "25 % w/w stock": 0.25, "stock 10 g/L": 10, "stock 37 g/L": 37}
	var got float64
	var err error
	switch r["quantity"] {
	case "reagent_g":
		return reagent(t, r["note"], a, b)
	case "TAN_released_mg_per_L_from_monochloramine":
		var d Dechlorination
		d, err = Dechlorinate(AscorbicAcid, a, 0, b)
		require.InDelta(t, a*d.AmmoniaMgNPerL, d.AmmoniaMgN, 1e-9)
		got = d.AmmoniaMgNPerL
	case "dose_g_for_mg_per_L":
		got, err = DoseG(b, a, strength[r["note"]])
	case "stock_mL_for_mg_per_L":
		got, err = DoseML(b, a, strength[r["note"]])
	case "mg_per_L_from_ppm_mass":
		got, err = MgPerLFromPPM(a, b, temperature[r["note"]])
	case "ppm_mass_from_mg_per_L":
		got, err = PPMFromMgPerL(a, b, temperature[r["note"]])
	case "chlorine_lb_in_US_gal":
		got, err = DoseG(b, a*galUSL, 1)
		got /= 453.59237
	default:
		require.Fail(t, "unknown row", "%v", r)
	}
	require.NoError(t, err)
	return got
}

// reagent is the low or the high end of the agent that a note names.
func reagent(t *testing.T, note string, litres, chlorine float64) float64 {
	t.Helper()
	agents := map[string]Agent{
		"Na2S2O3.5H2O (2:1)": ThiosulfatePentahydrate, "Na2S2O3.5H2O (1:1)": ThiosulfatePentahydrate,
		"Na2S2O5": SodiumMetabisulfite, "sodium ascorbate": SodiumAscorbate,
	}
	got, err := Dechlorinate(agents[note], litres, chlorine, 0)
	require.NoError(t, err)
	require.Zero(t, got.AmmoniaMgN)
	if note == "Na2S2O3.5H2O (2:1)" {
		return got.HighG
	}
	return got.LowG
}

func TestDosingRefusals(t *testing.T) {
	_, err := Dechlorinate("magic", 100, 1, 0)
	require.ErrorContains(t, err, `agent: got "magic", want sodium thiosulfate pentahydrate, `)
	_, err = Dechlorinate(AscorbicAcid, 0, 1, 0)
	require.EqualError(t, err, "water: got 0 L, want more than 0 and at most 1e+07 L")
	_, err = Dechlorinate(AscorbicAcid, 100, 11, 0)
	require.EqualError(t, err, "chlorine: got 11 mg/L, want 0 to 10 mg/L")
	_, err = Dechlorinate(AscorbicAcid, 100, 1, -1)
	require.EqualError(t, err, "chloramine: got -1 mg/L, want 0 to 10 mg/L")
	_, err = DoseG(1, 100, 0)
	require.EqualError(t, err, "active share: got 0, want more than 0 and at most 1")
	_, err = DoseG(-1, 100, 1)
	require.EqualError(t, err, "dose: got -1 mg/L, want 0 to 100000 mg/L")
	_, err = DoseML(1, 100, 0)
	require.EqualError(t, err, "stock: got 0 g/L, want more than 0 and at most 2000 g/L")
	_, err = MgPerLFromPPM(-1, 0, 20)
	require.EqualError(t, err, "concentration: got -1, want 0 to 1e+06")
	_, err = PPMFromMgPerL(1, 50, 20)
	require.EqualError(t, err, "density: salinity: got 50 PSU, want 0 to 42 PSU")
}
