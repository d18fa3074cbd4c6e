package soap_test

import (
	"errors"
	"math/big"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// Nothing is lost or made between what was weighed and what comes of it, to the nanogram:
// the pot is the sum of its lines, a part that was weighed is what it was, and what is
// poured of it is its batter with all that was really added.
func TestNothingIsLostOfWhatWasWeighed(t *testing.T) {
	parts, additions, pastes := 0, 0, 0
	check := func(t *testing.T, f soap.Formula, b soap.Batch) {
		w := b.Weighed
		read := f.Weighed
		equal := func(what string, got, want units.Mass) {
			if got != want {
				t.Errorf("%s: %s, want %s", what, got, want)
			}
		}
		equal("in the pot", w.Batter, linesOfThePot(b, read))
		var poured, dry, batter units.Mass
		weighed := 0
		for i, p := range w.Parts {
			poured, dry, batter = poured.Add(p.Poured), dry.Add(p.Dry), batter.Add(p.Batter)
			got := p.Batter
			names := map[string]units.Mass{}
			for _, a := range p.Additions {
				got = got.Add(a.Mass)
				names[a.Name] = names[a.Name].Add(a.Mass)
				if a.Carrier != nil {
					got = got.Add(a.Carrier.Mass)
					if a.Paste.Mass.Sign() > 0 {
						names[a.Name] = names[a.Name].Add(a.Carrier.Mass)
					}
				}
			}
			equal(p.Name+", poured", p.Poured, got)
			if len(p.Additions) != len(b.Parts[i].Additions) {
				t.Errorf("%s: %d additions, planned %d", p.Name, len(p.Additions), len(b.Parts[i].Additions))
			}
			at := slices.IndexFunc(read.Parts, func(q soap.WeighedPart) bool { return q.Part == p.Name })
			if at < 0 {
				read.Parts = append(slices.Clone(read.Parts), soap.WeighedPart{Part: p.Name})
				at = len(read.Parts) - 1
			}
			if r := read.Parts[at].Batter; r.Read {
				weighed++
				parts++
				equal(p.Name+", batter", p.Batter, r.Mass)
			}
			planned := madeup.Additions(b.Parts[i])
			for _, a := range read.Parts[at].Additions {
				additions++
				if slices.ContainsFunc(p.Additions, func(x soap.AdditionWeighing) bool {
					return x.Name == a.Name &&
						x.Paste.Mass.Sign() > 0
				}) {
					pastes++
				}
				equal(p.Name+", "+a.Name, names[a.Name], a.Mass)
				planned[a.Name] = a.Mass
			}
			carried := madeup.Carriers(b.Parts[i])
			for name, mass := range planned {
				if names[name] != mass && !slices.ContainsFunc(b.Parts[i].Additions, func(x soap.AdditionWeighing) bool {
					return x.Name == name && x.Carrier != nil && carried[x.Carrier.Name].Sign() > 0 && x.Paste.Mass.Sign() > 0
				}) {
					t.Errorf("%s, %s: %s, want %s", p.Name, name, names[name], mass)
				}
			}
		}
		equal("poured", w.Poured, poured)
		equal("dry", w.Dry, dry)
		if weighed == 0 {
			equal("batter of the parts", batter, w.Batter)
		}
		// what is dry is at most what was poured, and its water apart the same as of the plan
		if w.Dry.Compare(w.Poured) > 0 {
			t.Errorf("%s of %s is dry", w.Dry, w.Poured)
		}
	}
	eachWeighed(t, madeup.New(320), 400, 30, func(t *testing.T, f soap.Formula, _, b soap.Batch) { check(t, f, b) })
	m := madeup.New(321)
	for range 200 {
		f := m.Coloured()
		plan, err := f.Batch()
		if err != nil {
			continue
		}
		f.Weighed = m.Weigh(plan, madeup.Stages()[m.IntN(4)], 20)
		b, err := f.Batch()
		if err != nil {
			if !errors.Is(err, soap.ErrImpossible) && !errors.Is(err, soap.ErrRange) {
				t.Error(err)
			}
			continue
		}
		check(t, f, b)
		if t.Failed() {
			t.Fatalf("%+v", f)
		}
	}
	if parts < 200 || additions < 400 || pastes < 5 {
		t.Errorf("%d parts weighed, %d additions, %d pastes", parts, additions, pastes)
	}
}

// linesOfThePot adds up all that went into the pot: as weighed, or as planned.
func linesOfThePot(b soap.Batch, w soap.Weighed) units.Mass {
	var all units.Mass
	for _, o := range b.Oils {
		mass := o.Mass
		for _, r := range w.Oils {
			if r.Oil == o.Oil.ID() {
				mass = r.Mass
			}
		}
		all = all.Add(mass)
	}
	for _, a := range b.Alkalis {
		weighing, _ := a.ToWeigh()
		mass := weighing.Mass
		for _, r := range w.Alkalis {
			if r.Alkali == a.Alkali {
				mass = r.Mass
			}
		}
		all = all.Add(mass)
	}
	for _, a := range b.Acids {
		mass, _ := acidOf(w, a)
		all = all.Add(mass)
	}
	for _, l := range b.Liquids {
		mass, _ := liquidOf(w, l)
		all = all.Add(mass)
	}
	if w.Water.Read {
		return all.Add(w.Water.Mass)
	}
	return all.Add(b.Water.Mass)
}

// The dry mass of a part as weighed, from the masses alone: oils, hydroxide, acids and
// solids of its share of the pot, its additions, carriers but water.
func TestTheDryMassIsThatOfWhatWasWeighed(t *testing.T) {
	eachWeighed(t, madeup.New(322), 200, 25, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		real := plan // with what was weighed in place of the plan
		real.Oils, real.Alkalis, real.Acids, real.Liquids, real.Parts = slices.Clone(plan.Oils), slices.Clone(plan.Alkalis),
			slices.Clone(plan.Acids), slices.Clone(plan.Liquids), nil
		for i := range real.Oils {
			for _, r := range f.Weighed.Oils {
				if r.Oil == real.Oils[i].Oil.ID() {
					real.Oils[i].Mass = r.Mass
				}
			}
		}
		for i := range real.Alkalis {
			a := &real.Alkalis[i]
			for _, r := range f.Weighed.Alkalis {
				if r.Alkali != a.Alkali {
					continue
				}
				a.Dry.Mass = r.Mass
				if a.Strength.Given() {
					a.Dry.Mass = units.Sum{}.Plus(r.Mass, a.Strength.Typical).Mass(units.Nearest)
				}
			}
		}
		for i := range real.Acids {
			real.Acids[i].Mass, _ = acidOf(f.Weighed, real.Acids[i])
		}
		for i := range real.Liquids {
			real.Liquids[i].Mass, _ = liquidOf(f.Weighed, real.Liquids[i])
		}
		pot := dryOf(f, real)
		for i, p := range b.Weighed.Parts {
			of := real
			of.Oils, of.Alkalis, of.Acids, of.Liquids = nil, nil, nil, nil
			of.Parts = []soap.PartBatch{{Additions: p.Additions}}
			own := dryOf(f, of)
			share := over(massFrac(p.Batter), massFrac(b.Weighed.Batter))
			if want := plus(times(pot, share), own); !within(massFrac(p.Dry), want, frac("0.00000004")) {
				t.Errorf("part %d: dry %s, want %s", i, p.Dry, want.FloatString(12))
			}
		}
	})
}

// A batter of 1000 g of oils, and what goes with it; two parts of 60 and 40 %.
func dividedFormula() pieces {
	return plainFormula().with("scale", `"0.1 g"`, "parts",
		`{"part": "base", "share": "60 %"}, {"part": "cloud", "share": "40 %"}`)
}

// The pot may be weighed out with 2 % more than it holds and a division for each line (two
// oils, alkali, water) and part (two), six of 0.1 g; a milligram more is refused. A part
// without a weighing counts as its planned share.
func TestPartsHoldNoMoreThanThePot(t *testing.T) {
	pot := dividedFormula().batch(t).Batter
	most := pot.Add(units.Sum{}.Plus(pot, units.Percent(2)).Mass(units.Down)).Add(units.Milligrams(600))
	base := units.Sum{}.Plus(pot, units.Percent(60)).Mass(units.Nearest)
	text := func(m units.Mass) string { return m.Text(units.Gram, 9) + " g" }
	exact := func(m units.Mass) string { // to the microgram: what a file may say
		return text(m.Round(units.Sum{}.Plus(units.Milligrams(1), units.MilligramsPerGram(1)).Mass(units.Nearest),
			units.Down))
	}
	for name, test := range map[string]struct {
		base, cloud string
		refused     bool
	}{
		"at the most":            {exact(base), exact(most.Sub(base)), false},
		"a milligram above":      {exact(base), exact(most.Sub(base).Add(units.Milligrams(1))), true},
		"both half as much more": {exact(units.Sum{}.Plus(base, units.Percent(150)).Mass(units.Nearest)), exact(base), true},
		"a part as planned":      {exact(units.Sum{}.Plus(base, units.Percent(102)).Mass(units.Nearest)), "", false},
		"too much for the other": {exact(units.Sum{}.Plus(base, units.Percent(104)).Mass(units.Nearest)), "", true},
	} {
		cloud := ""
		if test.cloud != "" {
			cloud = `, "cloud": {"batter": "` + test.cloud + `"}`
		}
		f, faults := read(t, dividedFormula().with("weighed", `{"stage": "parts", "parts": {"base": {"batter": "`+test.base+
			`"}`+cloud+`}}`).text())
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		_, err := f.Batch()
		if refused := err != nil; refused != test.refused {
			t.Errorf("%s: %v", name, err)
		}
		if err == nil {
			continue
		}
		got := faultsOf(t, err)
		if len(got) != 1 || got[0].Path != "weighed.parts" || !errors.Is(got[0].Kind, soap.ErrRange) ||
			strings.Contains(got[0].Sentence(), "planned share") != (test.cloud == "") {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// A third of its plan is a reading that may be meant, a microgram less is warned of, for
// every line that can be weighed; three times its plan is taken, a microgram more refused.
func TestAReadingFarBelowItsPlanIsWarnedOf(t *testing.T) {
	formula := func(weighed string) string {
		return plainFormula().with("scale", `"1 mg"`,
			"water", `{"per_oils": "30 %", "liquids": [{"liquid": "hall milk", "mass": "60 g", "water": "88 %"}]}`,
			"acids", `{"acid": "citric-acid-anhydrous", "load": "9 g", "compensate": true}`,
			"pigments", `{"colourant": "dusk", "density": "2.9 g/mL"}`,
			"parts", `{"part": "base", "share": "60 %", "colourants": [{"colourant": "dusk", "load": "6 g", "carrier": {"liquid": "glycerin", "ratio": "3"}}]}, {"part": "cloud", "share": "40 %"}`,
			"weighed", weighed).text()
	}
	plan := batchOf(t, formula(""))
	water, alkali := plan.Water.Mass, plan.Alkalis[0].Dry.Mass
	micro := units.Sum{}.Plus(units.Milligrams(1), units.MilligramsPerGram(1)).Mass(units.Nearest)
	for subject, test := range map[string]struct {
		plan   units.Mass
		before string
		after  string
	}{
		"weighed.oils.hall-blend":         {units.Grams(500), `{"stage": "pot", "oils": {"hall-blend": "`, `"}}`},
		"weighed.alkali.sodium-hydroxide": {alkali, `{"stage": "pot", "alkali": {"sodium-hydroxide": "`, `"}}`},
		"weighed.water":                   {water, `{"stage": "pot", "water": "`, `"}`},
		"weighed.acids.citric-acid-anhydrous": {
			units.Grams(9), `{"stage": "pot", "acids": {"citric-acid-anhydrous": "`,
			`"}}`,
		},
		"weighed.liquids.hall milk": {units.Grams(60), `{"stage": "pot", "liquids": {"hall milk": "`, `"}}`},
		"weighed.parts.cloud.batter": {
			plan.Parts[1].Batter,
			`{"stage": "parts", "parts": {"base": {"batter": "1 g"}, "cloud": {"batter": "`, `"}}}`,
		},
		"weighed.parts.base.additions.dusk": {
			units.Grams(6),
			`{"stage": "parts", "parts": {"base": {"additions": {"dusk": "`, `"}}}}`,
		},
		"weighed.parts.base.carriers.glycerin": {
			units.Grams(18),
			`{"stage": "parts", "parts": {"base": {"carriers": {"glycerin": "`, `"}}}}`,
		},
	} {
		with := func(m units.Mass) string { return formula(test.before + m.Text(units.Gram, 9) + " g" + test.after) }
		exact, _ := test.plan.Over(units.Whole(3), units.Up)
		third := exact.Round(micro, units.Up)
		for _, try := range []struct {
			mass units.Mass
			far  bool
		}{{third, false}, {third.Sub(micro), true}, {test.plan, false}} {
			b := batchOf(t, with(try.mass))
			i := slices.IndexFunc(b.Findings, func(f soap.Finding) bool {
				return f.Code == "weighed-far" &&
					f.Subject == subject
			})
			if found := i >= 0; found != try.far {
				t.Errorf("%s of %s: %v, %v", subject, try.mass, found, codes(b.Findings))
				continue
			}
			if i >= 0 {
				f := b.Findings[i]
				if f.Severity != soap.Warning || f.Limit.PercentText(3) != "33.333" || f.Value.Compare(f.Limit) >= 0 ||
					f.Unit != "%" {
					t.Errorf("%s: %+v", subject, f)
				}
			}
		}
		// the batter of a part is held to the pot as well
		if subject == "weighed.parts.cloud.batter" {
			continue
		}
		threefold := test.plan.Add(test.plan).Add(test.plan)
		for mass, refused := range map[units.Mass]bool{
			threefold.Round(micro, units.Down):            false,
			threefold.Round(micro, units.Down).Add(micro): true,
		} {
			f, faults := read(t, with(mass))
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			_, err := f.Batch()
			at := refused && err != nil && faultsOf(t, err)[0].Path == subject && errors.Is(err, soap.ErrRange)
			if at != refused || err != nil && !refused && !errors.Is(err, soap.ErrImpossible) {
				t.Errorf("%s of %s: %v", subject, mass, err)
			}
		}
	}
}

// Milk poured twice: 60 g of 88 % water, 4 % fat of 220 mg KOH/g, planned, and 120 g
// weighed. The pot gains 60 g, of which 52.8 g are lye water; the dry mass 60 × 0.12 = 7.2 g.
// The fat's demand doubles, 120 × 0.04 × 220 = 1056 mg of KOH in place of 528. By hand the oils
// demand 1000 g × 190 = 190 g of KOH, the alkali covers 95 % of 190.528 g = 181.0016 g, and
// 1 − 181.0016/191.056 = 5.26254 %.
func TestMilkPouredTwiceBringsItsFatAndWater(t *testing.T) {
	milk := plainFormula().with("water", `{"per_oils": "30 %", "liquids": [{"liquid": "hall milk", "mass": "60 g", "water": "88 %", "fat": "4 %", "saponification": {"low": "218", "typical": "220", "high": "222"}}]}`)
	plan := milk.batch(t)
	b := milk.with("weighed", `{"stage": "pot", "liquids": {"hall milk": "120 g"}}`).batch(t)
	w := b.Weighed
	if got := w.Batter.Sub(plan.Batter); got != units.Grams(60) {
		t.Errorf("the pot gains %s", got)
	}
	if got := w.Dry.Sub(plan.Dry); got != units.Milligrams(7200) {
		t.Errorf("the dry mass gains %s", got)
	}
	if got := w.Lye.Mass.Sub(plan.Lye.Mass); got != units.Milligrams(52800) {
		t.Errorf("the lye gains %s", got)
	}
	if !within(ratioFrac(w.Superfat.Planned), frac("0.05262541"), frac("0.0000001")) {
		t.Errorf("superfat %s", w.Superfat.Planned.PercentText(6))
	}
	if b.Superfat.Planned.Compare(plan.Superfat.Planned) != 0 || len(w.Remedies) != 0 {
		t.Errorf("the plan is %s, offered is %+v", b.Superfat.Planned, w.Remedies)
	}
}

// An acid as weighed takes its alkali. 9 g of anhydrous citric acid, C6H8O7 of 192.123 g/mol
// and three protons, take 9 × 3 × 56.105/192.123 = 7.884714 g of KOH; forgotten, it takes none,
// and the alkali that was added for it is left: 1000 g of oils demand 190 g of KOH, the alkali
// is 180.5 + 7.884714 g, and the superfat 1 − 188.384714/190 = 0.850150 %. Weighed twice it
// takes 15.769428 g: 1 − (188.384714 − 15.769428)/190 = 9.149850 %.
func TestAnAcidAsWeighedTakesItsAlkali(t *testing.T) {
	acid := plainFormula().with("acids", `{"acid": "citric-acid-anhydrous", "load": "9 g", "compensate": true}`)
	for mass, want := range map[string]string{"0 g": "0.850150", "9 g": "5", "18 g": "9.149850"} {
		b := acid.with("weighed", `{"stage": "pot", "acids": {"citric-acid-anhydrous": "`+mass+`"}}`).batch(t)
		if got := b.Weighed.Superfat.Planned; !within(ratioFrac(got), over(frac(want), whole(100)), frac("0.0000001")) {
			t.Errorf("%s: superfat %s, want %s", mass, got.PercentText(6), want)
		}
		if offered := len(b.Weighed.Remedies) > 0; offered != (mass == "0 g") {
			t.Errorf("%s: offered is %+v", mass, b.Weighed.Remedies)
		}
	}
}

// A fragrance really added is what is judged: 2 % of 1000 g of oils is planned, within its
// certificate for the dry bar; 60 g were poured. Beside 0 g nothing is left to judge, and a
// part that got less batter holds more of it.
func TestAFragranceAsWeighedIsJudgedInEveryView(t *testing.T) {
	scented := plainFormula().with("materials", `{"fragrance": "lantern-pear", "allergens": [], "certificates": [{"category": "9", "limit": "4 %", "amendment": "51"}]}`,
		"parts", `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "lantern-pear", "load": "2 % of oils"}]}`)
	if _, over := findingOf(scented.batch(t).Findings, "fragrance-over-cap"); over {
		t.Fatal("the plan passes its limit")
	}
	for mass, over := range map[string]bool{"60 g": true, "20 g": false, "0 g": false} {
		b := scented.with("weighed", `{"stage": "parts", "parts": {"lantern": {"additions": {"lantern-pear": "`+mass+
			`"}}}}`).batch(t)
		f, found := findingOf(b.Findings, "fragrance-over-cap")
		if found != over {
			t.Errorf("%s: %+v", mass, f)
		}
		caps := b.Caps()
		dose := caps.Parts[0].Fragrances[0]
		want, _ := units.ParseMass(mass)
		if dose.Mass != want || caps.Parts[0].Dry != b.Weighed.Parts[0].Dry {
			t.Errorf("%s: cap speaks of %s in %s", mass, dose.Mass, caps.Parts[0].Dry)
		}
		// the dry bar holds what was poured: 60 g more or 20 g less than the plan's
		if got := b.Weighed.Parts[0].Dry.Sub(b.Parts[0].Dry); got != want.Sub(units.Grams(20)) {
			t.Errorf("%s: the dry mass moves by %s", mass, got)
		}
		if over {
			of, _ := want.Per(b.Weighed.Parts[0].Dry)
			if use := over60(of); !within(ratioFrac(f.Value), use, frac("0.000001")) {
				t.Errorf("%s: %s of the limit, want %s", mass, f.Value, use.FloatString(6))
			}
		}
		if b.Parts[0].Additions[0].Mass != units.Grams(20) {
			t.Errorf("the plan became %s", b.Parts[0].Additions[0].Mass)
		}
	}
}

// over60 is what a share of the dry bar uses of a limit of 4 %.
func over60(of units.Ratio) *big.Rat { return over(ratioFrac(of), frac("0.04")) }

// The most of a fragrance is that of the plan: a neighbour that was poured far over its own
// cap is a danger, and no error that hides it.
func TestAMostBesideAnOverdoseStaysThePlan(t *testing.T) {
	scented := plainFormula().with("materials", `{"fragrance": "lantern-pear", "allergens": [], "certificates": [{"category": "9", "limit": "4 %", "amendment": "51"}]},
		{"fragrance": "dusk-plum", "allergens": [], "certificates": [{"category": "9", "limit": "4 %", "amendment": "51"}]}`,
		"parts", `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "lantern-pear", "load": "1 % of oils"}, {"fragrance": "dusk-plum", "load": "max"}]}`)
	plan := scented.batch(t)
	b := scented.with("weighed", `{"stage": "parts", "parts": {"lantern": {"additions": {"lantern-pear": "30 g", "dusk-plum": "90 g"}}}}`).batch(t)
	if b.Parts[0].Additions[1].Mass != plan.Parts[0].Additions[1].Mass {
		t.Errorf("planned is %s, was %s", b.Parts[0].Additions[1].Mass, plan.Parts[0].Additions[1].Mass)
	}
	if _, over := findingOf(b.Findings, "fragrance-over-cap"); !over {
		t.Error("120 g of fragrance are no danger")
	}
}
