package mould_test

import (
	"fmt"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Twelve cups took 554 g.
func ExampleTrial() {
	each, err := mould.Trial{Count: 12, Mass: units.Grams(554)}.Each()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(each.Text(units.Gram, 2), "g each")
	// Output: 46.17 g each
}

// What is usually made beyond what is filled, and how sure that is.
func ExampleWork() {
	for _, w := range []mould.Work{mould.Poured, mould.Piped} {
		fmt.Println(w, w.Reserve().PercentText(0), "%,", mould.ReserveSource())
	}
	// Output:
	// poured 5 %, common practice
	// piped 15 %, common practice
}

func ExampleReserveSource() {
	fmt.Println(mould.ReserveSource())
	// Output: common practice
}

// Of 480 g of a piped part, 20 g stay in bag and bowl: the swirls get 460 g/1.15.
func ExampleShared() {
	filled, kept, ok := mould.Shared(units.Grams(480), units.Grams(20), mould.Piped.Reserve())
	fmt.Println(filled, "in the swirls,", kept, "kept back", ok)
	// Output: 400 g in the swirls, 60 g kept back true
}

// How far a bowl of batter goes with twelve cups.
func ExampleFill() {
	filled := mould.Fill(units.Grams(514), []mould.Wanted{{Content: units.Grams(46), Count: 12}})
	fmt.Println(filled[0].Whole, "cups; the next one lacks", filled[0].Short)
	// Output: 11 cups; the next one lacks 38 g
}

// Twelve cups of 46 g take 552 of 700 g; what is left fills five testers of 25 g, though
// four are wanted.
func ExampleWanted() {
	filled := mould.Fill(units.Grams(700), []mould.Wanted{
		{Content: units.Grams(46), Count: 12}, {Content: units.Grams(25), Count: 4},
	})
	fmt.Println(filled[0].Whole, "cups,", filled[1].Whole, "testers")
	// Output: 12 cups, 5 testers
}

// With 540 g the twelfth cup lacks 12 g, and the testers get nothing: what is left stands
// in that cup.
func ExampleFilled() {
	for _, f := range mould.Fill(units.Grams(540), []mould.Wanted{
		{Content: units.Grams(46), Count: 12}, {Content: units.Grams(25), Count: 4},
	}) {
		fmt.Println(f.Whole, "whole, the next lacks", f.Short)
	}
	// Output:
	// 11 whole, the next lacks 12 g
	// 0 whole, the next lacks 25 g
}

// Thirty cups, and a shelf with twelve moulds.
func ExampleBatches() {
	n, each, last := mould.Batches([]mould.Shelf{{Count: 30, Moulds: 12}})
	fmt.Println(n, "batches of", each[0], "and the last of", last[0])
	// Output: 3 batches of 12 and the last of 6
}

// Thirty cups with twelve moulds, and three testers with enough: of the testers a batch
// takes 3 × 12/30, up to the next whole one, and none are left for the last.
func ExampleShelf() {
	n, each, last := mould.Batches([]mould.Shelf{{Count: 30, Moulds: 12}, {Count: 3}})
	fmt.Println(n, "batches, of", each, "and at last", last)
	// Output: 3 batches, of [12 2] and at last [6 0]
}

// Ten cups and a tester are eleven pieces. How many of each make forty? 36.4 and 3.6, up to
// whole ones.
func ExampleScaled() {
	fmt.Println(mould.Scaled([]int{10, 1}, 11, 40))
	// Output: [37 4]
}
