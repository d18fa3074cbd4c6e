// Package molar holds molar masses in whole milligrams per mole, so that
// quotients of them are exact. They follow from the abridged standard atomic
// weights of IUPAC's CIAAW, table of 2021: H 1.0080, C 12.011, O 15.999,
// Na 22.990, K 39.098 g/mol. The abridged values are recalled; each lies inside
// the interval that CIAAW publishes (read).
package molar

// Atoms, in mg/mol.
const (
	hydrogen  = 1_008
	carbon    = 12_011
	oxygen    = 15_999
	sodium    = 22_990
	potassium = 39_098
)

// Compounds, in mg/mol.
const (
	NaOH               = sodium + oxygen + hydrogen         // 39.997 g/mol
	KOH                = potassium + oxygen + hydrogen      // 56.105
	Water              = 2*hydrogen + oxygen                // 18.015
	Glycerol           = 3*carbon + 8*hydrogen + 3*oxygen   // 92.094
	SodiumCarbonate    = 2*sodium + carbon + 3*oxygen       // 105.988
	PotassiumCarbonate = 2*potassium + carbon + 3*oxygen    // 138.204
	CarbonDioxide      = carbon + 2*oxygen                  // 44.009
	CitricAcid         = 6*carbon + 8*hydrogen + 7*oxygen   // 192.123
	LacticAcid         = 3*carbon + 6*hydrogen + 3*oxygen   // 90.078
	AceticAcid         = 2*carbon + 4*hydrogen + 2*oxygen   // 60.052
	LauricAcid         = 12*carbon + 24*hydrogen + 2*oxygen // 200.322
	PalmiticAcid       = 16*carbon + 32*hydrogen + 2*oxygen // 256.430
	StearicAcid        = 18*carbon + 36*hydrogen + 2*oxygen // 284.484
	OleicAcid          = 18*carbon + 34*hydrogen + 2*oxygen // 282.468
)
