package water

import "fmt"

// HardnessUnit is a unit of hardness (calcium and magnesium), of alkalinity
// (carbonate hardness), or of both.
type HardnessUnit string

// The units of tests, labels and water reports.
const (
	DGH         HardnessUnit = "dGH"         // German degree of hardness, 10 mg/L as CaO
	DKH         HardnessUnit = "dKH"         // German degree of carbonate hardness
	MeqPerL     HardnessUnit = "meq/L"       // milliequivalents
	MmolPerL    HardnessUnit = "mmol/L"      // of calcium and magnesium ions
	MgPerLCaCO3 HardnessUnit = "mg/L CaCO3"  // the same as ppm in most test kits
	MgPerLCa    HardnessUnit = "mg/L Ca"     // as if all hardness were calcium
	MgPerLHCO3  HardnessUnit = "mg/L HCO3"   // as if all alkalinity were bicarbonate
	GrainPerGal HardnessUnit = "gr/gal"      // grain of CaCO3 per US gallon
	Clark       HardnessUnit = "deg Clark"   // grain of CaCO3 per imperial gallon
	French      HardnessUnit = "deg fH"      // 10 mg/L as CaCO3
	grainMg                  = 64.79891      // by definition
	galUSL                   = 3.785411784   // by definition
	galImpL                  = 4.54609       // by definition
	meqCaCO3                 = massCaCO3 / 2 // mg of CaCO3 in a milliequivalent
	degreeCaCO3              = 10 * massCaCO3 / massCaO
)

// hardnessRow is a unit, its worth in mg/L CaCO3, and what it may measure.
type hardnessRow struct {
	unit                 HardnessUnit
	mgCaCO3              float64
	hardness, alkalinity bool
}

var hardnessUnits = []hardnessRow{
	{DGH, degreeCaCO3, true, false},
	{DKH, degreeCaCO3, false, true},
	{MeqPerL, meqCaCO3, true, true},
	{MmolPerL, massCaCO3, true, false},
	{MgPerLCaCO3, 1, true, true},
	{MgPerLCa, massCaCO3 / MassCa, true, false},
	{MgPerLHCO3, meqCaCO3 / massHCO3, false, true},
	{GrainPerGal, grainMg / galUSL, true, true},
	{Clark, grainMg / galImpL, true, true},
	{French, 10, true, true},
}

// ConvertHardness turns a hardness or an alkalinity from one unit to another.
// It refuses to turn hardness into alkalinity: dGH and dKH have the same size
// but count different ions.
//
// Units: as named by from and to.
// Valid range: 0 to 100,000 of the unit given.
// Accuracy: exact for the definitions and molar masses.
// Source: definitions of the units; 1 dGH is 17.848 mg/L CaCO3, 1 meq/L is
// 50.043 mg/L CaCO3 or 2.8039 dKH.
func ConvertHardness(value float64, from, to HardnessUnit) (float64, error) {
	if err := within("hardness", string(from), value, 0, 100_000); err != nil {
		return 0, err
	}
	in, err := hardnessUnit(from)
	if err != nil {
		return 0, err
	}
	out, err := hardnessUnit(to)
	if err != nil {
		return 0, err
	}
	if !(in.hardness && out.hardness || in.alkalinity && out.alkalinity) {
		return 0, fmt.Errorf("hardness: got %s to %s, want both of hardness or both of alkalinity", from, to)
	}
	return value * in.mgCaCO3 / out.mgCaCO3, nil
}

func hardnessUnit(unit HardnessUnit) (hardnessRow, error) {
	for _, row := range hardnessUnits {
		if row.unit == unit {
			return row, nil
		}
	}
	return hardnessRow{}, fmt.Errorf("hardness: got unit %q, want dGH, dKH, meq/L, mmol/L, mg/L CaCO3, mg/L Ca, mg/L HCO3, gr/gal, deg Clark or deg fH", string(unit))
}
