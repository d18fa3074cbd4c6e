package soap_test

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// faultsIn reads a wrong formula of the testdata and, where it reads, works it out.
func faultsIn(t *testing.T, name string) (faults soap.Faults, text string) {
	t.Helper()
	file, err := os.ReadFile("../testdata/formulas/wrong/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	f, places, err := soap.ParseFormula(file)
	if err == nil {
		if _, err = f.Batch(); err != nil {
			faults = faultsOf(t, err)
			for i := range faults {
				faults[i].Line, faults[i].Column = places.Find(faults[i].Path)
			}
			return faults, string(file)
		}
	}
	return faultsOf(t, err), string(file)
}

// What is wrong with vessels is named all together, in the order of the file.
func TestWrongVesselsAreNamedWithTheirPaths(t *testing.T) {
	vessel := func(i int, key string) string { return fmt.Sprintf("size.vessels[%d].%s", i, key) }
	for name, want := range map[string][]string{
		"tops-on-nothing": {vessel(1, "on"), vessel(2, "on"), vessel(3, "count"), vessel(3, "cuts"), vessel(3, "moulds")},
		"tops-on-tops":    {vessel(2, "on")},
		"impossible-shapes": {
			vessel(0, "box.length"), vessel(0, "box.depth"), vessel(0, "box.fill"), vessel(1, "tapered_box.bottom_width"), vessel(1, "tapered_box.fill"),
			vessel(2, "cylinder.diameter"), vessel(3, "frustum.height"), vessel(4, "half_sphere.fill"), vessel(5, "slab.liner"), vessel(6, "cone.tip"), vessel(7, "coat.area"),
			vessel(8, "water_fill.mass"), vessel(8, "water_fill.temperature"), vessel(9, "box"), vessel(10, "volume"),
		},
		"vessels-miscounted": {
			vessel(0, "count"), vessel(1, "count"), vessel(2, "count"), vessel(3, "count"), vessel(4, "count"), vessel(5, "cuts"), vessel(5, "moulds"), vessel(6, "cuts"),
			vessel(7, "count"), vessel(8, "count"), vessel(8, "trial.count"),
		},
		"two-shapes-or-none": {
			vessel(0, "cylinder"), vessel(1, "volume"), vessel(2, "volume"), vessel(3, "volume"), vessel(4, "vessel"), vessel(5, "trial.count"),
			vessel(6, "trial.count"), vessel(6, "trial.mass"), vessel(7, "vessel"),
		},
		"vessels-that-fill-no-part":        {vessel(0, "part"), vessel(1, "part"), vessel(2, "parts"), vessel(3, "part")},
		"parts-with-vessels-and-shares":    {"parts[0].share", "parts[2]", "parts[3].share", "parts[4].share"},
		"shares-leave-nothing-for-vessels": {"parts"},
		"layers-of-a-loaf": {
			vessel(0, "parts"), vessel(1, "parts.cluod"), vessel(2, "parts.cloud"), vessel(3, "parts"), vessel(4, "parts.base"), vessel(5, "parts"), vessel(6, "parts"), vessel(7, "parts.base"),
		},
		"embeds-and-toppings-astray": {
			"embeds[0].vessel", "embeds[1].mass", "embeds[2].mass", "embeds[3].vessel", "embeds[3].each", "embeds[3].spares", "embeds[4].mass", "embeds[4].sunk",
			"toppings[0].vessel", "toppings[1].mass", "toppings[2].glitter", "toppings[2].aluminium", "toppings[3].aluminium",
		},
		"poured-too-hot":            {"temperature.pour"},
		"pieces-without-vessels":    {"size.pieces"},
		"pieces-of-a-known-batch":   {"size.pieces"},
		"a-hundred-and-one-vessels": {"size.vessels"},
		"no-vessels":                {"size.vessels"},
		// what only the working shows
		"loss-more-than-poured":   {"parts[0].loss"},
		"embeds-take-all-the-cup": {"size.vessels[0]"},
		"loads-leave-no-batter":   {"parts[0]"},
		"lye-denser-than-known":   {"water"},
	} {
		faults, text := faultsIn(t, name)
		if got := paths(faults); !slices.Equal(got, want) {
			t.Errorf("%s: faults at %q, want %q", name, got, want)
		}
		lines := strings.Split(text, "\n")
		for _, f := range faults {
			if f.Reason == "" || f.Kind == nil {
				t.Errorf("%s: %+v says too little", name, f)
			}
			if f.Line < 1 || f.Line > len(lines) || f.Column < 1 || f.Column > len(lines[f.Line-1]) {
				t.Errorf("%s: %s stands at %d:%d", name, f.Path, f.Line, f.Column)
				continue
			}
			// What is missing is named where its object begins.
			at := lines[f.Line-1][f.Column-1:]
			if errors.Is(f, soap.ErrMissing) && !strings.ContainsAny(at[:1], "{[") {
				t.Errorf("%s: %s is said of %.30q", name, f.Path, at)
			}
		}
	}
}

// A name that is almost one that is there is offered; where none is near, all are.
func TestNearMissesOfVesselsAndPartsAreOffered(t *testing.T) {
	for name, want := range map[string][2]string{
		"tops-on-nothing":           {"size.vessels[1].on", "did you mean cup?"},
		"layers-of-a-loaf":          {"size.vessels[1].parts.cluod", "did you mean cloud?"},
		"vessels-that-fill-no-part": {"size.vessels[1].part", "did you mean base?"},
	} {
		faults, _ := faultsIn(t, name)
		i := slices.IndexFunc(faults, func(f soap.Fault) bool { return f.Path == want[0] })
		if i < 0 || faults[i].Remedy != want[1] || !errors.Is(faults[i], soap.ErrUnknown) {
			t.Errorf("%s: %v", name, faults)
		}
	}
	faults, _ := faultsIn(t, "vessels-that-fill-no-part")
	if last := faults[len(faults)-1]; last.Text != "lantern" || !strings.Contains(last.Remedy, `"base"`) || !strings.Contains(last.Remedy, `"cloud"`) {
		t.Errorf("%+v", last)
	}
	faults, _ = faultsIn(t, "embeds-and-toppings-astray")
	if faults[0].Remedy != "did you mean cup?" || !strings.Contains(faults[8].Remedy, `"cup"`) {
		t.Errorf("%v", faults)
	}
}

// typedShelf is a formula in order that a program changes, in ways that a file cannot.
func typedShelf(t *testing.T) soap.Formula {
	t.Helper()
	f := typedFormula(t)
	f.Parts, f.Weighed = []soap.Part{{Name: "base"}, {Name: "cloud"}}, soap.Weighed{}
	for i := range f.Oils {
		f.Oils[i].Mass = units.Mass{}
	}
	f.Size = soap.Size{Vessels: []soap.Vessel{
		{Name: "cup", Part: "base", Count: 12, Shape: mould.Measured{Content: units.Millilitres(45)}},
		{Name: "swirl", Part: "cloud", On: "cup", Shape: mould.Cone{Base: units.Millimetres(45), Tip: units.Millimetres(8), Height: units.Millimetres(35)}},
	}}
	if err := f.Check(); err != nil {
		t.Fatal(err)
	}
	return f
}

func TestTypedVesselsAreCheckedToo(t *testing.T) {
	measured := mould.Measured{Content: units.Millilitres(45)}
	for path, change := range map[string]func(f *soap.Formula){
		"size.vessels[0].count":  func(f *soap.Formula) { f.Size.Vessels[0].Count = -1 },
		"size.vessels[0].cuts":   func(f *soap.Formula) { f.Size.Vessels[0].Cuts = -1 },
		"size.vessels[0].moulds": func(f *soap.Formula) { f.Size.Vessels[0].Moulds = 10_001 },
		"size.vessels[1].on":     func(f *soap.Formula) { f.Size.Vessels[1].On = "swirl" },
		"size.vessels[1].count":  func(f *soap.Formula) { f.Size.Vessels[1].Count = 12 },
		"size.vessels[0].volume": func(f *soap.Formula) { f.Size.Vessels[0].Shape = nil },
		"size.vessels[1].cone.tip": func(f *soap.Formula) {
			f.Size.Vessels[1].Shape = mould.Cone{Base: units.Millimetres(8), Tip: units.Millimetres(45), Height: units.Millimetres(3)}
		},
		"size.vessels[0].box.depth": func(f *soap.Formula) {
			f.Size.Vessels[0].Shape = mould.Box{Length: units.Millimetres(3), Width: units.Millimetres(3)}
		},
		"size.vessels[0].trial.mass": func(f *soap.Formula) {
			f.Size.Vessels[0].Trial = mould.Trial{Count: 3}
		},
		"size.vessels[0].parts.base": func(f *soap.Formula) {
			f.Size.Vessels[0].Part, f.Size.Vessels[0].Layers = "", []soap.Layer{{Part: "base"}, {Part: "cloud", Rest: true}}
		},
		"size.vessels[0].parts.cloud": func(f *soap.Formula) {
			f.Size.Vessels[0].Part, f.Size.Vessels[0].Layers = "", []soap.Layer{{Part: "base", Share: units.Percent(60)}, {Part: "cloud", Share: units.Percent(40), Rest: true}}
		},
		"size.vessels[0].part": func(f *soap.Formula) {
			f.Size.Vessels[0].Layers = []soap.Layer{{Part: "base", Share: units.Percent(60)}, {Part: "cloud", Rest: true}}
		},
		"size.vessels": func(f *soap.Formula) {
			for i := range 99 {
				f.Size.Vessels = append(f.Size.Vessels, soap.Vessel{Name: fmt.Sprint("cup ", i), Part: "base", Count: 1, Shape: measured})
			}
		},
		"size.pieces":      func(f *soap.Formula) { f.Size.Pieces = -1 },
		"parts[0].work":    func(f *soap.Formula) { f.Parts[0].Work = mould.Piped + 1 },
		"parts[0].reserve": func(f *soap.Formula) { f.Parts[0].Reserve = units.Percent(101) },
		"parts[0].loss":    func(f *soap.Formula) { f.Parts[0].Loss = units.Mass{}.Sub(units.Grams(1)) },
		"parts[1].share":   func(f *soap.Formula) { f.Parts[1].Share = units.Percent(40) },
		"embeds[0].each": func(f *soap.Formula) {
			f.Embeds = []soap.Embed{{Name: "moon", Vessel: "cup", Mass: units.Grams(3), Each: -1}}
		},
		"embeds[0].spares": func(f *soap.Formula) {
			f.Embeds = []soap.Embed{{Name: "moon", Vessel: "cup", Mass: units.Grams(3), Spares: 10_001}}
		},
		"embeds[0].volume": func(f *soap.Formula) {
			f.Embeds = []soap.Embed{{Name: "moon", Vessel: "cup", Volume: units.Millilitres(1_000_001)}}
		},
		"embeds[0].embed":  func(f *soap.Formula) { f.Embeds = []soap.Embed{{Vessel: "cup", Mass: units.Grams(3)}} },
		"embeds":           func(f *soap.Formula) { f.Embeds = make([]soap.Embed, 51) },
		"toppings":         func(f *soap.Formula) { f.Toppings = make([]soap.Topping, 51) },
		"toppings[0].mass": func(f *soap.Formula) { f.Toppings = []soap.Topping{{Name: "petals", Vessel: "cup"}} },
		"toppings[0].vessel": func(f *soap.Formula) {
			f.Toppings = []soap.Topping{{Name: "petals", Vessel: "cupp", Mass: units.Grams(1)}}
		},
		"toppings[0].glitter": func(f *soap.Formula) {
			f.Toppings = []soap.Topping{{Name: "petals", Vessel: "cup", Mass: units.Grams(1), Glitter: soap.DegradableGlitter + 1}}
		},
		"toppings[0].aluminium": func(f *soap.Formula) {
			f.Toppings = []soap.Topping{{Name: "petals", Vessel: "cup", Mass: units.Grams(1), Foil: soap.WithAluminium}}
		},
		"temperature.pour": func(f *soap.Formula) { f.Temperature.Pour = units.Celsius(61) },
	} {
		f := typedShelf(t)
		change(&f)
		faults := faultsOf(t, f.Check())
		if got := paths(faults); !slices.Equal(got, []string{path}) || faults[0].Reason == "" || faults[0].Line != 0 {
			t.Errorf("%s: %v", path, faults)
		}
		if _, err := f.Batch(); err == nil {
			t.Errorf("%s: worked out all the same", path)
		}
	}
}

// The last value within each bound passes, and is worked out.
func TestTheLastCountWithinItsBoundPasses(t *testing.T) {
	for name, change := range map[string]func(f *soap.Formula){
		"ten thousand cups":    func(f *soap.Formula) { f.Size.Vessels[0].Count = 10_000 },
		"ten thousand pieces":  func(f *soap.Formula) { f.Size.Vessels[0].Count, f.Size.Vessels[0].Cuts = 100, 100 },
		"one cut of one":       func(f *soap.Formula) { f.Size.Vessels[0].Count, f.Size.Vessels[0].Cuts = 1, 1 },
		"as many moulds":       func(f *soap.Formula) { f.Size.Vessels[0].Moulds = 12 },
		"poured at 15 °C":      func(f *soap.Formula) { f.Temperature.Pour = units.Celsius(15) },
		"poured at 60 °C":      func(f *soap.Formula) { f.Temperature.Pour = units.Celsius(60) },
		"no reserve":           func(f *soap.Formula) { f.Parts[0].Reserve = units.Whole(0) },
		"twice what is filled": func(f *soap.Formula) { f.Parts[0].Reserve = units.Whole(1) },
		"ten thousand asked":   func(f *soap.Formula) { f.Size.Pieces = 10_000 },
		"one piece asked":      func(f *soap.Formula) { f.Size.Pieces = 1 },
		"a trial and no shape": func(f *soap.Formula) {
			f.Size.Vessels[0].Shape, f.Size.Vessels[0].Trial = nil, mould.Trial{Count: 10_000, Mass: units.Grams(1000)}
		},
		"a tip that is a point": func(f *soap.Formula) {
			f.Size.Vessels[1].Shape = mould.Cone{Base: units.Millimetres(45), Height: units.Millimetres(35)}
		},
	} {
		f := typedShelf(t)
		change(&f)
		if _, err := f.Batch(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	f := typedShelf(t)
	for i := range 98 {
		f.Size.Vessels = append(f.Size.Vessels, soap.Vessel{Name: fmt.Sprint("cup ", i), Part: "base", Count: 1, Shape: mould.Measured{Content: units.Millilitres(45)}})
	}
	if b, err := f.Batch(); err != nil || b.PiecesInAll() != 110 {
		t.Errorf("a hundred vessels: %v", err)
	}
}
