package soap

import (
	"slices"
	"strconv"
	"strings"
)

// What one formula may hold in all. Its lists alone would allow more, and that would take
// longer than a second: more is refused before it costs anything. A maker's formula of twelve
// parts, each with six colours to match and ten additions, has 72 and 120.
const (
	mostAdditionsInAll    = 1500
	mostMatchedInAll      = 100
	mostMatchSteps        = 2_700_000 // three parts of six colourants at 71 bands, five at 36, twelve in sRGB
	mostConstituentsInAll = 5000      // in all materials of the maker's own, with the parts of blends
)

// mostNested is how deep blends of blends may nest: the digits of all shares on the way multiply, and a chain of forty
// took seconds.
const mostNested = 6

// nested checks how deep blends of blends go. What leads back to itself is said of the materials.
func (c *checker) nested() {
	materials := c.f.Materials
	faulty := func(f checked) bool { return strings.HasPrefix(f.Path, "materials") }
	if len(materials) == 0 || slices.ContainsFunc(c.found, faulty) {
		return
	}
	depth := make(map[string]int, len(materials))
	for range mostNested + 1 {
		for i := range materials {
			for _, line := range materials[i].Blend {
				depth[materials[i].ID] = max(depth[materials[i].ID], depth[line.Fragrance]+1)
			}
		}
	}
	for i := range materials {
		if id := materials[i].ID; depth[id] > mostNested {
			list := top("materials")
			line := list.item(i)
			c.fault(line.at("blend"), id, "is a blend of blends that nest more than "+strconv.Itoa(mostNested)+" deep",
				"say what it is made of in the end", ErrLimit)
			return
		}
	}
}

// totals checks what a formula holds in all.
func (c *checker) totals() {
	c.nested()
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
