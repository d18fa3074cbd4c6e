package fragrance

import (
	"math/big"

	"example.com/lyewright/units"
)

// Whether a limit is kept must not hang on how a quotient is rounded: close to it, and
// for what is shown, everything is a fraction of whole numbers.

// shown is how many places of a share are shown: six of a percentage.
const shown = 8

func one() *big.Rat { return big.NewRat(1, 1) }

// fraction gives a ratio as it is; 0 where it is not given.
func fraction(r units.Ratio) *big.Rat {
	if n, d, ok := r.Fraction(); ok {
		return big.NewRat(n, d)
	}
	f, ok := new(big.Rat).SetString(r.Text(40))
	if !ok {
		return new(big.Rat)
	}
	return f
}

// grams gives a mass as a fraction.
func grams(m units.Mass) *big.Rat {
	r, _ := m.Per(units.Grams(1))
	return fraction(r)
}

// toRatio rounds a fraction, not below zero, to so many places.
func toRatio(x *big.Rat, places int, how units.Rounding) units.Ratio {
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
	n := new(big.Int).Mul(x.Num(), scale)
	d := x.Denom()
	if how == units.Nearest {
		n.Add(n.Lsh(n, 1), d)
		d = new(big.Int).Lsh(d, 1)
	}
	n.Quo(n, d)
	if !n.IsInt64() { // far beyond every use: many thousand times a limit
		n.SetInt64(1<<62 - 1)
	}
	return units.Whole(n.Int64()).Over(units.Whole(scale.Int64()))
}

// toMass rounds grams, not below zero, down to a nanogram.
func toMass(x *big.Rat) units.Mass {
	return units.Sum{}.Plus(units.Grams(1), toRatio(x, 9, units.Down)).Mass(units.Down)
}

// exact gives how much of a limit is used; of the certificates where row is the last.
func (v *Verdict) exact(row int) *big.Rat {
	sum := new(big.Rat)
	for j := range v.doses {
		if v.uses[j][row] > 0 {
			use := v.exactUse(j, row)
			sum.Add(sum, use.Mul(use, grams(v.doses[j].Mass)))
		}
	}
	return sum.Quo(sum, grams(v.dry))
}

// exactUse gives what a dose uses of a limit, per mass of it.
func (v *Verdict) exactUse(j, row int) *big.Rat {
	sum := new(big.Rat)
	for _, p := range v.doses[j].Material.get().parts {
		use := new(big.Rat)
		if p.m.certificate.limit.Given() {
			use.Quo(one(), fraction(p.m.certificate.limit))
		}
		if row < len(v.rows) {
			if b, listed := p.m.brings(v.rows[row]); listed {
				share := fraction(b.share)
				share.Quo(share, fraction(b.rule.limit))
				if !b.aside || share.Cmp(use) > 0 {
					use = share
				}
			}
		}
		sum.Add(sum, use.Mul(use, fraction(p.share)))
	}
	return sum
}
