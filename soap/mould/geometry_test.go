package mould_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Two volumes may differ by their roundings to a nanolitre, and by a few last places
// of float64.
func close(a, b float64) bool { return math.Abs(a-b) <= 3e-6+1e-12*math.Max(a, b) }

// length gives one of so many nanometres.
func length(t testing.TB, nanometres int) units.Length {
	t.Helper()
	l, err := units.ParseLength(fmt.Sprintf("%d.%06d mm", nanometres/1_000_000, nanometres%1_000_000))
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// parts per million, as a ratio.
func ppm(n int) units.Ratio { return units.MilligramsPerGram(n).Times(units.MilligramsPerGram(1)) }

// built is a shape made of lengths in nanometres, and of a fill in parts per million.
type built struct {
	name  string
	sides int
	make  func(l []units.Length, fill units.Ratio) mould.Shape
}

func builds() []built {
	return []built{
		{"box", 3, func(l []units.Length, f units.Ratio) mould.Shape {
			return mould.Box{Length: l[0], Width: l[1], Depth: l[2], Fill: f}
		}},
		{"slab", 3, func(l []units.Length, f units.Ratio) mould.Shape {
			return mould.Slab{Length: l[0], Width: l[1], Height: l[2], Fill: f}
		}},
		{"tapered box", 5, func(l []units.Length, f units.Ratio) mould.Shape {
			return mould.TaperedBox{TopLength: l[0], TopWidth: l[1], BottomLength: l[2], BottomWidth: l[3], Depth: l[4], Fill: f}
		}},
		{"cylinder", 2, func(l []units.Length, f units.Ratio) mould.Shape {
			return mould.Cylinder{Diameter: l[0], Height: l[1], Fill: f}
		}},
		{"frustum", 3, func(l []units.Length, f units.Ratio) mould.Shape {
			return mould.Frustum{Top: l[0], Bottom: l[1], Height: l[2], Fill: f}
		}},
		{"half-sphere", 1, func(l []units.Length, f units.Ratio) mould.Shape { return mould.HalfSphere{Diameter: l[0], Fill: f} }},
		{"cone", 3, func(l []units.Length, f units.Ratio) mould.Shape {
			base, tip := l[0], l[1]
			if tip.Compare(base) > 0 {
				base, tip = tip, base
			}
			return mould.Cone{Base: base, Tip: tip, Height: l[2], Fill: f}
		}},
	}
}

// sizes gives random dimensions from 10 mm to 250 mm, to the nanometre.
func sizes(r *rand.Rand, n int) []int {
	nanometres := make([]int, n)
	for i := range nanometres {
		nanometres[i] = 10_000_000 + r.IntN(240_000_000)
	}
	return nanometres
}

func lengths(t testing.TB, nanometres []int, times int) []units.Length {
	t.Helper()
	l := make([]units.Length, len(nanometres))
	for i, nm := range nanometres {
		l[i] = length(t, nm*times)
	}
	return l
}

// Simpson's rule, or the prismatoid's, is exact where the cross-section is at most a
// cubic of the height, as all of these are: the areas of the bottom, of the surface and
// midway, without the closed forms.
func TestVolumesByThePrismatoidRule(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for range 300 {
		for _, s := range solids(r) {
			want := s.height / 6 * (s.area(0) + 4*s.area(s.height/2) + s.area(s.height)) * s.part / 1000
			if got := volume(t, s.shape); !close(got, want) {
				t.Errorf("%+v: %v mL, the prismatoid of its sections %v", s.shape, got, want)
			}
		}
	}
}

func TestAHalfSphereIsTwoThirdsOfItsCylinder(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 24))
	for range 100 {
		nm := 2 * (5_000_000 + r.IntN(100_000_000))
		half := volume(t, mould.HalfSphere{Diameter: length(t, nm)})
		radius := float64(nm) / 2e6
		if want := 2.0 / 3 * math.Pi * radius * radius * radius / 1000; !close(half, want) {
			t.Errorf("radius %v mm: %v mL, want %v", radius, half, want)
		}
		around := volume(t, mould.Cylinder{Diameter: length(t, nm), Height: length(t, nm/2)})
		if !close(half, around*2/3) {
			t.Errorf("radius %v mm: %v mL, its cylinder holds %v", radius, half, around)
		}
	}
}

// A pyramid cut off, by the whole one less the tip that is missing.
func TestATaperThatMeetsInAPointIsAPyramidLessItsTip(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 26))
	for range 200 {
		tip := 1 + r.Float64() // how much wider it is at the top than at the bottom
		l, w, d := 10_000_000+r.IntN(50_000_000), 10_000_000+r.IntN(50_000_000), 10_000_000+r.IntN(50_000_000)
		top, beside := int(float64(l)*tip), int(float64(w)*tip)
		got := volume(t, mould.TaperedBox{TopLength: length(t, top), TopWidth: length(t, beside), BottomLength: length(t, l), BottomWidth: length(t, w), Depth: length(t, d)})
		whole := float64(d) / 1e6 * tip / (tip - 1) // to the point below
		want := (float64(top)*float64(beside)*whole - float64(l)*float64(w)*(whole-float64(d)/1e6)) / 3e12 / 1000
		if math.Abs(got-want) > 1e-5*want { // the sides are cut to a nanometre, and the quotient enlarges it
			t.Errorf("%d × %d over %d × %d by %d nm: %v mL, want %v", top, beside, l, w, d, got, want)
		}
		round := volume(t, mould.Frustum{Top: length(t, top), Bottom: length(t, l), Height: length(t, d)})
		cone := math.Pi / 12 * (float64(top)*float64(top)*whole - float64(l)*float64(l)*(whole-float64(d)/1e6)) / 1e12 / 1000
		if math.Abs(round-cone) > 1e-5*cone {
			t.Errorf("%d over %d by %d nm: %v mL, want %v", top, l, d, round, cone)
		}
	}
}

func TestTwiceTheSizeHoldsEightTimes(t *testing.T) {
	r := rand.New(rand.NewPCG(27, 28))
	for _, b := range builds() {
		for range 200 {
			nm, fill := sizes(r, b.sides), ppm(1+r.IntN(1_000_000))
			one, eight := volume(t, b.make(lengths(t, nm, 1), fill)), volume(t, b.make(lengths(t, nm, 2), fill))
			if math.Abs(eight-8*one) > 5e-6+1e-12*eight {
				t.Errorf("%s %v at %v: %v mL, twice as large %v", b.name, nm, fill, one, eight)
			}
		}
	}
	// The liner is a length, too.
	slab := mould.Slab{Length: mm(180), Width: mm(120), Height: mm(25), Liner: mm(3)}
	twice := mould.Slab{Length: mm(360), Width: mm(240), Height: mm(50), Liner: mm(6)}
	if !close(8*volume(t, slab), volume(t, twice)) {
		t.Errorf("%v mL, twice as large %v", volume(t, slab), volume(t, twice))
	}
}

func TestMoreOfAnythingHoldsMore(t *testing.T) {
	r := rand.New(rand.NewPCG(29, 30))
	for _, b := range builds() {
		for range 200 {
			nm, part := sizes(r, b.sides), 1+r.IntN(999_000)
			fill := ppm(part)
			if part%7 == 0 {
				fill = units.Ratio{} // full
			}
			before := volume(t, b.make(lengths(t, nm, 1), fill))
			for i := range nm {
				more := append([]int(nil), nm...)
				more[i] += 100_000 + r.IntN(20_000_000)
				if part > 1000 && volume(t, b.make(lengths(t, more, 1), fill)) <= before {
					t.Errorf("%s %v at %v holds no less than %v", b.name, nm, fill, more)
				}
			}
			if fill.Given() && volume(t, b.make(lengths(t, nm, 1), ppm(part+1+r.IntN(1000)))) <= before {
				t.Errorf("%s %v at %v holds as much as with more", b.name, nm, fill)
			}
		}
	}
	slab := mould.Slab{Length: mm(180), Width: mm(120), Height: mm(25), Liner: mm(1)}
	lined := slab
	lined.Liner = length(t, 1_000_001)
	if volume(t, lined) >= volume(t, slab) {
		t.Error("a thicker liner takes no room")
	}
	if thin, thick := volume(t, mould.Coat{Area: units.SquareMillimetres(500), Thickness: mm(1)}), volume(t, mould.Coat{Area: units.SquareMillimetres(500), Thickness: length(t, 1_000_001)}); thin >= thick {
		t.Errorf("%v mL, thicker %v", thin, thick)
	}
}

// Full, and filled to 100 %, are the same to the nanolitre.
func TestNoFillIsAFullOne(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	for _, b := range builds() {
		for range 100 {
			l := lengths(t, sizes(r, b.sides), 1)
			full, err := b.make(l, units.Ratio{}).Volume()
			to, err2 := b.make(l, units.Percent(100)).Volume()
			if err != nil || err2 != nil || full != to {
				t.Errorf("%s %v: %v, at 100 %% %v", b.name, l, full, to)
			}
		}
	}
}

// Half of the height is half of the volume only where the walls are straight; of a
// cone, the fill is of its volume.
func TestHalfTheHeightIsNotHalfOfATaper(t *testing.T) {
	half := units.Percent(50)
	for _, test := range []struct {
		name       string
		full, half mould.Shape
		want       float64 // of the full one, by hand
	}{
		{"box", mould.Box{Length: mm(80), Width: mm(60), Depth: mm(30)}, mould.Box{Length: mm(80), Width: mm(60), Depth: mm(30), Fill: half}, 0.5},
		{"lined slab", mould.Slab{Length: mm(80), Width: mm(60), Height: mm(30), Liner: mm(2)}, mould.Slab{Length: mm(80), Width: mm(60), Height: mm(30), Liner: mm(2), Fill: half}, 0.5},
		{"cylinder", mould.Cylinder{Diameter: mm(80), Height: mm(60)}, mould.Cylinder{Diameter: mm(80), Height: mm(60), Fill: half}, 0.5},
		{"cone", mould.Cone{Base: mm(45), Tip: mm(8), Height: mm(35)}, mould.Cone{Base: mm(45), Tip: mm(8), Height: mm(35), Fill: half}, 0.5},
		// The sides 1 and 3 are 1 and 2 to the half: (1 + 2 + 4)/2 of (1 + 3 + 9).
		{"wide cup", mould.Frustum{Top: mm(60), Bottom: mm(20), Height: mm(40)}, mould.Frustum{Top: mm(60), Bottom: mm(20), Height: mm(40), Fill: half}, 3.5 / 13},
		{"narrow cup", mould.Frustum{Top: mm(20), Bottom: mm(60), Height: mm(40)}, mould.Frustum{Top: mm(20), Bottom: mm(60), Height: mm(40), Fill: half}, 9.5 / 13},
		{
			"wide box",
			mould.TaperedBox{TopLength: mm(90), TopWidth: mm(60), BottomLength: mm(30), BottomWidth: mm(20), Depth: mm(40)},
			mould.TaperedBox{TopLength: mm(90), TopWidth: mm(60), BottomLength: mm(30), BottomWidth: mm(20), Depth: mm(40), Fill: half},
			3.5 / 13,
		},
		// h²·(3r − h) is 1/4 · 5/2 of 1 · 2.
		{"half-sphere", mould.HalfSphere{Diameter: mm(50)}, mould.HalfSphere{Diameter: mm(50), Fill: half}, 5.0 / 16},
	} {
		if got, want := volume(t, test.half), test.want*volume(t, test.full); !close(got, want) {
			t.Errorf("%s: %v mL, want %v", test.name, got, want)
		}
	}
}

// What is below a height, and what is above it with the vessel upside down, is all.
func TestATaperUpsideDownHoldsTheRest(t *testing.T) {
	r := rand.New(rand.NewPCG(33, 34))
	for range 500 {
		l := lengths(t, sizes(r, 5), 1)
		fill := ppm(1 + r.IntN(999_999))
		for _, parts := range [][3]mould.Shape{
			{mould.Frustum{Top: l[0], Bottom: l[1], Height: l[2]}, mould.Frustum{Top: l[0], Bottom: l[1], Height: l[2], Fill: fill}, mould.Frustum{Top: l[1], Bottom: l[0], Height: l[2], Fill: fill.Rest()}},
			{
				mould.TaperedBox{TopLength: l[0], TopWidth: l[1], BottomLength: l[2], BottomWidth: l[3], Depth: l[4]},
				mould.TaperedBox{TopLength: l[0], TopWidth: l[1], BottomLength: l[2], BottomWidth: l[3], Depth: l[4], Fill: fill},
				mould.TaperedBox{TopLength: l[2], TopWidth: l[3], BottomLength: l[0], BottomWidth: l[1], Depth: l[4], Fill: fill.Rest()},
			},
		} {
			if all, low, high := volume(t, parts[0]), volume(t, parts[1]), volume(t, parts[2]); !close(all, low+high) {
				t.Errorf("%+v: %v and %v are not %v", parts[1], low, high, all)
			}
		}
	}
}

// The two sides of a tapered box are alike: its length may be called its width.
func TestABoxMayBeTurned(t *testing.T) {
	r := rand.New(rand.NewPCG(35, 36))
	for range 200 {
		l, fill := lengths(t, sizes(r, 5), 1), ppm(1+r.IntN(1_000_000))
		one := volume(t, mould.TaperedBox{TopLength: l[0], TopWidth: l[1], BottomLength: l[2], BottomWidth: l[3], Depth: l[4], Fill: fill})
		turned := volume(t, mould.TaperedBox{TopLength: l[1], TopWidth: l[0], BottomLength: l[3], BottomWidth: l[2], Depth: l[4], Fill: fill})
		if !close(one, turned) {
			t.Errorf("%v: %v mL, turned %v", l, one, turned)
		}
	}
}

// A vessel is rounded to the nearest nanolitre, and no coarser.
func TestVolumesAreRoundedToANanolitre(t *testing.T) {
	for _, test := range []struct {
		shape mould.Shape
		want  string
	}{
		// 0.1·0.1·0.1 mm³ = 1 nL, 0.1·0.1·0.15 is 1.5 and 0.1·0.1·0.149 is 1.49.
		{mould.Box{Length: length(t, 100_000), Width: length(t, 100_000), Depth: length(t, 100_000)}, "0.000001"},
		{mould.Box{Length: length(t, 100_000), Width: length(t, 100_000), Depth: length(t, 149_000)}, "0.000001"},
		{mould.Box{Length: length(t, 100_000), Width: length(t, 100_000), Depth: length(t, 151_000)}, "0.000002"},
		{mould.Box{Length: length(t, 100_000), Width: length(t, 100_000), Depth: length(t, 51_000)}, "0.000001"},
		{mould.Coat{Area: units.SquareMillimetres(1), Thickness: length(t, 12_345_678)}, "0.012346"},
		{mould.Cylinder{Diameter: mm(60), Height: mm(30)}, "84.823002"},           // 27000 π
		{mould.HalfSphere{Diameter: mm(50)}, "32.724923"},                         // 31250/3 π
		{mould.Frustum{Top: mm(60), Bottom: mm(45), Height: mm(40)}, "87.179196"}, // 27750 π
	} {
		v, err := test.shape.Volume()
		if err != nil || v.Text(6) != test.want {
			t.Errorf("%+v: %v, %v, want %s mL", test.shape, v, err, test.want)
		}
	}
}

// The figures are those of the published equation, in kg/m³, to two decimals.
func TestWaterFillAtManyTemperatures(t *testing.T) {
	for celsius, density := range map[int]float64{
		0: 999.84, 4: 999.97, 10: 999.70, 15: 999.10, 20: 998.20, 25: 997.04, 30: 995.65,
		40: 992.22, 50: 988.04, 60: 983.20, 70: 977.77, 80: 971.80, 90: 965.32, 100: 958.36,
	} {
		got := volume(t, mould.WaterFill{Mass: units.Grams(200), At: units.Celsius(celsius)})
		if want := 200_000 / density; math.Abs(got-want) > 200*0.0051/density*1000/density {
			t.Errorf("200 g at %d °C: %v mL, want %v", celsius, got, want)
		}
	}
	// 200/0.998204: the equation, worked to a millionth.
	if got := volume(t, mould.WaterFill{Mass: units.Grams(200), At: units.Celsius(20)}); math.Abs(got-200/0.998204) > 0.0001 {
		t.Errorf("200 g at 20 °C: %v mL", got)
	}
}
