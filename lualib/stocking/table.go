package stocking

import (
	_ "embed" // for the species table
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
)

//go:embed species.csv
var speciesCSV string

// load reads the species table once.
var load = sync.OnceValues(func() (book, error) {
	species, err := parse(speciesCSV)
	return newBook(species), err
})

// All gives the species table in the order of its file. The table is part of
// the program, so a fault in it is a fault of the build.
func All() ([]Species, error) {
	b, err := load()
	return slices.Clone(b.species), err
}

// parse reads a species table: comment lines, a header, a row per species.
func parse(text string) ([]Species, error) {
	reader := csv.NewReader(strings.NewReader(text))
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("species table: %w", err)
	}
	if len(lines) == 0 {
		return nil, fmt.Errorf("species table: got no rows, want a header")
	}
	species := make([]Species, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := newRecord(lines[0], line)
		s := r.species()
		if r.err != nil {
			return nil, fmt.Errorf("species table: %s: %w", s.ScientificName, r.err)
		}
		species = append(species, s)
	}
	return species, nil
}

// record is one row by column name; it keeps its first fault.
type record struct {
	fields map[string]string
	err    error
}

func newRecord(header, line []string) *record {
	r := &record{fields: map[string]string{}}
	for i, name := range header {
		r.fields[name] = line[i]
	}
	return r
}

// species reads every column.
func (r *record) species() Species {
	diet, detail := r.diet()
	return Species{
		ScientificName:   r.text("scientific_name"),
		CommonName:       r.text("common_name"),
		Group:            r.text("group"),
		Water:            r.waters(),
		TypicalLengthCm:  r.number("typical_length_cm"),
		TemperatureC:     Range{r.number("temp_min_c"), r.number("temp_max_c")},
		TemperatureBasis: r.text("temp_basis"),
		PH:               Range{r.number("ph_min"), r.number("ph_max")},
		PHBasis:          r.text("ph_basis"),
		HardnessDGH:      r.hardness(),
		HardnessBasis:    r.fields["dgh_basis"],
		SalinityPSU:      Range{r.number("salinity_min"), r.number("salinity_max")},
		SalinityBasis:    r.text("salinity_basis"),
		Diet:             diet,
		DietDetail:       detail,
		Temperament:      Temperament(r.text("temperament")),
		MinGroup:         int(r.number("min_group")),
		Gape:             Gape(r.text("gape_class")),
		Level:            Level(r.text("level")),
		Form:             Form(r.text("body_form")),
		Notes:            r.fields["notes"],
		Confidence:       Confidence(r.text("confidence")),
	}
}

// fail keeps the first fault of the row.
func (r *record) fail(column, want string) {
	if r.err == nil {
		r.err = fmt.Errorf("%s: got %q, want %s", column, r.fields[column], want)
	}
}

// text reads a column that may not be empty.
func (r *record) text(column string) string {
	if r.fields[column] == "" {
		r.fail(column, "text")
	}
	return r.fields[column]
}

// number reads a column as a number.
func (r *record) number(column string) float64 {
	value, err := strconv.ParseFloat(r.fields[column], 64)
	if err != nil {
		r.fail(column, "a number")
	}
	return value
}

// hardness is empty where it says nothing: in sea water.
func (r *record) hardness() Range {
	if r.fields["dgh_min"] == "" && r.fields["dgh_max"] == "" {
		return Range{}
	}
	return Range{r.number("dgh_min"), r.number("dgh_max")}
}

// waters reads F, B and M with strokes between them.
func (r *record) waters() Waters {
	var w Waters
	for letter := range strings.SplitSeq(r.fields["water"], "/") {
		switch letter {
		case "F":
			w.Fresh = true
		case "B":
			w.Brackish = true
		case "M":
			w.Marine = true
		default:
			r.fail("water", "F, B or M")
		}
	}
	return w
}

// diet splits "carnivore (molluscs)" into the diet and its detail.
func (r *record) diet() (Diet, string) {
	kind, detail, _ := strings.Cut(r.text("diet"), " (")
	return Diet(kind), strings.TrimSuffix(detail, ")")
}
