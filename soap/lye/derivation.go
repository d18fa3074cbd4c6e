package lye

import (
	"math"
	"strconv"
	"strings"

	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// A Derivation is one step of how a figure comes about: a formula, the numbers put into it, and what comes out. All
// are sentences or sums in text, to be read and followed with a pocket calculator, not to be parsed. The zero value
// says nothing.
type Derivation struct {
	Of      string // what is worked out
	Formula string // in words
	Figures string // the formula with its numbers
	Result  string // with its unit
	Because string // where the numbers come from, in words; may be empty

	Sources []cite.Source // of the numbers; may be none
}

// Derivation gives the steps to the density that [Solution.Density] gives, from the published coefficients. The error
// is that of [Solution.Density].
func (s Solution) Derivation() ([]Derivation, error) {
	d, err := s.Density()
	if err != nil {
		return nil, err
	}
	strength, at := s.Strength.Float(), s.At.Celsius()
	of := "Density of a lye of " + s.Strength.PercentText(4) + " % " + s.Alkali.Symbol() + " at " + s.At.Text(2) + " °C"
	last := Derivation{Of: of, Result: d.Text(6) + " g/mL", Sources: []cite.Source{s.Source()}}
	if s.Alkali == PotassiumHydroxide {
		warmth, apparent := apparentPotassium(strength, at)
		p := potassium
		last.Formula = "density = 1 / ((1 − strength) / density of water + 1000 × strength / apparent density of KOH), " +
			"which is " +
			"(c0 × strength + c1) × f / (strength + c2 + c3 × t)"
		last.Figures = "1 / ((1 − " + plain(strength, 8) + ") / " + plain(densityOfWater(at), 8) + " + 1000 × " +
			plain(strength, 8) + " / ((" +
			plain(p.c0, 6) + " × " + plain(strength, 8) + " + " + plain(p.c1, 6) + ") × " + plain(math.Exp(warmth), 9) + " / (" +
			plain(strength, 8) + " + " + plain(p.c2, 9) + " + " + plain(p.c3, 9) + " × " + plain(at, 2) + ")))"
		last.Because = "f = " + plain(math.Exp(warmth), 9) + " is e to the power of 0.000001 × (t + " + plain(p.c4, 6) +
			")²; the apparent density is " + plain(apparent, 4) + " kg/m³"
		return []Derivation{last}, nil
	}
	root := math.Sqrt(1 - strength)
	w := plain(root, 10)
	steps := []Derivation{{
		Of: of, Formula: "w = the square root of the mass fraction of water", Figures: "√(1 − " + plain(strength, 8) + ")",
		Result: w,
	}}
	var factors []string
	for power, row := range olssonDensity {
		factor := plain(polynomial(root, row[:]...), 8)
		factors = append(factors, factor)
		steps = append(steps, Derivation{
			Of: "a" + strconv.Itoa(power), Formula: "a0, a1 and a2 = polynomials in w, with the coefficients of the equation",
			Figures: horner(w, row[:]), Result: factor,
		})
	}
	last.Formula = "density = (a0 + t × (a1 + t × a2)) / 1000"
	t := plain(at, 2)
	last.Figures = "(" + factors[0] + " + " + t + " × (" + factors[1] + " + " + t + " × " + factors[2] + ")) / 1000"
	return append(steps, last), nil
}

// horner writes a polynomial as it is worked out with the fewest steps.
func horner(x string, factors []float64) string {
	var b strings.Builder
	for i, factor := range factors {
		b.WriteString(plain(factor, -1))
		if i < len(factors)-1 {
			b.WriteString(" + " + x + " × ")
			if i < len(factors)-2 {
				b.WriteByte('(')
			}
		}
	}
	b.WriteString(strings.Repeat(")", max(0, len(factors)-2)))
	return b.String()
}

// plain writes a figure with so many decimals at most, without an exponent; of -1 with all it has.
func plain(f float64, most int) string {
	text := strconv.FormatFloat(f, 'f', most, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return strings.Replace(text, "-", "−", 1)
}

// Derivation gives the steps to the bound that [Mixing.Bound] gives: the heat that is given off, and how warm it makes
// the lye. There are none where the bound is held at 0 °C. The error is that of [Mixing.Bound].
func (m Mixing) Derivation() ([]Derivation, error) {
	h, err := m.Bound()
	if err != nil {
		return nil, err
	}
	final := h.Final.Celsius()
	strength, total := m.strength()
	heat := m.heat(strength)
	if _, warm := m.warmed(strength, heat); !warm {
		return nil, nil
	}
	var steps []Derivation
	terms := m.warmth()
	for i := range m.Alkalis {
		p := &m.Alkalis[i]
		given := plain(heatOfPotassium, -1)
		if p.Alkali == SodiumHydroxide {
			step := m.solution(p, strength)
			given, _, _ = strings.Cut(step.Result, " ")
			steps = append(steps, step)
		}
		terms = append(terms, p.Mass.Text(units.Gram, 5)+" × "+plain(p.Hydroxide.Float(), 8)+" / "+
			plain(float64(p.Alkali.milligrams())/1000, 3)+" × "+given)
	}
	for i := range m.Acids {
		a := &m.Acids[i]
		terms = append(terms, a.Pure.Text(units.Gram, 5)+" × "+strconv.Itoa(a.Acid.Protons)+" / "+a.Acid.Molar.Text(3)+" × "+
			plain(heatOfNeutralising, -1))
	}
	kilojoules := plain(heat/1000, 5)
	capacity := m.meanCapacity(strength, total, final)
	return append(steps, Derivation{
		Of: "Heat of the lye",
		Formula: "heat = mass × heat capacity × (its temperature − 25) / 1000 of water and alkali, + hydroxide / M × heat " +
			"of solution, " +
			"+ acid × protons / M × 55.8, all in kJ",
		Figures: strings.Join(terms, " + "), Result: kilojoules + " kJ above 25 °C",
		Because: m.ends(), Sources: []cite.Source{HeatSource()},
	}, Derivation{
		Of: "How warm the lye gets", Formula: "temperature = 25 + 1000 × heat / (lye × its mean heat capacity)",
		Figures: "25 + 1000 × " + kilojoules + " / (" + plain(total, 5) + " × " + plain(capacity, 8) + ")",
		Result:  plain(final, 4) + " °C, if no heat is lost",
		Because: "the mean heat capacity, in J/(g K), is that of a lye of " + h.Strength.PercentText(4) +
			" % from 25 °C to this temperature, by its enthalpy: the two belong together and are found by trial",
		Sources: m.capacitySources(),
	}), nil
}

// solution gives the step to the heat that a mole of NaOH gives off.
func (m Mixing) solution(p *Portion, strength float64) Derivation {
	d := Derivation{Of: SodiumHydroxide.Name(), Sources: []cite.Source{HeatSource(), OlssonSource()}}
	if p.Dissolved {
		from, to := solutionHeat(p.Hydroxide.Float()), solutionHeat(strength)
		d.Formula = "heat of thinning = heat of solution to this lye − heat of solution to the stock lye"
		d.Figures = plain(to, 6) + " − " + plain(from, 6)
		d.Result = plain(to-from, 6) + " kJ/mol"
		return d
	}
	d.Formula = "heat of solution = that in 5 mol of water + from there to this lye, by its enthalpy"
	d.Figures = plain(heatAtFive, -1) + " + " + plain(solutionHeat(strength)-heatAtFive, 6)
	given := solutionHeat(strength)
	if m.Heat == Cautious {
		d.Formula += " + by how much the newer figure is larger"
		d.Figures += " + " + plain(newerHeat, -1)
		given += newerHeat
	}
	d.Figures = strings.Replace(d.Figures, "+ −", "− ", 1)
	d.Result = plain(given, 6) + " kJ/mol"
	return d
}

// warmth gives the terms of the heat that water, ice and alkali bring by their temperatures.
func (m Mixing) warmth() []string {
	capacity := plain(capacityOfWater, -1)
	var terms []string
	if m.Water.Sign() > 0 {
		terms = append(terms, m.Water.Text(units.Gram, 5)+" × "+capacity+" × ("+plain(m.WaterAt.Celsius(), 2)+" − 25) / 1000")
	}
	if m.Ice.Sign() > 0 {
		terms = append(terms, m.Ice.Text(units.Gram, 5)+" × ("+capacity+" × (0 − 25) − "+plain(heatOfFusion, -1)+") / 1000")
	}
	for i := range m.Alkalis {
		p := &m.Alkalis[i]
		terms = append(terms, p.Mass.Text(units.Gram, 5)+" × "+plain(p.capacity(), 8)+" × ("+plain(m.room().Celsius(), 2)+
			" − 25) / 1000")
	}
	return terms
}

// ends says which figures were taken.
func (m Mixing) ends() string {
	text := "heat capacities in J/(g K): water " + plain(capacityOfWater, -1) + ", dry alkali " +
		plain(capacityOfSodium, -1)
	if m.hasPotassium() {
		text += "; of KOH " + plain(heatOfPotassium, -1) + " kJ/mol, the largest"
	}
	return text
}

func (m Mixing) hasPotassium() bool {
	for i := range m.Alkalis {
		if m.Alkalis[i].Alkali == PotassiumHydroxide {
			return true
		}
	}
	return false
}

func (m Mixing) capacitySources() []cite.Source {
	var sources []cite.Source
	if m.hasSodium() {
		sources = append(sources, OlssonSource())
	}
	if m.hasPotassium() {
		sources = append(sources, LaliberteSource())
	}
	return sources
}

// meanCapacity gives the heat that a gram of the lye takes up from 25 °C to a temperature, over the difference.
func (m Mixing) meanCapacity(strength, total, celsius float64) float64 {
	sodium := enthalpyOfSodium(strength)
	held, slope := m.held(&sodium, strength, celsius)
	if apart := celsius - reference; math.Abs(apart) > 0.01 {
		return held / (total * apart)
	}
	return slope / total
}
