package water

// Threshold is a published or customary limit, kept with where it comes from.
// In the sources, FB21 is the FishBase snapshot of June 2021.
type Threshold struct {
	ID         string // of this package
	Topic      string
	Water      string
	Quantity   string
	Low, High  float64 // 0 where the source gives one value or an equation
	Unit       string
	Exposure   string
	Meaning    string
	Source     string
	Known      string // seen in the source, or recalled from memory
	Confidence string
}

// Thresholds gives the limits that the judgements of this package use, in the
// order of their table. They warn; they are no treatment advice.
func Thresholds() []Threshold {
	return append([]Threshold(nil), thresholds...)
}

// ThresholdOf gives one limit by its ID; ok is false when there is none.
func ThresholdOf(id string) (found Threshold, ok bool) {
	for _, t := range thresholds {
		if t.ID == id {
			return t, true
		}
	}
	return Threshold{}, false
}

// The IDs of the limits.
const (
	AmmoniaChronicFresh = "ammonia-chronic-fresh" // an equation: ChronicAmmoniaMgNPerL
	AmmoniaAcuteFresh   = "ammonia-acute-fresh"   // an equation: AcuteAmmoniaMgNPerL
	AmmoniaChronicSalt  = "ammonia-chronic-salt"
	AmmoniaAcuteSalt    = "ammonia-acute-salt"
	AmmoniaWorkingFresh = "ammonia-working-fresh"
	AmmoniaHarmFresh    = "ammonia-harm-fresh"
	NitriteLethalFresh  = "nitrite-lethal-fresh"
	NitriteWorkingFresh = "nitrite-working-fresh"
	NitriteWorkingSalt  = "nitrite-working-salt"
	NitrateCeiling      = "nitrate-ceiling"
	NitrateFresh        = "nitrate-fresh"
	NitrateSalt         = "nitrate-salt"
	OxygenWarm          = "oxygen-warm"
)

const (
	epa2013 = "US EPA 2013 EPA 822-R-13-001"
	epa1989 = "US EPA 1989 EPA 440/5-88-004"
	camargo = "Camargo et al. 2005"
)

var thresholds = []Threshold{
	{AmmoniaChronicFresh, "ammonia chronic criterion", "fresh", "TAN-N", 0, 0, "mg N/L",
		"30-day rolling mean; 4-day mean at most 2.5x", "protects mussels too so strict for fish",
		epa2013 + " (final criteria notice 78 FR 52192)",
		"existence seen; equation recalled and self-checked (normalises to 1.0000 at pH 7 and gives 1.9 at pH 7 / 20 C)", "high"},
	{AmmoniaAcuteFresh, "ammonia acute criterion", "fresh", "TAN-N", 0, 0, "mg N/L",
		"1-hour mean", "gives 17 at pH 7 / 20 C", epa2013, "existence seen; equation recalled and self-checked", "high"},
	{AmmoniaChronicSalt, "ammonia chronic criterion", "salt", "un-ionised NH3", 0, 0.035, "mg NH3/L",
		"4-day mean", "", epa1989, "standing of the document seen; number recalled", "high"},
	{AmmoniaAcuteSalt, "ammonia acute criterion", "salt", "un-ionised NH3", 0, 0.233, "mg NH3/L",
		"1-hour mean", "", epa1989, "number recalled", "high"},
	{AmmoniaWorkingFresh, "ammonia working limit", "fresh", "un-ionised NH3", 0, 0.02, "mg NH3/L",
		"continuous", "trade and welfare limit",
		"OATA water quality criteria / UK pet vending conditions; EIFAC 1970 gives 0.025", "recalled", "med"},
	{AmmoniaHarmFresh, "ammonia harm", "fresh", "un-ionised NH3", 0.05, 2, "mg NH3/L",
		"hours-days", "0.05 tissue damage; 2 deaths", "UF/IFAS FA16", "recalled", "med"},
	{NitriteLethalFresh, "nitrite LC50", "fresh", "as recorded (NaNO2 / nitrite)", 1.7, 15, "mg/L",
		"96 h", "Ctenopharyngodon idella soft water; basis ion or N not stated", "FB21 cl50", "seen", "med"},
	{NitriteWorkingFresh, "nitrite working limit", "fresh", "NO2", 0, 0.2, "mg/L",
		"continuous", "trade limit", "OATA criteria", "recalled", "med"},
	{NitriteWorkingSalt, "nitrite working limit", "marine", "NO2", 0, 0.125, "mg/L",
		"continuous", "trade limit", "OATA criteria", "recalled", "med"},
	{NitrateCeiling, "nitrate ceiling (law; older table)", "ornamental", "NO3", 0, 200, "mg/L",
		"", "legal maximum in an older Swiss Table 8", "Swiss TSchV Annex 2 Table 8 (older version)", "seen", "high"},
	{NitrateFresh, "nitrate guidance", "fresh", "NO3-N", 0, 10, "mg N/L",
		"chronic", "most sensitive freshwater animals (about 44 mg NO3/L)", camargo + " Chemosphere 58:1255", "recalled", "med"},
	{NitrateSalt, "nitrate guidance", "marine", "NO3-N", 0, 20, "mg N/L",
		"chronic", "sensitive marine animals", camargo, "recalled", "med"},
	{OxygenWarm, "dissolved oxygen", "fresh warm", "O2", 3.0, 5.5, "mg/L",
		"1-day min 3.0; 7-day mean min 4.0; 30-day mean 5.5", "other life stages; early stages 1-day min 5.0 and 7-day mean 6.0",
		"US EPA 1986 Gold Book / EPA 440/5-86-003", "recalled", "high"},
}
