package soap_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/lyewright/soap"
)

// vinegar is 1000 g of oils that need 200 mg KOH/g, at 5 %, with 120 g of vinegar of 5 %, which alkali is added for:
// 6 g of acetic acid (60.052 g/mol) take 6/60.052 × 56.105 = 5.60563 g of KOH.
func vinegar() pieces {
	return plainFormula().with(
		"oils", `{"oil": "hall-blend", "share": "100 %", "saponification": {"low": "199", "high": "201"}}`,
		"alkali", `{"kind": "Ätzkali", "purity": {"low": "99.9 %", "typical": "100 %", "high": "100 %"}}`,
		"acids", `{"acid": "vinegar", "strength": "5 %", "load": "120 g", "compensate": true}`)
}

// Without the acid, 195.60563 g of KOH meet a demand of 200 g: 1 − 0.97802815 = 2.197 %; with half of it 192.802815 of
// 200: 3.5986 %; with all of it 5 %.
func TestAnAcidAsWeighedIsFoundByAnyOfItsNames(t *testing.T) {
	for _, name := range []string{
		"vinegar", "acetic-acid", "acetic acid", "Essig", "white vinegar", "E260",
		"ácido acético",
	} {
		for mass, want := range map[string]string{"0 g": "2.197", "60 g": "3.599", "120 g": "5.000"} {
			b := vinegar().with("weighed", `{"stage": "pot", "acids": {"`+name+`": "`+mass+`"}}`).batch(t)
			if got := b.Weighed.Superfat.Planned.PercentFixed(3); got != want {
				t.Errorf("%s, %s: a superfat of %s %%, by hand %s", name, mass, got, want)
			}
		}
	}
}

// Of one acid, one alkali, one addition by two names neither may be lost.
func TestWhatIsWeighedByTwoNamesOfOneThingStandsTwice(t *testing.T) {
	scented := `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "peppermint oil", "load": "10 g"}],
		"colourants": [{"colourant": "charcoal", "load": "5 g"}]}`
	additions := func(text string) string {
		return `{"stage": "parts", "parts": {"lantern": {"additions": ` + text + `}}}`
	}
	for weighed, path := range map[string]string{
		`{"stage": "pot", "acids": {"vinegar": "60 g", "Essig": "60 g"}}`:            "weighed.acids.Essig",
		`{"stage": "pot", "acids": {"acetic-acid": "60 g", "Essig": "60 g"}}`:        "weighed.acids.Essig",
		`{"stage": "pot", "alkali": {"KOH": "90 g", "caustic potash": "90 g"}}`:      "weighed.alkali.caustic potash",
		`{"stage": "pot", "alkali": {"potassium-hydroxide": "90 g", "KOH": "90 g"}}`: "weighed.alkali.KOH",
		additions(`{"peppermint": "5 g",
			"Peppermint Essential Oil": "5 g"}`): "weighed.parts.lantern.additions.Peppermint Essential Oil",
		additions(`{"charcoal": "2 g", "activated charcoal": "2 g"}`): "weighed.parts.lantern.additions.activated charcoal",
	} {
		_, faults := read(t, vinegar().with("parts", scented, "weighed", weighed).text())
		if !slices.Equal(paths(faults), []string{path}) || !errors.Is(faults, soap.ErrConflict) {
			t.Errorf("%s: %v, want one at %s", weighed, faults, path)
		}
	}
}

// An addition is found by any of its names, and what is said of it stands at the key of the file.
func TestAnAdditionAsWeighedIsFoundByAnyOfItsNames(t *testing.T) {
	parts := `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "peppermint oil", "load": "10 g"}],
		"colourants": [{"colourant": "charcoal", "load": "5 g"}]}`
	for _, names := range [][2]string{
		{"peppermint", "activated-charcoal"},
		{"peppermint oil", "charcoal"},
		{"Peppermint EO", "Activated Charcoal"},
		{"Mentha piperita", "CHARCOAL"},
	} {
		weighed := func(scent, colour string) pieces {
			return plainFormula().with("parts", parts, "weighed", `{"stage": "parts", "parts": {"lantern": {"additions": {"`+
				names[0]+`": "`+scent+`", "`+names[1]+`": "`+colour+`"}}}}`)
		}
		b := weighed("9.5 g", "4.5 g").batch(t)
		for _, a := range b.Weighed.Parts[0].Additions {
			if want := map[string]string{"peppermint": "9.5 g", "activated-charcoal": "4.5 g"}[a.Name]; a.Mass.String() != want {
				t.Errorf("%q: %s of %s, want %s", names, a.Mass, a.Name, want)
			}
		}
		f := finding(weighed("3 g", "4.5 g").batch(t), "weighed-far", "weighed.parts.lantern.additions."+names[0])
		if f.Code == "" {
			t.Errorf("%q: no reading is far, or it stands elsewhere", names)
		}
		odd, faults := read(t, weighed("9.5 g", "16 g").text())
		if faults != nil {
			t.Fatal(faults)
		}
		_, err := odd.Batch()
		var far soap.Faults
		if !errors.As(err, &far) || !slices.Equal(paths(far), []string{"weighed.parts.lantern.additions." + names[1]}) {
			t.Errorf("%q: %v", names, err)
		}
	}
}

// What a blend calls by another name than its id is named with both, at the line of the blend.
func TestABlendSaysWhatItsNamesAreReadAs(t *testing.T) {
	b := plainFormula().with(
		"materials", `{"fragrance": "dusk", "blend": [{"fragrance": "lavender oil", "share": "60 %"},
			{"fragrance": "peppermint", "share": "40 %"}]}`,
		"parts", `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "dusk", "load": "10 g"}]}`,
	).batch(t)
	f := finding(b, "name-note", "materials[0].blend[0]")
	if f.Severity != note || !slices.Equal(f.Names, []string{"lavender", "lavender oil"}) || f.Detail != "fragrance" {
		t.Errorf("%+v", f)
	}
	if f := finding(b, "name-note", "materials[0].blend[1]"); f.Code != "" {
		t.Errorf("an id: %+v", f)
	}
}
