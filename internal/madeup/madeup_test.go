package madeup_test

import (
	"errors"
	"fmt"
	"hash/fnv"
	"strings"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
)

// What a seed makes is the same in every run and on every platform, so that a test that
// fails fails everywhere. The sum is of what it makes, and a check of nothing else.
func TestASeedMakesTheSameFormulasEverywhere(t *testing.T) {
	sum := fnv.New64a()
	m, again := madeup.New(1), madeup.New(1)
	for i := range 400 {
		text := madeup.Text(m.Any())
		if other := madeup.Text(again.Any()); string(other) != string(text) {
			t.Fatalf("formula %d is %s, and %s", i, text, other)
		}
		if _, err := sum.Write(text); err != nil {
			t.Fatal(err)
		}
	}
	if got, want := sum.Sum64(), uint64(0x74e7a92bfd303349); got != want {
		t.Errorf("the formulas of this seed have changed: their sum is %#x, was %#x", got, want)
	}
	if string(madeup.Text(madeup.New(2).Any())) == string(madeup.Text(madeup.New(3).Any())) {
		t.Error("two seeds make one formula")
	}
}

// A formula as a file reads back as the formula: the batch is the same, byte for byte.
func TestAFormulaWrittenDownGivesTheSameBatch(t *testing.T) {
	check := func(t *testing.T, f soap.Formula, b soap.Batch) {
		text := madeup.Text(f)
		read, _, err := soap.ParseFormula(text)
		if err != nil {
			t.Errorf("%v in %s", err, text)
			return
		}
		same, err := read.Batch()
		if err != nil {
			t.Errorf("%v in %s", err, text)
			return
		}
		got, err := same.MarshalJSON()
		want, err2 := b.MarshalJSON()
		if err != nil || err2 != nil || string(got) != string(want) {
			t.Errorf("%s\ngives %s\nwas   %s", text, got, want)
		}
	}
	madeup.Each(t, madeup.New(20).Any, 500, check)
	madeup.Each(t, madeup.Ranged(21).Promised, 60, check)
}

func TestWhatIsMadeUpIsInOrder(t *testing.T) {
	refused := 0
	m := madeup.New(22)
	for range 300 {
		f := m.Any()
		if err := f.Check(); err != nil {
			t.Fatalf("%v in %s", err, madeup.Text(f))
		}
		if _, err := f.Batch(); errors.Is(err, soap.ErrImpossible) {
			refused++
		} else if err != nil {
			t.Fatalf("%v in %s", err, madeup.Text(f))
		}
	}
	if refused > 30 {
		t.Errorf("no pot can make %d of 300", refused)
	}
}

// What tests draw from says most of what a formula can say, and most of what can be
// found in one is found.
func TestWhatIsMadeUpCoversAFormula(t *testing.T) {
	seen := map[string]int{}
	madeup.Each(t, madeup.New(23).Any, 900, func(_ *testing.T, f soap.Formula, b soap.Batch) {
		note := func(what string, is bool) {
			if is {
				seen[what]++
			}
		}
		note("acids", len(f.Acids) > 0)
		note("liquids", len(f.Water.Liquids) > 0)
		note("stock lye", f.Alkalis[0].Stock.Given())
		note("vessels", len(f.Size.Vessels) > 0)
		note("embeds", len(f.Embeds) > 0)
		note("toppings", len(f.Toppings) > 0)
		note("materials", len(f.Materials) > 0)
		note("pigments", len(f.Pigments) > 0)
		note("swatches", f.Swatches != nil)
		note("weighed", f.Weighed.Stage != soap.NotWeighed)
		note("sold in the US alone", len(f.Markets) == 1)
		for _, v := range f.Size.Vessels {
			note(fmt.Sprintf("%T", v.Shape), true)
			note("layers", len(v.Layers) > 0)
			note("a top", v.On != "")
		}
		for _, p := range f.Parts {
			note("a target", p.Target.Given())
			note("loads looked for", len(p.Match) > 0)
			for _, a := range p.Fragrances {
				note("the most of a fragrance", a.Load.Max)
			}
			for _, a := range p.Colourants {
				note("a paste", a.Carrier.Paste)
			}
		}
		for _, finding := range b.Findings {
			note("code "+finding.Code, true)
		}
	})
	codes := 0
	for what, n := range seen {
		if n < 5 && !strings.HasPrefix(what, "code ") {
			t.Errorf("%s: %d times", what, n)
		}
		if strings.HasPrefix(what, "code ") {
			codes++
		}
	}
	if kinds := len(seen) - codes; kinds < 27 || codes < 30 {
		t.Errorf("%d kinds of thing, %d codes of findings: %v", kinds, codes, seen)
	}
}
