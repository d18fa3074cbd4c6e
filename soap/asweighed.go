package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/units"
)

// readings says which lines were weighed.
type readings struct{ oils, alkalis []bool }

// A weigher puts what was really weighed in place of the plan, and collects what
// cannot be meant.
type weigher struct {
	*solved // the plan
	w       solved
	read    *Weighed
	faults  Faults
}

// asWeighed gives the batch with the masses that were really weighed in place of
// the planned ones.
func (s *solved) asWeighed() (*solved, Faults) {
	g := weigher{solved: s, w: *s, read: &s.f.Weighed}
	w := &g.w
	w.read = &readings{oils: make([]bool, len(s.oils)), alkalis: make([]bool, len(s.alkalis))}
	w.oils, w.oilHeld, w.alkalis = slices.Clone(s.oils), make([]units.Mass, len(s.oils)), slices.Clone(s.alkalis)
	w.parts, w.shares, w.loads = slices.Clone(s.parts), slices.Clone(s.shares), make([][]loaded, len(s.loads))
	g.carriers()
	g.oils()
	g.lye()
	w.pot = w.liquidSolids.Add(w.acidMass).Add(w.alkali).Add(w.lyeWater)
	for i := range w.oils {
		w.pot = w.pot.Add(w.inPot(i))
	}
	g.batters()
	w.partPot, w.partOils, w.partWater = w.divided(w.pot), w.divided(w.oilTotal), w.divided(w.lyeWater)
	return w, g.faults
}

// slipped reports, and says, that a reading is more than three times its plan. Where
// nothing is planned there is no point to slip.
func (g *weigher) slipped(mass, plan units.Mass, path ...string) bool {
	if plan.Sign() == 0 || mass.Compare(plan.Add(plan).Add(plan)) <= 0 {
		return false
	}
	g.faults.Add("weighed."+strings.Join(path, "."), mass.Text(units.Gram, 6)+" g", "is more than three times its plan, "+plan.Text(units.Gram, 2)+" g", "look for a slipped point; what was weighed wrong by so much cannot be mended", ErrRange)
	return true
}

// carriers come first: they say what of an oil is held back.
func (g *weigher) carriers() {
	w := &g.w
	w.waterHeld = units.Mass{}
	for i := range g.loads {
		w.loads[i] = slices.Clone(g.loads[i])
		g.readCarriers(i)
		for _, l := range w.loads[i] {
			switch carrier := l.addition.Carrier; {
			case !carrier.fromFormula():
			case carrier.In == InWater:
				w.waterHeld = w.waterHeld.Add(l.carrier)
			case l.line >= 0:
				w.oilHeld[l.line] = w.oilHeld[l.line].Add(l.carrier)
			}
		}
	}
}

func (g *weigher) oils() {
	w := &g.w
	w.oilTotal = units.Mass{}
	for i := range w.oils {
		inPot := g.inPot(i)
		for _, o := range g.read.Oils {
			if g.f.lineNamed(o.Oil) == i && !g.slipped(o.Mass, inPot, "oils", o.Oil) {
				inPot, w.read.oils[i] = o.Mass, true
			}
		}
		w.oils[i] = inPot.Add(w.oilHeld[i])
		w.oilTotal = w.oilTotal.Add(w.oils[i])
	}
}

// lye puts alkali, or stock, and water as weighed in place of the planned ones.
func (g *weigher) lye() {
	w := &g.w
	w.alkali, w.stockWater = units.Mass{}, units.Mass{}
	for i := range w.alkalis {
		a := &w.alkalis[i]
		weighing, _ := a.ToWeigh()
		for _, found := range g.read.Alkalis {
			if found.Alkali == a.Alkali && !g.slipped(found.Mass, weighing.Mass, "alkali", a.Alkali.String()) {
				w.read.alkalis[i] = true
				a.Dry.Mass = found.Mass
				if a.Strength.Given() {
					a.Stock.Mass, a.Dry.Mass = found.Mass, found.Mass.Times(a.Strength.Typical, units.Nearest)
				}
			}
		}
		w.alkali = w.alkali.Add(a.Dry.Mass)
		if a.Strength.Given() {
			w.stockWater = w.stockWater.Add(a.Stock.Mass.Sub(a.Dry.Mass))
		}
	}
	if water := g.read.Water; water.Read && !g.slipped(water.Mass, g.waterAdd, "water") {
		w.waterAdd = water.Mass
	}
	w.lyeWater = w.waterAdd.Add(w.stockWater).Add(w.liquidWater)
}

// batters gives each part that was weighed its share of the pot.
func (g *weigher) batters() {
	for i := range g.parts {
		name := g.parts[i].Name
		for _, part := range g.read.Parts {
			if batter := part.Batter; part.Part == name && batter.Read && !g.slipped(batter.Mass, g.partPot[i], "parts", name, "batter") {
				g.w.shares[i], _ = batter.Mass.Per(g.w.pot)
				g.w.parts[i].Share = g.w.shares[i]
			}
		}
	}
}

// readCarriers puts a part's carriers as weighed in place of the planned ones:
// several jugs of one liquid were weighed together, and share what is off.
func (g *weigher) readCarriers(part int) {
	name, loads := g.parts[part].Name, g.w.loads[part]
	for _, read := range g.read.Parts {
		if read.Part != name {
			continue
		}
		for _, carrier := range read.Carriers {
			var jugs []*loaded
			var plan units.Mass
			for i := range loads {
				if c := loads[i].addition.Carrier; c.In != NoLiquid && c.isLiquid(carrier.Liquid) {
					jugs, plan = append(jugs, &loads[i]), plan.Add(loads[i].carrier)
				}
			}
			if g.slipped(carrier.Mass, plan, "parts", name, "carriers", carrier.Liquid) {
				continue
			}
			shares := make([]units.Ratio, len(jugs))
			for i, jug := range jugs {
				shares[i], _ = jug.carrier.Per(plan)
			}
			for i, mass := range units.Apportion(carrier.Mass, shares) {
				jugs[i].carrier, jugs[i].read = mass, true
			}
		}
	}
}
