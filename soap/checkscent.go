package soap

import (
	"errors"
	"strconv"
	"strings"

	"example.com/lyewright/fragrance"
)

// markets checks where the soap is sold, and whose law counts.
func (c *checker) markets() {
	list := top("markets")
	for i, market := range c.f.Markets {
		t := list.item(i)
		if market.String() == "" {
			c.fault(t, "", "is not a market whose rules are known", "use EuropeanUnion or UnitedStates", ErrUnknown)
		}
		for j := range i {
			if c.f.Markets[j] == market {
				c.fault(t, market.String(), "stands twice", "leave one of them out", ErrConflict)
				break
			}
		}
	}
	if c.f.Law > WithEU {
		c.fault(top("markets"), "", "is under a law that is not known", "use ByMarkets, IFRAAlone or WithEU", ErrUnknown)
	}
}

// materials checks the maker's own fragrances: their names here, all else where
// fragrances are known.
func (c *checker) materials() {
	if len(c.f.Materials) == 0 {
		return
	}
	list := top("materials")
	if len(c.f.Materials) <= fragrance.MostMaterials {
		for i := range c.f.Materials {
			if id := c.f.Materials[i].ID; id != "" { // said there, where it is missing
				line := list.item(i)
				c.name(line.at("fragrance"), id)
			}
		}
	}
	var err error
	c.scents, err = fragrance.NewShelfContext(c.ctx, c.f.Materials, c.f.law())
	var faults Faults
	if !errors.As(err, &faults) {
		return
	}
	for _, f := range faults {
		f.Path = list.String() + f.Path
		var inputs []string
		if errors.Is(f.Kind, ErrUnknown) && strings.Contains(f.Path, ".blend[") {
			inputs = []string{"materials[].fragrance"}
		}
		c.add(f, inputs...)
	}
}

// misplaced refuses what is the maker's own in a list of another kind, where it would be
// weighed and not judged, and reports whether it did.
func (c *checker) misplaced(t trail, kind AdditionKind, name string) bool {
	switch {
	case name == "":
	case kind != Fragrance && c.f.ownFragrance(name):
		line := t // a copy, so that a line in order costs nothing
		c.fault(line.at(kind.String()), name, "is one of the formula's fragrances", "list it among the fragrances, where it is judged", ErrConflict, "materials", "materials[].fragrance")
		return true
	case kind != Colourant && c.f.ownColourant(name):
		line := t
		c.fault(line.at(kind.String()), name, "is one of the formula's pigments", "list it among the colourants, where it is judged", ErrConflict, "pigments", "pigments[].colourant")
		return true
	}
	return false
}

// look checks what a part is meant to look like.
func (c *checker) look(t trail, p *Part) {
	if p.Look > Pale {
		line := t // a copy, so that a part in order costs nothing
		c.fault(line.at("look"), strconv.Itoa(int(p.Look)), "is not known", "use AnyLook, White or Pale", ErrUnknown)
	}
}
