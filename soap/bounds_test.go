package soap_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
)

// The heaviest formulas are worked out in every view. A second is theirs on a machine that has
// nothing else to do, twenty are given to one that is loaded.
func TestTheHeaviestFormulasAreWorkedOut(t *testing.T) {
	if testing.Short() {
		t.Skip("works the heaviest formulas out")
	}
	for name, heavy := range heaviest {
		f, _, err := soap.ParseFormula(heavy.Text())
		if err != nil {
			t.Errorf("%s: %.300s", name, err)
			continue
		}
		begun := time.Now()
		b, err := f.Batch()
		if err != nil {
			t.Errorf("%s: %.300s", name, err)
			continue
		}
		tint, err := b.Tint()
		_, err2 := tint.MarshalJSON()
		_, err3 := b.Caps().MarshalJSON()
		_, err4 := b.MarshalJSON()
		if err := errors.Join(err, err2, err3, err4); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if took := time.Since(begun); took > 20*time.Second {
			t.Errorf("%s: took %v", name, took)
		}
		if len(b.Findings) > 200 {
			t.Errorf("%s: %d findings", name, len(b.Findings))
		}
	}
}

func BenchmarkHeaviest(b *testing.B) {
	for name, heavy := range heaviest {
		f, _, err := soap.ParseFormula(heavy.Text())
		if err != nil {
			b.Fatal(name, err)
		}
		b.Run(strings.ReplaceAll(name, " ", "-"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				batch, err := f.Batch()
				if err != nil {
					b.Fatal(err)
				}
				if _, err := batch.Caps().MarshalJSON(); err != nil {
					b.Fatal(err)
				}
				if _, err := batch.Tint(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// What stays below every list's bound, and above a total, is refused as beyond a limit. What
// reaches the total is taken, and so is a maker's formula of twelve parts with six colours each.
func TestTotalsOfAFormulaAreBounded(t *testing.T) {
	for _, test := range []struct {
		heavy madeup.Heavy
		says  string // empty: it is taken
	}{
		{madeup.Heavy{Parts: 30, Additives: 50}, ""},
		{madeup.Heavy{Parts: 31, Additives: 49}, "has 1519 additions in all"},
		{madeup.Heavy{Parts: 20, Matched: 5, Swatches: 41}, ""},
		{madeup.Heavy{Parts: 17, Matched: 6, Swatches: 41}, "has 102 colourants whose loads are looked for in all"},
		{madeup.Heavy{Parts: 3, Matched: 6, Swatches: 100, Bands: 71}, ""},
		{madeup.Heavy{Parts: 4, Matched: 6, Swatches: 100, Bands: 71}, "take longer than one formula may"},
		{madeup.Heavy{Parts: 5, Matched: 6, Swatches: 100, Bands: 36}, ""},
		{madeup.Heavy{Parts: 13, Matched: 6, Swatches: 41}, "take longer than one formula may"},
		{madeup.Heavy{Parts: 12, Matched: 6, Fragrances: 3, Additives: 2, Swatches: 41, Vessels: 100}, ""},
		{madeup.Heavy{Parts: 1, Fragrances: 1, Materials: 50, Constituents: 100}, ""},
		{madeup.Heavy{Parts: 1, Fragrances: 1, Materials: 51, Constituents: 99}, "has 5049 constituents in all"},
		{madeup.Heavy{Parts: 1, Fragrances: 1, Materials: 20, Blends: 10, Nested: 6}, ""},
		{madeup.Heavy{Parts: 1, Fragrances: 1, Materials: 20, Blends: 10, Nested: 7}, "nest more than 6 deep"},
	} {
		_, _, err := soap.ParseFormula(test.heavy.Text())
		switch {
		case test.says == "" && err != nil:
			t.Errorf("%+v: %.300v", test.heavy, err)
		case test.says != "" && (err == nil || !errors.Is(err, soap.ErrLimit) || !strings.Contains(err.Error(), test.says)):
			t.Errorf("%+v: %.300v, want %q", test.heavy, err, test.says)
		}
	}
}

// withNotes is a formula with so many additives, each of which has one note, and what goes
// besides.
func withNotes(t *testing.T, additives int, besides string) soap.Batch {
	t.Helper()
	var parts []string
	for i := 0; i < additives; i += 50 {
		var list []string
		for k := i; k < min(i+50, additives); k++ {
			list = append(list, fmt.Sprintf(`{"additive": "hall flour %d", "load": "5 g"%s}`, k, besides))
		}
		share := "1 %"
		if i == 0 {
			share = "rest"
		}
		parts = append(parts, fmt.Sprintf(`{"part": "part %d", "share": %q, "additives": [%s]}`, i, share,
			strings.Join(list, ",")))
	}
	return plainFormula().with("parts", strings.Join(parts, ",")).batch(t)
}

// beyondTwoHundred are batches of more than 200 findings: notes, warnings, dangers.
func beyondTwoHundred(t *testing.T) []soap.Batch {
	return []soap.Batch{withNotes(t, 300, ""), withNotes(t, 300, `, "glitter": "polymer"`), withDangers(t)}
}

// 200 findings are told, of more 199, and a last one that says how many there are. It is as
// severe as the gravest of those.
func TestAtMost200FindingsAreToldAndTheLastSaysHowManyMore(t *testing.T) {
	few := withNotes(t, 100, "")
	besides := len(few.Findings) - 100
	if besides < 0 || few.Findings[len(few.Findings)-1].Code == "findings-more" {
		t.Fatalf("%d findings", len(few.Findings))
	}
	if b := withNotes(t, 200-besides, ""); len(b.Findings) != 200 || slices.ContainsFunc(b.Findings,
		func(f soap.Finding) bool { return f.Code == "findings-more" }) {
		t.Errorf("%d findings, the last %s", len(b.Findings), b.Findings[len(b.Findings)-1].Code)
	}
	b := withNotes(t, 201-besides, "")
	last := b.Findings[len(b.Findings)-1]
	if len(b.Findings) != 200 || last.Code != "findings-more" || last.Severity != soap.Note || last.Value.Text(0) != "2" ||
		!strings.Contains(last.Message(), "2 findings more") {
		t.Errorf("%d findings, the last %+v", len(b.Findings), last)
	}
}

// withDangers has 250 fragrances far over their caps.
func withDangers(t *testing.T) soap.Batch {
	t.Helper()
	var parts []string
	for i := range 50 {
		var list []string
		for _, id := range []string{"clove-bud", "cinnamon-bark", "lemongrass", "litsea-cubeba", "spearmint"} {
			list = append(list, fmt.Sprintf(`{"fragrance": %q, "load": "20 %% of oils"}`, id))
		}
		share := "1 %"
		if i == 0 {
			share = "rest"
		}
		parts = append(parts, `{"part": "part `+strconv.Itoa(i)+`", "share": "`+share+`", "fragrances": [`+
			strings.Join(list, ",")+`]}`)
	}
	return plainFormula().with("parts", strings.Join(parts, ",")).batch(t)
}

// Of several hundred dangers 199 are told, and the last stays a danger; so it is in the view
// of caps, which has those on fragrance alone. A warning that is left out leaves a warning.
func TestNoDangerIsLeftOutWithoutADanger(t *testing.T) {
	b := withDangers(t)
	last := b.Findings[len(b.Findings)-1]
	if len(b.Findings) != 200 || last.Code != "findings-more" || last.Severity != soap.Danger ||
		!strings.Contains(last.Message(), "some of them are dangers") {
		t.Errorf("%d findings, the last %+v", len(b.Findings), last)
	}
	caps := b.Caps().Findings
	if n := len(caps); n != 200 || caps[n-1].Code != "findings-more" || caps[n-1].Severity != soap.Danger {
		t.Errorf("caps have %d findings", n)
	}
	b = withNotes(t, 300, `, "glitter": "polymer"`)
	if last := b.Findings[len(b.Findings)-1]; len(b.Findings) != 200 || last.Severity != soap.Warning ||
		!strings.Contains(last.Message(), "None is a danger, some are warnings") {
		t.Errorf("%d findings, the last %+v", len(b.Findings), last)
	}
}

// A context that ends stops the work: its error is wrapped, and nothing is given beside it. How soon is
// measured by BenchmarkLongestBetweenTwoLooks; here five seconds are given to a machine that is loaded.
func TestABatchStopsWhenItsContextEnds(t *testing.T) {
	over, cancel := context.WithCancel(t.Context())
	cancel()
	for name, heavy := range heaviest {
		f, b := mustHeavy(t, heavy)
		if b, err := f.BatchContext(over); !errors.Is(err, context.Canceled) || b.Parts != nil {
			t.Errorf("%s: %d parts, %v", name, len(b.Parts), err)
		}
		for _, after := range []time.Duration{time.Millisecond, 10 * time.Millisecond, 40 * time.Millisecond} {
			ctx, cancel := context.WithTimeout(t.Context(), after)
			begun := time.Now()
			b, err := f.BatchContext(ctx)
			took := time.Since(begun)
			cancel()
			if err == nil { // it was worked out before; on a loaded machine a context may end late
				continue
			}
			if !errors.Is(err, context.DeadlineExceeded) || b.Parts != nil {
				t.Errorf("%s: %d parts, %.300v", name, len(b.Parts), err)
			}
			if took > after+5*time.Second {
				t.Errorf("%s: %v after the end of its context", name, took-after)
			}
		}
		if _, err := b.CapsContext(over); !errors.Is(err, context.Canceled) {
			t.Errorf("%s, caps: %v", name, err)
		}
		if _, err := b.TintContext(over); !errors.Is(err, context.Canceled) {
			t.Errorf("%s, tint: %v", name, err)
		}
	}
}
