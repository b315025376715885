package stocking

import (
	"fmt"
	"slices"
	"strings"
)

// LookupError tells why a name does not stand for one species.
type LookupError struct {
	Name    string
	Matches []string // common names of the species it could mean; may be empty
}

// Error gives the name and what was wanted.
func (e *LookupError) Error() string {
	if len(e.Matches) == 0 {
		return fmt.Sprintf("species: got %q, want a scientific or common name of the species table", e.Name)
	}
	return fmt.Sprintf("species: got %q, want one of: %s", e.Name, strings.Join(e.Matches, ", "))
}

// book is the species table with its names folded, row by row.
type book struct {
	species            []Species
	scientific, common []string
}

func newBook(species []Species) book {
	b := book{species: species}
	for _, s := range species {
		b.scientific = append(b.scientific, fold(s.ScientificName))
		b.common = append(b.common, fold(s.CommonName))
	}
	return b
}

// Lookup finds a species by its scientific or common name, whatever the case,
// accents, hyphens and apostrophes. A part of a common name in brackets may be
// left out where that leaves one species. A name that fits a species only in
// part (a genus, "clownfish" without its kind) is a *LookupError with what it
// could mean: a species is never guessed.
func Lookup(name string) (Species, error) {
	b, err := load()
	if err != nil {
		return Species{}, err
	}
	wanted := fold(name)
	for i, s := range b.species {
		if wanted == b.scientific[i] || wanted == b.common[i] {
			return s, nil
		}
	}
	near := b.partial(wanted)
	if len(near) == 1 && wanted == fold(withoutBrackets(near[0].CommonName)) {
		return near[0], nil
	}
	failure := &LookupError{Name: name}
	for _, s := range near {
		failure.Matches = append(failure.Matches, s.CommonName)
	}
	return Species{}, failure
}

// partial gives the species in one of whose names every wanted word stands.
func (b book) partial(wanted string) []Species {
	words := strings.Fields(wanted)
	if len(words) == 0 {
		return nil
	}
	var found []Species
	for i, s := range b.species {
		if contains(b.common[i], words) || contains(b.scientific[i], words) {
			found = append(found, s)
		}
	}
	return found
}

// contains tells whether every word stands in a folded name.
func contains(folded string, words []string) bool {
	have := strings.Fields(folded)
	return !slices.ContainsFunc(words, func(word string) bool { return !slices.Contains(have, word) })
}

// withoutBrackets leaves out the parts of a name that stand in brackets.
func withoutBrackets(name string) string {
	before, rest, found := strings.Cut(name, "(")
	for found {
		_, rest, _ = strings.Cut(rest, ")")
		before += rest
		before, rest, found = strings.Cut(before, "(")
	}
	return before
}

// Names lists every scientific name and every common name in the order of the
// table, for a list of near misses.
func Names() []string {
	b, err := load()
	if err != nil {
		return nil
	}
	names := make([]string, 0, 2*len(b.species))
	for _, s := range b.species {
		names = append(names, s.ScientificName, s.CommonName)
	}
	return names
}
