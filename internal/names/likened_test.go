package names_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/names"
)

func TestWordsAreRunsOfLettersOrOfDigits(t *testing.T) {
	for name, want := range map[string]string{
		"Olive oil (organic), lot 12": "olive oil organic lot 12",
		"palm-kernel":                 "palm kernel",
		"lot12":                       "lot 12",
		"poudre d'aluminium":          "poudre d aluminium",
		"Erdnusso\u0308l":             "erdnussol",
		"90 % C18:1":                  "90 c 18 1",
		" ... ":                       "",
		"":                            "",
	} {
		if got := strings.Join(names.Words(name), " "); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// Words of the trade, the order of words, lots and numbers do not count; what changes the meaning does.
func TestANameIsLikenedToWhatItIsSoldAs(t *testing.T) {
	held := func(id string) bool {
		return slices.Contains(strings.Fields(
			"olive palm palm-kernel sunflower sunflower-high-oleic canola coconut shea-butter stearic-acid-50",
		), id)
	}
	for name, want := range map[string]string{
		"Olive oil":                    "olive",
		"Olive oil, organic":           "olive",
		"Virgin Coconut":               "coconut",
		"coconut oil 76":               "coconut",
		"palm kernel oil (RSPO MB)":    "palm-kernel",
		"Kernel palm oil":              "palm-kernel",
		"Sunflower oil, high oleic":    "sunflower-high-oleic",
		"high-oleic sunflower seed":    "sunflower-high-oleic",
		"sunflower oil, cold pressed":  "sunflower",
		"canola, high oleic":           "canola",
		"refined shea butter":          "shea-butter", // the table has it as a further material, too
		"Olive oil, lot 7, from there": "olive",
		"stearic acid 50":              "stearic-acid-50",
		"Batch":                        "",
		"lot 12":                       "",
		"organic":                      "",
		"organic palm wax":             "",
		"hydrogenated palm oil, RSPO":  "",
		"olive leaf, organic":          "",
		"organic marula oil":           "",
		"":                             "",
	} {
		if got := names.Likened(names.Oil, name, held); got.ID != want && !got.Unheld || got.Unheld && want != "" {
			t.Errorf("%q is likened to %+v, want %q", name, got, want)
		}
	}
	if got := names.Likened(names.Oil, "rapeseed oil, refined", held); len(got.Several) != 2 {
		t.Errorf("a name of two oils: %+v", got)
	}
	if got := names.Plain("Oliv oil (organic), cold-pressed"); got != "oliv oil" {
		t.Errorf("without words of the trade: %q", got)
	}
}

// Whatever the table means by a name alone, the words of the trade behind it do not change.
func TestWordsOfTheTradeNeverLeadToAnotherID(t *testing.T) {
	ids := map[string]bool{}
	for _, row := range rows(t) {
		for _, field := range row[4:] {
			id, _, _ := strings.Cut(field, " ")
			ids[id] = id != "-"
		}
	}
	held := func(id string) bool { return ids[id] }
	tried, found := 0, 0
	for _, row := range rows(t) {
		kind, name, _ := strings.Cut(row[0], " ")
		if kind != "oil" || row[3] != "one" || strings.HasPrefix(row[4], "-") {
			continue
		}
		id, _, _ := strings.Cut(row[4], " ")
		for _, words := range []string{", organic", " (refined, food grade)", " RSPO 5 kg"} {
			if got := names.Likened(names.Oil, name+words, held); got.ID != "" && got.ID != id {
				t.Errorf("%s%s: %+v, want %s", name, words, got, id)
			} else if tried++; got.ID == id {
				found++
			}
		}
	}
	if found*50 < tried*49 {
		t.Errorf("%d of %d are likened to anything", found, tried)
	}
}

// What stands beside a name and changes nothing, on no list of words of the trade, leaves the name to be found in it.
func TestANameIsFoundAmongWordsThatNoListHas(t *testing.T) {
	ids := map[string]bool{}
	for _, row := range rows(t) {
		for _, field := range row[4:] {
			id, _, _ := strings.Cut(field, " ")
			ids[id] = id != "-"
		}
	}
	look := func(run string) names.Answer {
		return names.Look(names.Oil, run, func(id string) bool { return ids[id] })
	}
	known := func(run string) bool { return look(run).Found() }
	tried, found := 0, 0
	for _, row := range rows(t) {
		kind, name, _ := strings.Cut(row[0], " ")
		if kind != "oil" || row[3] != "one" || strings.HasPrefix(row[4], "-") {
			continue
		}
		id, _, _ := strings.Cut(row[4], " ")
		for _, whole := range []string{name + ", jug 2", "Greek " + name, "the old " + name + " of the guild"} {
			tried++
			if runs := names.Within(whole, known); len(runs) == 1 && look(runs[0]).ID == id {
				found++
			} else if len(runs) == 1 {
				t.Errorf("%q: %q, want a name of %s", whole, runs, id)
			}
		}
	}
	if found*50 < tried*48 {
		t.Errorf("%d of %d are found", found, tried)
	}
}

// A word that changes the meaning is not left out, in whatever language, mistyped or written together.
func TestNoNameIsFoundBesideAWordThatChangesIt(t *testing.T) {
	known := func(run string) bool {
		return slices.Contains([]string{"olive", "olive oil", "palm", "palm kernel", "coconut", "rice", "soy", "shea"}, run)
	}
	for _, name := range []string{
		"olive wax", "coconut milk powder", "palm kernel flakes", "palm kernal jug", "olive leaf tin", "olive pomace",
		"hydrogenated olive", "palm fractionated", "coconut butter", "coconutmilk", "olive squalane", "cire d'olive",
		"coconut fatty acid", "palm olein", "soy wax", "rice bran jug", "kokos, coconut Milch", "olive hydrogénée",
		"coconut hydriert", "hall wax", "oil", "seed oil 5", "organic",
	} {
		if runs := names.Within(name, known); runs != nil {
			t.Errorf("%q: %q", name, runs)
		}
	}
	for name, want := range map[string]string{
		"palm kernel jug": "palm kernel", "olive and palm kernel": "palm kernel/olive", "hall oliveoil": "olive oil",
		"olive, batch of palm": "olive", "mild olive oil": "olive oil",
	} {
		if got := strings.Join(names.Within(name, known), "/"); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}
