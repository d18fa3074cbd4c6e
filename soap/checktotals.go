package soap

import "strconv"

// What one formula may hold in all. Its lists alone would allow more, and that would take
// longer than a second: more is refused before it costs anything. A maker's formula of twelve
// parts, each with six colours to match and ten additions, has 72 and 120.
const (
	mostAdditionsInAll    = 1500
	mostMatchedInAll      = 100
	mostMatchSteps        = 2_700_000 // three parts of six colourants at 71 bands, five at 36, twelve in sRGB
	mostConstituentsInAll = 5000      // in all materials of the maker's own, with the parts of blends
)

// totals checks what a formula holds in all.
func (c *checker) totals() {
	additions, matched, steps, constituents, bands := 0, 0, 0, 0, 0
	if c.f.Swatches != nil {
		bands = c.f.Swatches.Bands.Count
	}
	for i := range c.f.Parts {
		p := &c.f.Parts[i]
		matched += len(p.Match)
		steps += matchSteps(len(p.Match), bands)
		additions += len(p.Colourants) + len(p.Fragrances) + len(p.Additives) + len(p.Match)
	}
	for i := range c.f.Materials {
		constituents += len(c.f.Materials[i].Constituents) + len(c.f.Materials[i].Blend)
	}
	over := func(t trail, n, most int, what, remedy string) {
		if n > most {
			c.fault(t, "", "has "+strconv.Itoa(n)+" "+what+" in all", "use at most "+strconv.Itoa(most)+" in one formula, and "+
				remedy, ErrLimit)
		}
	}
	over(top("parts"), additions, mostAdditionsInAll, "additions", "make several formulas")
	over(top("parts"), matched, mostMatchedInAll, "colourants whose loads are looked for", "give the others their loads")
	if steps > mostMatchSteps && matched <= mostMatchedInAll {
		c.fault(top("parts"), "", "have loads to look for that take longer than one formula may",
			"match with four colourants in place of six, which takes a ninth of the time, or read the swatches in fewer "+
				"bands, or make several formulas", ErrLimit)
	}
	over(top("materials"), constituents, mostConstituentsInAll, "constituents",
		"leave out the materials that it does not use")
}
