//go:build !race

package soap_test

import (
	"context"
	"errors"
	"runtime"
	"syscall"
	"testing"
	"time"
	"unsafe"

	"example.com/lyewright/soap"
)

// threadTime is the time that the processor has worked for this thread: it does not move while others work.
func threadTime(t *testing.T) time.Duration {
	t.Helper()
	const threadCPU = 3 // CLOCK_THREAD_CPUTIME_ID
	var at syscall.Timespec
	if _, _, errno := syscall.RawSyscall(syscall.SYS_CLOCK_GETTIME, threadCPU, uintptr(unsafe.Pointer(&at)),
		0); errno != 0 {
		t.Fatal(errno)
	}
	return time.Duration(at.Nano())
}

// A timed context notes what was worked between two looks at it. It ends at look number end, where that is not 0, and
// notes when.
type timed struct {
	context.Context
	t           *testing.T
	last, ended time.Duration
	between     []time.Duration
	end         int
}

func (c *timed) Err() error {
	if c.end > 0 && len(c.between) >= c.end {
		if c.ended == 0 {
			c.ended = threadTime(c.t)
		}
		return context.Canceled
	}
	now := threadTime(c.t)
	c.between = append(c.between, now-c.last)
	c.last = threadTime(c.t)
	return nil
}

// Work stops within 10 ms of the end of its context: so long at most is worked between two looks at it, and after the
// one that found it ended. The shortest of three runs counts of each look, and 2.5 times as much is given to a machine
// that is loaded, or slower. The race detector makes work ten times as long and finds nothing in one goroutine: the
// test is left out with it.
func TestWorkBetweenTwoLooksAtAContextIsShort(t *testing.T) {
	if testing.Short() {
		t.Skip("works the heaviest formulas out several times")
	}
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	const most = 25 * time.Millisecond
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
			var least []time.Duration
			for run := range 3 {
				ctx := &timed{Context: t.Context(), t: t, last: threadTime(t)}
				if err := work(ctx, f, &b); err != nil {
					t.Fatal(name, view, err)
				}
				_ = ctx.Err() // the end
				if run > 0 && len(ctx.between) != len(least) {
					t.Fatalf("%s: %s looks %d times, and then %d times", name, view, len(least), len(ctx.between))
				}
				if run == 0 {
					least = ctx.between
				}
				for i, took := range ctx.between {
					least[i] = min(least[i], took)
				}
			}
			longest, at := time.Duration(0), 0
			for i, took := range least {
				if took > longest {
					longest, at = took, i
				}
			}
			t.Logf("%s: %s: %d looks, %v before look %d", name, view, len(least), longest, at)
			if longest > most {
				t.Errorf("%s: %s works for %v before look %d", name, view, longest, at)
			}
			for end := 1; end < len(least)-1; end = end*4 + 1 {
				after := most
				for run := 0; run < 3 && after >= most; run++ {
					ctx := &timed{Context: t.Context(), t: t, last: threadTime(t), end: end}
					if err := work(ctx, f, &b); !errors.Is(err, context.Canceled) {
						t.Fatalf("%s: %s ended at look %d: %v", name, view, end, err)
					}
					after = min(after, threadTime(t)-ctx.ended)
				}
				if after >= most {
					t.Errorf("%s: %s works on for more than %v after look %d", name, view, after, end)
				}
			}
		}
	}
}
