package units_test

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"

	"example.com/lyewright/units"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// hostileSettings asks the test binary, run again, to change every setting of
// the decimal library and print the results.
const hostileSettings = "LYEWRIGHT_TEST_HOSTILE_SETTINGS"

func TestMain(m *testing.M) {
	if os.Getenv(hostileSettings) == "" {
		os.Exit(m.Run())
	}
	// Every exported variable of shopspring/decimal v1.6.0 that is not an error
	// value. They hold for the whole program, and any importer may set them.
	decimal.DivisionPrecision = 0
	decimal.PowPrecisionNegativeExponent = 0
	decimal.MarshalJSONWithoutQuotes = true
	decimal.TrimTrailingZeros = false
	decimal.UseScientificNotation = true
	decimal.ExpMaxIterations = 0
	decimal.MaxDecodeExponent = 0
	decimal.Zero = decimal.New(7, 3)
	fmt.Print(libraryResults(), results())
}

// libraryResults are the decimal library's own, which the settings do change.
func libraryResults() string {
	return fmt.Sprintln(decimal.New(1, 0).Div(decimal.New(3, 0)), decimal.New(250, -2), decimal.New(12, 2), decimal.Zero)
}

func results() string {
	var b strings.Builder
	narrow := []units.Ratio{{}, units.Percent(0), units.Percent(6), negative(units.Percent(6)), units.MustRatio("2.50"), units.MustRatio("1200")}
	wide := units.Whole(1).Over(units.Whole(7))
	ratios := append(narrow, wide, negative(wide), wide.Times(wide), wide.Sub(wide), units.Whole(uint64(1)<<63), units.Whole(12_000_000), units.Whole(12_000_000).Times(wide))
	masses := []units.Mass{{}, units.Grams(1200), units.Grams(-3), units.Milligrams(2500)}
	for _, text := range []string{"28.20 oz", "1.1 lb", "0.5 mg", "12,5 g", "5"} {
		m, err := units.ParseMass(text)
		fmt.Fprintln(&b, m, err)
		masses = append(masses, m)
	}
	// More digits, and more decimals, than the short way of reading takes.
	for _, text := range []string{"1.123456789012345678901", "0.1234567890123456", "1234567890123456.1234567890123456789012345678901234"} {
		r, err := units.ParseRatio(text)
		m, massErr := units.ParseMass(text + " mg")
		fmt.Fprintln(&b, r.Text(34), err, m, massErr)
		ratios = append(ratios, r)
	}
	for i, r := range ratios {
		fmt.Fprintln(&b, i, r, r.Text(34), r.PercentText(20), r.PercentFixed(3), r.PercentFixed(30), r.MilligramsPerGramText(20), r.Sign(), r.Float(), r.Rest().Text(34))
		fmt.Fprintln(&b, units.Between(r, units.Percent(3)).Middle().Text(34))
		for _, how := range modes {
			fmt.Fprintln(&b, r.Round(2, how), r.Round(15, how).Text(34))
		}
		for _, q := range ratios {
			fmt.Fprintln(&b, r.Add(q).Text(34), r.Sub(q).Text(34), r.Times(q).Text(34), r.Over(q).Text(34), r.Compare(q))
		}
		for _, m := range masses {
			sum := units.Sum{}.Plus(m, r).Plus(units.Grams(1), wide)
			for _, how := range modes {
				product, ok := m.Times(r, how)
				fmt.Fprintln(&b, product, ok, sum.Mass(how), sum.Times(r).Mass(how), sum.TimesWhole(-3).Mass(how))
			}
			share, ok := sum.Per(units.Sum{}.Plus(units.Grams(9), units.Percent(70)))
			fmt.Fprintln(&b, share.Text(34), ok, sum.Sign(), sum.Grams(), sum.Sub(sum).Sign())
			fmt.Fprintln(&b, units.Apportion(m, []units.Ratio{r, wide, units.Percent(20)}))
		}
	}
	for _, m := range masses {
		for _, n := range masses {
			share, ok := m.Per(n)
			fmt.Fprintln(&b, share.Text(34), ok, m.Add(n), m.Sub(n), m.Round(n, units.Up))
		}
		for _, unit := range allUnits {
			fmt.Fprintln(&b, m.Text(unit, 9), m.Fixed(unit, 4))
		}
	}
	estimate, ok := units.RatioOfFloat(0.065)
	fmt.Fprintln(&b, estimate, ok)
	return b.String()
}

func TestResultsDoNotDependOnTheDecimalLibrarysSettings(t *testing.T) {
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	command := exec.Command(program)
	command.Env = append(os.Environ(), hostileSettings+"=1")
	command.Stderr = os.Stderr
	output, err := command.Output()
	if err != nil {
		t.Fatal(err)
	}
	library, got, _ := strings.Cut(string(output), "\n")
	// The test means something only if the settings took effect.
	before, after := strings.Fields(libraryResults()), strings.Fields(library)
	if len(before) != len(after) {
		t.Fatalf("%q and %q", before, after)
	}
	for i := range before {
		if before[i] == after[i] {
			t.Errorf("%s is the same under the settings", before[i])
		}
	}
	if diff := cmp.Diff(strings.Split(results(), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("results (-plain +hostile settings):\n%s", diff)
	}
}
