package soap_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/lyewright/soap"
)

// A numbered context ends after so many looks at it, and counts them.
type numbered struct {
	context.Context
	most, looks int
}

func (c *numbered) Err() error {
	if c.looks++; c.looks <= c.most {
		return nil
	}
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
// The heaviest batches take half a second on a machine of today: a look every 10 ms makes 50 of them, and each of these
// formulas is looked at more often.
func TestEveryLookAtAContextStopsTheWork(t *testing.T) {
	if testing.Short() {
		t.Skip("works the heaviest formulas out many times")
	}
	const fewest = 100
	for name, heavy := range heaviest {
		f, b := mustHeavy(t, heavy)
		for view, work := range views {
			whole := &numbered{Context: t.Context(), most: math.MaxInt}
			if err := work(whole, f, &b); err != nil {
				t.Fatal(name, view, err)
			}
			if t.Logf("%s: %s: %d looks", name, view, whole.looks); view == "the batch" && whole.looks < fewest {
				t.Errorf("%s: %s looks at its context %d times", name, view, whole.looks)
			}
			for most := 0; most < whole.looks; most = most*4 + 1 {
				ctx := &numbered{Context: t.Context(), most: most}
				if err := work(ctx, f, &b); !errors.Is(err, context.Canceled) {
					t.Errorf("%s: %s though its context ended after %d looks: %.300v", name, view, most, err)
				}
			}
		}
	}
}

// A timed context notes the longest time between two looks at it.
type timed struct {
	context.Context
	last    time.Time
	longest time.Duration
}

func (c *timed) Err() error {
	now := time.Now()
	c.longest, c.last = max(c.longest, now.Sub(c.last)), now
	return nil
}

// Work stops so long after its context has ended, at most: 10 ms are meant.
func BenchmarkLongestBetweenTwoLooks(b *testing.B) {
	for name, heavy := range heaviest {
		f, batch := mustHeavy(b, heavy)
		for view, work := range views {
			b.Run(strings.ReplaceAll(name+"/"+view, " ", "-"), func(b *testing.B) {
				shortest := time.Duration(0)
				for run := 0; b.Loop(); run++ {
					ctx := &timed{Context: b.Context(), last: time.Now()}
					if err := work(ctx, f, &batch); err != nil {
						b.Fatal(err)
					}
					_ = ctx.Err() // the end
					if run == 0 || ctx.longest < shortest {
						shortest = ctx.longest
					}
				}
				b.ReportMetric(float64(shortest.Nanoseconds()), "ns-between-looks")
			})
		}
	}
}
