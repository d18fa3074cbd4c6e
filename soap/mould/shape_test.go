package mould_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

func mm(n int) units.Length { return units.Millimetres(n) }

func volume(t testing.TB, s mould.Shape) float64 {
	t.Helper()
	v, err := s.Volume()
	if err != nil {
		t.Fatalf("%+v: %v", s, err)
	}
	return v.Millilitres()
}

// Worked by hand from the formulas beside them.
func TestVolumesWorkedByHand(t *testing.T) {
	full := mould.Frustum{Top: mm(60), Bottom: mm(45), Height: mm(40)}
	most := full
	most.Fill = units.Percent(90)
	for _, test := range []struct {
		name  string
		shape mould.Shape
		want  float64
	}{
		{"frustum: π·40/12·(60² + 60·45 + 45²)", full, 87.18},
		{"to 90 %, 58.5 mm wide: π·36/12·(58.5² + 58.5·45 + 45²)", most, 76.15},
		{"half-sphere: 2/3·π·25³", mould.HalfSphere{Diameter: mm(50)}, 32.72},
		{"to 90 %: 85.05 % of it", mould.HalfSphere{Diameter: mm(50), Fill: units.Percent(90)}, 0.8505 * 32.7249},
		{"tapered box: 30/6·[(160+70)·60 + (140+80)·45]", mould.TaperedBox{TopLength: mm(80), TopWidth: mm(60), BottomLength: mm(70), BottomWidth: mm(45), Depth: mm(30)}, 118.50},
		{"swirl: π·35/12·(45² + 45·8 + 8²) × 85 %", mould.Cone{Base: mm(45), Tip: mm(8), Height: mm(35), Fill: units.Percent(85)}, 19.07},
		{"box: 200·70·60", mould.Box{Length: mm(200), Width: mm(70), Depth: mm(60)}, 840},
		{"slab: (180−2)·(120−2)·(25−1)·50 %", mould.Slab{Length: mm(180), Width: mm(120), Height: mm(25), Liner: mm(1), Fill: units.Percent(50)}, 252.05},
		{"cylinder: π/4·60²·30", mould.Cylinder{Diameter: mm(60), Height: mm(30)}, 84.82},
		{"coat: 120 cm² × 2 mm", mould.Coat{Area: units.SquareMillimetres(12_000), Thickness: mm(2)}, 24},
		// 998.20 kg/m³ is the published equation's value at 20 °C.
		{"water: 200 g / 0.99820 g/mL", mould.WaterFill{Mass: units.Grams(200), At: units.Celsius(20)}, 200 / 0.99820},
		{"measured", mould.Measured{Content: units.Millilitres(45)}, 45},
	} {
		if got := volume(t, test.shape); math.Abs(got-test.want) > 0.006 {
			t.Errorf("%s: %v mL, want %v", test.name, got, test.want)
		}
	}
}

// solid is a shape by its cross-section: area in mm² at a height in mm.
type solid struct {
	shape  mould.Shape
	height float64 // to which it is filled
	part   float64 // of what is inside, what is batter
	area   func(at float64) float64
}

func between(bottom, top, at float64) float64 { return bottom + (top-bottom)*at }

// solids makes one of each shape at random, with a cross-section that is worked out
// from its definition and not from the formula of its volume.
func solids(r *rand.Rand) []solid {
	side := func() units.Length { return mm(5 + r.IntN(300)) }
	fill := units.Percent(1 + r.IntN(100))
	f := fill.Float()
	disc := func(d float64) float64 { return math.Pi / 4 * d * d }
	box := mould.Box{Length: side(), Width: side(), Depth: side(), Fill: fill}
	tapered := mould.TaperedBox{TopLength: side(), TopWidth: side(), BottomLength: side(), BottomWidth: side(), Depth: side(), Fill: fill}
	cylinder := mould.Cylinder{Diameter: side(), Height: side(), Fill: fill}
	frustum := mould.Frustum{Top: side(), Bottom: side(), Height: side(), Fill: fill}
	half := mould.HalfSphere{Diameter: side(), Fill: fill}
	slab := mould.Slab{Length: side(), Width: side(), Height: side(), Liner: mm(r.IntN(2)), Fill: fill}
	cone := mould.Cone{Base: mm(20 + r.IntN(50)), Tip: mm(r.IntN(20)), Height: side(), Fill: fill}
	radius, liner := half.Diameter.Millimetres()/2, slab.Liner.Millimetres()
	return []solid{
		{box, f * box.Depth.Millimetres(), 1, func(float64) float64 { return box.Length.Millimetres() * box.Width.Millimetres() }},
		{tapered, f * tapered.Depth.Millimetres(), 1, func(at float64) float64 {
			up := at / tapered.Depth.Millimetres()
			return between(tapered.BottomLength.Millimetres(), tapered.TopLength.Millimetres(), up) * between(tapered.BottomWidth.Millimetres(), tapered.TopWidth.Millimetres(), up)
		}},
		{cylinder, f * cylinder.Height.Millimetres(), 1, func(float64) float64 { return disc(cylinder.Diameter.Millimetres()) }},
		{frustum, f * frustum.Height.Millimetres(), 1, func(at float64) float64 {
			return disc(between(frustum.Bottom.Millimetres(), frustum.Top.Millimetres(), at/frustum.Height.Millimetres()))
		}},
		{half, f * radius, 1, func(at float64) float64 { return math.Pi * (radius*radius - (radius-at)*(radius-at)) }},
		{slab, f * (slab.Height.Millimetres() - liner), 1, func(float64) float64 {
			return (slab.Length.Millimetres() - 2*liner) * (slab.Width.Millimetres() - 2*liner)
		}},
		{cone, cone.Height.Millimetres(), f, func(at float64) float64 {
			return disc(between(cone.Base.Millimetres(), cone.Tip.Millimetres(), at/cone.Height.Millimetres()))
		}},
	}
}

func TestVolumesAgainstIntegration(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for range 200 {
		for _, s := range solids(r) {
			const slices = 2000
			sum := 0.0
			for i := range slices {
				sum += s.area((float64(i) + 0.5) / slices * s.height)
			}
			want := sum * s.height / slices * s.part / 1000
			if got := volume(t, s.shape); math.Abs(got-want) > 1e-6*want+1e-6 {
				t.Errorf("%+v: %v mL, integrated %v", s.shape, got, want)
			}
		}
	}
}

// A shape is one of another: what two closed forms must agree on.
func TestShapesThatAreEachOther(t *testing.T) {
	same := func(a, b mould.Shape) {
		t.Helper()
		if x, y := volume(t, a), volume(t, b); math.Abs(x-y) > 2e-6 {
			t.Errorf("%+v is %v mL, %+v is %v", a, x, b, y)
		}
	}
	fill := units.Percent(37)
	same(mould.Box{Length: mm(80), Width: mm(60), Depth: mm(30), Fill: fill},
		mould.TaperedBox{TopLength: mm(80), BottomLength: mm(80), TopWidth: mm(60), BottomWidth: mm(60), Depth: mm(30), Fill: fill})
	same(mould.Box{Length: mm(80), Width: mm(60), Depth: mm(30), Fill: fill}, mould.Slab{Length: mm(80), Width: mm(60), Height: mm(30), Fill: fill})
	same(mould.Cylinder{Diameter: mm(50), Height: mm(40), Fill: fill}, mould.Frustum{Top: mm(50), Bottom: mm(50), Height: mm(40), Fill: fill})
	same(mould.Cone{Base: mm(45), Tip: mm(8), Height: mm(35)}, mould.Frustum{Top: mm(8), Bottom: mm(45), Height: mm(35)})
	// What is below a height, and what is above it upside down, is all of it.
	low := mould.Frustum{Top: mm(60), Bottom: mm(45), Height: mm(40), Fill: fill}
	high := mould.Frustum{Top: mm(45), Bottom: mm(60), Height: mm(40), Fill: fill.Rest()}
	if all := volume(t, mould.Frustum{Top: mm(60), Bottom: mm(45), Height: mm(40)}); math.Abs(volume(t, low)+volume(t, high)-all) > 2e-6 {
		t.Errorf("%v and %v are not %v", volume(t, low), volume(t, high), all)
	}
	cone := mould.Cone{Base: mm(30), Height: mm(30)}
	cylinder := mould.Cylinder{Diameter: mm(30), Height: mm(30)}
	if math.Abs(3*volume(t, cone)-volume(t, cylinder)) > 5e-6 {
		t.Errorf("a cone is no third of a cylinder: %v, %v", volume(t, cone), volume(t, cylinder))
	}
	cone.Tip = cone.Base // no narrower at its tip: still a swirl
	if math.Abs(volume(t, cone)-volume(t, cylinder)) > 2e-6 {
		t.Errorf("a cone with a tip as wide as its base is no cylinder: %v, %v", volume(t, cone), volume(t, cylinder))
	}
}

func TestOnlyASwirlIsAModel(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, s := range solids(r) {
		want := units.Whole(0)
		if _, swirl := s.shape.(mould.Cone); swirl {
			want = units.Percent(15)
		}
		if !s.shape.Spread().Equal(want) {
			t.Errorf("%T: ±%v", s.shape, s.shape.Spread())
		}
	}
}

func paths(err error) []string {
	var faults fault.Faults
	if !errors.As(err, &faults) {
		return nil
	}
	var paths []string
	for _, f := range faults {
		paths = append(paths, f.Path)
	}
	slices.Sort(paths)
	return paths
}

func TestImpossibleShapesNameEveryFault(t *testing.T) {
	over, none, less := units.Percent(101), units.Percent(0), mm(-1)
	long := mm(10_001)
	for _, test := range []struct {
		shape mould.Shape
		want  []string
	}{
		{mould.Measured{}, []string{""}},
		{mould.Measured{Content: units.Millilitres(-1)}, []string{""}},
		{mould.Measured{Content: units.Millilitres(1_000_001)}, []string{""}},
		{mould.WaterFill{}, []string{"mass", "temperature"}},
		{mould.WaterFill{Mass: units.Grams(2_000_000), At: units.Celsius(101)}, []string{"mass", "temperature"}},
		{mould.Box{Fill: over}, []string{"depth", "fill", "length", "width"}},
		{mould.Box{Length: long, Width: mm(1), Depth: less}, []string{"depth", "length"}},
		{mould.Box{Length: mm(10_000), Width: mm(10_000), Depth: mm(100)}, []string{""}}, // 10 000 L
		{mould.Slab{Liner: less, Fill: none}, []string{"fill", "height", "length", "liner", "width"}},
		{mould.Slab{Length: mm(10), Width: mm(2), Height: mm(10), Liner: mm(1)}, []string{"liner"}},
		{mould.Slab{Length: mm(10), Width: mm(10), Height: mm(1), Liner: mm(1)}, []string{"liner"}},
		{mould.TaperedBox{Fill: over}, []string{"bottom_length", "bottom_width", "depth", "fill", "top_length", "top_width"}},
		{mould.Cylinder{Fill: none}, []string{"diameter", "fill", "height"}},
		{mould.Frustum{Fill: over}, []string{"bottom", "fill", "height", "top"}},
		{mould.HalfSphere{Diameter: less, Fill: over}, []string{"diameter", "fill"}},
		{mould.Cone{Tip: less, Fill: over}, []string{"base", "fill", "height", "tip"}},
		{mould.Cone{Base: mm(8), Tip: mm(45), Height: mm(35)}, []string{"tip"}},
		{mould.Coat{}, []string{"area", "thickness"}},
		{mould.Coat{Area: units.SquareMillimetres(-4), Thickness: long}, []string{"area", "thickness"}},
	} {
		v, err := test.shape.Volume()
		if got := paths(err); !slices.Equal(got, test.want) {
			t.Errorf("%+v: %v, want faults at %v", test.shape, err, test.want)
		}
		if _, measured := test.shape.(mould.Measured); !measured && v != (units.Volume{}) && err != nil {
			t.Errorf("%+v: %v stands beside %v", test.shape, v, err)
		}
	}
	if tiny, err := units.ParseLength("0.0001 mm"); err != nil {
		t.Fatal(err)
	} else if v, err := (mould.Box{Length: tiny, Width: tiny, Depth: tiny}).Volume(); err == nil {
		t.Errorf("a box of 0.1 µm holds %v", v)
	}
}

func TestAValidShapeCostsNoAllocation(t *testing.T) {
	shape := mould.Frustum{Top: mm(60), Bottom: mm(45), Height: mm(40), Fill: units.Percent(90)}
	if n := testing.AllocsPerRun(100, func() {
		if _, err := shape.Volume(); err != nil {
			t.Fatal(err)
		}
	}); n > 1 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkVolume(b *testing.B) {
	shape := mould.TaperedBox{TopLength: mm(80), TopWidth: mm(60), BottomLength: mm(70), BottomWidth: mm(45), Depth: mm(30)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := shape.Volume(); err != nil {
			b.Fatal(err)
		}
	}
}
