package soap_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// cups is a plain formula that fills cups, and no more of it.
func cups(t *testing.T, count, moulds int) soap.Formula {
	t.Helper()
	size := `{"vessels": [{"vessel": "cup", "part": "lantern", "count": ` + strconv.Itoa(count) + `, "moulds": ` + strconv.Itoa(moulds) + `, "volume": "45 mL"}]}`
	f, err := soap.ReadFormula(strings.NewReader(plainFormula().with("size", size, "parts", `{"part": "lantern"}`).text()))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestScalingAndSeveralBatches(t *testing.T) {
	twelve, err := cups(t, 12, 100).Batch()
	if err != nil {
		t.Fatal(err)
	}
	scaled := cups(t, 12, 100)
	scaled.Size.Pieces = 30
	thirty, err := scaled.Batch()
	if err != nil {
		t.Fatal(err)
	}
	if thirty.PiecesInAll() != 30 || thirty.Pieces[0].Filled != 30 {
		t.Errorf("%+v", thirty.Pieces)
	}
	if got, want := thirty.OilsTotal.Grams(), 2.5*twelve.OilsTotal.Grams(); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("30 cups take %v g of oils, 12 take %v", got, twelve.OilsTotal)
	}
	several, err := cups(t, 30, 12).Batch()
	if err != nil {
		t.Fatal(err)
	}
	if several.Batches != 3 || several.Last == nil || several.Pieces[0].Count != 30 || several.Pieces[0].Filled != 12 || several.Last.Pieces[0].Filled != 6 {
		t.Fatalf("%d batches of %+v, the last %+v", several.Batches, several.Pieces, several.Last)
	}
	if several.OilsTotal != twelve.OilsTotal || !within(massFrac(several.Last.Oils.Add(several.Last.Oils)), massFrac(twelve.OilsTotal), frac("0.00000001")) {
		t.Errorf("%v and %v of oils, twelve cups take %v", several.OilsTotal, several.Last.Oils, twelve.OilsTotal)
	}
	if twelve.Batches != 1 || twelve.Last != nil {
		t.Errorf("%d batches", twelve.Batches)
	}
}

// Everything that is wrong with vessels comes together, each at its place; but for what
// rests on it: which part has no vessel, say, where a vessel names none that is there.
func TestWrongVesselsNameEveryFault(t *testing.T) {
	size := `{"vessels": [
		{"vessel": "cup", "part": "bsae", "count": 0, "cuts": 0, "moulds": 0, "volume": "45 g"},
		{"vessel": "swirl", "part": "cloud", "on": "cpu", "cone": {"base": "8 mm", "tip": "45 mm", "height": "35 mm", "fill": "120 %"}},
		{"vessel": "hall", "count": "12", "box": {"length": "0 mm", "width": "5 cm"}},
		{"vessel": "star", "part": "base", "on": "swirl", "count": 3, "volume": "1 mL"},
		{"vessel": "loaf", "parts": {"base": "60 %", "cloud": "30 %"}, "count": 1.5, "volume": "1 L", "coat": {"area": "1 m²", "thickness": "1 mm"}},
		{"vessel": "plate", "part": "base", "count": 1},
		{"vessel": "tray", "part": "base", "count": 5000, "cuts": 3, "trial": {"count": 0}}
	]}`
	text := plainFormula().with("size", size,
		"parts", `{"part": "base", "share": "60 %", "reserve": "101 %", "work": "pipd"}, {"part": "cloud", "share": "rest"}, {"part": "dusk"}`,
		"temperature", `{"pour": "70 °C"}`,
		"embeds", `{"embed": "moon", "vessel": "cpu", "mass": "3 g", "volume": "2 mL"}, {"embed": "sun", "vessel": "cup", "mass": "3 g", "each": 0, "sunk": "yes"}`,
		"toppings", `{"topping": "dust", "vessel": "cup", "glitter": "plastic"}, {"topping": "leaf", "vessel": "cup", "mass": "1 g", "aluminium": true}`,
	).text()
	_, faults := read(t, text)
	var got []string
	for _, f := range faults {
		got = append(got, f.Path)
		if f.Reason == "" || f.Line == 0 {
			t.Errorf("%+v says too little", f)
		}
	}
	want := []string{
		"size.vessels[0].part", "size.vessels[0].count", "size.vessels[0].cuts", "size.vessels[0].moulds", "size.vessels[0].volume",
		"size.vessels[1].on", "size.vessels[1].cone.tip", "size.vessels[1].cone.fill",
		"size.vessels[2].part", "size.vessels[2].count", "size.vessels[2].box.depth", "size.vessels[2].box.length",
		"size.vessels[3].count", "size.vessels[4].parts", "size.vessels[4].count", "size.vessels[4].coat",
		"size.vessels[5].volume", "size.vessels[6].cuts", "size.vessels[6].trial.count", "size.vessels[6].trial.mass",
		"parts[0].reserve", "parts[0].work",
		"temperature.pour", "embeds[0].mass", "embeds[0].vessel", "embeds[1].each", "embeds[1].sunk",
		"toppings[0].mass", "toppings[0].glitter", "toppings[1].aluminium",
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("faults at\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// What only the working shows.
func TestVesselsThatCannotBeFilled(t *testing.T) {
	vessel := `{"vessel": "cup", "part": "lantern", "count": 12, "volume": "45 mL"}`
	size := `{"vessels": [` + vessel + `]}`
	for path, p := range map[string]pieces{
		"parts[0]":        plainFormula().with("size", size, "parts", `{"part": "lantern", "additives": [{"additive": "salt", "load": "900 g"}]}`),
		"size.vessels[0]": plainFormula().with("size", size, "parts", `{"part": "lantern"}`, "embeds", `{"embed": "moon", "vessel": "cup", "volume": "45 mL", "sunk": true}`),
		"size.vessels":    plainFormula().with("size", strings.Replace(size, "45 mL", "1000 L", 1), "parts", `{"part": "lantern"}`),
		"water":           plainFormula().with("size", size, "parts", `{"part": "lantern"}`, "water", `{"lye_concentration": "52 %"}`, "alkali", `{"kind": "sodium-hydroxide", "purity": "100 %"}`),
		"parts[0].loss":   plainFormula().with("size", `{"oils": "100 g", "vessels": [`+vessel+`]}`, "parts", `{"part": "lantern", "share": "100 %", "loss": "1 kg"}`),
	} {
		f, err := soap.ReadFormula(strings.NewReader(p.text()))
		if err != nil {
			t.Errorf("%s: %v", path, err)
			continue
		}
		_, err = f.Batch()
		faults, ok := err.(soap.Faults)
		if !ok || len(faults) != 1 || faults[0].Path != path || faults[0].Remedy == "" {
			t.Errorf("%s: %v", path, err)
		}
	}
	other := `{"vessel": "swirl", "part": "lantern", "on": "cup", "volume": "9 mL"}`
	for path, size := range map[string]string{
		"size.vessels[1].vessel": `{"vessels": [` + vessel + `, ` + vessel + `]}`,
		"size.vessels[0].on":     `{"vessels": [` + strings.Replace(other, `"on": "cup"`, `"on": "swirl"`, 1) + `]}`,
		"size.vessels[2].on":     `{"vessels": [` + vessel + `, ` + other + `, {"vessel": "spark", "part": "lantern", "on": "swirl", "volume": "1 mL"}]}`,
		"size.pieces":            `{"oils": "1 kg", "pieces": 30, "vessels": [` + vessel + `]}`,
		"size.vessels":           `{"vessels": []}`,
		"size":                   `{"oils": "1 kg", "batter": "1 kg", "vessels": [` + vessel + `]}`,
	} {
		part := `{"part": "lantern", "share": "100 %"}`
		if strings.HasPrefix(path, "size.vessels") {
			part = `{"part": "lantern"}`
		}
		_, faults := read(t, plainFormula().with("size", size, "parts", part).text())
		if len(faults) != 1 || faults[0].Path != path {
			t.Errorf("%s: %v", size, faults)
		}
	}
}

// A part has vessels, or a share of the batter: not both, and not neither.
func TestAPartHasVesselsOrAShare(t *testing.T) {
	size := `{"vessels": [{"vessel": "cup", "part": "base", "count": 12, "volume": "45 mL"}]}`
	for path, parts := range map[string]string{
		"parts[0].share": `{"part": "base", "share": "60 %"}`,
		"parts[1]":       `{"part": "base"}, {"part": "cloud"}`,
		"parts[1].share": `{"part": "base"}, {"part": "cloud", "share": "rest"}`,
		"parts":          `{"part": "base"}, {"part": "cloud", "share": "60 %"}, {"part": "dusk", "share": "40 %"}`,
	} {
		_, faults := read(t, plainFormula().with("size", size, "parts", parts).text())
		if len(faults) != 1 || faults[0].Path != path {
			t.Errorf("%s: %v", parts, faults)
		}
	}
	b := plainFormula().with("size", size, "parts", `{"part": "base"}, {"part": "cloud", "share": "20 %"}`).batch(t)
	if !b.Parts[1].Share.Equal(units.Percent(20)) || !b.Parts[0].Share.Equal(units.Percent(80)) {
		t.Errorf("shares %v and %v", b.Parts[0].Share, b.Parts[1].Share)
	}
}

// An acid by mass ties the strength of the lye to the size of the batch, and densities
// are held to 10^-9 g/mL: the search must come to rest all the same.
func TestTheSearchComesToRestBesideAnAcid(t *testing.T) {
	for volume := 300; volume < 1000; volume++ { // 510 and 662 mL among them
		b := plainFormula().with(
			"size", fmt.Sprintf(`{"vessels": [{"vessel": "tray", "part": "lantern", "count": 1, "volume": "%d mL"}]}`, volume), "parts", `{"part": "lantern"}`,
			"oils", `{"oil": "olive", "share": "100 %"}`, "alkali", `{"kind": "sodium-hydroxide", "purity": "98 %"}`, "superfat", `"5 %"`, "water", `{"per_oils": "35 %"}`,
			"acids", `{"acid": "citric-acid-anhydrous", "load": "20 g", "compensate": true}`, "temperature", "",
		).batch(t)
		if got := b.Parts[0].Volume.Millilitres(); math.Abs(got/(1.05*float64(volume))-1) > 1e-8 {
			t.Errorf("%v mL poured for %d mL and 5 %%", got, volume)
		}
	}
}
