package stocking

// Species is one row of the species table: keeping ranges and habits of a
// commonly kept species. The ranges are facts of the trade; each basis says
// where a range comes from.
type Species struct {
	ScientificName  string
	CommonName      string
	Group           string // group of the trade: tetra, cichlid Malawi, marine, ...
	Water           Waters
	TypicalLengthCm float64 // adult total length usually reached in aquaria

	TemperatureC     Range
	TemperatureBasis string
	PH               Range
	PHBasis          string
	HardnessDGH      Range // not known for purely marine species
	HardnessBasis    string
	SalinityPSU      Range
	SalinityBasis    string

	Diet        Diet
	DietDetail  string // what it takes of its diet, may be empty
	Temperament Temperament
	MinGroup    int // least number to keep together
	Gape        Gape
	Level       Level
	Form        Form
	Notes       string // may be empty
	Confidence  Confidence
}

// Range is the interval in which a species is kept.
type Range struct{ Min, Max float64 }

// Known tells whether the table gives the range at all.
func (r Range) Known() bool { return r.Max > r.Min }

// Waters are the kinds of water in which a species is kept.
type Waters struct{ Fresh, Brackish, Marine bool }

// Diet is the kind of food that a species takes.
type Diet string

// The diets of the table.
const (
	Omnivore    Diet = "omnivore"
	Carnivore   Diet = "carnivore"
	Herbivore   Diet = "herbivore"
	Piscivore   Diet = "piscivore"
	Planktivore Diet = "planktivore"
)

// Temperament is how a species treats its company (expert judgement).
type Temperament string

// The temperaments of the table.
const (
	Peaceful       Temperament = "peaceful"
	SemiAggressive Temperament = "semi"
	Aggressive     Temperament = "aggressive"
	Predatory      Temperament = "predatory"
)

// Gape is how large a fish a species can swallow (expert judgement).
type Gape string

// The gape classes of the table, from none to a wide-mouthed ambusher; a biter
// takes pieces of prey of any size.
const (
	GapeNone      Gape = "none"
	GapeSmall     Gape = "small"
	GapeMedium    Gape = "medium"
	GapeLarge     Gape = "large"
	GapePiscivore Gape = "piscivore"
	GapeEngulfer  Gape = "engulfer"
	GapeBiter     Gape = "biter"
)

// Level is where in the water a species lives.
type Level string

// The levels of the table.
const (
	Top    Level = "top"
	Middle Level = "mid"
	Bottom Level = "bottom"
)

// Form is the shape of a body; it chooses the length-weight prior.
type Form string

// The body forms of the table.
const (
	Fusiform  Form = "fusiform"
	ShortDeep Form = "short-deep"
	Elongated Form = "elongated"
	Depressed Form = "depressed"
	EelLike   Form = "eel-like"
	Globiform Form = "globiform"
	Seahorse  Form = "seahorse"
	Shrimp    Form = "shrimp"
	Snail     Form = "snail"
)

// Confidence is how far to trust a row.
type Confidence string

// The degrees of confidence of the table.
const (
	High   Confidence = "high"
	Medium Confidence = "med"
	Low    Confidence = "low"
)
