package sheet_test

import (
	"os"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

func shipped(t *testing.T, name string, change func(text string) string) soap.Batch {
	t.Helper()
	text, err := os.ReadFile("../../testdata/formulas/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	return batchOf(t, change(string(text)))
}

// flat is a page without its line breaks.
func flat(page string) string { return strings.Join(strings.Fields(page), " ") }

// The bound stands in the caution beside the step, not somewhere else.
func TestTheCautionSaysHowHotTheLyeMayGet(t *testing.T) {
	b := shipped(t, "too-much-alkali", func(text string) string { return text })
	_, step, _ := strings.Cut(flat(write(t, b, units.Gram)),
		"never the water to the alkali: it gets very hot and may boil. ")
	if want := "With water at 20 °C it reaches up to " + b.Lye.Heat.Final.Ratio().Round(0, units.Up).Text(0) +
		" °C, if no heat is lost"; !strings.HasPrefix(step, want) {
		t.Errorf("got %.120q, want %q", step, want)
	}
	without := shipped(t, "too-much-alkali", func(text string) string {
		return strings.Replace(text, `"water": "20 °C", `,
			"", 1)
	})
	if page := flat(write(t, without, units.Gram)); strings.Contains(page, "if no heat is lost") {
		t.Error("a bound without a water temperature")
	}
}

func TestWhatWasWeighedIsToldByItsStage(t *testing.T) {
	for stage, want := range map[string]string{
		"lye": "The lye holds too much alkali for the oils. Use part of it, and make up the water. Keep what is left of " +
			"it labelled and locked away",
		"pot":   "Any one of these brings the batter back to its plan",
		"parts": "For each part alone, any one of its lines brings it back to its own plan",
		"moulds": "It is poured: nothing can be mended. In the worst case its superfat lies below zero: do not use it " +
			"on skin.",
	} {
		b := shipped(t, "too-much-alkali", func(text string) string {
			return strings.Replace(text, `"stage": "pot"`,
				`"stage": "`+stage+`"`, 1)
		})
		page := write(t, b, units.Gram)
		if !strings.Contains(flat(page), want) {
			t.Errorf("%s: the sheet does not say %q", stage, want)
		}
		// Every remedy has a line, with what the scale can show.
		for _, r := range b.Weighed.Remedies {
			mass := r.Add.Weigh.Fixed(units.Gram, 0)
			if r.Oil == "" {
				mass = r.UseLye.Weigh.Fixed(units.Gram, 1)
			}
			if !strings.Contains(page, " "+mass+" ") {
				t.Errorf("%s: no line with %s g", stage, mass)
			}
		}
		if stage == "moulds" && len(b.Weighed.Remedies) > 0 {
			t.Error("something is offered for what is poured")
		}
		if alkali := strings.Contains(flat(page), "lacks alkali"); alkali {
			t.Errorf("%s: alkali is asked for", stage)
		}
	}
}

func TestTooLittleAlkaliIsMendedInTheLyeAlone(t *testing.T) {
	for stage, want := range map[string]string{
		"lye": "The lye lacks alkali. Dissolve what is missing in it",
		"pot": "The superfat needs no mending: it is no less than planned. Alkali is never added to batter.",
	} {
		b := shipped(t, "too-much-alkali", func(text string) string {
			text = strings.Replace(text, `"sodium-hydroxide": "121.8 g"`, `"sodium-hydroxide": "101.8 g"`, 1)
			return strings.Replace(text, `"stage": "pot"`, `"stage": "`+stage+`"`, 1)
		})
		page := flat(write(t, b, units.Gram))
		if !strings.Contains(page, want) {
			t.Errorf("%s: the sheet does not say %q", stage, want)
		}
		if adds := strings.Contains(page, "add Sodium hydroxide"); adds != (stage == "lye") {
			t.Errorf("%s: alkali is offered: %v", stage, adds)
		}
	}
}

// What dissolves in the water must be weighed before the alkali meets it.
func TestAcidsComeBeforeTheLye(t *testing.T) {
	page := write(t, shipped(t, "stock-and-milk", func(text string) string { return text }), units.Gram)
	acid, water := strings.Index(page, "[ ] Lactic acid"), strings.Index(page, "[ ] Water")
	if acid < 0 || acid > water {
		t.Errorf("the acid stands at %d, the water at %d", acid, water)
	}
	if !strings.Contains(flat(page), "never pour them into finished lye") {
		t.Error("no caution beside the acids")
	}
}

func TestAGradeSaysWhatMayBeInTheBottle(t *testing.T) {
	b := shipped(t, "too-much-alkali", func(text string) string {
		return strings.Replace(text, "ph-eur-7", "acs-2017",
			1)
	})
	if page := flat(write(t, b, units.Gram)); !strings.Contains(page,
		"is what the grade allows, not what is in this bottle") {
		t.Error("the sheet does not say that the grade is one")
	}
	var working strings.Builder
	if err := sheet.WriteWorking(&working, b); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(flat(working.String()), "ACS Reagent Chemicals, 2017, monograph Sodium Hydroxide (recalled, "+
		"not read)") {
		t.Error("the working does not say that the grade was recalled")
	}
}

// At every stage the danger stands above, and the advice says what is left to do: nothing
// says that there is nothing to mend.
func TestALyeThatDoesNotDissolveSaysSo(t *testing.T) {
	for stage, want := range map[string]string{
		"lye":    "The lye holds more alkali than dissolves, and too much for the oils. First make up its water",
		"pot":    "Nothing mends it: the lye holds more alkali than dissolves",
		"parts":  "Nothing mends it: the lye holds more alkali than dissolves",
		"moulds": "Nothing mends it: the lye holds more alkali than dissolves",
	} {
		for water, over := range map[string]bool{"85 g": true, "230 g": false} {
			b := shipped(t, "too-much-alkali", func(text string) string {
				return strings.Replace(strings.Replace(text, `"stage": "pot"`, `"stage": "`+stage+`"`, 1), `"water": "230 g"`,
					`"water": "`+water+`"`, 1)
			})
			page := flat(write(t, b, units.Gram))
			for _, says := range []string{want, "no more than 52.1 % dissolves"} {
				if strings.Contains(page, says) != over {
					t.Errorf("%s, with %s of water: %q is said: %v", stage, water, says, !over)
				}
			}
			if over && strings.Contains(page, "nothing to mend") {
				t.Errorf("%s: there is nothing to mend", stage)
			}
		}
	}
	// with the alkali of the plan there is nothing to take away, and water is missing
	b := shipped(t, "too-much-alkali", func(text string) string {
		text = strings.Replace(text, `"lye_concentration": "32 %"`, `"per_alkali": "1.1"`, 1)
		i := strings.Index(text, `  "weighed"`)
		j := strings.Index(text, `  "parts"`)
		return text[:i] + `  "weighed": {"stage": "lye", "water": "80 g"},` + "\n" + text[j:]
	})
	if page := flat(write(t, b, units.Gram)); !strings.Contains(page,
		"The lye lacks water, so that it does not dissolve: make it up before it meets the oils") {
		t.Errorf("water alone: %.1500s", page)
	}
}
