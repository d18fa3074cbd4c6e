package tint_test

import (
	"math/big"
	"os"
	"strings"
	"testing"

	"example.com/lyewright/internal/madeup"
)

// typedBands are rows of the observer and of D65 that chance has chosen (seed 7106), typed
// in a second time from the CIE's tables: wavelength, x, y, z, power of the light.
var typedBands = [][5]string{
	{"565", "0.6784", "0.9786", "0.002749999", "98.1671"},
	{"650", "0.2835", "0.107", "0", "80.0268"},
	{"640", "0.4479", "0.175", "0.00002", "83.6992"},
	{"635", "0.5419", "0.217", "0.00003", "83.4939"},
	{"500", "0.0049", "0.323", "0.272", "109.354"},
	{"715", "0.004109457", "0.001484", "0", "67.9765"},
	{"675", "0.0636", "0.0232", "0", "80.281"},
	{"615", "0.9384", "0.4412", "0.00024", "88.6489"},
	{"600", "1.0622", "0.631", "0.0008", "90.0062"},
	{"415", "0.07763", "0.00218", "0.3713", "92.4589"},
	{"515", "0.0291", "0.6082", "0.1117", "106.296"},
	{"680", "0.04677", "0.017", "0", "78.2842"},
	{"605", "1.0456", "0.5668", "0.0006", "89.8026"},
	{"655", "0.2187", "0.0816", "0", "80.1207"},
	{"405", "0.02319", "0.00064", "0.1102", "87.1204"},
	{"590", "1.0263", "0.757", "0.0011", "88.6856"},
	{"595", "1.0567", "0.6949", "0.001", "89.3459"},
	{"645", "0.3608", "0.1382", "0.00001", "81.863"},
	{"560", "0.5945", "0.995", "0.0039", "100"},
	{"520", "0.06327", "0.71", "0.07824999", "104.79"},
	{"555", "0.5120501", "1", "0.005749999", "102.023"},
	{"380", "0.001368", "0.000039", "0.006450001", "49.9755"},
	{"465", "0.2511", "0.0739", "1.5281", "116.336"},
	{"480", "0.09564", "0.13902", "0.8129501", "115.923"},
}

// observer reads the table: wavelength by wavelength its four figures.
func observer(t *testing.T) (wavelengths []string, rows map[string][4]*big.Rat) {
	t.Helper()
	text, err := os.ReadFile("data/observer.txt")
	if err != nil {
		t.Fatal(err)
	}
	rows = map[string][4]*big.Rat{}
	for line := range strings.Lines(string(text)) {
		fields := strings.Fields(line)
		if strings.HasPrefix(line, "#") || len(fields) != 5 {
			continue
		}
		var row [4]*big.Rat
		for i := range row {
			figure, ok := new(big.Rat).SetString(fields[1+i])
			if !ok {
				t.Fatal(line)
			}
			row[i] = figure
		}
		wavelengths, rows[fields[0]] = append(wavelengths, fields[0]), row
	}
	return wavelengths, rows
}

func TestBandsTypedInAgain(t *testing.T) {
	wavelengths, rows := observer(t)
	madeup.Sampled(t, "observer.txt", len(typedBands), 24, len(wavelengths), 71)
	for _, typed := range typedBands {
		row, found := rows[typed[0]]
		if !found {
			t.Errorf("%s nm is typed in again, and is not in the table", typed[0])
			continue
		}
		for k, figure := range row {
			if want, _ := new(big.Rat).SetString(typed[1+k]); figure.Cmp(want) != 0 {
				t.Errorf("%s nm, column %d: %s, typed in as %s", typed[0], k, figure.FloatString(9), typed[1+k])
			}
		}
	}
}

// Added up over the CIE's own tables from 380 to 730 nm, every 5: an edit of any figure
// shows here. The three columns of the observer are nearly alike, since light of equal
// energy is white by their definition.
func TestTheColumnsOfTheObserverAddUp(t *testing.T) {
	wavelengths, rows := observer(t)
	if len(wavelengths) != 71 {
		t.Fatalf("%d bands", len(wavelengths))
	}
	for k, want := range []string{"21.368325177", "21.3701722", "21.37154020899", "6458.8999"} {
		sum := new(big.Rat)
		for _, row := range rows {
			sum.Add(sum, row[k])
		}
		if wanted, _ := new(big.Rat).SetString(want); sum.Cmp(wanted) != 0 {
			t.Errorf("column %d adds up to %s, want %s", k, sum.FloatString(11), want)
		}
	}
}

// The CIE prints D65 every 5 nm by straight lines between every 10 nm: what stands between
// two is their mean, to the last digit printed.
func TestTheLightBetweenTwoIsTheirMean(t *testing.T) {
	wavelengths, rows := observer(t)
	half := big.NewRat(1, 2)
	for i := 1; i+1 < len(wavelengths); i += 2 {
		mean := new(big.Rat).Add(rows[wavelengths[i-1]][3], rows[wavelengths[i+1]][3])
		off := mean.Mul(mean, half).Sub(mean, rows[wavelengths[i]][3])
		if off.Abs(off).Cmp(big.NewRat(51, 100_000)) > 0 {
			t.Errorf("%s nm is off the mean of its neighbours by %s", wavelengths[i], off.FloatString(6))
		}
	}
}
