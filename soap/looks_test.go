package soap_test

import (
	"context"
	"errors"
	"testing"

	"example.com/lyewright/soap"
)

// A numbered context ends after so many looks at it.
type numbered struct {
	context.Context
	left  int
	ended bool
}

func (c *numbered) Err() error {
	if c.left--; c.left >= 0 {
		return nil
	}
	c.ended = true
	return context.Canceled
}

// views are what may be asked for with a context, of a batch that is worked out.
var views = map[string]func(ctx context.Context, f soap.Formula, b *soap.Batch) error{
	"the batch": func(ctx context.Context, f soap.Formula, _ *soap.Batch) error {
		b, err := f.BatchContext(ctx)
		if err != nil && b.Parts != nil {
			return errors.New("a batch beside an error")
		}
		return err
	},
	"the caps": func(ctx context.Context, _ soap.Formula, b *soap.Batch) error {
		_, err := b.CapsContext(ctx)
		return err
	},
	"the tint": func(ctx context.Context, _ soap.Formula, b *soap.Batch) error {
		_, err := b.TintContext(ctx)
		return err
	},
}

// Wherever its context ends, a heavy formula is left: in the check, in the working, in the findings and in the views.
func TestEveryLookAtAContextStopsTheWork(t *testing.T) {
	if testing.Short() {
		t.Skip("works the heaviest formulas out many times")
	}
	for name, heavy := range heaviest {
		f, _, err := soap.ParseFormula(heavy.Text())
		if err != nil {
			t.Fatal(name, err)
		}
		b, err := f.Batch()
		if err != nil {
			t.Fatal(name, err)
		}
		for view, work := range views {
			ended := false
			for looks := 0; !ended; looks = looks*2 + 1 {
				ctx := &numbered{Context: t.Context(), left: looks}
				switch err := work(ctx, f, &b); {
				case err == nil && ctx.ended:
					t.Errorf("%s: %s is given though its context ended after %d looks", name, view, looks)
				case err == nil:
					ended = true
				case !errors.Is(err, context.Canceled):
					t.Fatalf("%s: %s after %d looks: %.300v", name, view, looks, err)
				}
			}
		}
	}
}
