package soap

import (
	"strings"

	"example.com/lyewright/internal/molar"

	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// molarIodine is the molar mass of I2, 2 × 126.90447 g/mol (IUPAC standard
// atomic weight of iodine, read).
func molarIodine() units.Ratio { return units.MustRatio("253.80894") }

// leastCoverage is the share of the acids that a profile must name before a
// saponification value is computed from it.
func leastCoverage() units.Ratio { return units.Percent(90) }

// An AcidShare is the part of one fatty acid in all the fatty acids of an oil,
// by mass. A single figure has Low equal to High; an upper limit alone has Low
// zero.
type AcidShare struct {
	Acid      string      // symbol, such as "C18:1": see [FattyAcids]
	Low, High units.Ratio // 0 % to 100 %
}

// A Profile is the fatty-acid composition of an oil as one source gives it. The zero value
// names no acid.
type Profile struct {
	Acids  []AcidShare // of all the fatty acids of the oil, by mass
	Source cite.Source // where it stands
}

// Coverage gives the sum of the middles of the profile's ranges: how much of
// the fatty acids it names. Wide ranges may add up to more than a whole.
func (p Profile) Coverage() units.Ratio {
	total := units.Whole(0)
	for _, share := range p.Acids {
		total = total.Add(units.Between(share.Low, share.High).Middle())
	}
	return total
}

// SaponificationValue computes the saponification value of the triglycerides
// of these acids without unsaponifiable matter, as a ratio (times 1000: mg KOH
// per g), rounded to 0.000001 mg/g. The middles of the ranges are scaled to a
// whole. With w the mass fractions and M the molar masses of the acids,
//
//	n = Σ w/M,  SV = 56.105 n / (1 + 38.049/3 n)
//
// a number average (harmonic in M): averaging molar masses by mass gives
// coconut oil about 247 instead of 254 mg/g. It is not given where the profile
// names less than 90 % of the acids, or an acid that is not known.
func (p Profile) SaponificationValue() units.Ratio {
	return p.unrounded().Round(9, units.Nearest)
}

func (p Profile) unrounded() units.Ratio {
	n, ok := p.moles()
	if !ok {
		return units.Ratio{}
	}
	return ofGlycerides(n)
}

// ofGlycerides gives the saponification value of the triglycerides of a gram of acids with n
// moles in it.
func ofGlycerides(n units.Ratio) units.Ratio {
	return n.Times(thousandths(molar.KOH)).Over(glyceride(n))
}

// glyceride gives the mass of the triglycerides of a gram of acids, with n
// moles of acid in it: each three gain a glycerol less three waters.
func glyceride(n units.Ratio) units.Ratio {
	return n.Times(thousandths(molarGlyceride)).Over(units.Whole(3)).Add(units.Whole(1))
}

// AcidValue computes the alkali that the acids demand when they are free, not
// glycerides: 56.105 Σ w/M, as SaponificationValue does otherwise: a ratio of masses,
// times 1000 mg KOH per g, not given for the same reasons.
func (p Profile) AcidValue() units.Ratio {
	n, ok := p.moles()
	if !ok {
		return units.Ratio{}
	}
	return n.Times(thousandths(molar.KOH)).Round(9, units.Nearest)
}

// moles gives the moles of acid in a gram of the acids, the middles scaled to
// a whole.
func (p Profile) moles() (n units.Ratio, ok bool) { return p.molesOf(leastCoverage()) }

// molesOf is moles of a profile that names at least so much of the acids.
func (p Profile) molesOf(least units.Ratio) (n units.Ratio, ok bool) {
	coverage := p.Coverage()
	if coverage.Compare(least) < 0 {
		return units.Ratio{}, false
	}
	n = units.Whole(0)
	for _, share := range p.Acids {
		acid, found := LookUpFattyAcid(share.Acid)
		if !found {
			return units.Ratio{}, false
		}
		n = n.Add(units.Between(share.Low, share.High).Middle().Over(acid.MolarMass))
	}
	return n.Over(coverage), true
}

// IodineValue computes the iodine value of the triglycerides of these acids,
// as a ratio (times 100: g of iodine per 100 g), rounded to 0.0001 g per 100 g:
//
//	IV = 253.809 Σ w d/M / (1 + 38.049/3 n)
//
// with d the number of double bonds. It is the general form of AOCS Cd 1c-85,
// and counts the acids that the factors printed there leave out. Unsaponifiable
// matter adds some iodine that it does not see. Not given as for
// SaponificationValue.
func (p Profile) IodineValue() units.Ratio {
	n, ok := p.moles()
	if !ok {
		return units.Ratio{}
	}
	bonds := units.Whole(0)
	for _, share := range p.Acids {
		acid, _ := LookUpFattyAcid(share.Acid)
		middle := units.Between(share.Low, share.High).Middle()
		bonds = bonds.Add(middle.Times(units.Whole(acid.DoubleBonds)).Over(acid.MolarMass))
	}
	return bonds.Over(p.Coverage()).Times(molarIodine()).Over(glyceride(n)).Round(6, units.Nearest)
}

// readProfile reads a profile line of the oil table.
func readProfile(line string) Profile {
	fields := strings.Split(line, "\t")
	p := Profile{Source: sourceOf(fields[1], fields[2], cite.ParseHow(fields[3]))}
	for _, field := range fields[4:] {
		words := strings.Fields(field)
		p.Acids = append(p.Acids, AcidShare{
			Acid: words[0],
			Low:  units.MustRatio(words[1] + "%"),
			High: units.MustRatio(words[2] + "%"),
		})
	}
	return p
}

// profiles reads the profile lines of a stanza of the oil table.
func profiles(stanza string) []Profile {
	var ps []Profile
	for line := range refdata.Lines(stanza) {
		if strings.HasPrefix(line, "profile\t") {
			ps = append(ps, readProfile(line))
		}
	}
	return ps
}
