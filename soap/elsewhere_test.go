package soap_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// theNaOH, theKOH, either and others are names of strong alkalis, written down before anything was tried with them: of
// sodium hydroxide, of potassium hydroxide, of what may be the one or the other, and of what is not held.
var (
	theNaOH = []string{
		"NaOH", "NaOH beads", "NaOH pearls", "NaOH pellets", "naoh-perlen", "caustic soda", "caustic soda flakes",
		"caustic soda pearls", "Caustic-Soda 99%", "sodium hydroxide", "sodium hydroxide pellets", "sodium-hydroxid",
		"sodiumhydroxide", "sodium hydroxyde", "sodum hydroxide", "natrium hydroxide", "Natriumhydroxidplätzchen",
		"sodium hydroxide (lye)", "lye (sodium hydroxide)", "1310-73-2", "CAS 1310-73-2", "E 524", "lye crystals",
		"soda lye beads",
		"soude caustique en perles", "sosa cáustica en escamas", "hydroxide of sodium", "Na(OH)",
		"hidróxido de sodio en perlas", "Ätznatron fein", "causticsoda",
	}
	theKOH = []string{
		"KOH flakes", "potassium hydroxide flakes", "potassiumhydroxide", "caustic potash lumps", "1310-58-3",
		"E525", "kalium hydroxide", "hydroxyde de potassium pur", "potasium hydroxide", "Ätzkali",
	}
	either = []string{
		"lye", "food grade lye", "lye beads", "Lauge", "caustic", "hydroxide", "my lye",
		"hydroxid", "caustics", "pure lye 100 %", "hydroxyde", "lye, free-flowing", "lye free of carbonate",
		"no 1 grade: lye", "strong alkali",
	}
	solutions = []string{
		"50 % NaOH", "NaOH 50%", "lye solution", "stock lye", "lye water", "50% lye", "lye (50 %)",
		"KOH solution", "potassium hydroxide 45%", "lye masterbatch", "Natronlauge", "Natronlauge 50", "Kalilauge",
		"Seifenlauge", "sodium hydroxide solution", "solution of caustic soda", "Natriumhydroxidlösung", "natronlage",
	}
	others = []string{
		"quicklime", "slaked lime", "limewater", "lithium hydroxide", "ammonia", "drain cleaner",
		"calcium hydroxide", "calcium oxide", "hydrated lime", "Rohrreiniger", "Abflussreiniger", "Löschkalk", "chaux vive",
		"cal viva", "ammonium hydroxide", "Ca(OH)2", "1305-62-0", "Calciumoxid", "household ammonia", "oven cleaner spray",
		"pickling lime", "milk of lime", "Kalkwasser",
	}
	// Names that have an alkali's name in them by letters alone, of which it is a salt, or which say that it is free of
	// one.
	harmless = []string{
		"lye-free", "lye free base", "without lye", "free of caustic soda", "sans soude caustique",
		"laugenfrei", "polyester", "barley", "barley water", "polyethylene", "sodium lactate", "sodium citrate",
		"baking soda",
		"washing soda", "soda crystals", "soda water", "club soda", "sodium carbonate", "potassium carbonate",
		"sodium bicarbonate", "bicarbonate de soude", "cristaux de soude", "sodium chloride", "potassium sorbate",
		"aluminium hydroxide", "chromium hydroxide green", "iron oxide hydroxide", "magnesium hydroxide", "Aluminiumhydroxid",
		"iron(III) hydroxide", "calcium carbonate", "key lime juice powder", "lime-blossom tea", "lime zest", "kohlrabi",
		"acoustic", "hydroxystearate", "titanium dioxide powder", "sulphate of potash", "ammonium lauryl sulfate",
		"gum ammoniac",
		"pearl mica", "calendula", "lavender buds", "coffee grounds", "oat flour", "honey", "fine salt", "star dust",
		"pressed cornflower", "petals", "glimmer", "little moon", "moon", "comet", "cloud", "sun", "star", "leaf",
		"dusk mica",
		"meadow milk", "hall cream", "lantern cider", "oat milk", "hydrated silica", "beer", "nettle tea", "caramel",
		"Armonia",
		"olives", "loofah", "rose water", "alkali blue",
	}
)

// places are the lines in which no alkali may stand, each a formula with a name in it.
var places = []struct {
	path string
	with func(name string) pieces
}{
	{"water.liquids[0].liquid", func(name string) pieces {
		return plainFormula().with("water", `{"lye_concentration": "33 %", "liquids": [{"liquid": `+strconv.Quote(name)+
			`, "mass": "20 g", "water": "95 %"}]}`)
	}},
	{"parts[0].additives[0].additive", func(name string) pieces {
		return plainFormula().with("parts", oneAddition("additives", `{"additive": `+strconv.Quote(name)+`, "load": "1 g"}`))
	}},
	{"parts[0].additives[0].additive", func(name string) pieces {
		return plainFormula().with("parts", oneAddition("additives", `{"additive": `+strconv.Quote(name)+
			`, "unlisted": true, "load": "1 g"}`))
	}},
	{"parts[0].colourants[0].colourant", func(name string) pieces {
		return plainFormula().with("parts", oneAddition("colourants", `{"colourant": `+strconv.Quote(name)+
			`, "unlisted": true, "load": "1 g"}`))
	}},
	{"parts[0].fragrances[0].fragrance", func(name string) pieces {
		return plainFormula().with("parts", oneAddition("fragrances", `{"fragrance": `+strconv.Quote(name)+
			`, "unlisted": true, "load": "1 g"}`))
	}},
	{"embeds[0].embed", func(name string) pieces {
		return inCups().with("embeds", `{"embed": `+strconv.Quote(name)+`, "vessel": "cup", "mass": "5 g"}`)
	}},
	{"toppings[0].topping", func(name string) pieces {
		return inCups().with("toppings", `{"topping": `+strconv.Quote(name)+`, "vessel": "cup", "mass": "1 g"}`)
	}},
}

func TestNoAlkaliPassesUnderAnotherName(t *testing.T) {
	for _, place := range places {
		tried := 0
		for _, group := range []struct {
			names        []string
			says, remedy string
		}{
			{theNaOH, "is a name of sodium-hydroxide", "list it among the alkalis"},
			{theKOH, "is a name of potassium-hydroxide", "list it among the alkalis"},
			{either, "may mean sodium-hydroxide or potassium-hydroxide", "as the one that its label says"},
			{solutions, "is a name of a solution of an alkali", `"stock"`},
			{others, "is a name of an alkali that is not held", "leave it out"},
			{[]string{"potash", "Pottasche", "potash flakes"}, "may mean potassium-hydroxide", "if it is that"},
			{[]string{"perles de soude", "sosa en perlas"}, "may mean sodium-hydroxide", "if it is that"},
			{[]string{"lessive", "lejía"}, "may mean sodium-hydroxide or potassium-hydroxide", "if it is that"},
		} {
			if strings.HasPrefix(place.path, "embeds") || strings.HasPrefix(place.path, "toppings") {
				group.remedy = "leave it out"
			}
			for _, name := range group.names {
				tried++
				_, faults := read(t, place.with(name).text())
				if len(faults) != 1 || faults[0].Path != place.path || !errors.Is(faults[0].Kind, soap.ErrConflict) ||
					!strings.Contains(faults[0].Reason, group.says) || !strings.Contains(faults[0].Remedy, group.remedy) {
					t.Errorf("%s: %q: %v, want that it %s; %s", place.path, name, faults, group.says, group.remedy)
				}
			}
		}
		if tried < 100 {
			t.Errorf("%s: %d names were tried", place.path, tried)
		}
	}
}

func TestWhatIsNoAlkaliIsRefusedNowhere(t *testing.T) {
	for _, place := range places {
		for _, name := range harmless {
			_, faults := read(t, place.with(name).text())
			for _, f := range faults {
				if f.Path == place.path && (strings.Contains(f.Reason, "alkali") || strings.Contains(f.Reason, "hydroxide")) {
					t.Errorf("%s: %q: %v", place.path, name, f)
				}
			}
			if len(faults) > 0 && (strings.HasPrefix(place.path, "embeds") || strings.HasPrefix(place.path, "toppings")) {
				t.Errorf("%s: %q: %v", place.path, name, faults)
			}
		}
	}
}

// A pigment and a fragrance of the maker's own may be called what they are not: their names are looked at where they
// are used.
func TestAnAlkaliOfTheMakersOwnIsRefused(t *testing.T) {
	for kind, f := range map[string]pieces{
		"colourants[0].colourant": plainFormula().with("pigments", `{"colourant": "moth", "name": "caustic soda beads"}`,
			"parts", oneAddition("colourants", `{"colourant": "moth", "load": "1 g"}`)),
		"fragrances[0].fragrance": plainFormula().with("materials", `{"fragrance": "food grade lye", "complete": true,
			"constituents": []}`,
			"parts", oneAddition("fragrances", `{"fragrance": "food grade lye", "load": "1 g"}`)),
	} {
		_, faults := read(t, f.text())
		if len(faults) != 1 || faults[0].Path != "parts[0]."+kind || !errors.Is(faults[0].Kind, soap.ErrConflict) {
			t.Errorf("%s: %v", kind, faults)
		}
	}
}

func TestAnAcidAmongOtherWordsIsListedAmongTheAcids(t *testing.T) {
	for name, acid := range map[string]string{
		"apple cider vinegar": "acetic-acid", "ACV": "acetic-acid", "rice vinegar 5 %": "acetic-acid",
		"white vineger": "acetic-acid", "Essigessenz": "acetic-acid", "Apfelessig": "acetic-acid",
		"vinaigre de cidre": "acetic-acid",
		"appelazijn":        "acetic-acid", "aceto di mele": "acetic-acid", "citric acid solution": "citric-acid-anhydrous",
		"food grade citric acid": "citric-acid-anhydrous", "lactic acid 80 %": "lactic-acid",
	} {
		for _, place := range places[:3] {
			_, faults := read(t, place.with(name).text())
			if len(faults) != 1 || faults[0].Path != place.path || !strings.Contains(faults[0].Reason, acid) ||
				!strings.Contains(faults[0].Remedy, "list it among the acids") {
				t.Errorf("%s: %q: %v, want %s", place.path, name, faults, acid)
			}
		}
	}
	for _, name := range []string{"stearic acid", "stearic acid flakes"} {
		_, faults := read(t, places[1].with(name).text())
		if len(faults) != 1 || !strings.Contains(faults[0].Remedy, "list it among the oils") {
			t.Errorf("%q: %v", name, faults)
		}
	}
	for _, name := range []string{
		"sodium lactate", "sodium citrate", "lactic acid bacteria", "vinegar-free ale",
		"without citric acid", "hall cider", "sumac", "grape must", "orange juice", "rum",
		"goat milk", "buttermilk", "coffee", "green tea", "aloe juice", "citrus peel", "beer", "honey", "oat milk",
	} {
		for _, place := range places[:3] {
			if _, faults := read(t, place.with(name).text()); faults != nil {
				t.Errorf("%s: %q: %v", place.path, name, faults)
			}
		}
	}
}
