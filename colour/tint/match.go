package tint

import (
	"context"
	"math"
	"strconv"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Wanted is a colour, and what may be used to come near it.
type Wanted struct {
	Target Lab    // the colour that is meant
	Fixed  []Load // what is in the mixture besides; none of it is also free
	Free   []Free // 1 to 6, in order of preference where two mixtures cost the same
}

// Free is a colourant whose load is looked for.
type Free struct {
	Colourant string      // as the swatches name it
	Most      units.Ratio // the largest load, of batter: over 0 % to 100 %
	// Price is that of a load of 100 % of the batter, in any unit, the same for all: not
	// below 0. Where all are 0 the least colourant is looked for.
	Price float64
}

// MostFree is how many loads may be looked for at once; more is refused.
const MostFree = 6

// Slack is how much farther than the nearest a mixture may be, as CIEDE2000, where it is
// cheaper: far below what anyone sees (see [Lab.Difference]).
const Slack = 0.1

// forRounding is the part of Slack that the rounding of loads may take.
const forRounding = 0.0001

// Matched is what comes nearest to a colour at the least price. Loads, At and Nearest are
// in the order of [Wanted.Free].
type Matched struct {
	Loads []units.Ratio // of batter, to 10^-10; 0 % where one is not needed
	At    []At          // where each of these loads stands
	Lab   Lab           // the colour of these loads
	Best  float64       // the smallest CIEDE2000 from the target that the loads can reach
	// Nearest says where the loads of the mixture of that difference stand: it need not be
	// the cheapest, and so not these.
	Nearest []At
}

// At says where a load that was looked for stands. The zero value is [AtFree].
type At uint8

// Where a load may stand.
const (
	AtFree At = iota // between none and the most
	AtMost           // at its most
	AtNone           // at none
)

// String gives "free", "most" or "none".
func (a At) String() string { return [...]string{"free", "most", "none"}[min(a, AtNone)] }

// Match looks for the loads: first the smallest CIEDE2000 that they can reach, by damped
// least squares in Lab with the difference's own weights, from a fixed grid of starts and,
// of more than four, from mixtures of two between the ends of the others; then, among
// mixtures no more than [Slack] farther, the cheapest: three loads are free in turn, and the
// others at none or at their most, since of what comes to a given colour one of these is as
// cheap as any but for the little that the colour bends. The same question always gets the
// same answer. Whether the target is within reach, Best says. An independent search of 400
// questions with four to six loads, most of them far from reach, found nothing nearer by more
// than 0.04 but in one, of four loads, by 0.44; at equal distance nothing was cheaper by more
// than 4 %. The error is [fault.Faults], as of [Calibration.Predict], and for
// a target that is no colour, no or too many free loads, one that stands twice or is fixed
// as well.
//
// Sources: Allen, J. Opt. Soc. Am. 64 (1974) 991 (recalled) for the linear steps in two
// constants.
func (c Calibration) Match(w Wanted) (Matched, error) {
	return c.MatchContext(context.Background(), w)
}

// MatchContext is [Calibration.Match] with a context. It stops within a few milliseconds after
// ctx ends, and the error is then ctx.Err().
func (c Calibration) MatchContext(ctx context.Context, w Wanted) (Matched, error) {
	s, err := c.seeker(w)
	if err != nil {
		return Matched{}, err
	}
	s.ctx = ctx
	s.measure()
	near, best := s.nearest()
	var m Matched
	// Where all loads are tiny their rounding changes the colour: then the mixture must be so
	// much nearer.
	for room := forRounding; ; room *= 4 {
		m = s.matched(s.cheapest(near, best+max(0, Slack-room)), best)
		if room > Slack || w.Target.Difference(m.Lab) <= best+Slack {
			break
		}
	}
	if s.ended() {
		return Matched{}, ctx.Err()
	}
	for i := range s.n {
		m.Nearest = append(m.Nearest, end(near[i]))
	}
	return m, nil
}

func (c Calibration) seeker(w Wanted) (*seeker, error) {
	fixed, err := c.percents(w.Fixed)
	if err != nil {
		return nil, err
	}
	var faults fault.Faults
	if reason := labFault(w.Target); reason != "" {
		faults.Add("target", w.Target.String(), reason, "give L from 0 to 100, a and b", fault.ErrRange)
	}
	if n := len(w.Free); n == 0 || n > MostFree {
		faults.Add("match", "", "are "+strconv.Itoa(n)+" colourants", "match with 1 to 6", fault.ErrRange)
		return nil, faults
	}
	for i, free := range w.Free {
		at := item("match", i)
		switch {
		case !c.Knows(free.Colourant):
			faults.Add(at, free.Colourant, "stood in no swatch", "cast and read two swatches with different loads of it", fault.ErrUnknown)
		case free.Most.Sign() <= 0 || free.Most.Compare(units.Whole(1)) > 0:
			faults.Add(at, free.Most.PercentText(12)+" %", "is not over 0 % to 100 % of the batter", "give the most of it", fault.ErrRange)
		case !(free.Price >= 0) || math.IsInf(free.Price, 0):
			faults.Add(at, figure(free.Price), "is no price", "give one of 0 or more", fault.ErrRange)
		}
		for _, other := range w.Free[:i] {
			if other.Colourant == free.Colourant {
				faults.Add(at, free.Colourant, "stands twice", "match with it once", fault.ErrConflict)
			}
		}
		for _, load := range w.Fixed {
			if load.Colourant == free.Colourant {
				faults.Add(at, free.Colourant, "has a load besides", "match with it, or give it a load", fault.ErrConflict)
			}
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return newSeeker(c.c, w, fixed), nil
}

// end says where a share of the most stands.
func end(share float64) At {
	switch {
	case share >= 1:
		return AtMost
	case share > 0:
		return AtFree
	default:
		return AtNone
	}
}

// matched writes the shares of the most down as loads. What lies at an end is that end.
func (s *seeker) matched(x point, best float64) Matched {
	m := Matched{Best: best}
	for i := range s.n {
		most := s.wanted.Free[i].Most
		load, at := units.Whole(0), end(x[i])
		switch at {
		case AtMost:
			load = most
		case AtFree:
			share, _ := units.RatioOfFloat(x[i] * most.Float())
			if load = share.Round(10, units.Nearest); load.Sign() == 0 {
				at = AtNone
			}
		}
		m.Loads, m.At = append(m.Loads, load), append(m.At, at)
		x[i] = load.Float() / most.Float()
	}
	m.Lab = s.lab(x)
	return m
}
