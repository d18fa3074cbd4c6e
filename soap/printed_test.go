package soap_test

import (
	"math/big"
	"slices"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// 200 g of an oil of 214 mg KOH/g demand 42.8 g of KOH, 42.8 × 39.997/56.105 = 30.511926 g of
// NaOH. At 5 % the alkali is 28.986330 g; a scale of 1 g shows 28 g, and those leave
// 1 − 28/30.511926 = 8.232603 %. A stock lye of 50 % is 57.972659 g, printed as 57 g of 28.5 g
// of hydroxide: 6.593900 %.
func TestTheSuperfatAsPrintedIsThatOfTheMassesOnTheSheet(t *testing.T) {
	small := plainFormula().with("oils", `{"oil": "hall-blend", "share": "100 %", "saponification": {"low": "213", "typical": "214", "high": "215"}}`, "size", `{"oils": "200 g"}`, "scale", `"1 g"`)
	for alkali, want := range map[string]string{
		`{"kind": "sodium-hydroxide", "purity": {"low": "99.9 %", "typical": "100 %", "high": "100 %"}}`: "0.08232603",
		`{"kind": "sodium-hydroxide", "stock": {"strength": "50 %"}}`:                                    "0.06593900",
	} {
		b := small.with("alkali", alkali).batch(t)
		if got := b.Superfat.AsPrinted; !within(ratioFrac(got), frac(want), frac("0.00000001")) {
			t.Errorf("%s: as printed %s, want %s", alkali, got, want)
		}
		if got := b.Parts[0].Superfat.AsPrinted; !within(ratioFrac(got), frac(want), frac("0.00000001")) {
			t.Errorf("%s: the part as printed %s, want %s", alkali, got, want)
		}
		if b.Superfat.Planned.PercentText(2) != "5" {
			t.Errorf("%s: planned %s", alkali, b.Superfat.Planned)
		}
	}
}

// What stands on the sheet, line by line, gives the figure: oils into the pot and what is
// held back of them, alkali or stock, the fat of liquids, acids; of a part its share of the pot
// and its own jugs.
func TestTheSuperfatAsPrintedFollowsFromTheLines(t *testing.T) {
	checked := 0
	check := func(t *testing.T, f soap.Formula, b soap.Batch) {
		for part := -1; part < len(b.Parts); part++ {
			pot, own, alkali := new(big.Rat), new(big.Rat), new(big.Rat)
			typical := func(o soap.Oil) *big.Rat { return ratioFrac(o.Saponification().Typical) }
			for i, o := range b.Oils {
				pot = plus(pot, times(massFrac(o.Weigh), typical(f.Oils[i].Oil)))
			}
			for i := range b.Parts {
				for j, a := range b.Parts[i].Additions {
					if a.Carrier == nil || a.Carrier.In != soap.InOil {
						continue
					}
					demand := times(massFrac(a.Carrier.Weigh), typical(a.Carrier.Oil))
					if part < 0 && held(asked(f, i)[j].Carrier) || part == i {
						own = plus(own, demand)
					}
				}
			}
			for i, l := range b.Liquids {
				if line := f.Water.Liquids[i]; line.Fat.Given() {
					pot = plus(pot, times(times(massFrac(l.Weigh), ratioFrac(line.Fat)), ratioFrac(line.Saponification.Plan())))
				}
			}
			for _, a := range b.Alkalis {
				weighing, content := a.ToWeigh()
				koh := times(massFrac(weighing.Weigh), ratioFrac(content.Typical))
				if a.Alkali == soap.SodiumHydroxide {
					koh = times(koh, frac("56105/39997"))
				}
				alkali = plus(alkali, koh)
			}
			for i, a := range b.Acids {
				alkali = minus(alkali, times(massFrac(a.Weigh), neutralised(f.Acids[i])))
			}
			if alkali.Sign() < 0 {
				alkali = new(big.Rat)
			}
			share := whole(1)
			if part >= 0 {
				share = ratioFrac(b.Parts[part].Share)
			}
			demand := plus(times(share, pot), own)
			got := outlookOf(b, part).AsPrinted
			if demand.Sign() == 0 {
				if got.Given() {
					t.Errorf("nothing is printed of its oils, and the superfat is %s", got)
				}
				continue
			}
			checked++
			if want := minus(whole(1), over(times(share, alkali), demand)); !within(ratioFrac(got), want, frac("0.000000001")) {
				t.Errorf("part %d: as printed %s, its lines give %s", part, got, want.FloatString(12))
			}
		}
	}
	madeup.Each(t, madeup.New(330).Benched, 300, check)
	if checked < 500 {
		t.Errorf("%d figures", checked)
	}
}

// What was really weighed is not printed.
func TestNothingIsPrintedOfWhatWasWeighed(t *testing.T) {
	b := plainFormula().with("weighed", `{"stage": "pot", "alkali": {"sodium-hydroxide": "140 g"}}`).batch(t)
	if !b.Superfat.AsPrinted.Given() || b.Weighed.Superfat.AsPrinted.Given() ||
		b.Weighed.Parts[0].Superfat.AsPrinted.Given() {
		t.Errorf("planned %s, as weighed %s", b.Superfat.AsPrinted, b.Weighed.Superfat.AsPrinted)
	}
	for _, r := range b.Weighed.Remedies {
		if r.Superfat.AsPrinted.Given() {
			t.Errorf("%+v", r)
		}
	}
}

// knownCups is a known batter in two parts: cups of base, and on each a swirl of cloud.
// Nothing is added, so that every part is as dense as the pot.
func knownCups(batter, base string) pieces {
	return plainFormula().with("size", `{"batter": "`+batter+`", "vessels": [{"vessel": "cup", "part": "base", "count": 12, "trial": {"count": 10, "mass": "500 g"}},
		{"vessel": "swirl", "part": "cloud", "on": "cup", "trial": {"count": 10, "mass": "200 g"}}]}`,
		"parts", `{"part": "base", "share": "`+base+
			`", "reserve": "0 %"}, {"part": "cloud", "share": "rest", "reserve": "0 %"}`)
}

// 580 g of batter, cups of 50 g and swirls of 20 g. With half of it for each, 290 g fill five
// cups and fourteen swirls; only five cups can be finished. Eight need 400 and 160 g, 71.43 and
// 28.57 % of 560 g: of 580 g that is 414.3 and 165.7 g. Nine would need 630 g.
func TestAKnownBatchSaysWhatItFinishes(t *testing.T) {
	b := knownCups("580 g", "50 %").batch(t)
	if b.Pieces[0].Filled != 5 || b.Pieces[1].Filled != 14 || b.PiecesComplete != 5 {
		t.Errorf("%d cups, %d swirls, %d complete", b.Pieces[0].Filled, b.Pieces[1].Filled, b.PiecesComplete)
	}
	if b.Better == nil || b.Better.PiecesComplete != 8 || b.Better.Parts[0].Name != "base" ||
		b.Better.Parts[0].Share.PercentText(4) != "71.43" || b.Better.Parts[1].Share.PercentText(4) != "28.57" {
		t.Fatalf("%+v", b.Better)
	}
	// divided so, that is what it finishes, and nothing is better
	again := knownCups("580 g", "71.43 %").batch(t)
	if again.PiecesComplete != 8 || again.Better != nil {
		t.Errorf("%d complete, better is %+v", again.PiecesComplete, again.Better)
	}
	// a part whose reserve and loss are kept back asks for that much more: 8 × 50 × 1.1 + 20 and
	// 160 g are 620 g, seven 405 + 140 g
	kept := knownCups("580 g", "50 %").with("parts",
		`{"part": "base", "share": "50 %", "reserve": "10 %", "loss": "20 g"}, {"part": "cloud", "share": "rest",
			"reserve": "0 %"}`).batch(t)
	if kept.PiecesComplete != 4 || kept.Better == nil || kept.Better.PiecesComplete != 7 { // (290 − 20)/1.1 = 245.5 g
		t.Errorf("%d complete, better is %+v", kept.PiecesComplete, kept.Better)
	}
	// one gram below what a fifth cup takes
	if b := knownCups("498 g", "50 %").batch(t); b.PiecesComplete != 4 {
		t.Errorf("%d complete of 249 g", b.PiecesComplete)
	}
	// vessels that say how much is made fill all of it
	if b := knownCups("580 g", "50 %").with("size",
		`{"vessels": [{"vessel": "cup", "part": "base", "count": 12, "volume": "45 mL"}]}`, "parts",
		`{"part": "base"}`).batch(t); b.PiecesComplete != 0 || b.Better != nil {
		t.Errorf("%d, %+v", b.PiecesComplete, b.Better)
	}
}

// A loaf with a top for each of its ten bars is complete bar by bar, in whole loaves: 1000 g
// in one, swirls of 20 g. 1500 g of base are one loaf, 170 g of cloud eight swirls.
func TestALoafIsFinishedBarByBar(t *testing.T) {
	b := plainFormula().with("size", `{"batter": "1670 g", "vessels": [{"vessel": "loaf", "part": "base", "count": 2, "cuts": 10, "trial": {"count": 1, "mass": "1000 g"}},
		{"vessel": "swirl", "part": "cloud", "on": "loaf", "trial": {"count": 10, "mass": "200 g"}}]}`,
		"parts", `{"part": "base", "share": "89.82 %", "reserve": "0 %"}, {"part": "cloud", "share": "rest", "reserve": "0 %"}`).batch(t)
	if b.PiecesComplete != 8 || b.Pieces[0].Filled != 10 {
		t.Errorf("%d complete of %d", b.PiecesComplete, b.Pieces[0].Filled)
	}
	// 20 need 2000 g of base: 10 are all there can be, with 200 g of cloud
	if b.Better == nil || b.Better.PiecesComplete != 10 {
		t.Errorf("%+v", b.Better)
	}
}

// What is offered holds: written into the formula it finishes as many, and more than before.
func TestABetterSplitHoldsWhereItIsWrittenDown(t *testing.T) {
	m := madeup.New(331)
	offered := 0
	for range 400 {
		f := m.Shelved()
		full, err := f.Batch()
		if err != nil || len(f.Parts) < 2 {
			continue
		}
		// the same vessels of a batter that is too small, divided evenly
		f.Superfat, f.Size.Pieces = soap.Superfat{Planned: full.Worked}, 0
		f.Size.Batter = units.Sum{}.Plus(full.Batter, units.Percent(m.Between(40, 90))).Mass(units.Nearest)
		f.Parts = slices.Clone(f.Parts)
		for i := range f.Parts {
			f.Parts[i].Share, f.Parts[i].Rest = units.Percent(100/len(f.Parts)), false
		}
		f.Parts[0].Share, f.Parts[0].Rest = units.Ratio{}, true
		b, err := f.Batch()
		if err != nil {
			continue
		}
		whole := 0
		for i, p := range b.Pieces { // no more than the whole pieces of any of its layers
			if !p.Top && (i == 0 || b.Pieces[i-1].Vessel != p.Vessel) {
				whole += p.Filled
			}
		}
		if f.SizeKnown() && len(f.Size.Vessels) == 1 && b.PiecesComplete > whole {
			t.Errorf("%d complete of %d", b.PiecesComplete, whole)
		}
		if b.Better == nil {
			continue
		}
		offered++
		g := f
		g.Superfat = soap.Superfat{Planned: b.Worked}
		g.Parts = slices.Clone(f.Parts)
		all := units.Whole(0)
		for i := range g.Parts {
			g.Parts[i].Share, g.Parts[i].Rest = b.Better.Parts[i].Share, false
			all = all.Add(b.Better.Parts[i].Share)
		}
		again, err := g.Batch()
		if err != nil {
			t.Errorf("%+v: %v", b.Better, err)
			continue
		}
		if again.PiecesComplete != b.Better.PiecesComplete || b.Better.PiecesComplete <= b.PiecesComplete ||
			!all.Equal(units.Whole(1)) {
			t.Errorf("%d complete, %d with %+v, said %d", b.PiecesComplete, again.PiecesComplete, b.Better.Parts,
				b.Better.PiecesComplete)
		}
	}
	if offered < 5 {
		t.Errorf("%d offered", offered)
	}
}

// 4 g of a sunk moon and 0.2 g of petals are in the whole cup, and not in what is poured: a
// cup of 45 mL holds 45 mL less what the moon displaces, 4 g at the batter's own density.
func TestWhatIsPouredLeavesRoomForWhatIsSunk(t *testing.T) {
	cup := func(embeds string) soap.Batch {
		return plainFormula().with("size", `{"vessels": [{"vessel": "cup", "part": "lantern", "count": 12, "volume": "45 mL"}]}`, "parts", `{"part": "lantern"}`,
			"embeds", embeds, "toppings", `{"topping": "petals", "vessel": "cup", "mass": "0.2 g"}`).batch(t)
	}
	plain, sunk := cup("").Pieces[0], cup(`{"embed": "little moon", "vessel": "cup", "mass": "4 g", "sunk": true}`).Pieces[0]
	nanograms := frac("0.000000002")
	if got := plain.Fresh.Sub(plain.Pour); got != units.Milligrams(200) {
		t.Errorf("petals of %s", got)
	}
	if got := sunk.Fresh.Sub(sunk.Pour); got != units.Milligrams(4200) {
		t.Errorf("moon and petals of %s", got)
	}
	if !within(massFrac(plain.Pour), plus(massFrac(sunk.Pour), whole(4)), nanograms) {
		t.Errorf("%s to pour, and %s beside a moon of 4 g", plain.Pour, sunk.Pour)
	}
}
