package stocking

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func species(t *testing.T) []Species {
	t.Helper()
	all, err := All()
	require.NoError(t, err)
	return all
}

// Every row must be complete, ordered and inside the range of its measures.
func TestSpeciesRowsAreComplete(t *testing.T) {
	all := species(t)
	require.GreaterOrEqual(t, len(all), 181)
	for _, s := range all {
		for what, text := range map[string]string{
			"scientific name": s.ScientificName, "common name": s.CommonName, "group": s.Group,
			"temperature basis": s.TemperatureBasis, "pH basis": s.PHBasis, "salinity basis": s.SalinityBasis,
		} {
			require.NotEmpty(t, strings.TrimSpace(text), "%s of %s", what, s.ScientificName)
		}
		require.Regexp(t, regexp.MustCompile(`^[A-Z][a-z]+ [a-z]+$`), s.ScientificName)
		require.True(t, s.TypicalLengthCm > 0 && s.TypicalLengthCm <= maxLengthCm, s.ScientificName)
		require.True(t, s.MinGroup >= 1 && s.MinGroup <= 50, s.ScientificName)
		requireOrdered(t, s, s.TemperatureC, 0, 40)
		requireOrdered(t, s, s.PH, 4, 10)
		requireOrdered(t, s, s.SalinityPSU, 0, 42)
		require.True(t, s.Water.Fresh || s.Water.Brackish || s.Water.Marine, s.ScientificName)
		purelyMarine := s.Water == Waters{Marine: true}
		require.Equal(t, !purelyMarine, s.HardnessDGH.Known(), s.ScientificName)
		require.Equal(t, !purelyMarine, s.HardnessBasis != "", s.ScientificName)
		if s.HardnessDGH.Known() {
			requireOrdered(t, s, s.HardnessDGH, 0, 40)
		}
	}
}

func requireOrdered(t *testing.T, s Species, r Range, low, high float64) {
	t.Helper()
	require.True(t, low <= r.Min && r.Min < r.Max && r.Max <= high, "%s: %v", s.ScientificName, r)
}

// The water named and the salinity given must not contradict each other.
func TestSpeciesWaterAgreesWithSalinity(t *testing.T) {
	for _, s := range species(t) {
		if s.Water.Fresh && !s.Water.Brackish {
			require.Zero(t, s.SalinityPSU.Min, s.ScientificName)
		}
		if s.Water.Fresh {
			// A puffer of rivers and estuaries is kept from 1 PSU.
			require.LessOrEqual(t, s.SalinityPSU.Min, 1.0, s.ScientificName)
		}
		if s.Water.Marine {
			require.GreaterOrEqual(t, s.SalinityPSU.Max, 30.0, s.ScientificName)
		}
		if s.Water.Brackish {
			require.Greater(t, s.SalinityPSU.Max, 0.5, s.ScientificName)
		}
	}
}

func TestSpeciesNamesAreUnique(t *testing.T) {
	owner := map[string]string{}
	for _, s := range species(t) {
		for _, name := range []string{fold(s.ScientificName), fold(s.CommonName)} {
			require.Empty(t, owner[name], "%q names two species", name)
			owner[name] = s.ScientificName
		}
	}
}

func TestSpeciesColumnsKeepToTheirWords(t *testing.T) {
	for _, s := range species(t) {
		require.Contains(t, []Diet{Omnivore, Carnivore, Herbivore, Piscivore, Planktivore}, s.Diet, s.ScientificName)
		require.Contains(t, []Temperament{Peaceful, SemiAggressive, Aggressive, Predatory}, s.Temperament, s.ScientificName)
		require.Contains(t, []Gape{GapeNone, GapeSmall, GapeMedium, GapeLarge, GapePiscivore, GapeEngulfer, GapeBiter}, s.Gape, s.ScientificName)
		require.Contains(t, []Level{Top, Middle, Bottom}, s.Level, s.ScientificName)
		require.Contains(t, []Form{Fusiform, ShortDeep, Elongated, Depressed, EelLike, Globiform, Seahorse, Shrimp, Snail}, s.Form, s.ScientificName)
		require.Contains(t, []Confidence{High, Medium, Low}, s.Confidence, s.ScientificName)
		for _, basis := range []string{s.TemperatureBasis, s.PHBasis, s.HardnessBasis} {
			require.Contains(t, []string{"keeping practice", "keeping literature", ""}, basis, s.ScientificName)
		}
		require.Contains(t, []string{"keeping practice", "class (Venice system: fresh < 0.5)"}, s.SalinityBasis, s.ScientificName)
		require.NotContains(t, s.DietDetail, ")", s.ScientificName)
	}
}

// One row by hand, every column.
func TestSpeciesRowIsReadWhole(t *testing.T) {
	got, err := Lookup("Poecilia latipinna")
	require.NoError(t, err)
	require.Equal(t, Species{
		ScientificName: "Poecilia latipinna", CommonName: "Sailfin molly", Group: "livebearer",
		Water: Waters{true, true, true}, TypicalLengthCm: 10,
		TemperatureC: Range{20, 28}, TemperatureBasis: "keeping literature",
		PH: Range{7.5, 8.5}, PHBasis: "keeping practice",
		HardnessDGH: Range{10, 25}, HardnessBasis: "keeping practice",
		SalinityPSU: Range{0, 35}, SalinityBasis: "keeping practice",
		Diet: Herbivore, Temperament: Peaceful, MinGroup: 4, Gape: GapeSmall, Level: Middle, Form: Fusiform,
		Confidence: Medium,
	}, got)
	got, err = Lookup("Poecilia velifera")
	require.NoError(t, err)
	require.Equal(t, Omnivore, got.Diet)
	require.Equal(t, "algae-leaning", got.DietDetail)
	require.Equal(t, "euryhaline; best above 2 PSU (practice)", got.Notes)
}

// The comment lines of the table are its source and stay with it.
func TestSpeciesTableKeepsItsSource(t *testing.T) {
	require.True(t, strings.HasPrefix(speciesCSV, "# Keeping ranges and habits of commonly kept species."))
	require.Equal(t, 3, strings.Count("\n"+speciesCSV, "\n#"))
}

func TestSpeciesTableFaultsAreNamed(t *testing.T) {
	header, _, _ := strings.Cut(speciesCSV[strings.Index(speciesCSV, "scientific_name"):], "\n")
	const good = "Piscis fictus,Made-up fish,tetra,F,4,23,27,a,5,7,a,1,12,a,0,0.5,a,omnivore,peaceful,8,small,mid,fusiform,,med"
	tests := []struct{ name, text, want string }{
		{"empty", "", "species table: got no rows, want a header"},
		{"number", header + "\n" + strings.Replace(good, ",23,", ",warm,", 1),
			`species table: Piscis fictus: temp_min_c: got "warm", want a number`},
		{"water", header + "\n" + strings.Replace(good, ",F,", ",F/X,", 1),
			`species table: Piscis fictus: water: got "F/X", want F, B or M`},
		{"text", header + "\n" + strings.Replace(good, ",peaceful,", ",,", 1),
			`species table: Piscis fictus: temperament: got "", want text`},
		{"columns", header + "\na,b", "species table: record on line 2: wrong number of fields"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := parse(test.text)
			require.EqualError(t, err, test.want)
		})
	}
	_, err := parse(header + "\n" + good)
	require.NoError(t, err)
}
