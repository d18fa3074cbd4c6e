package soap_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"

	"example.com/lyewright/soap"
)

// A shop gives a batch a second, and lets go of it where the client has gone.
func ExampleFormula_BatchContext() {
	formula, _, err := soap.ParseFormula(lanternDusk())
	if err != nil {
		fmt.Println(err)
		return
	}
	ctx, cancel := context.WithTimeout(context.Background(), 30*time.Second)
	batch, err := formula.BatchContext(ctx)
	fmt.Println(len(batch.Parts) > 0, err)
	cancel() // the client has gone
	_, err = formula.BatchContext(ctx)
	fmt.Println(errors.Is(err, context.Canceled), err)
	// Output:
	// true <nil>
	// true the batch is not worked out: context canceled
}

// The caps of a batch, for as long as somebody waits for them.
func ExampleBatch_CapsContext() {
	batch := duskBatch()
	ctx, cancel := context.WithCancel(context.Background())
	caps, err := batch.CapsContext(ctx)
	fmt.Println(len(caps.Parts) == len(batch.Parts), err)
	cancel()
	_, err = batch.CapsContext(ctx)
	fmt.Println(err)
	// Output:
	// true <nil>
	// the caps are not worked out: context canceled
}

// The colours of a batch, for as long as somebody waits for them.
func ExampleBatch_TintContext() {
	batch := duskBatch()
	ctx, cancel := context.WithCancel(context.Background())
	tint, err := batch.TintContext(ctx)
	fmt.Println(len(tint.Parts) == len(batch.Parts), err)
	cancel()
	_, err = batch.TintContext(ctx)
	fmt.Println(err)
	// Output:
	// true <nil>
	// the tint is not worked out: context canceled
}

func duskBatch() soap.Batch {
	formula, _, err := soap.ParseFormula(lanternDusk())
	if err != nil {
		panic(err)
	}
	batch, err := formula.Batch()
	if err != nil {
		panic(err)
	}
	return batch
}

func lanternDusk() []byte {
	text, err := os.ReadFile("../testdata/formulas/lantern-dusk.json")
	if err != nil {
		panic(err)
	}
	return text
}

// A shop works many formulas out with the same swatches: they are calibrated once.
func ExampleFormula_Calibrate() {
	formula, _, err := soap.ParseFormula(lanternDusk())
	if err != nil {
		fmt.Println(err)
		return
	}
	if formula.Calibration, err = formula.Calibrate(context.Background()); err != nil {
		fmt.Println(err)
		return
	}
	batch, err := formula.Batch()
	fmt.Println(len(batch.Parts) > 0, err)
	// Output:
	// true <nil>
}
