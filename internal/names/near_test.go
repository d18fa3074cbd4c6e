package names_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/names"
)

func same(a, b string) bool { return a == b }

func TestANameIsOfferedOnlyWhereConfusingItIsHarmless(t *testing.T) {
	known := strings.Fields("olive palm palm-kernel cocoa-butter coconut sunflower safflower lanolin almond rice-bran")
	flowers := func(a, b string) bool {
		return a == b || strings.HasSuffix(a, "flower") && strings.HasSuffix(b, "flower")
	}
	tests := []struct {
		name  string
		known []string
		alike func(a, b string) bool
		want  string
	}{
		{"oliv", known, same, "olive"},
		{"cocoa-buter", known, same, "cocoa-butter"},
		{"Palm Kernal Oil", known, same, "palm-kernel"},
		{"kokosnusöl", known, same, "coconut"},               // a name of the table, mistyped
		{"peach kernal", known, same, ""},                    // nearest to one that is not held
		{"date kernel", known, same, ""},                     // palm kernel by the letters of the word that both have
		{"neem kernel", known, same, ""},                     // likewise
		{"rice bran wx", known, same, ""},                    // the wax is not held here
		{"rise bran", known, same, "rice-bran"},              //
		{"olive waxx", known, same, ""},                      // a word that changes the saponification
		{"coco butte", known, same, ""},                      // nearest to coco butter, which may mean coconut
		{"saunflower", known, same, "sunflower"},             //
		{"sanflower", known, flowers, "sunflower safflower"}, // one letter off either, which are alike
		{"saflfower", known, flowers, "safflower"},           //
		{"cocoa", known, same, ""},                           // across the word butter
		{"almond x", []string{"almond-x"}, same, "almond-x"},
		{"x", []string{"x-one", "x-two"}, same, ""}, // two that are unlike
		{"y z", []string{"y-z-w"}, same, "y-z-w"},   // whole words of it
		{"moonlight", known, same, ""},
		{"", known, same, ""},
		{strings.Repeat("olive ", 11), known, same, ""},
	}
	for _, test := range tests {
		if got := strings.Join(names.Nearest(names.Oil, test.name, test.known, test.alike), " "); got != test.want {
			t.Errorf("%q offers %q, want %q", test.name, got, test.want)
		}
	}
}

// Taken for its oil, the water or meal of any of these would count as fat.
func TestNoOilIsOfferedForAFoodMadeOfItsPlant(t *testing.T) {
	known := strings.Fields("water glycerin olive palm coconut sunflower almond soybean avocado milk-fat rice-bran " +
		"hemp-seed argan")
	for _, plant := range strings.Fields("coconut soy soya soybean almond olive avocado rice hemp argan") {
		for _, food := range strings.Fields("milk cream flour meal powder pulp puree purée water juice extract hydrosol " +
			"vinegar whey sugar syrup starch paste shell hull mlk mikl craem flor mael powdr watr juce") {
			name := plant + " " + food
			if got := names.Nearest(names.Oil, name, known, same); got != nil {
				t.Errorf("%q offers %q", name, got)
			}
		}
	}
	for _, name := range strings.Split("coconutmilk,coconutcream,coconutflour,coconutmeal,coconutjuice,coconutsugar,almondmilk,"+
		"almondmeal,soymeal,soybeanmilk,soybeanflour,coconut gel,coconut sap,coconut tea,coconut egg,milk,seed,cream", ",") {
		if got := names.Nearest(names.Oil, name, known, same); got != nil {
			t.Errorf("%q offers %q", name, got)
		}
	}
	for name, want := range map[string]string{
		"cocnut":                "coconut",
		"olvie oil":             "olive",
		"sunflwer":              "sunflower",
		"avacado oil":           "avocado",
		"almnd oil":             "almond",
		"soyben oil":            "soybean",
		"plam oil":              "palm",
		"mlk fat":               "milk-fat",
		"watr":                  "water",
		"pure oliv oil":         "olive",
		"pure sweet almond oil": "almond", // not the word puree, mistyped
	} {
		if got := strings.Join(names.Nearest(names.Oil, name, known, same), " "); got != want {
			t.Errorf("%q offers %q, want %q", name, got, want)
		}
	}
}

// Whoever misses one letter of a name of ten or more is offered what it means, or nothing:
// another id never.
func TestASlipNeverLeadsToAnotherID(t *testing.T) {
	var known []string
	for _, row := range rows(t) {
		for _, field := range row[4:] {
			if id, _, _ := strings.Cut(field, " "); strings.HasPrefix(row[0], "oil ") && id != "-" &&
				!slices.Contains(known, id) {
				known = append(known, id)
			}
		}
	}
	offered := 0
	for n, id := range known {
		spelled := strings.ReplaceAll(id, "-", " ")
		at := n % len(spelled)
		typed := spelled[:at] + spelled[at+1:]
		if _, found := names.Find(names.Oil, typed); found || names.Fold(typed) != typed {
			continue // which is a name, too
		}
		for _, got := range names.Nearest(names.Oil, typed, known, same) {
			if offered++; got != id {
				t.Errorf("%q, %s less a letter, offers %q", typed, id, got)
			}
		}
	}
	if offered < len(known)/2 {
		t.Errorf("%d of %d slips are answered", offered, len(known))
	}
}

func BenchmarkNearest(b *testing.B) {
	known := strings.Fields("olive palm palm-kernel cocoa-butter coconut sunflower safflower lanolin almond rice-bran")
	b.ReportAllocs()
	for b.Loop() {
		names.Nearest(names.Oil, "moonlight seed oil", known, same)
	}
}
