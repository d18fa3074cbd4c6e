package soap

import (
	"context"
	"errors"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
)

// run is one working of a formula: how long it may go on, and what it found once and need
// not find again.
type run struct {
	ctx  context.Context
	left int // steps that it may still take

	scents  map[string]fragrance.Material
	colours map[string]colour.Colourant
	// remember: the same names are looked for again and again.
	remember bool
	least    int // the plan that a promise came to last, where it was looked for; else -1
}

// mostSteps is how much work a formula may ask for. A step is a line that is weighed, judged
// or poured once more; a simple bar takes some tens, and the largest formula of a maker that
// we know some ten thousand. What may take so many is worked out well within a second.
const mostSteps = 3_300_000

// matchSteps is what one search for loads costs, by how many are looked for and in how many
// bands: measured, with targets far from reach. A thousandth of a second counts as 5000 steps.
func matchSteps(free, bands int) int {
	milliseconds := [...]int{0, 1, 2, 6, 16, 80, 150} // of 71 bands
	return 5000 * milliseconds[min(free, len(milliseconds)-1)] * (max(bands, 3) + 25) / 96
}

func newRun(ctx context.Context) *run { return &run{ctx: ctx, left: mostSteps, least: -1} }

// errStopped is the kind of the fault of a run whose context ended. It goes no further than
// [Formula.BatchContext].
var errStopped = errors.New("stopped")

// spend counts work that is about to be done; faults say that it must not be.
func (r *run) spend(steps int) Faults {
	if r.ctx.Err() != nil {
		return Faults{{Reason: "was stopped", Kind: errStopped}}
	}
	if r.left -= steps; r.left < 0 {
		return Faults{{
			Reason: "asks for more work than one formula may: what fills its vessels, its promise, what it asks the most of " +
				"and the loads that it looks for drive each other, round after round",
			Remedy: `give a size, a planned superfat or loads in place of some of them, or make several formulas`,
			Kind:   ErrLimit,
		}}
	}
	return nil
}

// look says whether the context has ended, where no step is counted. It stands between all that may take some
// milliseconds, so that work stops within 10 ms of its end.
func (r *run) look() Faults { return r.spend(0) }

// told gives the error of a run as its caller knows it.
func (r *run) told(what string, err error) error {
	if errors.Is(err, errStopped) {
		return stopped(what, r.ctx)
	}
	return err
}

// stopped says that a context ended before something was worked out.
func stopped(what string, ctx context.Context) error { return &stoppedError{what, ctx.Err()} }

// stoppedError is what a context that ended left undone.
type stoppedError struct {
	what string
	err  error // that of the context
}

func (e *stoppedError) Error() string { return e.what + " not worked out: " + e.err.Error() }

func (e *stoppedError) Unwrap() error { return e.err }

// scent finds a fragrance, once for all the parts that it goes into.
func (my *mine) scent(id string) fragrance.Material {
	if found, known := my.run.scents[id]; known {
		return found
	}
	found, _ := my.scents.Find(id)
	if my.run.remember {
		if my.run.scents == nil {
			my.run.scents = map[string]fragrance.Material{}
		}
		my.run.scents[id] = found
	}
	return found
}

// colourOf finds a colourant, once for all the parts that it goes into.
func (my *mine) colourOf(id string) colour.Colourant {
	if found, known := my.run.colours[id]; known {
		return found
	}
	found, _ := my.colours.Find(id)
	if my.run.remember {
		if my.run.colours == nil {
			my.run.colours = map[string]colour.Colourant{}
		}
		my.run.colours[id] = found
	}
	return found
}
