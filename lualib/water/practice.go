package water

// Practice is a rule of the hobby or the trade without a published standard
// behind it: a default to change, never a check.
type Practice struct {
	Topic              string
	Low, Typical, High float64
	Unit               string
	Remark             string
}

// practiceBasis goes with every row.
const practiceBasis = "common practice, recalled, no published standard behind it"

// Practices gives the rules of practice that go with this package, and what
// they rest on.
func Practices() (rows []Practice, basis string) {
	return append([]Practice(nil), practices...), practiceBasis
}

var practices = []Practice{
	{"nitrifier lag after a step of more than 10 S", 3, 10, 30, "days", "TAN/NO2 spike"},
	{"temperature change during water change", 0, 2, 3, "K", ""},
	{"max single water change without matching", 0.1, 0.25, 0.5, "fraction", ""},
	{"thiosulfate pentahydrate overdose", 1, 1.5, 2, "x of 3.5 mg/mg Cl2", ""},
	{"chlorine in tap water", 0.1, 0.5, 2, "mg/L Cl2", ""},
	{"chloramine in tap water", 0.5, 2, 4, "mg/L as Cl2", ""},
}
