package stocking

import (
	"errors"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestLookupFindsNames(t *testing.T) {
	tests := []struct{ name, want string }{
		{"Paracheirodon axelrodi", "Paracheirodon axelrodi"},
		{"  paracheirodon  AXELRODI ", "Paracheirodon axelrodi"},
		{"Cardinal tetra", "Paracheirodon axelrodi"},
		{"cárdinal tétra", "Paracheirodon axelrodi"},
		{"boesemans rainbowfish", "Melanotaenia boesemani"},
		{"Boeseman’s rainbowfish", "Melanotaenia boesemani"},
		{"rummy nose tetra", "Hemigrammus rhodostomus"},
		{"red-tailed black shark", "Epalzeorhynchos bicolor"},
		{"Koi", "Cyprinus carpio"},
		{"koi (common carp)", "Cyprinus carpio"},
		{"black tetra", "Gymnocorymbus ternetzi"},
		{"black widow tetra", "Gymnocorymbus ternetzi"},
		{"angelfish", "Pterophyllum scalare"}, // a whole name, though others hold the word
		{"sailfin molly", "Poecilia latipinna"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, err := Lookup(test.name)
			require.NoError(t, err)
			require.Equal(t, test.want, got.ScientificName)
		})
	}
}

// A species is never guessed: part of a name lists what it could mean.
func TestLookupListsWhatANameCouldMean(t *testing.T) {
	tests := []struct {
		name string
		want []string
	}{
		{"Corydoras", []string{"Bronze corydoras", "Peppered corydoras", "Panda corydoras", "Sterba's corydoras"}},
		{"clownfish", []string{"Ocellaris clownfish", "Maroon clownfish"}},
		{"Eartheater", []string{"Eartheater (altifrons)", "Demon eartheater"}},
		{"Channa", []string{"Giant snakehead"}}, // one of its genus here, not one in the trade
		{"cardinal", []string{"Cardinal tetra"}},
		{"red zebra", []string{"Red zebra mbuna"}},
		{"Cardinal tetre", nil},
		{"", nil},
		{" - ", nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := Lookup(test.name)
			var failure *LookupError
			require.True(t, errors.As(err, &failure))
			require.Equal(t, test.want, failure.Matches)
			require.Equal(t, test.name, failure.Name)
		})
	}
}

func TestLookupMessages(t *testing.T) {
	_, err := Lookup("clownfish")
	require.EqualError(t, err, `species: got "clownfish", want one of: Ocellaris clownfish, Maroon clownfish`)
	_, err = Lookup("Pebble fish")
	require.EqualError(t, err, `species: got "Pebble fish", want a scientific or common name of the species table`)
}

// Every name of the table finds its own row.
func TestLookupFindsEveryName(t *testing.T) {
	names := Names()
	for i, s := range species(t) {
		require.Equal(t, []string{s.ScientificName, s.CommonName}, names[2*i:2*i+2])
		for _, name := range []string{s.ScientificName, s.CommonName} {
			got, err := Lookup(name)
			require.NoError(t, err)
			require.Equal(t, s, got)
		}
	}
	require.Len(t, names, 2*len(species(t)))
}

// Callers get copies: what one does to the table no other sees.
func TestTableCannotBeChangedFromOutside(t *testing.T) {
	before := species(t)
	changed := species(t)
	changed[0].CommonName = "changed"
	names := Names()
	slices.Reverse(names)
	require.Equal(t, before, species(t))
}
