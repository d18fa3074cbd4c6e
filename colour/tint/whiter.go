package tint

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Whiter gives how much more of the white, of batter, makes the next difference of 1
// (CIEDE2000) from a mixture as it is, and a lighter one, rounded up to 10^-8. most is the
// largest load of the white in all, of batter. seen is false where no load up to the most
// gives one: more is then wasted, or darkens. The error is [fault.Faults] as of
// [Calibration.Predict], or where no white stood in the swatches.
func (c Calibration) Whiter(loads []Load, most units.Ratio) (more units.Ratio, seen bool, err error) {
	percent, err := c.percents(loads)
	switch {
	case err != nil:
		return units.Ratio{}, false, err
	case c.c.white == "":
		return units.Ratio{}, false, fault.Faults{{Reason: "no white stood in the swatches", Remedy: "cast and read two swatches with different loads of a white", Kind: fault.ErrMissing}}
	}
	is, now := percent[0], c.c.see(percent)
	room := 100*most.Float() - is
	apart := func(share float64) float64 {
		percent[0] = is + share*room
		then := c.c.see(percent)
		if then.L < now.L {
			return 0
		}
		return now.Difference(then)
	}
	const steps = 64 // first roughly, since a white may first dull and then lighten
	for k := 1; k <= steps && room > 0; k++ {
		if apart(float64(k)/steps) < 1 {
			continue
		}
		low, high := float64(k-1)/steps, float64(k)/steps
		for range 30 {
			if middle := (low + high) / 2; apart(middle) < 1 {
				low = middle
			} else {
				high = middle
			}
		}
		more, _ = units.RatioOfFloat(high * room / 100)
		return more.Round(8, units.Up), true, nil
	}
	return units.Ratio{}, false, nil
}
