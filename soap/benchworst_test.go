package soap_test

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// scaled is one thing on a scale that a superfat rests on: what of it is there,
// how far off it may be (one or two halves of a division), and the KOH that a gram
// of it demands, brings or takes up.
type scaled struct {
	what               string // one oil has one value, wherever it goes
	side               side
	mass, half         *big.Rat
	halves             int64
	low, typical, high *big.Rat
	by                 *big.Rat // the share of it that the part gets
}

type side int

const (
	demands side = iota
	brings       // alkali
	takes        // acid
)

// scales lists what the superfat of a part, or of the batch (−1), rests on, of a
// batch as weighed (or as planned, where nothing was).
func scales(f soap.Formula, b soap.Batch, w soap.Weighed, part int) []scaled {
	oils, small := f.Scales()
	half := func(m units.Mass) *big.Rat { return over(massFrac(m), whole(2)) }
	halves := func(read bool) int64 {
		if read {
			return 1
		}
		return 2
	}
	share := whole(1)
	if part >= 0 {
		share = ratioFrac(b.Parts[part].Share)
		for _, p := range w.Parts {
			if p.Part == b.Parts[part].Name && p.Batter.Read {
				share = over(massFrac(p.Batter.Mass), reckon(f, b, w, -1).pot)
			}
		}
	}
	var all []scaled
	line := func(o soap.Oil, mass *big.Rat, read bool, division units.Mass, by *big.Rat) {
		v := o.Saponification()
		all = append(all, scaled{
			o.ID(), demands, mass, half(division), halves(read), ratioFrac(v.Low), ratioFrac(v.Typical),
			ratioFrac(v.High), by,
		})
	}
	// jugs of a part: all, or those held back of one oil
	jugs := func(i int, of string, each func(oil soap.Oil, mass *big.Rat, read bool)) {
		planned := madeup.Carriers(b.Parts[i])
		for j, a := range b.Parts[i].Additions {
			if a.Carrier == nil || a.Carrier.In != soap.InOil || of != "" &&
				(a.Carrier.Name != of || !held(asked(f, i)[j].Carrier)) {
				continue
			}
			mass, read := massFrac(a.Carrier.Mass), false
			for _, p := range w.Parts {
				for _, r := range p.Carriers {
					if p.Part == b.Parts[i].Name && r.Liquid == a.Carrier.Name {
						mass, read = over(times(mass, massFrac(r.Mass)), massFrac(planned[r.Liquid])), true
					}
				}
			}
			each(a.Carrier.Oil, mass, read)
		}
	}
	for i, o := range b.Oils {
		mass, read := massFrac(o.Mass), false
		for _, r := range w.Oils {
			if r.Oil == o.Oil.ID() {
				mass, read = massFrac(r.Mass), true
			}
		}
		if part < 0 { // every oil is one weighing, however many jugs it fills
			for j := range b.Parts {
				jugs(j, o.Oil.ID(), func(_ soap.Oil, held *big.Rat, _ bool) { mass = plus(mass, held) })
			}
		}
		if mass.Sign() > 0 {
			line(f.Oils[i].Oil, mass, read, oils, share)
		}
	}
	if part >= 0 {
		jugs(part, "", func(oil soap.Oil, mass *big.Rat, read bool) { line(oil, mass, read, small, whole(1)) })
	}
	for i, l := range b.Liquids {
		if line := f.Water.Liquids[i]; line.Fat.Sign() > 0 {
			v, fat := line.Saponification, ratioFrac(line.Fat)
			mass, read := liquidOf(w, l)
			all = append(all, scaled{
				l.Name, demands, massFrac(mass), half(small), halves(read), times(fat, ratioFrac(v.Low)),
				times(fat, ratioFrac(v.Plan())), times(fat, ratioFrac(v.High)), share,
			})
		}
	}
	for _, a := range b.Alkalis {
		weighing, content := a.ToWeigh()
		s := scaled{
			a.Alkali.String(), brings, massFrac(weighing.Mass), half(small), 2, ratioFrac(content.Low),
			ratioFrac(content.Typical), ratioFrac(content.High), share,
		}
		for _, r := range w.Alkalis {
			if r.Alkali == a.Alkali {
				s.mass, s.halves = massFrac(r.Mass), 1
			}
		}
		if a.Alkali == soap.SodiumHydroxide {
			for _, v := range []**big.Rat{&s.low, &s.typical, &s.high} {
				*v = times(*v, frac("56105/39997"))
			}
		}
		all = append(all, s)
	}
	for i, a := range b.Acids {
		acid, s := f.Acids[i], f.Acids[i].Strength
		mass, read := acidOf(w, a)
		all = append(all, scaled{
			a.Acid.ID, takes, massFrac(mass), half(small), halves(read), neutralisedAt(acid, s.Low),
			neutralised(acid), neutralisedAt(acid, s.High), share,
		})
	}
	return all
}

// superfatAt is the superfat with every input at an end: −1 unlucky, 1 lucky, 0 as
// planned.
func superfatAt(all []scaled, end int64) *big.Rat {
	demand, alkali := new(big.Rat), new(big.Rat)
	for _, s := range all {
		e := end
		if s.side == brings {
			e = -end
		}
		mass := plus(s.mass, times(whole(e*s.halves), s.half))
		if mass.Sign() < 0 {
			mass = new(big.Rat) // a weighing is cut at 0 g
		}
		koh := times(times(mass, s.by), []*big.Rat{s.low, s.typical, s.high}[e+1])
		switch s.side {
		case demands:
			demand = plus(demand, koh)
		case brings:
			alkali = plus(alkali, koh)
		default:
			alkali = minus(alkali, koh)
		}
	}
	if alkali.Sign() < 0 {
		alkali = new(big.Rat) // acids take all there is
	}
	return minus(whole(1), over(alkali, demand))
}

// doubtOf is twice the root of the squares of what each input moves the superfat
// by: a value's half-width, and one or two halves of a division, all rectangular.
func doubtOf(all []scaled) float64 {
	float := func(r *big.Rat) float64 { f, _ := r.Float64(); return f }
	var demand, alkali float64
	for _, s := range all {
		koh := float(s.mass) * float(s.by) * float(s.typical)
		switch s.side {
		case demands:
			demand += koh
		case brings:
			alkali += koh
		default:
			alkali -= koh
		}
	}
	alkali = max(0, alkali)
	var squares float64
	carried, width := map[string]float64{}, map[string]float64{}
	for _, s := range all {
		slope := float(s.by) / demand
		if s.side == demands {
			slope *= alkali / demand
		}
		off := slope * float(s.half) * float(s.typical)
		squares += float64(s.halves) * off * off / 3
		carried[s.what] += slope * float(s.mass)
		width[s.what] = float(minus(s.high, s.low)) / 2
	}
	for what, mass := range carried {
		squares += mass * width[what] * mass * width[what] / 3
	}
	return 2 * math.Sqrt(squares)
}

// sameWorst holds an outlook against what the lines give. masses that were weighed
// are spread over jugs and parts to a nanogram, hence the tolerance.
func sameWorst(t *testing.T, what string, o soap.Outlook, all []scaled) {
	t.Helper()
	low, high := superfatAt(all, -1), superfatAt(all, 1)
	const tolerance = "0.000000001"
	if !within(ratioFrac(o.Low), low, frac(tolerance)) || !within(ratioFrac(o.High), high, frac(tolerance)) {
		t.Errorf("%s: from %s to %s, want %s to %s", what, o.Low, o.High, low.FloatString(12), high.FloatString(12))
	}
	doubt := doubtOf(all)
	likelyLow, likelyHigh := max(o.Planned.Float()-doubt, o.Low.Float()), min(o.Planned.Float()+doubt, o.High.Float())
	if math.Abs(o.LikelyLow.Float()-likelyLow) > 1e-9 || math.Abs(o.LikelyHigh.Float()-likelyHigh) > 1e-9 {
		t.Errorf("%s: likely %s to %s, want %.12f to %.12f", what, o.LikelyLow, o.LikelyHigh, likelyLow, likelyHigh)
	}
	if (low.Sign() < 0) != o.FreeAlkaliWorst.Given() && !within(low, new(big.Rat), frac(tolerance)) {
		t.Errorf("%s: low %s, free alkali %s", what, o.Low, o.FreeAlkaliWorst)
	}
}

func TestTheWorstAndTheLikelyCaseOfABench(t *testing.T) {
	madeup.Each(t, madeup.New(320).Benched, 400, func(t *testing.T, f soap.Formula, b soap.Batch) {
		sameWorst(t, "the batch", b.Superfat, scales(f, b, soap.Weighed{}, -1))
		for i, p := range b.Parts {
			sameWorst(t, p.Name, p.Superfat, scales(f, b, soap.Weighed{}, i))
		}
	})
}

func TestTheWorstAndTheLikelyCaseAsWeighed(t *testing.T) {
	eachWeighed(t, madeup.New(321), 400, 30, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		sameWorst(t, "the batch", b.Weighed.Superfat, scales(f, plan, f.Weighed, -1))
		for i, p := range b.Weighed.Parts {
			sameWorst(t, p.Name, p.Superfat, scales(f, plan, f.Weighed, i))
		}
	})
}

// An oil that is added is one weighing more, of a value that it shares with what of
// it is there already; the blend brings the values of all its oils.
func TestTheWorstAndTheLikelyCaseAfterARemedy(t *testing.T) {
	checked := 0
	eachWeighed(t, madeup.New(322), 500, 25, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		division, _ := f.Scales()
		for _, r := range b.Weighed.Remedies {
			if r.Oil == "" || r.Oil == soap.Blend {
				continue
			}
			checked++
			part := slices.IndexFunc(plan.Parts, func(p soap.PartBatch) bool { return p.Name == r.Part })
			v := f.Oils[lineOf(f, r.Oil)].Oil.Saponification()
			all := append(scales(f, plan, f.Weighed, part), scaled{
				r.Oil, demands, massFrac(r.Add.Weigh), over(massFrac(division), whole(2)), 1,
				ratioFrac(v.Low), ratioFrac(v.Typical), ratioFrac(v.High), whole(1),
			})
			sameWorst(t, r.Part+" with "+r.Oil, r.Superfat, all)
		}
	})
	if checked < 150 {
		t.Errorf("%d remedies", checked)
	}
}
