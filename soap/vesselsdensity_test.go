package soap_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// Three batters at 32 % and 40 °C, worked by hand to 0.001 g/mL, at 5 % and with pure
// sodium hydroxide. From the published figures:
//
//   - Water by the equation of Kell: 0.998204 g/mL at 20 °C, 0.999023 at 15.5 °C.
//     Sodium hydroxide of 32 % at 40 °C by the equation of Olsson and others, its 18
//     coefficients evaluated outside the library: 1.334867 g/mL.
//   - Olive 0.910-0.916, 20 °C over 20 °C: 0.913 × 0.998204 − 20 × 0.00064 = 0.898560.
//     Coconut 0.908-0.921, 40 °C over 20 °C: 0.9145 × 0.998204 = 0.912858. Shea butter
//     0.910-0.980, a solid: 0.945 as it stands. Castor 0.961-0.963, 15.5 °C over 15.5 °C:
//     0.962 × 0.999023 − 24.5 × 0.00064 = 0.945380. Kaolin 2.6.
//   - Values: olive 185-196, coconut 248-265, shea 160-195, castor 176-187 mg KOH/g; the
//     middles here. A value that is planned 2 mg/g lower takes 0.0006 g/mL off.
//
// The blend: volumes add up, 0.45/0.898560 + 0.25/0.912858 + 0.30/0.945 = 1.092126
// mL/g; value 203.1. Lye per oils 0.2031 × 0.95 × 39.997/56.105 / 0.32 = 0.429843:
// 1.429843 / (1.092126 + 0.429843/1.334867) = 1.0111 g/mL.
//
// Castor: lye 0.1815 × 0.95 × 39.997/56.105 / 0.32 = 0.384128;
// 1.384128 / (1/0.945380 + 0.384128/1.334867) = 1.0287 g/mL.
//
// Olive with clay: lye 0.1905 × … = 0.403176, batter 0.991696 g/mL; 4 % of the batter on
// top: 1.04 / (1/0.991696 + 0.04/2.6) = 1.0159 g/mL.
func TestThreeBattersHaveTheDensitiesWorkedByHand(t *testing.T) {
	for _, test := range []struct {
		oils, part   string
		batter, with float64
	}{
		{`{"oil": "olive", "share": "45 %"}, {"oil": "coconut", "share": "25 %"}, {"oil": "shea-butter", "share": "30 %"}`, "", 1.0111, 1.0111},
		{`{"oil": "castor", "share": "100 %"}`, "", 1.0287, 1.0287},
		{`{"oil": "olive", "share": "100 %"}`, `, "colourants": [{"colourant": "kaolin", "load": "4 % of batter"}]`, 0.9917, 1.0159},
	} {
		b := pieces{
			"oils": test.oils, "alkali": `{"kind": "sodium-hydroxide", "purity": "100 %"}`, "superfat": `"5 %"`, "water": `{"lye_concentration": "32 %"}`,
			"size": `{"vessels": [{"vessel": "tray", "part": "all", "count": 1, "volume": "1 L"}]}`, "parts": `{"part": "all"` + test.part + `}`,
			"temperature": `{"pour": "40 °C"}`,
		}.batch(t)
		if got := b.Volumes.Density.Float(); math.Abs(got-test.batter) > 0.001 {
			t.Errorf("%s: batter of %v g/mL, by hand %v", test.oils, got, test.batter)
		}
		if got := b.Parts[0].Density.Float(); math.Abs(got-test.with) > 0.001 {
			t.Errorf("%s: part of %v g/mL, by hand %v", test.oils, got, test.with)
		}
		if got := b.Volumes.LyeAsked.Float(); math.Abs(got-1.334867) > 0.000001 {
			t.Errorf("lye of %v g/mL, by hand 1.334867", got)
		}
	}
}

// A rule of thumb of the trade, common practice without a source: a mould takes about
// 0.40 oz of oils per cubic inch. With 1/ρ(oils) + lye/ρ(lye) millilitres to a gram of
// oils it is 0.3856 at 205 mg/g and 28 %, 0.4291 at 185 mg/g and 38 %.
func TestAMouldTakesFourTenthsOfAnOunceOfOilsPerCubicInch(t *testing.T) {
	const cubicInch = 2.54 * 2.54 * 2.54 // mL
	for value := 185; value <= 205; value += 2 {
		for lye := 28; lye <= 38; lye += 2 {
			for iodine := 30; iodine <= 100; iodine += 35 {
				b := pieces{
					"oils":   fmt.Sprintf(`{"oil": "lot", "share": "100 %%", "saponification": "%d", "iodine": "%d"}`, value, iodine),
					"alkali": `{"kind": "sodium-hydroxide", "purity": "100 %"}`, "superfat": `"5 %"`, "water": fmt.Sprintf(`{"lye_concentration": "%d %%"}`, lye),
					"size":  `{"vessels": [{"vessel": "loaf", "part": "all", "count": 2, "box": {"length": "10 in", "width": "3.5 in", "depth": "2.5 in"}}]}`,
					"parts": `{"part": "all", "reserve": "0 %"}`,
				}.batch(t)
				ounces, err := strconv.ParseFloat(b.OilsTotal.Text(units.Ounce, 9), 64)
				if per := ounces / (2 * 10 * 3.5 * 2.5); err != nil || per < 0.38 || per > 0.43 {
					t.Errorf("%d mg/g, %d g of iodine, lye of %d %%: %.4f oz per cubic inch", value, iodine, lye, per)
				}
				if filled := b.Filled.Grams() / b.Volumes.Density.Float(); math.Abs(filled/(175*cubicInch)-1) > 1e-8 {
					t.Errorf("%v mL filled", filled)
				}
			}
		}
	}
}

// Warmer batter is lighter, and less of it fills a mould: the oils by 0.00064 g/mL per
// °C of about 0.9, the lye by 0.00060 of about 1.34; between 15 and 60 °C that is 3 %.
func TestAWarmerBatterFillsAMouldWithLess(t *testing.T) {
	poured := func(celsius int) soap.Batch {
		return pieces{
			"oils": `{"oil": "olive", "share": "60 %"}, {"oil": "sunflower", "share": "rest"}`, "alkali": `{"kind": "sodium-hydroxide", "purity": "100 %"}`, "superfat": `"5 %"`,
			"water": `{"lye_concentration": "32 %"}`, "size": `{"vessels": [{"vessel": "tray", "part": "all", "count": 1, "volume": "1 L"}]}`,
			"parts": `{"part": "all"}`, "temperature": fmt.Sprintf(`{"pour": "%d °C"}`, celsius),
		}.batch(t)
	}
	last := poured(15).OilsTotal
	for celsius := 20; celsius <= 60; celsius += 5 {
		oils := poured(celsius).OilsTotal
		if oils.Compare(last) >= 0 {
			t.Errorf("at %d °C %s, five degrees colder %s", celsius, oils, last)
		}
		last = oils
	}
	if fall := 1 - last.Grams()/poured(15).OilsTotal.Grams(); fall < 0.02 || fall > 0.04 {
		t.Errorf("from 15 to 60 °C it is %.4f less", fall)
	}
}
