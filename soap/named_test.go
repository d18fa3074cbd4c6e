package soap_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

func oneAddition(kind, line string) string {
	return `{"part": "glow", "share": "100 %", "` + kind + `": [` + line + `]}`
}

// 2.7 % of oils of cinnamon bark, under whatever name, is far above its cap.
func TestAFragranceIsJudgedWhateverItIsCalled(t *testing.T) {
	var want soap.Finding
	for i, name := range []string{"cinnamon-bark", "cinnamon bark", "Cinnamon Bark Oil", "cinnamon-bark EO"} {
		b := plainFormula().with("parts", oneAddition("fragrances", `{"fragrance": "`+name+
			`", "load": "1 % of oils"}`)).batch(t)
		over := found(b, "fragrance-over-cap")
		if len(over) == 0 || over[0].Severity != soap.Danger {
			t.Fatalf("%q is no danger: %v", name, codes(b.Findings))
		}
		if i == 0 {
			want = over[0]
		} else if !over[0].Value.Equal(want.Value) {
			t.Errorf("%q uses %s of its limit, want %s", name, over[0].Value, want.Value)
		}
		a := b.Parts[0].Additions[0]
		if a.Name != "cinnamon-bark" || i > 0 && a.Asked != name || i == 0 && a.Asked != "" {
			t.Errorf("%q is weighed as %q, asked for as %q", name, a.Name, a.Asked)
		}
	}
	// Typed in Go it is the same.
	f := typedFormula(t)
	f.Parts[0].Fragrances = []soap.Addition{{Name: "Cinnamon Bark", Load: soap.Load{OfOils: units.Percent(1)}}}
	b, err := f.Batch()
	if err != nil || len(found(b, "fragrance-over-cap")) == 0 {
		t.Errorf("%v, %v", codes(b.Findings), err)
	}
	if f.Parts[0].Fragrances[0].Name != "Cinnamon Bark" {
		t.Error("the caller's formula was changed")
	}
}

func TestAPlainNameIsWeighedOnlyWhereItIsSaidToBeUnlisted(t *testing.T) {
	for _, test := range []struct {
		kind, line string
		path       string // of the fault; empty: there is none
		says       string
	}{
		{
			"fragrances", `{"fragrance": "moonlight", "load": "1 g"}`, "parts[0].fragrances[0].fragrance",
			`write "unlisted": true`,
		},
		{"fragrances", `{"fragrance": "moonlight", "unlisted": true, "load": "1 g"}`, "", ""},
		{
			"fragrances", `{"fragrance": "lavender", "unlisted": true, "load": "1 g"}`, "parts[0].fragrances[0].unlisted",
			"is known",
		},
		{
			"fragrances", `{"fragrance": "cinnamon bark", "unlisted": true, "load": "1 g"}`, "parts[0].fragrances[0].unlisted",
			"cinnamon-bark, which is known",
		},
		// One of three that are held: it has limits, whichever it is.
		{
			"fragrances", `{"fragrance": "clove oil", "unlisted": true, "load": "1 g"}`, "parts[0].fragrances[0].fragrance",
			"write clove-bud or clove-leaf or clove-stem",
		},
		{
			"fragrances", `{"fragrance": "clove oil", "unlisted": true, "load": "1 g"}`, "parts[0].fragrances[0].fragrance",
			"write clove-bud or clove-leaf or clove-stem",
		},
		{
			"fragrances", `{"fragrance": "lemon oil", "unlisted": true, "load": "1 g"}`, "parts[0].fragrances[0].fragrance",
			"lemon-distilled or lemon-expressed",
		},
		// Perhaps something of which nothing is held.
		{
			"fragrances", `{"fragrance": "sandalwood oil", "load": "1 g"}`, "parts[0].fragrances[0].fragrance",
			"something else, of which nothing is held",
		},
		{"fragrances", `{"fragrance": "sandalwood oil", "unlisted": true, "load": "1 g"}`, "", ""},
		{
			"fragrances", `{"fragrance": "moonlight", "unlisted": true, "load": "max"}`, "parts[0].fragrances[0].load",
			"nothing is known",
		},
		{"fragrances", `{"fragrance": "lime-expressed", "load": "max"}, {"fragrance": "moonlight", "unlisted": true,
			"load": "1 g"}`, "parts[0].fragrances[0].load", "which is unlisted"},
		{"colourants", `{"colourant": "dusk", "load": "1 g"}`, "parts[0].colourants[0].colourant", `write "unlisted": true`},
		{"colourants", `{"colourant": "dusk", "unlisted": true, "load": "1 g"}`, "", ""},
		{"colourants", `{"colourant": "charcoal", "load": "1 g"}`, "", ""},
		{
			"colourants", `{"colourant": "ultramarine", "unlisted": true, "load": "1 g"}`, "parts[0].colourants[0].colourant",
			"ultramarine-blue or ultramarine-pink or ultramarine-violet",
		},
		{
			"colourants", `{"colourant": "charcoal", "load": "1 g"}, {"colourant": "activated-charcoal", "load": "1 g"}`,
			"parts[0].colourants[1].colourant", "stands twice",
		},
		{
			"additives", `{"additive": "citric-acid-anhydrous", "load": "1 g"}`, "parts[0].additives[0].additive",
			"list it among the acids",
		},
		{"additives", `{"additive": "Vinegar", "load": "1 g"}`, "parts[0].additives[0].additive", "list it among the acids"},
		{
			"additives", `{"additive": "citric acid", "load": "1 g"}`, "parts[0].additives[0].additive",
			"list it among the acids",
		},
		{
			"additives", `{"additive": "sodium hydroxide", "load": "1 g"}`, "parts[0].additives[0].additive",
			"list it among the alkalis",
		},
		{"additives", `{"additive": "lye", "load": "1 g"}`, "parts[0].additives[0].additive", "list it among the alkalis"},
		{
			"additives", `{"additive": "Kalilauge", "load": "1 g"}`, "parts[0].additives[0].additive",
			"a solution of an alkali",
		},
		{"additives", `{"additive": "slaked lime", "load": "1 g"}`, "parts[0].additives[0].additive", "an alkali"},
		{"additives", `{"additive": "drain cleaner", "load": "1 g"}`, "parts[0].additives[0].additive", "an alkali"},
		{"additives", `{"additive": "aluminium foil", "load": "1 g"}`, "parts[0].additives[0].additive", "hydrogen"},
		{"additives", `{"additive": "aluminium glitter", "load": "1 g", "glitter": "polymer", "aluminium": true}`, "", ""},
		{"additives", `{"additive": "aluminium hydroxide", "load": "1 g"}`, "", ""},
		{"additives", `{"additive": "avocado", "load": "1 g"}`, "parts[0].additives[0].additive", `write "unlisted": true`},
		{"additives", `{"additive": "olive oil", "load": "1 g"}`, "parts[0].additives[0].additive", `list it among the oils`},
		{"additives", `{"additive": "avocado", "unlisted": true, "load": "1 g"}`, "", ""},
		{"additives", `{"additive": "sodium lactate", "load": "1 g"}`, "", ""},
		{"additives", `{"additive": "baking soda", "load": "1 g"}`, "", ""},
		{"additives", `{"additive": "fine salt", "load": "1 g"}`, "", ""},
	} {
		_, faults := read(t, plainFormula().with("parts", oneAddition(test.kind, test.line)).text())
		switch {
		case test.path == "" && len(faults) > 0:
			t.Errorf("%s: %v", test.line, faults)
		case test.path != "" && (len(faults) != 1 || faults[0].Path != test.path || !strings.Contains(faults[0].Reason+"; "+
			faults[0].Remedy, test.says)):
			t.Errorf("%s: %v, want %q at %s", test.line, faults, test.says, test.path)
		}
	}
}

func TestAnUnlistedNameIsAWarningThatNamesWhatIsNear(t *testing.T) {
	b := plainFormula().with("parts", `{"part": "glow", "share": "100 %", "fragrances": [{"fragrance": "lavendar",
		"unlisted": true, "load": "1 g"}], "colourants": [{"colourant": "titanium dioxid x", "unlisted": true,
		"load": "1 g"}],
		"additives": [{"additive": "cinnamon bark", "load": "1 g"}]}`).batch(t)
	for code, says := range map[string]string{
		"fragrance-unjudged": "did you mean lavender?",
		"colourant-unjudged": "did you mean titanium-dioxide?", "additive-unjudged": "list it among the fragrances",
	} {
		got := found(b, code)
		if len(got) != 1 || got[0].Severity != soap.Warning || !strings.Contains(got[0].Message(), says) {
			t.Errorf("%s: %+v, want %q", code, got, says)
		}
	}
}

// Alkali poured with the water and not reckoned with burns; an acid takes alkali that the oils were meant to have.
func TestALiquidIsNoAlkaliAndNoAcid(t *testing.T) {
	liquid := func(name string) pieces {
		return plainFormula().with("water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "`+name+
			`", "mass": "20 g", "water": "95 %"}]}`)
	}
	for name, says := range map[string]string{
		"lye": "may mean sodium-hydroxide or potassium-hydroxide", "Natronlauge": "a solution of an alkali",
		"caustic soda": "sodium-hydroxide",
		"Kalilauge":    "a solution of an alkali", "vinegar": "acetic-acid", "Zitronensäure": "citric-acid-anhydrous",
	} {
		_, faults := read(t, liquid(name).text())
		if len(faults) != 1 || faults[0].Path != "water.liquids[0].liquid" || !errors.Is(faults[0].Kind, soap.ErrConflict) ||
			!strings.Contains(faults[0].Reason, says) {
			t.Errorf("%s: %v, want %q", name, faults, says)
		}
	}
	for _, name := range []string{"milk", "oat milk", "whey", "sodium lactate", "lantern ale"} {
		if _, faults := read(t, liquid(name).text()); faults != nil {
			t.Errorf("%s: %v", name, faults)
		}
	}
}

func TestAlkalisAndAcidsAreFoundByTheirNames(t *testing.T) {
	for name, want := range map[string]soap.Alkali{
		"sodium-hydroxide": soap.SodiumHydroxide, "caustic soda": soap.SodiumHydroxide, "NaOH": soap.SodiumHydroxide,
		"Ätznatron": soap.SodiumHydroxide, "soude caustique": soap.SodiumHydroxide,
		"KOH": soap.PotassiumHydroxide, "Caustic-Potash": soap.PotassiumHydroxide,
		"hidróxido potásico": soap.PotassiumHydroxide,
	} {
		if got, err := lye.LookUpAlkali(name); err != nil || got != want {
			t.Errorf("%s is %v: %v", name, got, err)
		}
	}
	for name, says := range map[string]string{
		"lye": "may mean", "soda": "may mean", "potash": "may mean", "lejía": "may mean", "lessive": "may mean",
		"Natronlauge": `"stock"`, "lessive de soude": `"stock"`, "caustic soda solution": `"stock"`, "Kalilauge": `"stock"`,
		"drain cleaner": "may hold aluminium", "baking soda": "no hydroxide",
		"sodium-hydroxid": "did you mean sodium-hydroxide?", "": "is not an alkali",
	} {
		if got, err := lye.LookUpAlkali(name); err == nil || !errors.Is(err, soap.ErrUnknown) || got != 0 ||
			!strings.Contains(err.Error(), says) {
			t.Errorf("%q is %v: %v, want %q", name, got, err, says)
		}
	}
	for name, want := range map[string]string{
		"vinegar": "acetic-acid", "Essig": "acetic-acid", "milk acid": "lactic-acid",
		"E270": "lactic-acid", "citric acid monohydrate": "citric-acid-monohydrate",
	} {
		if got, err := lye.LookUpAcid(name); err != nil || got.ID != want {
			t.Errorf("%s is %s: %v", name, got.ID, err)
		}
	}
	for _, name := range []string{"citric acid", "citric-acid", "Zitronensäure"} {
		if _, err := lye.LookUpAcid(name); err == nil || !strings.Contains(err.Error(),
			"write citric-acid-anhydrous or citric-acid-monohydrate") {
			t.Errorf("%s: %v", name, err)
		}
	}
	f, faults := read(t, plainFormula().with("alkali",
		`{"kind": "caustic soda", "purity": {"low": "97 %", "high": "99 %"}}`, "acids",
		`{"acid": "vinegar", "strength": "5 %", "load": "1 % of oils", "compensate": true}`).text())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, n := range found(b, "name-note") {
		said = append(said, n.Subject+" "+strings.Join(n.Names, " "))
	}
	if want := []string{"alkali[0] sodium-hydroxide caustic soda", "acids[0] acetic-acid vinegar"}; !slices.Equal(said,
		want) {
		t.Errorf("%q, want %q", said, want)
	}
	if object, err := b.MarshalJSON(); err != nil || !strings.Contains(string(object), `"asked":"caustic soda"`) ||
		!strings.Contains(string(object), `"asked":"vinegar"`) {
		t.Errorf("%v: %s", err, object)
	}
}

func TestWhatIsWeighedIsFoundByWhateverItIsCalled(t *testing.T) {
	for _, names := range [][2]string{
		{"charcoal", "charcoal"},
		{"charcoal", "activated-charcoal"},
		{"activated-charcoal", "Aktivkohle"},
	} {
		f, faults := read(t, plainFormula().with("parts", oneAddition("colourants", `{"colourant": "`+names[0]+
			`", "load": "3 g"}`),
			"weighed", `{"stage": "parts", "parts": {"glow": {"additions": {"`+names[1]+`": "4 g"}}}}`).text())
		if len(faults) > 0 {
			t.Errorf("%v: %v", names, faults)
			continue
		}
		b, err := f.Batch()
		if err != nil {
			t.Errorf("%v: %v", names, err)
			continue
		}
		if object, err := b.MarshalJSON(); err != nil || !strings.Contains(string(object), `"mass_g":4,`) {
			t.Errorf("%v: 4 g are not weighed: %v", names, err)
		}
	}
}
