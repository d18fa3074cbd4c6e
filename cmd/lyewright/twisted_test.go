package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// twisting draws twisted formulas: shipped ones and made-up ones.
type twisting struct {
	*madeup.Maker
	shipped [][]byte
}

func newTwisting(t testing.TB, seed uint64) *twisting {
	t.Helper()
	paths, err := filepath.Glob("../../testdata/formulas/*.json")
	if err != nil || len(paths) < 10 {
		t.Fatal(len(paths), err)
	}
	w := &twisting{Maker: madeup.New(seed)}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		// a fit of many bands takes its time
		if !bytes.Contains(text, []byte(`"match"`)) || bytes.Contains(text, []byte(`"srgb"`)) {
			w.shipped = append(w.shipped, text)
		}
	}
	return w
}

func (w *twisting) next() []byte {
	if w.IntN(2) == 0 {
		return w.Twisted(w.shipped[w.IntN(len(w.shipped))])
	}
	return w.Twisted(madeup.Text(w.Any()))
}

// mustHold works a text out in every view. A panic fails the test, and says of which text.
func mustHold(t *testing.T, text []byte) (status int) {
	t.Helper()
	defer func() {
		if raised := recover(); raised != nil {
			t.Fatalf("%v: of %s", raised, text)
		}
	}()
	for _, o := range []batchOptions{
		{json: true},
		{working: true, unit: units.Ounce},
		{view: itsCaps},
		{view: itsCaps, json: true},
		{view: itsTint, page: "dusk.html"},
		{view: itsTint, json: true},
	} {
		a := answerOf(text, o)
		for _, f := range a.faults {
			if f.Reason == "" || f.Kind == nil {
				t.Errorf("%+v of %s", f, text)
			}
		}
		if (a.faults == nil) == (len(a.out) == 0) {
			t.Errorf("%d faults beside %d bytes of %s", len(a.faults), len(a.out), text)
		}
		if status = a.status; a.faults != nil {
			break // of the formula, not of the view
		}
	}
	return status
}

// Whatever is twisted in a formula, it is worked out in every view or refused with a reason.
func TestATwistedFormulaIsWorkedOutOrRefused(t *testing.T) {
	statuses := map[int]int{}
	w := newTwisting(t, 1500)
	for range 4000 {
		statuses[mustHold(t, w.next())]++
	}
	for _, status := range []int{done, dangerous, wrongInput} {
		if statuses[status] < 60 {
			t.Errorf("%d end with %d: %v", statuses[status], status, statuses)
		}
	}
}

func FuzzTwisted(f *testing.F) {
	f.Fuzz(func(t *testing.T, seed uint64, n uint8) {
		w := newTwisting(t, seed)
		for range n % 8 {
			mustHold(t, w.next())
		}
	})
}

// What cannot be made has one reason, whether its superfat is planned or promised: of the
// same figure both faults have the same kind and path.
func TestAPromiseIsRefusedForThePlansReason(t *testing.T) {
	w := newTwisting(t, 1501)
	both := 0
	for range 5000 { // some are refused by their names
		f, _, err := soap.ParseFormula(w.next())
		if err != nil || !f.Superfat.AtLeast.Given() {
			continue
		}
		plan := f
		plan.Superfat = soap.Superfat{Planned: f.Superfat.AtLeast}
		_, promised := f.Batch()
		_, planned := plan.Batch()
		if promised == nil || planned == nil {
			continue
		}
		both++
		var a, b soap.Faults
		if !errors.As(promised, &a) || !errors.As(planned, &b) || len(a) != len(b) {
			t.Fatalf("%v, and planned %v", promised, planned)
		}
		for i := range a {
			if a[i].Path != b[i].Path || !errors.Is(a[i].Kind, b[i].Kind) {
				t.Errorf("%v, and planned %v", a[i], b[i])
			}
		}
	}
	if both < 100 {
		t.Errorf("%d were refused both ways", both)
	}
}
