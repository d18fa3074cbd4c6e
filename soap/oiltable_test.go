package soap_test

import (
	"errors"
	"math/big"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// The counts and sums below were added up outside the library, over the tables
// that the oil table was made from: an edit of any figure shows here.

func TestTheOilTableHoldsEveryPublishedFigure(t *testing.T) {
	type column struct {
		figures, lows, highs int
		low, high            string // sums of what is printed
	}
	want := map[string]column{
		"saponification": {53, 53, 53, "9672.4", "10251.8"},
		"acid-value":     {13, 7, 13, "1097.27", "1188.5"},
		"iodine":         {51, 47, 50, "3571.5", "4305.6"},
		"density":        {44, 44, 44, "39.9613", "40.3797"},
		"unsaponifiable": {43, 0, 43, "0", "888.4"},
		"melting":        {27, 27, 27, "918.4", "1106.4"},
	}
	printed := map[string]int64{
		"saponification": 1000, "acid-value": 1000, "iodine": 100, "density": 1, "melting": 1,
		"unsaponifiable": 1000,
	}
	got := map[string]column{}
	lows, highs := map[string]*big.Rat{}, map[string]*big.Rat{}
	for name := range want {
		lows[name], highs[name] = new(big.Rat), new(big.Rat)
	}
	oils := soap.Oils()
	if len(oils) != 59 {
		t.Errorf("%d oils, want 59", len(oils))
	}
	for _, oil := range oils {
		for _, f := range oil.Figures() {
			c := got[f.Name]
			c.figures++
			if _, known := want[f.Name]; !known {
				t.Errorf("%s: a figure named %q", oil.ID(), f.Name)
				continue
			}
			if f.Low.Given() {
				c.lows++
				lows[f.Name] = plus(lows[f.Name], times(whole(printed[f.Name]), ratioFrac(f.Low)))
			}
			if f.High.Given() {
				c.highs++
				highs[f.Name] = plus(highs[f.Name], times(whole(printed[f.Name]), ratioFrac(f.High)))
			}
			got[f.Name] = c
		}
	}
	for name, w := range want {
		g := got[name]
		if g.figures != w.figures || g.lows != w.lows || g.highs != w.highs {
			t.Errorf("%s: %d figures, %d low and %d high ends, want %d, %d and %d", name, g.figures, g.lows, g.highs, w.figures,
				w.lows, w.highs)
		}
		if lows[name].Cmp(frac(w.low)) != 0 || highs[name].Cmp(frac(w.high)) != 0 {
			t.Errorf("%s: low ends add up to %s, high ends to %s, want %s and %s", name, lows[name].FloatString(4),
				highs[name].FloatString(4), w.low, w.high)
		}
	}
}

func TestTheOilTableHoldsEveryPublishedComposition(t *testing.T) {
	profiles, acids, recalled := 0, 0, 0
	low, high := new(big.Rat), new(big.Rat)
	for _, oil := range soap.Oils() {
		for _, p := range oil.Profiles() {
			profiles++
			acids += len(p.Acids)
			if p.Source.How == cite.Memory {
				recalled += len(p.Acids)
			}
			for _, share := range p.Acids {
				low, high = plus(low, ratioFrac(share.Low)), plus(high, ratioFrac(share.High))
			}
		}
	}
	if profiles != 76 || acids != 841 || recalled != 231 {
		t.Errorf("%d profiles, %d acids of which %d recalled, want 76, 841 and 231", profiles, acids, recalled)
	}
	hundred := whole(100)
	if times(low, hundred).Cmp(frac("5859.93")) != 0 || times(high, hundred).Cmp(frac("8650.42")) != 0 {
		t.Errorf("shares add up to %s %% and %s %%, want 5859.93 and 8650.42", times(low, hundred).FloatString(3),
			times(high, hundred).FloatString(3))
	}
}

func TestTheOilTableHasTheKindsAndTheHowsOfItsSources(t *testing.T) {
	kinds, hows := map[soap.Kind]int{}, map[cite.How]int{}
	for _, oil := range soap.Oils() {
		kinds[oil.Kind()]++
		for _, f := range oil.Figures() {
			if f.Name == "saponification" {
				hows[f.Source.How]++
			}
		}
	}
	if kinds[soap.VegetableOil] != 44 || kinds[soap.AnimalFat] != 6 || kinds[soap.Acid] != 5 || kinds[soap.Wax] != 4 {
		t.Errorf("kinds %v, want 44 vegetable oils, 6 animal fats, 5 fatty acids, 4 waxes", kinds)
	}
	if hows[cite.Read] != 45 || hows[cite.Memory] != 8 || len(hows) != 2 {
		t.Errorf("saponification values by how they were obtained: %v, want 45 read, 8 from memory", hows)
	}
}

func TestOilsAreUniqueAndInOrder(t *testing.T) {
	var ids []string
	for _, oil := range soap.Oils() {
		ids = append(ids, oil.ID())
		found := builtIn(t, oil.ID())
		if found.ID() != oil.ID() || found.Name() != oil.Name() || !found.Saponification().Equal(oil.Saponification()) ||
			found.Name() == "" || !found.BuiltIn() {
			t.Errorf("%s: looked up as %q, %q, %v", oil.ID(), found.ID(), found.Name(), found.Saponification())
		}
	}
	if !slices.IsSorted(ids) {
		t.Errorf("out of order: %v", ids)
	}
	if n := len(slices.Compact(slices.Clone(ids))); n != len(ids) {
		t.Errorf("%d ids, %d of them different", len(ids), n)
	}
}

func TestEveryFigureHasASourceAndEveryRangeIsOrdered(t *testing.T) {
	named := func(s cite.Source) bool {
		return s.Title != "" && s.Edition != "" && (s.How == cite.Read || s.How == cite.Memory)
	}
	acids := map[string]bool{}
	for _, acid := range soap.FattyAcids() {
		acids[acid.Symbol] = true
	}
	for _, oil := range soap.Oils() {
		for _, f := range oil.Figures() {
			if !named(f.Source) {
				t.Errorf("%s, %s: source %#v", oil.ID(), f.Name, f.Source)
			}
			if f.Unit == "" {
				t.Errorf("%s, %s: no unit", oil.ID(), f.Name)
			}
			if !f.Low.Given() && !f.High.Given() {
				t.Errorf("%s, %s: no figure", oil.ID(), f.Name)
			}
			if f.Low.Given() && f.High.Given() && f.Low.Compare(f.High) > 0 || f.Low.Given() && f.Low.Sign() <= 0 {
				t.Errorf("%s, %s: from %s to %s", oil.ID(), f.Name, f.Low, f.High)
			}
		}
		for _, p := range oil.Profiles() {
			if !named(p.Source) || p.Source.Place == "" {
				t.Errorf("%s: profile of source %#v", oil.ID(), p.Source)
			}
			seen := map[string]bool{}
			for _, share := range p.Acids {
				if !acids[share.Acid] || seen[share.Acid] {
					t.Errorf("%s, %s: acid %q is unknown or stands twice", oil.ID(), p.Source.Title, share.Acid)
				}
				seen[share.Acid] = true
				if !share.Low.Given() || !share.High.Given() || share.Low.Sign() < 0 || share.Low.Compare(share.High) > 0 ||
					share.High.Compare(units.Whole(1)) > 0 {
					t.Errorf("%s, %s: %s from %s to %s", oil.ID(), p.Source.Title, share.Acid, share.Low, share.High)
				}
			}
		}
	}
}

// ofProfile works a profile's value out in fractions: as glycerides, or as free
// acids; ok is false where it names less than 90 %.
func ofProfile(p soap.Profile, free bool) (milligrams *big.Rat, ok bool) {
	sum, moles := new(big.Rat), new(big.Rat)
	for _, share := range p.Acids {
		sum = plus(sum, middle(share))
		moles = plus(moles, over(middle(share), molarMassOf(share.Acid)))
	}
	if sum.Cmp(frac("0.9")) < 0 {
		return nil, false
	}
	n := over(moles, sum)
	value := times(whole(56105), n)
	if !free {
		value = over(value, plus(whole(1), times(frac("12.683"), n))) // 38.049/3
	}
	return roundedMillionths(value), true
}

// roundedMillionths rounds to 0.000001, halves up.
func roundedMillionths(r *big.Rat) *big.Rat {
	scaled := plus(times(r, whole(2_000_000)), whole(1))
	n := new(big.Int).Div(scaled.Num(), new(big.Int).Mul(scaled.Denom(), big.NewInt(2)))
	return over(new(big.Rat).SetInt(n), whole(1_000_000))
}

// lowestProfile is the lowest value of an oil's profiles that name 90 %.
func lowestProfile(oil soap.Oil) (milligrams *big.Rat, source cite.Source) {
	for _, p := range oil.Profiles() {
		value, ok := ofProfile(p, oil.Kind() == soap.Acid)
		if ok && (milligrams == nil || value.Cmp(milligrams) < 0) {
			milligrams, source = value, p.Source
		}
	}
	return milligrams, source
}

// sourceTitles reads the titles of the table of publications, by key.
func sourceTitles(t *testing.T) map[string]string {
	t.Helper()
	table, err := os.ReadFile("data/sources.txt")
	if err != nil {
		t.Fatal(err)
	}
	titles := map[string]string{}
	for line := range strings.Lines(string(table)) {
		if fields := strings.Split(strings.TrimRight(line, "\n"), "\t"); !strings.HasPrefix(line, "#") {
			titles[fields[0]] = fields[1]
		}
	}
	return titles
}

func TestEveryProfileValueOfTheTableIsWhatItsProfilesGive(t *testing.T) {
	table, err := os.ReadFile("data/oils.txt")
	if err != nil {
		t.Fatal(err)
	}
	titles := sourceTitles(t)
	written, id, lines := map[string][]string{}, "", 0
	for line := range strings.Lines(string(table)) {
		fields := strings.Split(strings.TrimRight(line, "\n"), "\t")
		switch fields[0] {
		case "oil":
			id = fields[1]
		case "profile-value":
			written[id] = fields[1:]
			lines++
		}
	}
	if lines != 47 || len(written) != 47 { // 59 less the 4 waxes and 8 others without a profile of 90 %
		t.Errorf("%d lines of %d oils, want 47", lines, len(written))
	}
	for _, oil := range soap.Oils() {
		want, source := lowestProfile(oil)
		line := written[oil.ID()]
		if want == nil {
			if line != nil || oil.ProfileValue().Given() {
				t.Errorf("%s: a profile value %v without a profile of 90 %%", oil.ID(), line)
			}
			continue
		}
		if line == nil {
			t.Errorf("%s: no profile value, its profiles give %s", oil.ID(), want.FloatString(6))
			continue
		}
		if frac(line[0]).Cmp(want) != 0 || line[1] != source.How.String() {
			t.Errorf("%s: %v written, want %s %s", oil.ID(), line, want.FloatString(6), source.How)
		}
		if len(line) != 4 || titles[line[2]] != source.Title || line[3] != source.Place {
			t.Errorf("%s: %v written, want source %q, place %q", oil.ID(), line, source.Title, source.Place)
		}
		if times(whole(1000), ratioFrac(oil.ProfileValue())).Cmp(want) != 0 {
			t.Errorf("%s: profile value %s, want %s", oil.ID(), oil.ProfileValue().MilligramsPerGramText(6), want.FloatString(6))
		}
	}
}

func TestEveryOilIsPlannedByTheRule(t *testing.T) {
	for _, oil := range soap.Oils() {
		// The rule: the middle of the published range, but not above the value of
		// the oil's own profile, and not below the range.
		low, high := publishedRange(oil, "saponification")
		acidLow, acidHigh := publishedRange(oil, "acid-value")
		switch {
		case oil.Kind() == soap.Acid && acidHigh.Given():
			low, high = acidLow, acidHigh
		case oil.Kind() == soap.Wax:
			low = acidLow.Or(units.Whole(0))
		}
		profile, _ := lowestProfile(oil)
		got := oil.Saponification()
		if !high.Given() {
			if profile == nil {
				if got.Given() || got.Typical.Given() || oil.HasRange() {
					t.Errorf("%s: %v planned without a figure", oil.ID(), got)
				}
				continue
			}
			if times(whole(1000), ratioFrac(got.Typical)).Cmp(profile) != 0 || !got.Single() || oil.HasRange() ||
				oil.Choice() != soap.FromProfile || oil.How() != cite.Computed {
				t.Errorf("%s: planned at %v, choice %s, how %s, want %s computed without a range", oil.ID(), got, oil.Choice(),
					oil.How(), profile.FloatString(6))
			}
			continue
		}
		ends := [2]*big.Rat{times(whole(1000), ratioFrac(low)), times(whole(1000), ratioFrac(high))}
		mid := over(plus(ends[0], ends[1]), whole(2))
		typical, choice := mid, soap.AtMiddle
		ranged := ends[0].Cmp(ends[1]) < 0
		if oil.Kind() != soap.Wax && profile != nil && profile.Cmp(mid) < 0 {
			typical, choice = profile, soap.AtProfile
			if ranged && profile.Cmp(ends[0]) < 0 {
				typical, choice = ends[0], soap.AtLowEnd
			}
		}
		if !ranged {
			ends = [2]*big.Rat{typical, typical}
		}
		if oil.HasRange() != ranged || oil.Choice() != choice {
			t.Errorf("%s: has a range %v, choice %s, want %v, %s", oil.ID(), oil.HasRange(), oil.Choice(), ranged, choice)
		}
		for _, end := range []struct {
			name string
			got  units.Ratio
			want *big.Rat
		}{
			{"low", got.Low, ends[0]},
			{"typical", got.Typical, typical},
			{"high", got.High, ends[1]},
			{"middle", oil.Middle(), mid},
		} {
			if times(whole(1000), ratioFrac(end.got)).Cmp(end.want) != 0 {
				t.Errorf("%s, %s: %s mg/g, want %s", oil.ID(), end.name, end.got.MilligramsPerGramText(6), end.want.FloatString(6))
			}
		}
	}
}

// plannedOils lists what the rule gives for every oil, worked out outside the
// library from the published figures: low, typical, high in mg KOH/g, and the
// choice. A row without figures has no value.
var plannedOils = []struct{ id, low, typical, high, choice string }{
	{"almond", "188", "191.522392", "200", "profile"},
	{"apricot-kernel", "189.8", "190.55", "191.3", "middle"},
	{"argan", "180", "189.8", "199.6", "middle"},
	{"avocado", "177", "187.5", "198", "middle"},
	{"babassu", "245", "245", "256", "low end"},
	{"beeswax", "17", "60.5", "104", "middle"},
	{"camellia", "185", "190.5", "196", "middle"},
	{"canola", "182", "187.5", "193", "middle"},
	{"castor", "176", "181.5", "187", "middle"},
	{"cocoa-butter", "188", "191.5", "195", "middle"},
	{"coconut", "248", "254.354214", "265", "profile"},
	{"cottonseed", "189", "193.5", "198", "middle"},
	{"flaxseed", "185", "191", "197", "middle"},
	{"goose-fat", "194.40539", "194.40539", "194.40539", "computed"},
	{"grapeseed", "188", "191", "194", "middle"},
	{"hazelnut", "188", "191.397507", "198", "profile"},
	{"hemp-seed", "184", "187", "190", "middle"},
	{"illipe-borneo-tallow", "192.1", "192.1", "192.1", "middle"},
	{"jojoba", "0", "46.1", "92.2", "middle"},
	{"kokum", "187", "190", "193", "middle"},
	{"lanolin", "0", "51", "102", "middle"},
	{"lanolin-hydrous", "0", "39.5", "79", "middle"},
	{"lard", "192", "195.582089", "203", "profile"},
	{"lauric-acid", "252", "269.5", "287", "middle"},
	{"macadamia", "", "", "", "none"},
	{"maize", "187", "191", "195", "middle"},
	{"mango-kernel", "185", "191.5", "198", "middle"},
	{"milk-fat", "205", "220", "235", "middle"},
	{"mowrah-butter", "192.1", "192.45", "192.8", "middle"},
	{"mustard", "168", "176", "184", "middle"},
	{"myristic-acid", "242", "245.5", "249", "middle"},
	{"neem", "194.954416", "194.954416", "194.954416", "profile"},
	{"oleic-acid", "195", "199.5", "204", "middle"},
	{"olive", "185", "190.5", "196", "middle"},
	{"palm", "190", "198.675607", "209", "profile"},
	{"palm-high-oleic-hybrid", "189", "194", "199", "middle"},
	{"palm-kernel", "230", "242", "254", "middle"},
	{"palm-olein", "194", "198", "202", "middle"},
	{"palm-stearin", "193", "199", "205", "middle"},
	{"peanut", "188", "190.396284", "196", "profile"},
	{"pistachio", "187", "191.5", "196", "middle"},
	{"rapeseed-high-erucic", "168", "174.5", "181", "middle"},
	{"rendered-pork-fat", "192", "195.582089", "203", "profile"},
	{"rice-bran", "180", "189.5", "199", "middle"},
	{"safflower", "188", "191", "194", "middle"},
	{"safflower-high-oleic", "186", "190", "194", "middle"},
	{"sal", "180", "187.5", "195", "middle"},
	{"sesame", "186", "190.5", "195", "middle"},
	{"shea-butter", "160", "177.5", "195", "middle"},
	{"soybean", "189", "192", "195", "middle"},
	{"stearic-acid-50", "194", "203", "212", "middle"},
	{"stearic-acid-95", "195", "197.216715", "200", "profile"},
	{"sunflower", "187", "190.5", "194", "middle"},
	{"sunflower-high-oleic", "182", "188", "194", "middle"},
	{"sunflower-mid-oleic", "190", "190.5", "191", "middle"},
	{"tallow-edible", "190", "196", "202", "middle"},
	{"tallow-premier-jus", "190", "195", "200", "middle"},
	{"walnut", "189", "192.423912", "198", "profile"},
	{"wheat-germ", "183.3", "186.1", "188.9", "middle"},
}

func TestEveryOilIsPlannedAtTheFigureWorkedOutOutsideTheLibrary(t *testing.T) {
	planned := map[string]bool{}
	for _, want := range plannedOils {
		planned[want.id] = true
		oil := builtIn(t, want.id)
		got := oil.Saponification()
		choice := oil.Choice().String()
		if want.choice == "none" {
			choice = "none"
		}
		text := []string{
			oil.ID(), got.Low.MilligramsPerGramText(9), got.Typical.MilligramsPerGramText(9),
			got.High.MilligramsPerGramText(9), choice,
		}
		if wanted := []string{want.id, want.low, want.typical, want.high, want.choice}; !slices.Equal(text, wanted) {
			t.Errorf("%v, want %v", text, wanted)
		}
	}
	oils := soap.Oils()
	for _, oil := range oils {
		if !planned[oil.ID()] {
			t.Errorf("%s has no row in plannedOils: work it out by the rule, and add it", oil.ID())
		}
	}
	if len(plannedOils) != len(oils) {
		t.Errorf("%d rows of plannedOils, %d oils", len(plannedOils), len(oils))
	}
}

func TestTheOddOilsArePlannedAsTheirFiguresAllow(t *testing.T) {
	for _, c := range []struct {
		id, low, typical, high string
		ranged                 bool
		choice                 soap.Choice
		why                    string
	}{
		{"jojoba", "0", "46.1", "92.2", true, soap.AtMiddle, "a wax with one saponification value and an upper limit alone " +
			"of acid: from 0 to 92.2"},
		{"beeswax", "17", "60.5", "104", true, soap.AtMiddle, "a wax with acid value 17 to 24, saponification value 87 to " +
			"104: from 17 to 104"},
		{"lanolin", "0", "51", "102", true, soap.AtMiddle, "a wax with an upper limit alone of acid: from 0"},
		{
			"goose-fat", "194.40539", "194.40539", "194.40539", false, soap.FromProfile,
			"no value is published: computed from 95 % of its acids",
		},
		{
			"neem", "194.954416", "194.954416", "194.954416", false, soap.AtProfile,
			"one sample, 196.9, is no range; its profile caps it in full",
		},
		{"illipe-borneo-tallow", "192.1", "192.1", "192.1", false, soap.AtMiddle, "one sample below its profile"},
		{
			"stearic-acid-95", "195", "197.216715", "200", true, soap.AtProfile,
			"free C18:0, 56105/284.484, below the middle 197.5 of the acid value",
		},
		{"stearic-acid-50", "194", "203", "212", true, soap.AtMiddle, "a profile of 50 % caps nothing"},
		{"babassu", "245", "245", "256", true, soap.AtLowEnd, "its profile, 244.4, lies below the published range"},
		{"macadamia", "", "", "", false, soap.NoValue, "no value, and a profile of 79.5 %"},
	} {
		oil := builtIn(t, c.id)
		got := oil.Saponification()
		if got.Low.MilligramsPerGramText(9) != c.low || got.Typical.MilligramsPerGramText(9) != c.typical ||
			got.High.MilligramsPerGramText(9) != c.high ||
			oil.HasRange() != c.ranged || oil.Choice() != c.choice {
			t.Errorf("%s: %s, %s, %s, has a range %v, %s; %s", c.id, got.Low.MilligramsPerGramText(9),
				got.Typical.MilligramsPerGramText(9), got.High.MilligramsPerGramText(9), oil.HasRange(), oil.Choice(), c.why)
		}
	}
	// 56105/284.484 = 197.2167...
	if want := over(whole(56105), frac("284.484")); !within(frac("197.216715"), want, frac("0.0000005")) {
		t.Errorf("stearic acid's acid value is %s", want.FloatString(7))
	}
}

func TestAnOilWithoutAValueIsRefusedUntilItBringsOne(t *testing.T) {
	f := soap.Formula{
		Name:     "Lantern walk trial",
		Oils:     []soap.OilLine{{Oil: builtIn(t, "macadamia"), Share: units.Percent(100)}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Exactly(units.Percent(98))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: units.Grams(500)},
	}
	_, err := f.Batch()
	var faults soap.Faults
	if !errors.As(err, &faults) || len(faults) != 1 || !strings.HasPrefix(faults[0].Path, "oils[0]") {
		t.Fatalf("error %v, want one fault at oils[0]", err)
	}
	// A brought value is used as it stands: 195 mg/g demands 195/56105 mol/g.
	oil, err := builtIn(t, "macadamia").WithSaponification(units.Between(units.MilligramsPerGram(190),
		units.MilligramsPerGram(200)))
	if err != nil {
		t.Fatal(err)
	}
	f.Oils[0].Oil = oil
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	// 500 × 195/56105 × 0.95 × 39.997/0.98
	want := over(times(times(whole(500*195), frac("0.95")), frac("39.997")), times(whole(56105), frac("0.98")))
	if got := massFrac(b.Alkalis[0].Dry.Mass); !within(got, want, frac("0.000000001")) { // born rounded down to a nanogram
		t.Errorf("%s g of alkali, want %s", got.FloatString(9), want.FloatString(9))
	}
}

func TestFreeAcidIsTheMiddleOfAnAcidValueWithBothEnds(t *testing.T) {
	// Published acid values: 2.27 to 2.78 (Gupta 2012), 17 to 24 (USP32-NF27, White
	// Wax), 252 to 287 (recalled), 242 to 249 (USP32-NF27), 195 to 204 (Ph. Eur.
	// 0799), 194 to 212 and 195 to 200 (NF 34, USP32-NF27). Never above the value
	// planned at: 197.216715 of stearic acid 95.
	want := map[string]string{
		"apricot-kernel": "2.525", "beeswax": "20.5", "lauric-acid": "269.5", "myristic-acid": "245.5",
		"oleic-acid": "199.5", "stearic-acid-50": "203", "stearic-acid-95": "197.216715",
	}
	for _, oil := range soap.Oils() {
		if got := oil.FreeAcid().MilligramsPerGramText(9); got != want[oil.ID()] {
			t.Errorf("%s: free acid %q, want %q", oil.ID(), got, want[oil.ID()])
		}
	}
}

func TestAMistypedOilIsAnsweredWithTheNearestNames(t *testing.T) {
	for _, c := range []struct {
		typo    string
		offered []string
		why     string
	}{
		{"oliv", []string{"olive"}, "a letter dropped"},
		{"cocconut", []string{"coconut"}, "a letter added"},
		{"caster", []string{"castor"}, "a letter changed"},
		{"Shea-Buttre", []string{"shea-butter"}, "letters swapped, and capitals"},
		{"sunflwoer", []string{"sunflower"}, "letters swapped"},
		{"suhnflawer", []string{"sunflower"}, "two faults in ten letters"},
		{"tallow-premier", []string{"tallow-premier-jus"}, "words of a name"},
	} {
		_, err := soap.LookUpOil(c.typo)
		var fault soap.Fault
		if !errors.As(err, &fault) || !errors.Is(err, soap.ErrUnknown) {
			t.Errorf("%q (%s): %v, want a fault", c.typo, c.why, err)
			continue
		}
		if fault.Path != "oil" || fault.Text != c.typo {
			t.Errorf("%q: path %q, text %q", c.typo, fault.Path, fault.Text)
		}
		for _, name := range c.offered {
			if !strings.Contains(fault.Remedy, name) {
				t.Errorf("%q (%s): %q does not offer %s", c.typo, c.why, fault.Remedy, name)
			}
		}
	}
}

func TestAnOilLikeNoOtherIsAnsweredWithoutAGuess(t *testing.T) {
	_, err := soap.LookUpOil("lantern-walk-secret")
	var fault soap.Fault
	if !errors.As(err, &fault) {
		t.Fatalf("%v, want a fault", err)
	}
	for _, oil := range soap.Oils() {
		if strings.Contains(fault.Remedy, oil.ID()) {
			t.Errorf("%q offers %s", fault.Remedy, oil.ID())
		}
	}
	if fault.Remedy == "" {
		t.Error("no remedy")
	}
}
