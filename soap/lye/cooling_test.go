package lye_test

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Readings and a room of 20 °C, a target of 30 °C, ten minutes. Where the readings
// less and plus their 1 K halve the excess over the room, ten minutes more halve it
// again: from 40 to 20 to 10 K.
func TestWhatHalvesInTenMinutesHalvesAgainInTen(t *testing.T) {
	for _, c := range []struct {
		first, second int
		soonest       bool
	}{
		{61, 39, false}, // at the latest: 60 and 40 °C
		{59, 41, true},  // at the soonest: 60 and 40 °C
	} {
		soonest, latest, err := lye.Cooling{Room: units.Celsius(20), First: units.Celsius(c.first), Second: units.Celsius(c.second), Between: 10 * time.Minute}.Until(units.Celsius(30))
		if err != nil {
			t.Fatal(err)
		}
		got := latest
		if c.soonest {
			got = soonest
		}
		if off := got - 10*time.Minute; off > time.Microsecond || off < -time.Microsecond {
			t.Errorf("%d to %d °C: %v, want 10 minutes", c.first, c.second, got)
		}
		if soonest >= latest {
			t.Errorf("%v to %v", soonest, latest)
		}
	}
}

// Newton's law, ln((second − room)/(target − room)) / ln((first − room)/(second −
// room)) × time, in every corner of the two readings.
func TestTheSpanCoversEveryCornerOfTheReadingsAndGrowsWithTheWait(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 2026))
	for range 200 {
		room := 10 + random.IntN(20)
		second := room + 3 + random.IntN(40)
		first := second + 3 + random.IntN(100-second-2)
		c := lye.Cooling{
			Room: units.Celsius(room), First: units.Celsius(first), Second: units.Celsius(second),
			Between: time.Duration(1+random.IntN(7200)) * time.Second,
		}
		var soonerBefore, laterBefore time.Duration = 0, 0
		for target := second; target > room; target-- {
			soonest, latest, err := c.Until(units.Celsius(target))
			if err != nil {
				t.Fatal(err)
			}
			low, high := math.Inf(1), math.Inf(-1)
			for _, a := range []float64{-1, 1} {
				for _, b := range []float64{-1, 1} {
					then, now, end := float64(first-room)+a, float64(second-room)+b, float64(target-room)
					seconds := c.Between.Seconds() * math.Log(now/end) / math.Log(then/now)
					low, high = min(low, seconds), max(high, seconds)
				}
			}
			if !near(soonest.Seconds(), max(0, low), 1e-6+1e-9*high) || !near(latest.Seconds(), high, 1e-6+1e-9*high) {
				t.Fatalf("%+v to %d °C: %v to %v, want %v to %v s", c, target, soonest, latest, low, high)
			}
			if soonest < soonerBefore || latest <= laterBefore {
				t.Fatalf("%+v: %d °C is reached sooner than %d °C", c, target, target+1)
			}
			soonerBefore, laterBefore = soonest, latest
		}
	}
}

func TestCoolingThatCannotBeWorkedOutIsRefused(t *testing.T) {
	c := units.Celsius[int]
	for _, x := range []struct {
		cooling lye.Cooling
		target  units.Temperature
		path    string
		kind    error
	}{
		{lye.Cooling{First: c(60), Second: c(40), Between: 1}, c(30), "room", fault.ErrMissing},
		{lye.Cooling{Room: c(-1), First: c(60), Second: c(40), Between: 1}, c(30), "room", fault.ErrRange},
		{lye.Cooling{Room: c(20), Second: c(40), Between: 1}, c(30), "first", fault.ErrMissing},
		{lye.Cooling{Room: c(20), First: c(60), Between: 1}, c(30), "second", fault.ErrMissing},
		{lye.Cooling{Room: c(20), First: c(60), Second: c(40), Between: 1}, units.Temperature{}, "target", fault.ErrMissing},
		{lye.Cooling{Room: c(20), First: c(60), Second: c(40)}, c(30), "between", fault.ErrRange},
		{lye.Cooling{Room: c(20), First: c(60), Second: c(40), Between: -1}, c(30), "between", fault.ErrRange},
		{lye.Cooling{Room: c(20), First: c(40), Second: c(60), Between: 1}, c(30), "second", fault.ErrRange}, // out of order
		{lye.Cooling{Room: c(20), First: c(42), Second: c(40), Between: 1}, c(30), "second", fault.ErrRange}, // 2 K apart
		{lye.Cooling{Room: c(20), First: c(60), Second: c(40), Between: 1}, c(41), "target", fault.ErrRange},
		{lye.Cooling{Room: c(20), First: c(60), Second: c(40), Between: 1}, c(20), "target", fault.ErrRange},
		{lye.Cooling{Room: c(20), First: c(60), Second: c(20), Between: 1}, c(20), "second", fault.ErrRange},
		{lye.Cooling{Room: c(20), First: c(60), Second: c(21), Between: 1}, celsius(t, 20.5), "second", fault.ErrRange}, // may be the room's
	} {
		soonest, latest, err := x.cooling.Until(x.target)
		refused(t, [2]time.Duration{soonest, latest}, err, x.path, x.kind)
	}
}

// A wait that no clock holds is not a wait into the past.
func TestAnEndlessWaitIsNotNegative(t *testing.T) {
	soonest, latest, err := lye.Cooling{
		Room: units.Celsius(20), First: celsius(t, 60.000001), Second: units.Celsius(58), Between: math.MaxInt64,
	}.Until(celsius(t, 20.000001))
	if err != nil || soonest <= 0 || latest < soonest {
		t.Errorf("%v to %v, %v", soonest, latest, err)
	}
}
