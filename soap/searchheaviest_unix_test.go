//go:build unix

package soap_test

import (
	"context"
	"encoding/json"
	"flag"
	"os"
	"slices"
	"syscall"
	"testing"
	"time"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
)

var searchFor = flag.Duration("heaviest", 0, "search so long, for each kind, for a formula that costs more than the "+
	"heaviest known, and keep it")

// kinds say what keeps a formula of its kind, however it is changed.
var kinds = map[string]func(h madeup.Heavy) bool{
	"fragrances, each part's most, vessels": func(h madeup.Heavy) bool {
		return h.Most && h.Vessels > 0 &&
			h.Matched == 0 && !h.Promise
	},
	"loads to be matched, carriers held back": func(h madeup.Heavy) bool { return h.Matched > 0 && h.Held },
	"a promise, loads of batter, vessels": func(h madeup.Heavy) bool {
		return h.Promise && h.OfBatter &&
			h.Vessels > 0 && h.Matched == 0
	},
	"the maker's own lists, layers": func(h madeup.Heavy) bool {
		return h.Materials > 1 && h.Constituents > 1 && h.Layers > 1 && h.Matched == 0
	},
	"additives in carriers, layers": func(h madeup.Heavy) bool {
		return h.Additives > 10 && h.Held && h.Layers > 1 &&
			h.Fragrances == 0
	},
	"weighed": func(h madeup.Heavy) bool { return h.Weighed && h.Matched == 0 && !h.Promise },
	"a hundred swatches of 71 bands": func(h madeup.Heavy) bool {
		return h.Swatches > 0 && h.Matched == 0 &&
			h.Tinted > 0
	},
}

// processTime is the time that processors have worked for this process, collecting its garbage too.
func processTime() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		panic(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// costOf gives the time in seconds that a formula takes from its text to the JSON of every view, the least of two;
// below zero where it is refused, or where no end of it was waited for.
func costOf(h madeup.Heavy) float64 {
	text, least := h.Text(), 0.0
	for run := range 2 {
		begun := processTime()
		f, _, err := soap.ParseFormula(text)
		if err != nil {
			return -1
		}
		ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
		b, err := f.BatchContext(ctx)
		cancel()
		if err != nil {
			return -1
		}
		tint, err := b.Tint()
		if err != nil {
			return -1
		}
		caps := b.Caps()
		for _, view := range []json.Marshaler{&b, caps, tint} {
			if _, err := view.MarshalJSON(); err != nil {
				return -1
			}
		}
		if took := (processTime() - begun).Seconds(); run == 0 || took < least {
			least = took
		}
	}
	return least
}

// With -heaviest 2m this looks for formulas that cost more than those in testdata, by small changes of them, and writes
// the settings of the worst of each kind down. It is run by hand, on a machine that has nothing else to do.
func TestSearchForTheHeaviestFormulas(t *testing.T) {
	if *searchFor == 0 {
		for name, heavy := range heaviest {
			if !kinds[name](heavy) {
				t.Errorf("%s is not of its kind: %+v", name, heavy)
			}
		}
		return
	}
	found := map[string]madeup.Heavy{}
	for name, start := range heaviest {
		end := time.Now().Add(*searchFor)
		worst, most := start.Climb(15, func() bool { return time.Now().Before(end) }, func(h madeup.Heavy) float64 {
			if !kinds[name](h) {
				return -1
			}
			return costOf(h)
		})
		t.Logf("%s: %.3f s, %+v", name, most, worst)
		found[name] = worst
	}
	text, err := json.MarshalIndent(found, "", "\t")
	if err == nil {
		err = os.WriteFile(heaviestFile, slices.Concat(text, []byte("\n")), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}
