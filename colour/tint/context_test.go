package tint_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/lyewright/colour/tint"
)

// counted is a context that ends when it has been asked so often. It counts how often it is
// asked in all.
type counted struct {
	context.Context
	asked, ends int
}

func (c *counted) Err() error {
	if c.asked++; c.asked > c.ends {
		return context.Canceled
	}
	return nil
}

// A search and a calibration ask their context often, and stop soon after it has ended: they
// ask it only a few times more. What was found by then is not returned.
func TestASearchStopsWhenItsContextEnds(t *testing.T) {
	w := dusk()
	s := w.swatches(twelve, 0.003, 1)
	c := calibrated(t, s)
	q := w.hundred(t, c)[1]
	searches := map[string]func(context.Context) (any, error){
		"calibration": func(ctx context.Context) (any, error) { return s.CalibrateContext(ctx) },
		"match":       func(ctx context.Context) (any, error) { return c.MatchContext(ctx, q) },
	}
	for name, search := range searches {
		whole := &counted{Context: t.Context(), ends: math.MaxInt}
		if _, err := search(whole); err != nil {
			t.Fatal(err)
		}
		if whole.asked < 50 {
			t.Errorf("%s: asks its context %d times in all", name, whole.asked)
		}
		for _, part := range []int{0, whole.asked / 7, whole.asked / 2, whole.asked - 2} {
			ctx := &counted{Context: t.Context(), ends: part}
			found, err := search(ctx)
			if !errors.Is(err, context.Canceled) {
				t.Errorf("%s, ended after %d of %d: %v", name, part, whole.asked, err)
			}
			if ctx.asked > part+60 {
				t.Errorf("%s, ended after %d of %d: asked %d times more", name, part, whole.asked, ctx.asked-part)
			}
			switch found := found.(type) {
			case tint.Calibration:
				if found.Given() {
					t.Errorf("%s: a calibration beside an error", name)
				}
			case tint.Matched:
				if found.Loads != nil || found.At != nil {
					t.Errorf("%s: %v beside an error", name, found)
				}
			}
		}
	}
}

// The largest set of swatches and the largest question stop within 10 ms of the end of their
// context, wherever that falls. Loaded machines are given ten times as much.
func TestTheLargestSearchesStopInTime(t *testing.T) {
	const most = 100 * time.Millisecond
	w := dusk()
	source := rand.New(rand.NewPCG(15, 2026))
	w.bands = tint.Bands{From: 380, Step: 5, Count: 71}
	for i := len(w.ids); i < tint.MostColourants; i++ {
		id := "lantern-pigment-" + string(rune('a'+i))
		w.ids = append(w.ids, id)
		w.per[id] = [2]func(float64) float64{
			bump(2+6*source.Float64(), 400+300*source.Float64(), 30+60*source.Float64()),
			flat(0.1 + source.Float64()),
		}
	}
	mixtures := []map[string]float64{{}}
	for len(mixtures) < tint.MostSwatches {
		id := w.ids[len(mixtures)%len(w.ids)]
		mixtures = append(mixtures, map[string]float64{white: 0.2 + 0.01*float64(len(mixtures)), id: 0.05 +
			0.01*float64(len(mixtures))})
	}
	s := w.swatches(mixtures, 0.01, 3)
	c := calibrated(t, s)
	q := tint.Wanted{Target: tint.Lab{L: 40, A: 60, B: -60}}
	for _, id := range w.ids[:tint.MostFree] {
		q.Free = append(q.Free, tint.Free{Colourant: id, Most: share(2), Price: 1 + source.Float64()})
	}
	for _, wait := range []time.Duration{0, time.Millisecond, 5 * time.Millisecond, 20 * time.Millisecond} {
		for name, search := range map[string]func(context.Context) error{
			"calibration": func(ctx context.Context) error { _, err := s.CalibrateContext(ctx); return err },
			"match":       func(ctx context.Context) error { _, err := c.MatchContext(ctx, q); return err },
		} {
			ctx, cancel := context.WithTimeout(t.Context(), wait)
			begun := time.Now()
			err := search(ctx)
			if took := time.Since(begun) - wait; err != nil && took > most {
				t.Errorf("%s: stops %v after the end of its context", name, took)
			} else if err != nil && !errors.Is(err, context.DeadlineExceeded) {
				t.Errorf("%s: %v", name, err)
			}
			t.Logf("%s, %v: over by %v, %v", name, wait, time.Since(begun)-wait, err)
			cancel()
		}
	}
}
