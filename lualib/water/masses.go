package water

// Molar masses of the elements in g/mol, to the digits that the check tables
// were computed with. Source: IUPAC standard atomic weights (from memory).
const (
	MassH  = 1.00794
	MassC  = 12.0107
	MassN  = 14.0067
	MassO  = 15.9994
	MassNa = 22.98977
	MassMg = 24.305
	MassS  = 32.065
	MassCl = 35.453
	MassCa = 40.078
)

// Molar masses of compounds in g/mol.
const (
	massH2O   = 2*MassH + MassO
	massCO2   = MassC + 2*MassO
	massCaO   = MassCa + MassO
	massCaCO3 = MassCa + MassC + 3*MassO
	massHCO3  = MassH + MassC + 3*MassO
	massCl2   = 2 * MassCl
)
