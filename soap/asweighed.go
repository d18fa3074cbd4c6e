package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/units"
)

// readings says which lines were weighed, and which of them lie far below their plan.
type readings struct {
	oils, alkalis, acids, liquids []bool
	parts                         []bool       // of which the batter was weighed,
	batters                       []units.Mass // and what it was
	far                           []farReading
}

// farReading is a reading below a third of its plan.
type farReading struct {
	path, name    string
	reading, plan units.Mass
	doubted       bool // a remedy would rest on it, and it may be a slipped point
}

// doubted reports whether a remedy would rest on a reading that may be a slipped point: of what a part got, on its
// batter and on the oil of its carriers. A line of 0 g was forgotten, and no point slipped; but alkali is never added
// on the word of a reading so far off, not of 0 g either.
func (r *readings) doubted() bool {
	return slices.ContainsFunc(r.far, func(far farReading) bool { return far.doubted })
}

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
	w.read = &readings{
		oils: make([]bool, len(s.oils)), alkalis: make([]bool, len(s.alkalis)), acids: make([]bool, len(s.acids)),
		liquids: make([]bool, len(s.liquids)),
		parts:   make([]bool, len(s.parts)), batters: make([]units.Mass, len(s.parts)),
	}
	w.acids, w.liquids = slices.Clone(s.acids), slices.Clone(s.liquids)
	w.oils, w.oilHeld, w.alkalis = slices.Clone(s.oils), make([]units.Mass, len(s.oils)), slices.Clone(s.alkalis)
	w.parts, w.shares, w.loads = slices.Clone(s.parts), slices.Clone(s.shares), make([][]loaded, len(s.loads))
	g.carriers()
	g.oils()
	g.acids()
	g.liquids()
	g.lye()
	w.pot = w.liquidSolids.Add(w.acidMass).Add(w.alkali).Add(w.lyeWater)
	for i := range w.oils {
		w.pot = w.pot.Add(w.inPot(i))
	}
	if w.pot.Sign() <= 0 {
		g.faults.Add("weighed", "0 g", "is all that is in the pot", "look for lines that were forgotten", ErrRange)
		return w, g.faults
	}
	g.batters()
	w.partPot = w.divided(w.pot)
	w.partOils, w.partWater = w.divided(w.oilTotal), w.divided(w.lyeWater)
	g.overfull()
	return w, g.faults
}

// slipped reports, and says, that a reading is more than three times its plan. Where
// nothing is planned there is no point to slip. One below a third of its plan is noted; rests
// says whether a remedy would rest on it.
func (g *weigher) slipped(rests bool, mass, plan units.Mass, name string, path ...string) bool {
	if plan.Sign() == 0 {
		return false
	}
	if mass.Compare(plan.Add(plan).Add(plan)) <= 0 {
		if plan.Compare(mass.Add(mass).Add(mass)) > 0 && !dust(plan) {
			far := farReading{path: "weighed." + strings.Join(path, "."), name: name, reading: mass, plan: plan}
			far.doubted = path[0] == "alkali" || mass.Sign() > 0 && rests
			g.w.read.far = append(g.w.read.far, far)
		}
		return false
	}
	g.faults.Add("weighed."+strings.Join(path, "."), mass.Text(units.Gram, 6)+" g", "is more than three times its plan, "+
		plan.Text(units.Gram, 2)+" g", "look for a slipped point; what was weighed wrong by so much cannot be mended",
		ErrRange)
	return true
}

// carriers come first: they say what of an oil is held back.
func (g *weigher) carriers() {
	w := &g.w
	w.waterHeld = units.Mass{}
	for i := range g.loads {
		w.loads[i] = slices.Clone(g.loads[i])
		g.readAdditions(i)
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
	lines := make([]int, len(g.read.Oils))
	for k, o := range g.read.Oils {
		lines[k] = g.f.lineNamed(o.Oil)
	}
	for i := range w.oils {
		inPot := g.inPot(i)
		for k, o := range g.read.Oils {
			if lines[k] == i && !g.slipped(true, o.Mass, inPot, g.f.Oils[i].Oil.Name(), "oils", o.Oil) {
				inPot, w.read.oils[i] = o.Mass, true
			}
		}
		w.oils[i] = inPot.Add(w.oilHeld[i])
		w.oilTotal = w.oilTotal.Add(w.oils[i])
	}
}

func (g *weigher) acids() {
	w := &g.w
	for i := range w.acids {
		a := &w.acids[i]
		for _, found := range g.read.Acids {
			if sameAcid(a.line.Acid.ID, found.Acid) && !g.slipped(true, found.Mass, a.mass, a.line.Acid.Name, "acids",
				found.Acid) {
				*a, w.read.acids[i] = a.line.weighing(found.Mass), true
			}
		}
	}
	w.addAcids()
}

func (g *weigher) liquids() {
	w := &g.w
	for i := range w.liquids {
		l := &w.liquids[i]
		for _, found := range g.read.Liquids {
			if sameName(found.Liquid, l.line.Name) && !g.slipped(true, found.Mass, l.mass, found.Liquid, "liquids",
				found.Liquid) {
				*l, w.read.liquids[i] = l.line.weighing(found.Mass), true
			}
		}
	}
	w.addLiquids()
}

// lye puts alkali, or stock, and water as weighed in place of the planned ones.
func (g *weigher) lye() {
	w := &g.w
	w.alkali, w.stockWater = units.Mass{}, units.Mass{}
	for i := range w.alkalis {
		a := &w.alkalis[i]
		weighing, _ := a.ToWeigh()
		for _, found := range g.read.Alkalis {
			if found.Alkali == a.Alkali && !g.slipped(true, found.Mass, weighing.Mass, a.Alkali.Name(), "alkali", found.key()) {
				w.read.alkalis[i] = true
				a.Dry.Mass = found.Mass
				if a.Strength.Given() {
					a.Stock.Mass, a.Dry.Mass = found.Mass, product(found.Mass, a.Strength.Typical, units.Nearest)
				}
			}
		}
		w.alkali = w.alkali.Add(a.Dry.Mass)
		if a.Strength.Given() {
			w.stockWater = w.stockWater.Add(a.Stock.Mass.Sub(a.Dry.Mass))
		}
	}
	if water := g.read.Water; water.Read && !g.slipped(true, water.Mass, g.waterAdd, "water", "water") {
		w.waterAdd = water.Mass
	}
	w.lyeWater = w.waterAdd.Add(w.stockWater).Add(w.liquidWater)
	w.waterAsked = w.lyeWater.Add(w.waterHeld).Add(w.acidOwn)
}

// batters gives each part that was weighed its share of the pot.
func (g *weigher) batters() {
	for i := range g.parts {
		name := g.parts[i].Name
		for _, part := range g.read.Parts {
			if batter := part.Batter; part.Part == name && batter.Read &&
				!g.slipped(true, batter.Mass, g.partPot[i], name, "parts", name, "batter") {
				g.w.shares[i], _ = batter.Mass.Per(g.w.pot)
				g.w.parts[i].Share = g.w.shares[i]
				g.w.read.parts[i], g.w.read.batters[i] = true, batter.Mass
			}
		}
	}
}

// overfull finds parts that together hold more than the pot as weighed: by over 2 % and a
// division for each line and part. One that was not weighed counts as its planned share.
func (g *weigher) overfull() {
	w := &g.w
	if !slices.Contains(w.read.parts, true) {
		return
	}
	var all units.Mass
	for _, mass := range w.partPot {
		all = all.Add(mass)
	}
	most := w.pot.Add(product(w.pot, units.Percent(2), units.Down))
	most = most.Add(product(w.scale, units.Whole(len(w.oils)), units.Nearest))
	most = most.Add(product(w.small, units.Whole(len(w.alkalis)+1+len(w.liquids)+len(w.acids)+len(w.parts)),
		units.Nearest))
	if all.Compare(most) <= 0 {
		return
	}
	reason, remedy := "is more batter than the "+w.pot.Text(units.Gram, 2)+" g in the pot as weighed",
		"look for a slipped point, here or among what went into the pot"
	if slices.Contains(w.read.parts, false) {
		reason += " (parts without a weighing count as their planned share)"
		remedy = "weigh the other parts too, or look for a slipped point"
	}
	g.faults.Add("weighed.parts", all.Text(units.Gram, 6)+" g", reason, remedy, ErrRange)
}

// readAdditions puts a part's additions as weighed in place of the planned ones: several of
// one name were weighed together, and share what is off. Of a paste its carrier was weighed
// with it.
func (g *weigher) readAdditions(part int) {
	name, loads := g.parts[part].Name, g.w.loads[part]
	for _, read := range g.read.Parts {
		if read.Part != name {
			continue
		}
		for _, addition := range read.Additions {
			var lines []*loaded
			var plans []units.Mass
			var plan units.Mass
			oily := false
			for i := range loads {
				if l := &loads[i]; sameName(l.addition.Name, addition.Name) {
					oily = oily || l.addition.Carrier.Paste && l.addition.Carrier.In == InOil
					lines, plans = append(lines, l), append(plans, l.weighedAs())
					plan = plan.Add(l.weighedAs())
				}
			}
			if g.slipped(oily, addition.Mass, plan, addition.Name, "parts", name, "additions", addition.key()) {
				continue
			}
			for i, mass := range apportioned(addition.Mass, plans, plan) {
				lines[i].take(mass)
			}
		}
	}
}

// weighedAs gives the mass of the line that is weighed: of a paste with its carrier.
func (l *loaded) weighedAs() units.Mass {
	if l.addition.Carrier.Paste {
		return l.mass.Add(l.carrier)
	}
	return l.mass
}

// take puts what was weighed in place of the plan.
func (l *loaded) take(mass units.Mass) {
	l.mass, l.taken = mass, true
	if carrier := l.addition.Carrier; carrier.Paste {
		l.mass, _ = mass.Over(carrier.Ratio.Add(units.Whole(1)), units.Nearest)
		l.carrier, l.read = mass.Sub(l.mass), true
	}
}

// apportioned divides a reading as what it stands for is planned, to the nanogram; where
// nothing is planned, the first has it.
func apportioned(reading units.Mass, plans []units.Mass, plan units.Mass) []units.Mass {
	shares := make([]units.Ratio, len(plans))
	for i := range plans {
		shares[i], _ = plans[i].Per(plan)
	}
	return units.Apportion(reading, shares)
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
			var plans []units.Mass
			var plan units.Mass
			for i := range loads {
				l := &loads[i]
				if c := l.addition.Carrier; c.In != NoLiquid && c.isLiquid(carrier.Liquid) && !(c.Paste && l.taken) {
					jugs, plans, plan = append(jugs, l), append(plans, l.carrier), plan.Add(l.carrier)
				}
			}
			if g.slipped(len(jugs) > 0 && jugs[0].addition.Carrier.In == InOil, carrier.Mass, plan, carrier.Liquid, "parts",
				name, "carriers", carrier.Liquid) {
				continue
			}
			for i, mass := range apportioned(carrier.Mass, plans, plan) {
				jugs[i].carrier, jugs[i].read = mass, true
			}
		}
	}
}
