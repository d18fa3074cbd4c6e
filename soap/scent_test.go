package soap_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

func pear(limit string) string {
	return `{"fragrance": "pear", "certificates": [{"category": "9", "limit": "` + limit +
		`", "amendment": "51"}], "allergens": []}`
}

// scentedWith is one part with fragrances.
func scentedWith(fragrances ...string) string {
	return `{"part": "glow", "share": "100 %", "fragrances": [` + strings.Join(fragrances, ", ") + `]}`
}

// smell is a line of a fragrance; moonlight is one of which nothing is known.
func smell(id, load string) string {
	if id == "moonlight" {
		return unlisted(id, load)
	}
	return `{"fragrance": "` + id + `", "load": "` + load + `"}`
}

// unlisted is smell of a fragrance of which nothing is known.
func unlisted(id, load string) string {
	return `{"fragrance": "` + id + `", "unlisted": true, "load": "` + load + `"}`
}

func scentCodes(b soap.Batch, subject string) (found []string) {
	for _, f := range b.Findings {
		if f.Subject == subject && soap.OnFragrance(f) {
			found = append(found, f.Code)
		}
	}
	return found
}

func overCap(b soap.Batch) bool {
	return slices.ContainsFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "fragrance-over-cap" })
}

// The most by hand: U × D0/(1 − U), with D0 the dry mass without the fragrance and U the
// certified limit (the account of usage rates). With pure lye and no carriers D0 is the
// batch without it; the cup of numbers is any formula.
func TestTheMostOfAFragranceByHand(t *testing.T) {
	without := plainFormula().batch(t)
	for _, row := range []struct{ limit, margin, share string }{
		{"2.4 %", "", "0.024/0.976"},
		{"2.4 %", `, "margin": "10 %"`, "0.0216/0.976"},
		{"0.37 %", `, "margin": "0 %"`, "0.0037/0.9963"},
	} {
		b := plainFormula().with("materials", pear(row.limit), "parts", scentedWith(`{"fragrance": "pear", "load": "max"`+
			row.margin+`}`)).batch(t)
		over, under, _ := strings.Cut(row.share, "/")
		want := new(big.Rat).Mul(frac(without.Dry.Text(units.Gram, 9)), frac(over))
		want.Quo(want, frac(under))
		got := b.Parts[0].Additions[0].Mass
		short := new(big.Rat).Sub(want, frac(got.Text(units.Gram, 9)))
		if short.Sign() < 0 || short.Cmp(big.NewRat(1, 1_000_000)) >= 0 { // down to a microgram
			t.Errorf("%v: %s g, want %s", row, got.Text(units.Gram, 9), want.FloatString(9))
		}
		if !b.Formula.Parts[0].Fragrances[0].Load.Max {
			t.Error("the formula of the batch is not the one asked for")
		}
	}
}

// asksMost gives formulas that ask for the most, with carriers of every kind, held back or
// extra, with vessels and without, and of one or two parts.
func asksMost() map[string]pieces {
	carried := func(carrier string) string {
		return `{"fragrance": "clove-bud", "load": "max", "carrier": ` + carrier + `}`
	}
	oils := `{"oil": "olive", "share": "60 %"}, {"oil": "coconut", "share": "25 %"}, {"oil": "stearic-acid-50", "share": "rest"}`
	two := func(first, second string) string {
		return `{"part": "base", "share": "60 %", "fragrances": [` + smell("pear", "1 % of oils") + `, ` + first +
			`]}, {"part": "cloud", "share": "rest", "fragrances": [` + second + `]}`
	}
	vessels := `{"vessels": [{"vessel": "cup", "part": "base", "count": 7, "volume": "55 mL"}, {"vessel": "swirl", "part": "cloud", "on": "cup", "volume": "14 mL"}]}`
	unshared := func(parts string) string {
		return strings.NewReplacer(`"share": "60 %", `, "", `"share": "rest", `, "").Replace(parts)
	}
	with := func(changes ...string) pieces {
		return plainFormula().with(append([]string{"oils", oils, "materials", pear("3 %")}, changes...)...)
	}
	plain := smell("cassia", "max")
	return map[string]pieces{
		"plain":        with("parts", two(smell("clove-bud", "max"), plain)),
		"in water":     with("parts", two(carried(`{"liquid": "water", "ratio": "3"}`), plain)),
		"in glycerin":  with("parts", two(carried(`{"liquid": "glycerin", "ratio": "2.5"}`), plain)),
		"in extra oil": with("parts", two(carried(`{"liquid": "sunflower", "ratio": "2"}`), plain)),
		"in extra fatty acid": with("parts", two(carried(`{"liquid": "stearic-acid-50", "ratio": "2", "from": "extra"}`),
			plain)),
		"in oil held back": with("parts", two(carried(`{"liquid": "olive", "ratio": "4", "from": "formula"}`), plain)),
		"by the batter": with("size", `{"batter": "1300 g"}`, "parts",
			two(carried(`{"liquid": "olive", "ratio": "4", "from": "formula"}`), plain)),
		"from vessels": with("size", vessels, "parts", unshared(two(smell("clove-bud", "max"), plain))),
		"from vessels, in oil": with("size", vessels, "parts",
			unshared(two(carried(`{"liquid": "olive", "ratio": "4", "from": "formula"}`), plain))),
		"a large cap": with("size", vessels, "parts",
			unshared(two(smell("lime-expressed", "max"), smell("cedarwood-virginian", "max")))),
		"of many batches": with("size", strings.Replace(vessels, `"count": 7`, `"count": 7, "moulds": 3`, 1), "parts",
			unshared(two(smell("clove-bud", "max"), plain))),
	}
}

// The most is the most: it passes, and a hundredth of a percent more is a danger,
// whatever carries it and however the batch is sized.
func TestTheMostPassesAndMoreDoesNot(t *testing.T) {
	for name, p := range asksMost() {
		f, faults := read(t, p.text())
		if len(faults) > 0 {
			t.Fatal(name, faults)
		}
		b, err := f.Batch()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if overCap(b) {
			t.Errorf("%s: the most is a danger: %v", name, b.Findings)
		}
		for i := range f.Parts {
			for j := range f.Parts[i].Fragrances {
				if !f.Parts[i].Fragrances[j].Load.Max {
					continue
				}
				for more, want := range map[string]bool{"1": false, "1.0001": true} {
					g := f
					g.Parts = slices.Clone(f.Parts)
					for k := range g.Parts { // every most as its load of oils, this one a little more
						g.Parts[k].Fragrances = slices.Clone(f.Parts[k].Fragrances)
						for l := range g.Parts[k].Fragrances {
							load := &g.Parts[k].Fragrances[l].Load
							if !load.Max {
								continue
							}
							of, _ := b.Parts[k].Additions[l].Mass.Per(b.OilsTotal)
							of = of.Over(b.Parts[k].Share)
							if k == i && l == j {
								of = of.Times(units.MustRatio(more))
							}
							*load = soap.Load{OfOils: of.Round(12, units.Down)}
						}
					}
					other, err := g.Batch()
					if err != nil {
						t.Fatal(name, err)
					}
					if overCap(other) != want {
						t.Errorf("%s: %s times the most of parts[%d].fragrances[%d]: over %v", name, more, i, j, overCap(other))
					}
				}
			}
		}
	}
}

// Asked for as a mass, the most passes, and a nanogram more than the exact most fails;
// on a scale of 1 g, too, where less is weighed: the larger of the two is judged.
func TestANanogramMoreThanTheMostIsADanger(t *testing.T) {
	for _, scale := range []string{`"1 mg"`, `"1 g"`} {
		base := plainFormula().with("scale", scale, "materials", pear("2.4 %"), "parts",
			scentedWith(smell("pear", "10 g"))).batch(t)
		most := base.Caps().Parts[0].Fragrances[0].Most
		nanogram := most.Sub(most.Sub(units.Sum{}.Plus(units.Milligrams(1), units.MustRatio("0.000001")).Mass(units.Nearest)))
		for mass, want := range map[units.Mass]bool{most: false, most.Add(nanogram): true} {
			b := plainFormula().with("scale", scale, "materials", pear("2.4 %"), "parts",
				scentedWith(smell("pear", mass.Text(units.Gram, 9)+" g"))).batch(t)
			if overCap(b) != want {
				t.Errorf("on a scale of %s, %s g: over %v", scale, mass.Text(units.Gram, 9), overCap(b))
			}
			if weighed := b.Parts[0].Additions[0].Weigh; weighed.Compare(mass) > 0 {
				t.Errorf("%v is weighed as %v", mass, weighed)
			}
		}
	}
}

// Where the batter was weighed, what was weighed is judged: a part that got less of it
// holds more fragrance.
func TestWhatWasWeighedIsJudged(t *testing.T) {
	p := func(batter string) pieces {
		return plainFormula().with("materials", pear("2.4 %"), "weighed", `{"stage": "parts", "parts": {"glow": {"batter": "`+
			batter+`"}}}`,
			"parts", `{"part": "glow", "share": "50 %", "fragrances": [`+smell("pear", "2.4 % of oils")+
				`]}, {"part": "night", "share": "rest"}`)
	}
	plan := p("1 g").batch(t)
	for factor, want := range map[string]bool{"1": false, "0.8": true} {
		batter := units.Sum{}.Plus(plan.Parts[0].Batter, units.MustRatio(factor)).Mass(units.Nearest)
		if b := p(batter.Text(units.Gram, 3) + " g").batch(t); overCap(b) != want {
			t.Errorf("%s of the batter: over %v", factor, overCap(b))
		}
	}
}

// European law counts unless the markets leave it out; the flag wins over both. Rose otto
// at 0.06 % of the bar: 0.0012 % of methyl eugenol, between 0.001 (EU) and 0.0017 (IFRA).
func TestWhoseLawCounts(t *testing.T) {
	for _, row := range []struct {
		markets string
		law     soap.Law
		over    bool
	}{
		{"", soap.ByMarkets, true},
		{`"eu"`, soap.ByMarkets, true},
		{`"us", "eu"`, soap.ByMarkets, true},
		{`"us"`, soap.ByMarkets, false},
		{"", soap.IFRAAlone, false},
		{`"eu"`, soap.IFRAAlone, false},
		{`"us"`, soap.WithEU, true},
	} {
		f, faults := read(t, plainFormula().with("markets", row.markets, "parts",
			scentedWith(smell("rose-otto", "0.07 % of oils"))).text())
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		f.Law = row.law
		b, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		if overCap(b) != row.over {
			t.Errorf("%+v: over %v", row, overCap(b))
		}
		if want := map[bool]fragrance.Law{
			true:  fragrance.IFRAAndEU,
			false: fragrance.IFRAAlone,
		}[row.over]; b.Caps().Law != want {
			t.Errorf("%+v: %v", row, b.Caps().Law)
		}
	}
	// What European law prohibits is refused under it alone.
	text := plainFormula().with("materials", `{"fragrance": "old-lily", "constituents": [{"cas": "31906-04-4", "share": "1 %"}]}`).text()
	for law, refused := range map[soap.Law]bool{soap.ByMarkets: true, soap.WithEU: true, soap.IFRAAlone: false} {
		if _, _, err := soap.ParseFormulaBeside(soap.Beside{Law: law}, []byte(text)); (err != nil) != refused {
			t.Errorf("%v: %v", law, err)
		}
	}
}

// What a fragrance does to look and work, and what its papers lack.
func TestFindingsOnFragrance(t *testing.T) {
	in := func(more, id string) string {
		return `{"part": "glow", "share": "100 %"` + more + `, "fragrances": [` + smell(id, "0.05 % of oils") + `]}`
	}
	papers := func(limit, amendment, more string) string {
		return `{"fragrance": "pear", "certificates": [{"category": "9", "limit": "` + limit + `", "amendment": "` +
			amendment + `"}]` + more + `}`
	}
	for _, row := range []struct {
		name, markets, materials, parts, want string
	}{
		{"papers in order", `"us"`, papers("3 %", "51", `, "allergens": []`), in("", "pear"), ""},
		{"a newer certificate", `"us"`, papers("3 %", "52", `, "allergens": ["Linalool"]`), in("", "pear"), ""},
		{"an older certificate", `"us"`, papers("3 %", "50", `, "allergens": []`), in("", "pear"), "certificate-older"},
		{
			"a certificate under European law", "", papers("3 %", "51", `, "allergens": []`), in("", "pear"),
			"fragrance-unjudged",
		},
		{"no allergens", `"us"`, papers("3 %", "51", ""), in("", "pear"), ""}, // said of the whole batch, below
		{"nothing but a name", "", "", in(`, "look": "white", "work": "piped"`, "moonlight"), "fragrance-unjudged"},
		{
			"vanillin in white", `"us"`, papers("3 %", "51",
				`, "allergens": [], "constituents": [{"cas": "121-33-5", "share": "1 %"}]`), in(`, "look": "white"`, "pear"),
			"fragrance-browns",
		},
		{
			"ethyl vanillin in pale", `"us"`, papers("3 %", "51",
				`, "allergens": [], "constituents": [{"cas": "121-32-4", "share": "1 %"}]`), in(`, "look": "pale"`, "pear"),
			"fragrance-browns",
		},
		{"vanillin in any", `"us"`, papers("3 %", "51",
			`, "allergens": [], "constituents": [{"cas": "121-33-5", "share": "1 %"}]`), in(`, "look": "any"`, "pear"), ""},
		{
			"browning, as is said", `"us"`, papers("3 %", "51", `, "allergens": [], "behaviour": ["browns"]`),
			in(`, "look": "white", "work": "piped"`, "pear"), "fragrance-browns",
		},
		{
			"accelerates, piped", `"us"`, papers("3 %", "51", `, "allergens": [], "behaviour": ["accelerates"]`),
			in(`, "work": "piped"`, "pear"), "fragrance-behaviour",
		},
		{
			"accelerates, poured", `"us"`, papers("3 %", "51", `, "allergens": [], "behaviour": ["accelerates"]`),
			in("", "pear"), "fragrance-behaviour",
		},
		{"a ceiling", "", "", in("", "lime-expressed"), "natural-ceiling-used"},
		{"not of the Annex", `"us"`, "", in("", "patchouli"), "fragrance-unjudged"},
		{"a maximum that is not held", "", `{"fragrance": "pear", "complete": true, "allergens": ["Methyl Salicylate"], "constituents": [{"cas": "119-36-8", "share": "1 %"}]}`, in("", "pear"), "fragrance-unjudged"},
		{"the same under IFRA", `"us"`, `{"fragrance": "pear", "complete": true, "allergens": ["Methyl Salicylate"], "constituents": [{"cas": "119-36-8", "share": "1 %"}]}`, in("", "pear"), ""},
		{"too much", `"us"`, papers("0.01 %", "51", `, "allergens": []`), in("", "pear"), "fragrance-over-cap"},
	} {
		p := plainFormula().with("parts", row.parts, "markets", row.markets, "materials", row.materials)
		var got []string
		for _, code := range scentCodes(p.batch(t), "parts[0].fragrances[0]") {
			if !slices.Contains(got, code) {
				got = append(got, code)
			}
		}
		want := strings.Fields(row.want)
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", row.name, got, want)
		}
	}
}

// One finding for all fragrances whose allergens are not listed, wherever they stand; none
// where the soap is sold outside the European Union alone.
func TestAllergensAreAskedForOnceAndWhereALabelNeedsThem(t *testing.T) {
	parts := `{"part": "glow", "share": "50 %", "fragrances": [` + smell("lavender", "1 g") + `, ` + smell("pear", "1 g") + `]},
		{"part": "dusk", "share": "rest", "fragrances": [` + smell("patchouli", "1 g") + `, ` + smell("lavender", "1 g") + `, ` + smell("moonlight", "1 g") + `]}`
	for _, row := range []struct {
		markets, papers string
		names           string
	}{
		{"", `, "allergens": []`, "lavender patchouli"},
		{`"eu"`, `, "allergens": []`, "lavender patchouli"},
		{`"us", "eu"`, `, "allergens": ["Linalool"]`, "lavender patchouli"},
		{`"eu"`, "", "lavender pear patchouli"},
		{`"us"`, "", ""},
	} {
		materials := `{"fragrance": "pear", "certificates": [{"category": "9", "limit": "3 %", "amendment": "51"}]` +
			row.papers + `}`
		got := found(plainFormula().with("markets", row.markets, "materials", materials, "parts", parts).batch(t),
			"allergens-unknown")
		if row.names == "" {
			if len(got) > 0 {
				t.Errorf("%s: %+v", row.markets, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Severity != warning || got[0].Subject != "parts" || strings.Join(got[0].Names,
			" ") != row.names {
			t.Errorf("%s: %+v, want of %s", row.markets, got, row.names)
		}
	}
}

// What seizes is a warning in any part; what accelerates or makes grains is one where it is
// piped, and a note elsewhere. Of clove and cassia oils it is recalled that they accelerate.
func TestWhatAFragranceDoesToTheBatter(t *testing.T) {
	said := func(does string) string {
		return `{"fragrance": "pear", "complete": true, "allergens": [], "constituents": [{"cas": "5989-27-5", "share": "1 %"}], "behaviour": [` + does + `]}`
	}
	for _, row := range []struct{ does, id, poured, piped, how string }{
		{`"seizes"`, "pear", "warning", "warning", "given"},
		{`"accelerates", "seizes"`, "pear", "warning", "warning", "given"},
		{`"accelerates"`, "pear", "note", "warning", "given"},
		{`"rices"`, "pear", "note", "warning", "given"},
		{`"browns"`, "pear", "", "", ""},
		{``, "clove-bud", "note", "warning", "memory"},
		{``, "clove-leaf", "note", "warning", "memory"},
		{``, "clove-stem", "note", "warning", "memory"},
		{``, "cassia", "note", "warning", "memory"},
		{``, "lavender", "", "", ""},
	} {
		for work, want := range map[string]string{"poured": row.poured, "piped": row.piped} {
			p := plainFormula().with("parts", `{"part": "glow", "share": "100 %", "work": "`+work+`", "fragrances": [`+
				smell(row.id, "1 g")+`]}`)
			if row.does != "" {
				p.with("materials", said(row.does))
			}
			got := found(p.batch(t), "fragrance-behaviour")
			if want == "" {
				if len(got) > 0 {
					t.Errorf("%s %s, %s: %+v", row.does, row.id, work, got)
				}
				continue
			}
			if len(got) != 1 || got[0].Severity.String() != want || got[0].Subject != "parts[0].fragrances[0]" ||
				got[0].Source.How.String() != row.how {
				t.Errorf("%s %s, %s: %+v, want a %s, %s", row.does, row.id, work, got, want, row.how)
				continue
			}
			if message := got[0].Message(); strings.Contains(message, "recalled") != (row.how == "memory") ||
				strings.Contains(message, "set at once") != strings.Contains(row.does, "seizes") {
				t.Error(message)
			}
		}
	}
}

// Above 6 % of the part's oils, all its fragrances together, whatever the limits leave room
// for.
func TestAnUnusualDose(t *testing.T) {
	for _, row := range []struct {
		parts string
		value string // "" for no finding
	}{
		{scentedWith(smell("pear", "6 % of oils")), ""},
		{scentedWith(smell("pear", "6.0001 % of oils")), "6.0001"},
		{scentedWith(smell("pear", "3 % of oils"), smell("moonlight", "30 g")), ""}, // of 1000 g
		{scentedWith(smell("pear", "3 % of oils"), smell("moonlight", "30.001 g")), "6.0001"},
		{`{"part": "dusk", "share": "50 %"}, {"part": "glow", "share": "50 %", "fragrances": [` + smell("pear", "30 g") +
			`]}`, ""},
		// of 500 g
		{`{"part": "dusk", "share": "50 %"}, {"part": "glow", "share": "50 %", "fragrances": [` + smell("pear", "31 g") +
			`]}`, "6.2"},
	} {
		got := found(plainFormula().with("materials", pear("100 %"), "parts", row.parts).batch(t), "dose-unusual")
		if row.value == "" && len(got) > 0 || row.value != "" && (len(got) != 1 || got[0].Severity != note ||
			got[0].Value.PercentText(4) != row.value || got[0].Limit.PercentText(4) != "6") {
			t.Errorf("%s: %+v, want %s", row.parts, got, row.value)
		}
		if len(got) == 1 && (got[0].Subject != "parts["+strconv.Itoa(strings.Count(row.parts, `"part"`)-1)+"]" ||
			!slices.Equal(got[0].Names, []string{"glow"})) {
			t.Errorf("%s: %+v", row.parts, got[0])
		}
	}
	// Certified for all of the bar, the most is far more than anybody wants.
	b := plainFormula().with("size", `{"oils": "550 g"}`, "materials", pear("15 %"), "parts",
		scentedWith(`{"fragrance": "pear", "load": "max"}`)).batch(t)
	if got := found(b, "dose-unusual"); len(got) != 1 || b.Parts[0].Additions[0].Mass.Compare(units.Grams(33)) <= 0 {
		t.Errorf("%v: %+v", b.Parts[0].Additions[0].Mass, got)
	}
}

// Vanillin is told as a share of the bar: 8 % of a fragrance of which 2.5 % is in the dry
// bar is 0.20 % (the account of discolouration, its own example).
func TestBrowningIsToldAsAShareOfTheBar(t *testing.T) {
	vanilla := `{"fragrance": "vanilla-walk", "constituents": [{"cas": "121-33-5", "share": {"low": "5 %", "high": "8 %"}}]}`
	dry := plainFormula().batch(t).Dry
	mass := units.Sum{}.Plus(dry, units.MustRatio("0.025").Over(units.MustRatio("0.975"))).Mass(units.Nearest)
	b := plainFormula().with("materials", vanilla, "parts",
		`{"part": "glow", "share": "100 %", "look": "white", "fragrances": [`+smell("vanilla-walk", mass.Text(units.Gram, 9)+
			" g")+`]}`).batch(t)
	for _, f := range b.Findings {
		if f.Code == "fragrance-browns" {
			if got := f.Value.PercentText(6); got != "0.2" || f.Unit != "%" || !strings.Contains(f.Message(),
				"vanillin (0.2 % of the bar)") {
				t.Errorf("%s: %s", got, f.Message())
			}
			return
		}
	}
	t.Error("no finding")
}

// Parts that keep their limits prove the piece, a weighted mean of them: on random
// batches of two parts with vessels and without, the piece never uses more of a limit
// than the part that uses most.
func TestPartsWithinTheirLimitsProveThePiece(t *testing.T) {
	random := rand.New(rand.NewPCG(51, 9))
	ids := []string{"clove-bud", "cassia", "lemongrass-east-indian", "lime-expressed", "spearmint", "pear", "peppermint"}
	pieces, several := 0, 0
	for n := range 80 {
		part := func(name, share string) string {
			var lines []string
			for _, i := range random.Perm(len(ids))[:1+random.IntN(3)] {
				lines = append(lines, smell(ids[i], fmt.Sprintf("0.%03d %% of oils", 1+random.IntN(999))))
			}
			return `{"part": "` + name + `"` + share + `, "fragrances": [` + strings.Join(lines, ", ") + `]}`
		}
		p := plainFormula().with("materials", pear("2 %"), "oils",
			`{"oil": "olive", "share": "70 %"}, {"oil": "coconut", "share": "rest"}`)
		if n%2 == 0 {
			p.with("parts", part("base", fmt.Sprintf(`, "share": "%d %%"`, 5+random.IntN(90)))+", "+
				part("cloud", `, "share": "rest"`))
		} else {
			p.with("parts", part("base", "")+", "+part("cloud", ""), "size", fmt.Sprintf(`{"vessels": [{"vessel": "cup", "part": "base", "count": 3, "volume": "%d mL"},
				{"vessel": "swirl", "part": "cloud", "on": "cup", "volume": "%d mL"}, {"vessel": "bar", "parts": {"base": "30 %%", "cloud": "rest"}, "count": 2, "volume": "80 mL"}]}`, 20+random.IntN(80), 5+random.IntN(60)))
		}
		b := p.batch(t)
		c := b.Caps()
		most, fragrances := units.Whole(0), units.Whole(0)
		for _, part := range c.Parts {
			if part.Most.Used.Compare(most) > 0 {
				most = part.Most.Used
			}
			if part.Fragrance.Compare(fragrances) > 0 {
				fragrances = part.Fragrance
			}
		}
		slack := units.MustRatio("0.00000002") // masses in a piece are rounded to a nanogram
		if overCap(b) != (most.Compare(units.Whole(1)) > 0) {
			t.Errorf("most used %s, over %v", most, overCap(b))
		}
		for _, piece := range c.Pieces {
			pieces++
			if piece.Most.Used.Compare(most.Add(slack)) > 0 || piece.Fragrance.Compare(fragrances.Add(slack)) > 0 ||
				piece.Fragrance.Sign() <= 0 || piece.Most.Used.Sign() <= 0 {
				t.Errorf("%q uses %s, the parts at most %s; fragrance %s and %s", piece.Name, piece.Most.Used, most,
					piece.Fragrance, fragrances)
			}
		}
		if len(c.Pieces) == 2 {
			several++
		}
	}
	if pieces < 100 || several < 30 {
		t.Errorf("%d pieces, %d batches of several kinds", pieces, several)
	}
}

// A piece of two parts by hand: of 10 g and 30 g dry with 0.4 g and 0.6 g of fragrance
// it is 1/40 = 2.5 %. Here shares of 25 and 75 %, and loads of mass.
func TestThePieceIsTheWeightedMeanOfItsParts(t *testing.T) {
	b := plainFormula().with("materials", pear("50 %"), "parts", `{"part": "base", "share": "75 %", "fragrances": [`+
		smell("pear", "6 g")+`]}, {"part": "cloud", "share": "rest", "fragrances": [`+smell("pear", "4 g")+`]}`).batch(t)
	c := b.Caps()
	want, _ := units.Grams(10).Per(b.Dry)
	if len(c.Pieces) != 1 || c.Pieces[0].Dry != b.Dry || !c.Pieces[0].Fragrance.Equal(want.Round(8, units.Nearest)) {
		t.Errorf("%+v, want %s of %v", c.Pieces, want, b.Dry)
	}
	used := want.Over(units.MustRatio("0.5")) // of the certificate
	if got := c.Pieces[0].Most.Used; !got.Equal(used.Round(8, units.Nearest)) {
		t.Errorf("%s, want %s", got, used)
	}
	for i, mass := range []int{6, 4} {
		of, _ := units.Grams(mass).Per(b.Dry)
		if got := c.Parts[i].Fragrances[0].OfPiece; !got.Equal(of.Round(8, units.Nearest)) {
			t.Errorf("parts[%d]: %s of the piece, want %s", i, got, of)
		}
	}
}

// An allergen above the threshold in one part alone is told apart. Of eugenol 1 %: in a
// tenth of the batch at 5 % of the oils it is 0.04 % of the part and 0.004 % of the piece.
func TestAnAllergenOfOnePartIsToldApart(t *testing.T) {
	fig := `{"fragrance": "fig", "complete": true, "allergens": ["Eugenol"], "constituents": [{"cas": "97-53-0", "share": "1 %"}]}`
	for share, only := range map[string]string{"10 %": "cloud", "60 %": ""} {
		b := plainFormula().with("materials", fig, "parts", `{"part": "cloud", "share": "`+share+`", "fragrances": [`+
			smell("fig", "5 % of oils")+`]}, {"part": "base", "share": "rest"}`).batch(t)
		c := b.Caps()
		labels, complete := c.Labels()
		if len(labels) != 1 || labels[0].Rule.Name() != "Eugenol" || labels[0].OnlyInPart != only || !complete {
			t.Errorf("%s: %+v, complete %v", share, labels, complete)
		}
	}
}

// A diluent has an empty list that is said to be complete, and is judged: nothing is left open
// of it, alone or in a blend. Without "complete" the same list leaves everything open.
func TestAnEmptyCompleteListIsADiluent(t *testing.T) {
	for complete, want := range map[string]bool{"true": false, "false": true} {
		b := plainFormula().with("materials", `{"fragrance": "diluent", "complete": `+complete+`, "allergens": [], "constituents": []},
			{"fragrance": "mix", "blend": [{"fragrance": "diluent", "share": "60 %"}, {"fragrance": "clove-bud", "share": "40 %"}]}`,
			"parts", `{"part": "whole", "share": "100 %", "fragrances": [`+smell("mix", "0.5 % of oils")+`]}`).batch(t)
		if got := slices.ContainsFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "fragrance-unjudged" }); got != want {
			t.Errorf("complete %s: unjudged %v, want %v", complete, got, want)
		}
	}
}

// A formula without fragrance has nothing to cap, and says so of its allergens.
func TestWithoutFragranceNothingIsCapped(t *testing.T) {
	c := plainFormula().batch(t)
	caps := c.Caps()
	labels, complete := caps.Labels()
	if len(caps.Parts) != 1 || len(caps.Parts[0].Fragrances) != 0 || len(labels) != 0 || !complete ||
		caps.Pieces[0].Limited {
		t.Errorf("%+v", caps)
	}
}

// In Go as in a file.
func TestMaterialsInGo(t *testing.T) {
	cas, err := fragrance.ParseCAS("121-33-5")
	if err != nil {
		t.Fatal(err)
	}
	f, faults := read(t, plainFormula().text())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	f.Materials = []fragrance.Supplied{{
		ID: "pear", Certificates: []fragrance.Certificate{{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51}},
		Constituents: []fragrance.Constituent{{CAS: cas, Share: units.Between(units.MustRatio("1 %"),
			units.MustRatio("2 %"))}}, AllergensListed: true,
	}}
	f.Parts = []soap.Part{{
		Name: "glow", Share: units.Whole(1), Look: soap.White, Work: mould.Piped,
		Fragrances: []soap.Addition{{Name: "pear", Load: soap.Load{Max: true}, Margin: units.MustRatio("5 %")}},
	}}
	b, err := f.Batch()
	if err != nil || overCap(b) || !b.Parts[0].Additions[0].Material.Given() {
		t.Errorf("%v", err)
	}
	wrong := f
	wrong.Markets = []soap.Market{7, soap.EuropeanUnion, soap.EuropeanUnion}
	wrong.Law = 9
	wrong.Parts = []soap.Part{{Name: "glow", Share: units.Whole(1), Look: 7, Fragrances: []soap.Addition{
		{Name: "pear", Load: soap.Load{Max: true, Mass: units.Grams(1)}, Margin: units.MustRatio("5 %")},
		{Name: "fig", Load: soap.Load{Max: true}, Margin: units.Percent(-1)},
		{Name: "pear-2", Load: soap.Load{OfOils: units.Percent(1)}},
		{Name: "cassia", Load: soap.Load{Max: true}},
	}, Additives: []soap.Addition{{Name: "salt", Load: soap.Load{Mass: units.Grams(1)}, Margin: units.MustRatio("5 %")}}}}
	wrong.Acids = []soap.AcidLine{{Load: soap.Load{Max: true}, Compensate: soap.Compensated}}
	var got []string
	for _, fault := range faultsOf(t, wrong.Check()) {
		got = append(got, fault.Path)
	}
	for _, path := range []string{
		"markets[0]", "markets[2]", "markets", "parts[0].look", "parts[0].fragrances[0].load",
		"parts[0].fragrances[1].load", "parts[0].fragrances[1].margin", "parts[0].fragrances[3].load",
		"parts[0].additives[0].margin", "acids[0].load",
	} {
		if !slices.Contains(got, path) {
			t.Errorf("nothing is said of %s: %v", path, got)
		}
	}
}

// A load of mass is the same in the last of several batches, where there is less batter:
// that is judged, too. Thirteen cups in six moulds leave one.
func TestTheLastBatchIsJudged(t *testing.T) {
	for load, inLast := range map[string]bool{"1.2 g": true, "0.4 % of oils": false} {
		b := plainFormula().with("size", `{"vessels": [{"vessel": "cup", "part": "glow", "count": 13, "moulds": 6, "volume": "60 mL"}]}`,
			"parts", `{"part": "glow", "fragrances": [`+smell("clove-bud", load)+`]}`).batch(t)
		if b.Batches != 3 {
			t.Fatalf("%d batches", b.Batches)
		}
		var details []string
		for _, f := range b.Findings {
			if f.Code == "fragrance-over-cap" {
				details = append(details, f.Detail)
				if !strings.Contains(f.Message(), "in the last of the batches") {
					t.Error(f.Message())
				}
			}
		}
		if want := map[bool]int{true: 1, false: 0}[inLast]; len(details) != want {
			t.Errorf("%s: %v, %v", load, details, b.Findings)
		}
	}
}

// One finding for each limit that is passed.
func TestEveryLimitThatIsPassedHasItsFinding(t *testing.T) {
	b := plainFormula().with("parts", scentedWith(smell("clove-bud", "1.5 % of oils"), smell("cassia", "1 % of oils"),
		smell("spearmint", "1 % of oils"))).batch(t)
	var names []string
	for _, f := range b.Findings {
		if f.Code == "fragrance-over-cap" {
			names = append(names, f.Names[1])
		}
	}
	if want := []string{"Carvone", "Cinnamic aldehyde", "Methyl Eugenol"}; !slices.Equal(names, want) {
		t.Errorf("%v, want %v", names, want)
	}
}

// Additives count as dry, and it is said which.
func TestWhatCountsAsDryIsSaid(t *testing.T) {
	b := plainFormula().with("parts", `{"part": "glow", "share": "100 %", "fragrances": [`+
		smell("clove-bud", "0.5 % of oils")+`], "additives": [{"additive": "oat milk", "load": "30 g"}]}`).batch(t)
	if dried := b.Caps().Parts[0].Dried; !slices.Equal(dried, []string{"oat milk"}) {
		t.Errorf("%v", dried)
	}
}

// A cap that is typed back passes, and two micrograms more do not, whatever the carrier:
// what comes and goes with the fragrance counts in the base.
func TestACapMayBeTypedBackWithItsCarrier(t *testing.T) {
	oils := `{"oil": "olive", "share": "60 %"}, {"oil": "coconut", "share": "25 %"}, {"oil": "stearic-acid-50", "share": "rest"}`
	for _, carrier := range []string{
		`{"liquid": "water", "ratio": "3"}`, `{"liquid": "water", "ratio": "3", "from": "extra"}`,
		`{"liquid": "glycerin", "ratio": "3"}`,
		`{"liquid": "olive", "ratio": "4", "from": "formula"}`, `{"liquid": "olive", "ratio": "4", "from": "extra"}`,
		`{"liquid": "stearic-acid-50", "ratio": "4", "from": "extra"}`,
		`{"liquid": "stearic-acid-50", "ratio": "4", "from": "formula"}`,
	} {
		dosed := func(load string) soap.Batch {
			return plainFormula().with("oils", oils, "parts", `{"part": "base", "share": "35 %", "fragrances": [{"fragrance": "clove-bud", "load": "`+load+`", "carrier": `+carrier+`}, `+smell("cassia", "0.1 % of oils")+`]},
				{"part": "cloud", "share": "rest"}`).batch(t)
		}
		b := dosed("0.1 % of oils")
		most := b.Caps().Parts[0].Fragrances[0].Most
		microgram := units.Sum{}.Plus(units.Milligrams(1), units.MustRatio("0.001")).Mass(units.Nearest)
		down := most.Round(microgram, units.Down)
		if overCap(dosed(down.Text(units.Gram, 6) + " g")) {
			t.Errorf("%s: %v is a danger", carrier, down)
		}
		if more := down.Add(microgram).Add(microgram); !overCap(dosed(more.Text(units.Gram, 6) + " g")) {
			t.Errorf("%s: %v is none", carrier, more)
		}
	}
}

// A part that fills a cup and stands on it, too, is in the piece with both.
func TestAPartInTheCupAndOnItIsThereWithBoth(t *testing.T) {
	vessels := func(swirl string) string {
		return `{"vessels": [{"vessel": "cup", "parts": {"base": "50 %", "cloud": "rest"}, "count": 5, "volume": "60 mL"}, {"vessel": "swirl", "part": "` + swirl + `", "on": "cup", "volume": "30 mL"}]}`
	}
	// By volume 30 mL of cloud and 30 + 30 of base, all of one density but for 1 % of pear:
	// the dry piece has a third of it, or two thirds.
	for swirl, want := range map[string]float64{"base": 2.0 / 3, "cloud": 1.0 / 3} {
		c := plainFormula().with("materials", pear("50 %"), "size", vessels(swirl), "parts",
			`{"part": "base", "fragrances": [`+smell("pear", "1 % of oils")+`]}, {"part": "cloud"}`).batch(t)
		caps := c.Caps()
		if len(caps.Pieces) != 1 {
			t.Fatal(caps.Pieces)
		}
		got := caps.Pieces[0].Fragrance.Float() / caps.Parts[0].Fragrance.Float()
		if got < want-0.005 || got > want+0.005 || !caps.Parts[0].Fragrances[0].OfPiece.Equal(caps.Pieces[0].Fragrance) {
			t.Errorf("%s on top: %.4f of the base's share, want %.4f", swirl, got, want)
		}
	}
}

// Of several kinds of pieces, the one that holds most of a fragrance is told.
func TestTheShareOfThePieceIsThatOfTheOneThatHoldsMost(t *testing.T) {
	b := plainFormula().with("materials", pear("50 %"), "size", `{"vessels": [{"vessel": "two", "parts": {"base": "40 %", "cloud": "rest"}, "count": 5, "volume": "60 mL"}, {"vessel": "plain", "part": "base", "count": 2, "volume": "30 mL"},
		{"vessel": "other", "part": "cloud", "count": 2, "volume": "30 mL"}]}`, "parts", `{"part": "base", "fragrances": [`+smell("pear", "1 % of oils")+`]}, {"part": "cloud"}`).batch(t)
	c := b.Caps()
	f := c.Parts[0].Fragrances[0]
	if difference := f.OfPiece.Float() - f.OfDry.Float(); len(c.Pieces) != 3 || difference > 1e-7 || difference < -1e-7 ||
		c.Pieces[2].Fragrance.Sign() != 0 {
		t.Errorf("%s of the piece, %s of the part: %+v", f.OfPiece, f.OfDry, c.Pieces)
	}
}

// The last batch is labelled, too: thirteen cups in twelve moulds, and a load by mass that
// stays below the threshold in twelve and is above it in one. Of eugenol 1 %: 1 g is
// 0.01 g, of which 0.01 % are 100 g dry.
func TestTheLastBatchIsLabelled(t *testing.T) {
	fig := `{"fragrance": "fig", "complete": true, "allergens": ["Eugenol"], "constituents": [{"cas": "97-53-0", "share": "1 %"}]}`
	for moulds, want := range map[string]int{"13": 0, "12": 1} {
		b := plainFormula().with("materials", fig, "size",
			`{"vessels": [{"vessel": "cup", "part": "glow", "count": 13, "moulds": `+moulds+`, "volume": "60 mL"}]}`,
			"parts", `{"part": "glow", "fragrances": [`+smell("fig", "1 g")+`]}`).batch(t)
		c := b.Caps()
		labels, _ := c.Labels()
		if len(labels) != want || len(c.Pieces) != want+1 || want == 1 && (!c.Pieces[1].Last || labels[0].OnlyInPart != "") {
			t.Errorf("%s moulds: %+v in %+v", moulds, labels, c.Pieces)
		}
	}
}

// What is not known to be complete is not said to be: embeds, and one fragrance of which
// only the name is known.
func TestALabelIsCompleteOnlyWhereEverythingIsKnown(t *testing.T) {
	cups := `{"vessels": [{"vessel": "cup", "part": "glow", "count": 13, "volume": "60 mL"}]}`
	glow := func(more string) string {
		return `{"part": "glow", "fragrances": [` + smell("pear", "1 % of oils") + more + `]}`
	}
	for name, row := range map[string]struct {
		p    pieces
		want bool
	}{
		"all is known": {plainFormula().with("materials", pear("50 %"), "size", cups, "parts", glow("")), true},
		"a name alone": {plainFormula().with("materials", pear("50 %"), "size", cups, "parts",
			glow(", "+smell("moonlight", "1 g"))), false},
		"an embed": {plainFormula().with("materials", pear("50 %"), "size", cups, "embeds",
			`{"embed": "moon", "vessel": "cup", "mass": "4 g"}`, "parts", glow("")), false},
	} {
		b := row.p.batch(t)
		c := b.Caps()
		if _, complete := c.Labels(); complete != row.want {
			t.Errorf("%s: complete %v", name, complete)
		}
	}
}

// A fragrance of the maker's own is not to be weighed, unjudged, as something else.
func TestAFragranceAmongTheAdditivesIsRefused(t *testing.T) {
	for _, list := range []string{"additives", "colourants"} {
		_, faults := read(t, plainFormula().with("materials", pear("3 %"), "parts", `{"part": "glow", "share": "100 %", "`+
			list+`": [{"`+strings.TrimSuffix(list, "s")+`": "pear", "load": "10 g"}]}`).text())
		if len(faults) != 1 || faults[0].Path != "parts[0]."+list+"[0]."+strings.TrimSuffix(list, "s") {
			t.Errorf("%s: %v", list, faults)
		}
	}
	b := plainFormula().with("parts", `{"part": "glow", "share": "100 %", "additives": [{"additive": "clove-bud", "load": "10 g"}]}`).batch(t)
	if found := b.Findings; len(found) != 1 || !strings.Contains(found[0].Message(), "list it among the fragrances") {
		t.Errorf("%v", found)
	}
}

// As weighed, the piece is held to what was weighed, as its parts are.
func TestThePieceIsHeldToWhatWasWeighed(t *testing.T) {
	b := plainFormula().with("materials", pear("50 %"), "weighed",
		`{"stage": "parts", "parts": {"glow": {"batter": "500 g"}}}`,
		"parts", `{"part": "glow", "share": "50 %", "fragrances": [`+smell("pear", "10 g")+
			`]}, {"part": "night", "share": "rest"}`).batch(t)
	c := b.Caps()
	dry := c.Parts[0].Dry.Add(c.Parts[1].Dry)
	want, _ := units.Grams(10).Per(dry)
	if c.Pieces[0].Dry != dry || dry == b.Dry || !c.Pieces[0].Fragrance.Equal(want.Round(8, units.Nearest)) {
		t.Errorf("%v and %s, want %v and %s", c.Pieces[0].Dry, c.Pieces[0].Fragrance, dry, want)
	}
}

// The most of a fragrance comes to rest however much is made: in 1.9 kg of batter, and in
// ten times as much, where the twelfth decimal of a load is some nanograms.
func TestTheMostOfAFragranceComesToRestInALargeBatch(t *testing.T) {
	for _, size := range []string{"1877.612 g", "18776.12 g", "187.7612 kg"} {
		b := plainFormula().with(
			"oils", `{"oil": "olive", "share": "69.6 %"}, {"oil": "beeswax", "share": "30.4 %"}`,
			"water", `{"lye_concentration": "24.46 %"}`, "size", `{"batter": "`+size+`"}`,
			"parts", `{"part": "glow", "share": "100 %", "fragrances": [`+smell("lime-expressed", "max")+
				`], "additives": [{"additive": "salt", "load": "1.39 % of oils"}]}`).batch(t)
		used := b.Caps().Parts[0].Most.Used
		if used.Compare(units.Whole(1)) > 0 || used.Compare(units.MustRatio("99.999 %")) < 0 {
			t.Errorf("%s: %s of the limit is used", size, used)
		}
	}
}
