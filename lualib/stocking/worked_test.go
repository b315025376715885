package stocking

import (
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// checks gives the worked rows of a model and how many there must be.
func checks(t *testing.T, model string, want int) []row {
	t.Helper()
	var rows []row
	for _, r := range table(t, "worked_checks.csv") {
		if r["model"] == model {
			rows = append(rows, r)
		}
	}
	require.Len(t, rows, want, model)
	return rows
}

// input finds the number after a mark in the inputs of a row.
func (r row) input(t *testing.T, mark string) float64 {
	t.Helper()
	found := regexp.MustCompile(mark + `\s*(-?[0-9.]+)`).FindStringSubmatch(r["inputs"])
	require.NotNil(t, found, "%s in %s", mark, r["inputs"])
	value, err := strconv.ParseFloat(found[1], 64)
	require.NoError(t, err)
	return value
}

// requireValue compares with the row's value at its tolerance.
func (r row) requireValue(t *testing.T, got float64) {
	t.Helper()
	require.InEpsilon(t, r.num(t, "value"), got, r.num(t, "rel_tol"), "%v", r)
}

func TestWorkedBodyMass(t *testing.T) {
	for _, r := range checks(t, "LW", 7) {
		got, err := LengthWeight{A: r.input(t, `\ba=`), B: r.input(t, `\bb=`)}.Mass(r.input(t, `\bL=`))
		require.NoError(t, err)
		r.requireValue(t, got.G)
		require.Equal(t, 1.0, got.Factor)
	}
}

func TestWorkedGrowth(t *testing.T) {
	for _, r := range checks(t, "VB", 3) {
		g := Growth{LinfCm: r.input(t, "Linf="), KPerYr: r.input(t, "K=")}
		var got float64
		var err error
		switch r["quantity"] {
		case "length":
			got, err = g.LengthAtCm(r.input(t, `\bt=`))
		case "time":
			got, err = g.YearsBetween(r.input(t, "from"), r.input(t, `\bto`))
		default:
			require.Fail(t, "unknown quantity", "%v", r)
		}
		require.NoError(t, err)
		r.requireValue(t, got)
	}
}

// Clarke & Johnston 1999.
func TestWorkedRestingOxygen(t *testing.T) {
	for _, r := range checks(t, "RMR-CJ", 6) {
		mass := r.input(t, "W=")
		got, err := RestingMgO2PerH(mass, r.input(t, "T="))
		require.NoError(t, err)
		if r["unit"] == "mg O2/kg/h" {
			got *= 1000 / mass
		}
		r.requireValue(t, got)
	}
}

func TestWorkedStandardOxygen(t *testing.T) {
	for _, r := range checks(t, "SMR-FB", 2) {
		got, err := StandardMgO2PerH(r.input(t, "W="), r.input(t, "T="))
		require.NoError(t, err)
		r.requireValue(t, got)
	}
}

// Measured fish, FishBase June 2021: the model is right within a factor of 4.
func TestRestingOxygenAgainstMeasuredFish(t *testing.T) {
	for _, r := range checks(t, "RMR-OBS", 10) {
		mass := r.input(t, "W=")
		got, err := RestingMgO2PerH(mass, r.input(t, "T="))
		require.NoError(t, err)
		ratio := r.num(t, "value") / (got / mass * 1000)
		require.True(t, ratio > 0.25 && ratio < 4, "%g of %v", ratio, r)
	}
}

// Timmons & Ebeling (recalled).
func TestWorkedOxygenOfFeed(t *testing.T) {
	for _, r := range checks(t, "O2-FEED", 1) {
		got, err := OxygenOfFeed(r.input(t, "feed="))
		require.NoError(t, err)
		r.requireValue(t, got.FishGPerDay)
		require.Equal(t, 2*got.FishGPerDay, got.SystemGPerDay)
	}
}
