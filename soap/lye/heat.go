package lye

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// Heats in J/g and J/(g K). All three are recalled, not read.
const (
	capacityOfWater  = 4.19  // liquid
	capacityOfSodium = 1.49  // solid NaOH; solid KOH, of which no figure is held, counts the same
	heatOfFusion     = 333.6 // of ice at 0 °C
)

// Heats of solution at 25 °C, in kJ per mole of hydroxide, given off.
const (
	// heatAtFive is that of NaOH in 5 mol of water: NBS Circular 500 (1952), as
	// tabulated in Koretsky's textbook (read in a data file of it).
	heatAtFive = 37.761
	// newerHeat is what the value at infinite dilution of 1982 (NBS tables, Wagman
	// and others, 44.51; recalled) exceeds that of 1952 (42.87; read) by.
	newerHeat = 1.64
	// heatOfPotassium is that of KOH at infinite dilution, the only one published
	// and the largest: from formation enthalpies in the CRC Handbook (KOH −424.6,
	// K+ −252.4 kJ/mol; read) and OH− −230.0 (read in another table).
	heatOfPotassium = 57.8
	// heatOfNeutralising is what a mole of protons gives off with a hydroxide in
	// water: from formation enthalpies, water −285.8 (recalled), OH− −230.0 kJ/mol
	// (read). Weak acids give off a few kJ more or less.
	heatOfNeutralising = 55.8
)

// HeatSource is the source of the heats of solution and of neutralisation, of the heat
// capacities of water and of dry alkali, and of the heat of fusion of ice; it says which of
// them are recalled.
func HeatSource() cite.Source {
	return cite.Source{
		Title: "NBS Circular 500, heats of solution of NaOH", Edition: "1952, as tabulated in Koretsky, Engineering and " +
			"Chemical Thermodynamics, read in a data file of it",
		Place: "-37.761 kJ/mol at 5 mol of water, carried to other strengths by the enthalpy equation of Olsson and others " +
			"(1997); cautious: 1.64 kJ/mol more, from the NBS tables of 1982, recalled; KOH: CRC Handbook, infinite dilution; " +
			"heat capacities of water and solid NaOH (4.19, 1.49 J/(g K)) and the heat of fusion of ice (333.6 J/g) recalled; " +
			"acids: 55.8 kJ per mole of protons, of which water's formation enthalpy is recalled",
		How: cite.Computed,
	}
}

// HeatOfSolution says which published heat of solution of NaOH is used. Of KOH there is
// one alone. The zero value is [Cautious].
type HeatOfSolution uint8

// The published heats of solution of NaOH.
const (
	Cautious HeatOfSolution = iota // that of 1982 (recalled), the larger by 1.64 kJ/mol
	Older                          // that of 1952 (read)
)

// Portion is a hydroxide as it goes into a lye: dry, or as a stock lye. It takes the
// temperature of the room.
type Portion struct {
	Alkali Alkali     // which hydroxide it is
	Mass   units.Mass // as weighed, a stock with its water: over 0 g

	// Hydroxide is the mass fraction of hydroxide in it, over 0 % to 100 %: for a bound
	// take the high end of the purity. The rest counts as water.
	Hydroxide units.Ratio

	// Dissolved: the portion is a stock lye, which gives off only the heat of being
	// thinned. Known of NaOH alone.
	Dissolved bool
}

// Mixing is alkali dissolved in water. The zero value lacks everything.
type Mixing struct {
	Water   units.Mass        // 0 g or more; water, ice or both are needed
	WaterAt units.Temperature // 0 °C to 100 °C; needed where there is water
	Ice     units.Mass        // at 0 °C; 0 g or more
	Alkalis []Portion         // one or two: two count as two lyes of one strength
	Acids   []Neutralised     // dissolved in the water before the alkali
	Room    units.Temperature // of the alkali, 0 °C to 100 °C; 25 °C where not given
	Heat    HeatOfSolution    // which published figure is used of NaOH
}

// Neutralised is an acid that the lye neutralises.
type Neutralised struct {
	Acid Acid       // of Acids, or one of one's own with its protons and molar mass
	Pure units.Mass // without the water it is bought in; 0 g or more
}

// moles gives the protons of the acid in mol.
func (n *Neutralised) moles() float64 {
	return n.Pure.Grams() * float64(n.Acid.Protons) / n.Acid.Molar.Float()
}

// Heat is how hot a lye gets if no heat is lost: a bound for a caution, not a
// promise. Real vessels lose heat. It comes from [Mixing.Bound].
type Heat struct {
	Strength units.Ratio                 // of the lye: hydroxide over alkali, water and ice, by mass
	Final    units.Temperature           // the hottest it can be
	Rise     units.TemperatureDifference // above the water, or above ice alone, at 0 °C
	Boils    units.Temperature           // see Solution.Boils; not given of KOH, of two alkalis, above 50 %

	// Extrapolated: the lye holds NaOH and is above 42.5 %, stronger than the heats
	// of solution that were measured.
	Extrapolated bool
}

// Hot reports whether the bound comes within 10 K of boiling; where the boiling
// temperature is not known, whether it is above 100 °C. limit is what it was held
// against. For the 10 K no source is held.
func (h Heat) Hot() (limit units.Temperature, hot bool) {
	if h.Boils.Given() {
		limit = h.Boils.Add(units.Kelvins(-10))
		return limit, h.Final.Compare(limit) >= 0
	}
	limit = units.Celsius(100)
	return limit, h.Final.Compare(limit) > 0
}

// reference is the temperature in °C at which heats of solution hold.
const reference = 25

// Bound gives the hottest that the lye can get. Water, and ice once it is melted,
// are brought to 25 °C, and the alkali from the room's temperature; there it
// dissolves, and what heat is left warms the lye, by the enthalpy equation for
// NaOH, below 25 °C with the heat capacity at 25 °C, and by the heat capacity of
// Laliberté for KOH. Acids add the heat of their neutralisation; their own mass
// would only cool. A stock thinned near 0 °C, which gives off next to nothing, stays
// at 0 °C or above. The sources are [HeatSource], [OlssonSource] and [LaliberteSource].
//
// Refused are figures that are missing or outside their bounds, a stock of KOH, whose
// heat of thinning is not held, more ice than the heat can melt, and a lye stronger than
// dissolves at 20 °C ([Alkali.Saturation]); the last three are [fault.ErrImpossible]. The
// error is [fault.Faults].
func (m Mixing) Bound() (Heat, error) {
	if faults := m.check(); len(faults) > 0 {
		return Heat{}, faults
	}
	strength, total := m.strength()
	if faults := m.checkStrength(strength, total); len(faults) > 0 {
		return Heat{}, faults
	}
	final, ok := m.warmed(strength, m.heat(strength))
	switch {
	case !ok && m.Ice.Sign() == 0:
		final = 0 // a stock thinned near 0 °C gives off nothing, and two heat capacities of it differ
	case !ok:
		return Heat{}, fault.Faults{{
			Path: "ice", Text: m.Ice.String(), Reason: "is more than the heat can melt",
			Remedy: "take less ice", Kind: fault.ErrImpossible,
		}}
	}
	h := Heat{Extrapolated: strength > 0.425 && m.hasSodium()}
	h.Strength, _ = units.RatioOfFloat(strength)
	h.Final, _ = units.CelsiusOfFloat(final)
	start := m.WaterAt
	if m.Water.Sign() == 0 {
		start = units.Celsius(0)
	}
	h.Rise = h.Final.Sub(start)
	if len(m.Alkalis) == 1 {
		h.Boils, _ = Solution{Alkali: m.Alkalis[0].Alkali, Strength: h.Strength}.Boils()
	}
	return h, nil
}

// strength gives that of the lye, hydroxide over all of it, and its mass in g.
func (m Mixing) strength() (strength, total float64) {
	total = m.Water.Add(m.Ice).Grams()
	hydroxide := 0.0
	for i := range m.Alkalis {
		total += m.Alkalis[i].Mass.Grams()
		hydroxide += m.Alkalis[i].grams()
	}
	return hydroxide / total, total
}

func (m Mixing) hasSodium() bool {
	for i := range m.Alkalis {
		if m.Alkalis[i].Alkali == SodiumHydroxide {
			return true
		}
	}
	return false
}

// room gives the temperature that the alkali has.
func (m Mixing) room() units.Temperature {
	if !m.Room.Given() {
		return units.Celsius(reference)
	}
	return m.Room
}

// capacity gives the heat capacity of the portion as it goes in, in J/(g K).
func (p *Portion) capacity() float64 {
	if p.Dissolved && p.Alkali == SodiumHydroxide {
		stock := enthalpyOfSodium(p.Hydroxide.Float())
		return stock.capacity(reference)
	}
	return capacityOfSodium
}

// heat gives all the heat above everything at 25 °C, in J.
func (m Mixing) heat(strength float64) float64 {
	room := m.room()
	heat := -float64(m.Ice.Grams() * (heatOfFusion + capacityOfWater*reference))
	if m.Water.Sign() > 0 {
		heat += float64(m.Water.Grams() * capacityOfWater * (m.WaterAt.Celsius() - reference))
	}
	for i := range m.Acids {
		heat += float64(m.Acids[i].moles() * heatOfNeutralising * 1000)
	}
	for i := range m.Alkalis {
		p := &m.Alkalis[i]
		capacity := p.capacity()
		given := heatOfPotassium
		if p.Alkali == SodiumHydroxide {
			given = solutionHeat(strength)
			if p.Dissolved {
				given -= solutionHeat(p.Hydroxide.Float())
			} else if m.Heat == Cautious {
				given += newerHeat
			}
		}
		moles := p.grams() * 1000 / float64(p.Alkali.milligrams())
		heat += float64(p.Mass.Grams()*capacity*(room.Celsius()-reference)) + float64(moles*given*1000)
	}
	return heat
}

// solutionHeat gives the heat that a mole of NaOH gives off as it dissolves to a
// lye of a strength at 25 °C, in kJ: the equation's own heat of dilution, anchored
// on the published value at 5 mol of water.
func solutionHeat(strength float64) float64 {
	const anchor = float64(molar.NaOH) / (molar.NaOH + 5*molar.Water)
	return heatAtFive + perMole(anchor) - perMole(strength)
}

// perMole gives the enthalpy at 25 °C of the lye that holds a mole of NaOH, less
// that of its water, in kJ.
func perMole(strength float64) float64 {
	lye, water := enthalpyOfSodium(strength), enthalpyOfSodium(0)
	grams := molar.NaOH / 1000.0
	return (float64(grams/strength*lye.at(reference)) - float64(grams*(1-strength)/strength*water.at(reference))) / 1000
}

// warmed gives the temperature in °C at which the lyes hold so much heat above
// 25 °C; ok is false where that lies below 0 °C.
func (m Mixing) warmed(strength, heat float64) (celsius float64, ok bool) {
	sodium := enthalpyOfSodium(strength)
	celsius = reference
	for range 30 { // Newton's method; the heat rises steadily
		have, slope := m.held(&sodium, strength, celsius)
		step := (heat - have) / slope
		celsius += step
		if step < 1e-9 && step > -1e-9 {
			break
		}
	}
	return celsius, celsius >= 0
}

// held gives the heat above 25 °C that the lyes hold at a temperature in °C, in J, and what a kelvin more adds; sodium
// is the enthalpy of NaOH lye of that strength.
func (m Mixing) held(sodium *enthalpy, strength, celsius float64) (have, slope float64) {
	for i := range m.Alkalis {
		p := &m.Alkalis[i]
		grams := p.grams() / strength
		var held, capacity float64
		switch {
		case p.Alkali == PotassiumHydroxide: // Simpson's rule, and beyond the fit's end as it is there
			end := min(celsius, warmestOfPotassium)
			capacity = capacityOfPotassium(strength, end)
			middle := capacityOfPotassium(strength, (end+reference)/2)
			held = float64((end-reference)*(capacityOfPotassium(strength, reference)+4*middle+capacity)/6) +
				float64((celsius-end)*capacity)
		case celsius >= reference:
			held, capacity = sodium.at(celsius)-sodium.at(reference), sodium.capacity(celsius)
		default:
			capacity = sodium.capacity(reference)
			held = (celsius - reference) * capacity
		}
		have += float64(grams * held)
		slope += float64(grams * capacity)
	}
	return have, slope
}

// grams gives the hydroxide of the portion.
func (p *Portion) grams() float64 { return p.Mass.Grams() * p.Hydroxide.Float() }

func (m Mixing) check() fault.Faults {
	var faults fault.Faults
	for _, mass := range []struct {
		path string
		mass units.Mass
	}{{"water", m.Water}, {"ice", m.Ice}} {
		if mass.mass.Sign() < 0 {
			faults.Add(mass.path, mass.mass.String(), "is negative", "give what was weighed, or leave it out", fault.ErrRange)
		}
	}
	if m.Water.Sign() == 0 && m.Ice.Sign() == 0 {
		faults.Add("water", "", "is missing", `give the mass of the water, such as "200 g"`, fault.ErrMissing)
	}
	faults = checkTemperature(faults, "water_temperature", m.WaterAt, m.Water.Sign() > 0 || m.Ice.Sign() == 0)
	faults = checkTemperature(faults, "room", m.Room, false)
	if m.Heat > Older {
		faults.Add("heat", "", "is not known", "use Cautious or Older", fault.ErrUnknown)
	}
	if len(m.Alkalis) == 0 || len(m.Alkalis) > 2 {
		faults.Add("alkali_mass", "", "is missing", "give one alkali, or two", fault.ErrMissing)
	}
	for i := range m.Alkalis {
		faults = m.Alkalis[i].check(faults)
	}
	for i := range m.Acids {
		if a := &m.Acids[i]; a.Acid.Protons < 1 || a.Acid.Molar.Sign() <= 0 || a.Pure.Sign() < 0 {
			faults.Add("acids", a.Acid.ID, "lacks its protons, its molar mass or its mass", "take one of Acids, and a mass",
				fault.ErrRange)
		}
	}
	return faults
}

func (p *Portion) check(faults fault.Faults) fault.Faults {
	faults = checkAlkali(faults, p.Alkali)
	switch {
	case p.Mass.Sign() == 0:
		faults.Add("alkali_mass", "", "is missing", `give the mass of the alkali, such as "100 g"`, fault.ErrMissing)
	case p.Mass.Sign() < 0:
		faults.Add("alkali_mass", p.Mass.String(), "is not above 0 g", "give what was weighed", fault.ErrRange)
	}
	switch {
	case !p.Hydroxide.Given():
		faults.Add("purity", "", "is missing", `give the mass fraction of hydroxide, such as "98 %"`, fault.ErrMissing)
	case p.Hydroxide.Sign() <= 0 || p.Hydroxide.Compare(units.Whole(1)) > 0:
		faults.Add("purity", percentText(p.Hydroxide), "is not above 0 % and up to 100 %",
			"give the hydroxide in what is weighed, carbonate not counted", fault.ErrRange)
	case p.Dissolved && p.Alkali == PotassiumHydroxide:
		faults.Add("alkali", p.Alkali.String(), "gives off a heat of thinning that is not held",
			"dissolve it dry, or leave the heat out", fault.ErrImpossible)
	}
	return faults
}

// checkStrength refuses a lye that would not dissolve at 20 °C: hydroxides fill
// parts of what the solution can hold, and the parts add up.
func (m Mixing) checkStrength(strength, total float64) fault.Faults {
	filled := 0.0
	for i := range m.Alkalis {
		filled += m.Alkalis[i].grams() / m.Alkalis[i].Alkali.Saturation().Float()
	}
	if filled <= total {
		return nil
	}
	share, _ := units.RatioOfFloat(strength)
	return fault.Faults{{
		Path: "alkali_mass", Text: share.PercentText(2) + " %",
		Reason: "of hydroxide is stronger than dissolves at 20 °C", Remedy: "take more water", Kind: fault.ErrImpossible,
	}}
}
