package soap

import (
	_ "embed"

	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
)

//go:embed data/acids.txt
var acidTable string

// A FattyAcid is one of the fatty acids that oils are made of. An acid that is added to a
// batch, such as citric acid, is an [lye.Acid].
type FattyAcid struct {
	Symbol      string      // chain length and double bonds: "C18:1"
	Name        string      // chemical name: "oleic acid"
	MolarMass   units.Ratio // g/mol, from the IUPAC abridged atomic weights of 2021
	DoubleBonds int         // carbon-carbon double bonds, which take up iodine
}

// FattyAcids lists the fatty acids that profiles may name, in order of chain
// length and double bonds.
func FattyAcids() []FattyAcid {
	var acids []FattyAcid
	for line := range refdata.Lines(acidTable) {
		acids = append(acids, readAcid(line))
	}
	return acids
}

// LookUpFattyAcid finds a fatty acid by its symbol, such as "C18:1". found is false for any
// other text.
func LookUpFattyAcid(symbol string) (acid FattyAcid, found bool) {
	for line := range refdata.Lines(acidTable) {
		if refdata.Field(line, 0) == symbol {
			return readAcid(line), true
		}
	}
	return FattyAcid{}, false
}

func readAcid(line string) FattyAcid {
	bonds := refdata.Field(line, 5)
	return FattyAcid{
		Symbol:      refdata.Field(line, 0),
		Name:        refdata.Field(line, 1),
		MolarMass:   units.MustRatio(refdata.Field(line, 4)),
		DoubleBonds: int(bonds[0] - '0'),
	}
}
