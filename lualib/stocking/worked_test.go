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
func input(t *testing.T, r row, mark string) float64 {
	t.Helper()
	found := regexp.MustCompile(mark + `\s*(-?[0-9.]+)`).FindStringSubmatch(r["inputs"])
	require.NotNil(t, found, "%s in %s", mark, r["inputs"])
	value, err := strconv.ParseFloat(found[1], 64)
	require.NoError(t, err)
	return value
}

// requireValue compares with the row's value at its tolerance.
func requireValue(t *testing.T, r row, got float64) {
	t.Helper()
	require.InEpsilon(t, r.Num(t, "value"), got, r.Num(t, "rel_tol"), "%v", r)
}

func TestWorkedBodyMass(t *testing.T) {
	for _, r := range checks(t, "LW", 7) {
		got, err := LengthWeight{A: input(t, r, `\ba=`), B: input(t, r, `\bb=`)}.Mass(input(t, r, `\bL=`))
		require.NoError(t, err)
		requireValue(t, r, got.G)
		require.Equal(t, 1.0, got.Factor)
	}
}

func TestWorkedGrowth(t *testing.T) {
	for _, r := range checks(t, "VB", 3) {
		g := Growth{LinfCm: input(t, r, "Linf="), KPerYr: input(t, r, "K=")}
		var got float64
		var err error
		switch r["quantity"] {
		case "length":
			got, err = g.LengthAtCm(input(t, r, `\bt=`))
		case "time":
			got, err = g.YearsBetween(input(t, r, "from"), input(t, r, `\bto`))
		default:
			require.Fail(t, "unknown quantity", "%v", r)
		}
		require.NoError(t, err)
		requireValue(t, r, got)
	}
}

// Clarke & Johnston 1999.
func TestWorkedRestingOxygen(t *testing.T) {
	for _, r := range checks(t, "RMR-CJ", 6) {
		mass := input(t, r, "W=")
		got, err := RestingMgO2PerH(mass, input(t, r, "T="))
		require.NoError(t, err)
		if r["unit"] == "mg O2/kg/h" {
			got *= 1000 / mass
		}
		requireValue(t, r, got)
	}
}

func TestWorkedStandardOxygen(t *testing.T) {
	for _, r := range checks(t, "SMR-FB", 2) {
		got, err := StandardMgO2PerH(input(t, r, "W="), input(t, r, "T="))
		require.NoError(t, err)
		requireValue(t, r, got)
	}
}

// Measured fish, FishBase June 2021: the model is right within a factor of 4.
func TestRestingOxygenAgainstMeasuredFish(t *testing.T) {
	for _, r := range checks(t, "RMR-OBS", 10) {
		mass := input(t, r, "W=")
		got, err := RestingMgO2PerH(mass, input(t, r, "T="))
		require.NoError(t, err)
		ratio := r.Num(t, "value") / (got / mass * 1000)
		require.True(t, ratio > 0.25 && ratio < 4, "%g of %v", ratio, r)
	}
}

// Timmons & Ebeling (recalled).
func TestWorkedOxygenOfFeed(t *testing.T) {
	for _, r := range checks(t, "O2-FEED", 1) {
		got, err := OxygenOfFeed(input(t, r, "feed="))
		require.NoError(t, err)
		requireValue(t, r, got.FishGPerDay)
		require.Equal(t, 2*got.FishGPerDay, got.SystemGPerDay)
	}
}
