// Package mould knows how much batter fills a vessel: cups, loaves, slabs, half-spheres,
// piped swirls, coats. It stands alone: it asks for no formula.
//
// A [Shape] is the inside of a vessel and gives its volume. Which one is taken depends on
// what is known of the vessel:
//
//   - its volume: [Measured]; the water that fills it: [WaterFill], the way for an
//     odd shape;
//   - its inside dimensions: [Box], [TaperedBox], [Slab], [Cylinder], [Frustum] (a cup),
//     [HalfSphere], [Coat];
//   - nothing but what a hand with a piping bag makes of it: [Cone], a guess until a
//     [Trial] says what some of them took. A trial beats any model.
//
// With the density of the batter a volume becomes a mass ([units.Density.Of]). [Work] says
// how much more is usually made; [Shared] divides what is poured into what fills the
// vessels, what is kept back and what is lost; [Fill] tells how far a bowl of batter goes;
// [Batches] and [Scaled] count what a [Shelf] of moulds asks for.
//
// How much batter do twelve cups take, each filled to 90 % of its height?
//
//	cup := mould.Frustum{
//		Top: units.Millimetres(60), Bottom: units.Millimetres(45),
//		Height: units.Millimetres(40), Fill: units.Percent(90),
//	}
//	volume, err := cup.Volume()
//	if err != nil {
//		return err // everything that is wrong with its dimensions, together
//	}
//	batter := units.GramsPerMillilitre(units.MustRatio("1.02"))
//	cups := batter.Of(volume).Times(units.Whole(12), units.Nearest)
//	fmt.Println(cups.Text(units.Gram, 1), "g") // 932.1 g
//
// Every error is [fault.Faults]: all that is wrong with a vessel together, with the keys of
// a formula file as paths, of kind [fault.ErrRange], or [fault.ErrMissing] and
// [fault.ErrConflict]. All types are plain values.
//
// # How sure it is
//
// Geometry is exact in itself and float64 here, rounded once to a nanolitre; that a real
// cup has round edges is not in it. Dimensions are inside ones. Air that is stirred or
// whipped in, and batter that has thickened, change the density and with it the mass. The
// reserve of [Work.Reserve] is common practice, the spread of a [Cone] a guess of ours,
// both without a source. The density of water is that of [lye.DensityOfWater].
//
// Raw batter burns as lye does: keep goggles and gloves on while it is poured and piped.
package mould
