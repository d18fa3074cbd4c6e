package soap

import "example.com/lyewright/units"

// Composition is what the oils of a batch are made of, all together, as ranges.
type Composition struct {
	// Acids are the fatty acids in order of chain length and double bonds, each
	// with the least and the most there may be of it, of all the fatty acids
	// that are known. The oils are weighted by mass.
	Acids []AcidShare
	// Named is the share of the oils, by mass, whose fatty acids are known, 0 % to 100 %;
	// the others are left out of Acids.
	Named units.Ratio
	// Iodine is the iodine value of the blend (times 100: g of iodine per
	// 100 g). Neither end is given where an oil has none.
	Iodine units.Range
	// Missing are the oils without an iodine value.
	Missing []Oil
}

// Composition works out the fatty acids and the iodine value of all the oils
// of the formula, held back or not. Of each oil it takes [Oil.Profile]; a
// profile's figures are as published and are not scaled to a whole.
func (b Batch) Composition() Composition {
	var c Composition
	var named units.Mass
	low, high := map[string]units.Sum{}, map[string]units.Sum{}
	var iodineLow, iodineHigh units.Sum
	for i := range b.Oils {
		oil, mass := b.Oils[i].Oil, b.Oils[i].Total()
		from, to := oil.Iodine()
		if to.Given() {
			from = from.Or(units.Whole(0)) // an upper limit alone
		}
		if !from.Given() || !to.Given() {
			c.Missing = append(c.Missing, oil)
		}
		iodineLow, iodineHigh = iodineLow.Plus(mass, from), iodineHigh.Plus(mass, to)
		profile := oil.Profile()
		if len(profile.Acids) == 0 {
			continue
		}
		named = named.Add(mass)
		for _, share := range profile.Acids {
			low[share.Acid] = low[share.Acid].Plus(mass, share.Low)
			high[share.Acid] = high[share.Acid].Plus(mass, share.High)
		}
	}
	one := units.Whole(1)
	c.Named, _ = named.Per(b.OilsTotal)
	for _, acid := range FattyAcids() {
		if high[acid.Symbol].Sign() == 0 {
			continue
		}
		share := AcidShare{Acid: acid.Symbol}
		share.Low, _ = low[acid.Symbol].Per(units.Sum{}.Plus(named, one))
		share.High, _ = high[acid.Symbol].Per(units.Sum{}.Plus(named, one))
		c.Acids = append(c.Acids, share)
	}
	if len(c.Missing) == 0 && len(b.Oils) > 0 {
		all := units.Sum{}.Plus(b.OilsTotal, one)
		from, _ := iodineLow.Per(all)
		to, _ := iodineHigh.Per(all)
		c.Iodine = units.Between(from, to)
	}
	return c
}
