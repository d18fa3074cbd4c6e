package soap_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"example.com/lyewright/soap"
	"github.com/shopspring/decimal"
)

// everyBatch works out every formula of the testdata, as JSON.
func everyBatch(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	for _, pattern := range []string{"../testdata/formulas/*.json", "../testdata/worked/*.json"} {
		paths, err := filepath.Glob(pattern)
		if err != nil || len(paths) == 0 {
			t.Fatal(pattern, err)
		}
		for _, path := range paths {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			f, _, err := soap.ParseFormula(text)
			if err != nil {
				t.Fatal(err)
			}
			b, err := f.Batch()
			if err != nil {
				t.Fatal(err)
			}
			object, err := b.MarshalJSON()
			if err != nil {
				t.Fatal(err)
			}
			out.Write(append(object, '\n'))
		}
	}
	return out.Bytes()
}

// The decimal library keeps settings in package variables, and another package
// of the importer's program may have set them all. They are set in a process of
// their own, since they hold for the whole of one.
func TestABatchIsTheSameWhateverTheDecimalLibrarysSettings(t *testing.T) {
	const child = "LYEWRIGHT_HOSTILE_DECIMAL_SETTINGS"
	if file := os.Getenv(child); file != "" {
		decimal.DivisionPrecision = 1
		decimal.PowPrecisionNegativeExponent = 1
		decimal.MarshalJSONWithoutQuotes = true
		decimal.TrimTrailingZeros = false
		decimal.UseScientificNotation = true
		decimal.ExpMaxIterations = 1
		decimal.MaxDecodeExponent = 0
		decimal.Zero = decimal.New(7, 3)
		if err := os.WriteFile(file, everyBatch(t), 0o600); err != nil {
			t.Fatal(err)
		}
		return
	}
	file := filepath.Join(t.TempDir(), "batches")
	cmd := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$")
	cmd.Env = append(os.Environ(), child+"="+file)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if want := everyBatch(t); !bytes.Equal(got, want) {
		t.Error("the batches differ under hostile settings")
	}
}

// Run with the race detector, this holds that nothing is shared.
func TestBatchesAreWorkedOutSideBySide(t *testing.T) {
	text, err := os.ReadFile("../testdata/formulas/benchmark.json")
	if err != nil {
		t.Fatal(err)
	}
	shared, _, err := soap.ParseFormula(text)
	if err != nil {
		t.Fatal(err)
	}
	want, err := shared.Batch()
	if err != nil {
		t.Fatal(err)
	}
	wanted, _ := want.MarshalJSON()
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for range 20 {
				b, err := shared.Batch()
				if err != nil {
					t.Error(err)
					return
				}
				if got, _ := b.MarshalJSON(); !bytes.Equal(got, wanted) {
					t.Error("a batch differs from the others")
				}
				_ = b.Composition()
			}
		})
	}
	all.Wait()
}
