package water

import "fmt"

// NitrogenBasis says what a concentration of a nitrogen compound is counted as.
type NitrogenBasis string

// The bases that tests and labels use.
const (
	AsN   NitrogenBasis = "N"
	AsNH3 NitrogenBasis = "NH3"
	AsNH4 NitrogenBasis = "NH4"
	AsNO2 NitrogenBasis = "NO2"
	AsNO3 NitrogenBasis = "NO3"
)

// gramsPerMolN is the mass that carries one mole of nitrogen.
var gramsPerMolN = map[NitrogenBasis]float64{
	AsN:   MassN,
	AsNH3: MassN + 3*MassH,
	AsNH4: MassN + 4*MassH,
	AsNO2: MassN + 2*MassO,
	AsNO3: MassN + 3*MassO,
}

// ConvertNitrogen turns an amount or concentration from one basis to another
// that holds the same nitrogen: 1 mg of N is 4.427 mg of NO3.
//
// Units: any mass or mass concentration, the same in and out.
// Valid range: 0 to 1,000,000,000.
// Accuracy: exact for the molar masses.
// Source: IUPAC standard atomic weights (from memory).
func ConvertNitrogen(value float64, from, to NitrogenBasis) (float64, error) {
	if err := within("nitrogen", "", value, 0, 1e9); err != nil {
		return 0, err
	}
	in, ok := gramsPerMolN[from]
	if !ok {
		return 0, unknownBasis("from", from)
	}
	out, ok := gramsPerMolN[to]
	if !ok {
		return 0, unknownBasis("to", to)
	}
	return value / in * out, nil
}

func unknownBasis(name string, got NitrogenBasis) error {
	return fmt.Errorf("%s: got basis %q, want N, NH3, NH4, NO2 or NO3", name, string(got))
}
