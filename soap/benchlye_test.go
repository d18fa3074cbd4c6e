package soap_test

import (
	"math/big"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

func millilitres(v units.Volume) *big.Rat { return frac(v.Text(9)) }

// 30 % NaOH at 20 °C has 1327.7 kg/m³ (CRC Handbook, 102nd edition; read); the
// equation is good to 0.4 %.
func TestALyeHasTheVolumeOfItsPublishedDensity(t *testing.T) {
	pure := `{"kind": "sodium-hydroxide", "purity": "100 %"}`
	b := plainFormula().with("alkali", pure, "water", `{"lye_concentration": "30 %"}`, "temperature", `{"lye": "20 °C"}`).batch(t)
	want := over(massFrac(b.Lye.Mass), frac("1.3277"))
	if got := millilitres(b.Lye.Volume); !b.Lye.VolumeKnown || !within(got, want, times(want, frac("0.004"))) {
		t.Errorf("%s of lye have %s, known: %v; want %s mL", b.Lye.Mass, b.Lye.Volume, b.Lye.VolumeKnown, want.FloatString(1))
	}
	for name, change := range map[string][]string{
		"no temperature":         {"alkali", pure},
		"that of the oils alone": {"alkali", pure, "temperature", `{"oils": "20 °C", "water": "20 °C"}`},
		"a liquid in it":         {"temperature", `{"lye": "20 °C"}`, "water", `{"lye_concentration": "30 %", "liquids": [{"liquid": "hall ale", "share": "50 %", "water": "90 %"}]}`},
		"above 50 %":             {"alkali", pure, "temperature", `{"lye": "20 °C"}`, "water", `{"lye_concentration": "50.1 %"}`},
	} {
		if b := plainFormula().with(change...).batch(t); b.Lye.VolumeKnown {
			t.Errorf("%s: the lye has %s", name, b.Lye.Volume)
		}
	}
}

// Half of the hydroxide's mass of each kind, side by side: the mean of what either
// alone would take up.
func TestTwoAlkalisAreTwoLyesOfOneStrength(t *testing.T) {
	volume := func(alkali string) (*big.Rat, soap.Batch) {
		b := plainFormula().with("alkali", alkali, "water", `{"lye_concentration": "30 %"}`, "temperature", `{"lye": "20 °C"}`).batch(t)
		if !b.Lye.VolumeKnown {
			t.Fatalf("%s: no volume", alkali)
		}
		return over(millilitres(b.Lye.Volume), massFrac(b.Lye.Mass)), b
	}
	soda, _ := volume(`{"kind": "sodium-hydroxide", "purity": "100 %"}`)
	potash, _ := volume(`{"kind": "potassium-hydroxide", "purity": "100 %"}`)
	both, b := volume(`{"kind": "sodium-hydroxide", "purity": "100 %", "saponifies": "50 %"}, {"kind": "potassium-hydroxide", "purity": "100 %", "saponifies": "50 %"}`)
	// 39.997 to 56.105 by mass
	want := over(plus(times(frac("39.997"), soda), times(frac("56.105"), potash)), frac("96.102"))
	if !within(both, want, frac("0.000001")) {
		t.Errorf("%s mL/g, want %s", both.FloatString(9), want.FloatString(9))
	}
	if b.Lye.Crystallises.Given() {
		t.Errorf("two alkalis crystallise at %s", b.Lye.Crystallises)
	}
	if _, b := volume(`{"kind": "potassium-hydroxide", "purity": "100 %"}`); b.Lye.Crystallises.Given() {
		t.Errorf("potassium hydroxide crystallises at %s", b.Lye.Crystallises)
	}
}

// Strength is hydroxide over the lye, concentration what is weighed over it: 98 %
// of 30 % is 29.4 %. Of a stock lye both are one.
func TestStrengthIsNotConcentration(t *testing.T) {
	lye := func(alkali string) soap.Lye {
		return plainFormula().with("alkali", alkali, "water", `{"lye_concentration": "30 %"}`).batch(t).Lye
	}
	if l := lye(`{"kind": "sodium-hydroxide", "purity": "98 %"}`); l.Concentration.PercentText(6) != "30" || l.Strength.PercentText(6) != "29.4" {
		t.Errorf("concentration %s, strength %s", l.Concentration, l.Strength)
	}
	if l := lye(`{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "49 %", "high": "51 %"}}}`); l.Concentration.PercentText(6) != "30" || l.Strength.PercentText(6) != "30" {
		t.Errorf("of stock: concentration %s, strength %s", l.Concentration, l.Strength)
	}
}

// Nothing of heat is worked out where no water temperature is given, nor where the
// lye is thinned from a stock of potassium hydroxide, whose heat nobody published.
func TestHeatIsLeftOutWhereItIsNotKnown(t *testing.T) {
	warm := `{"water": "20 °C"}`
	potash := `{"kind": "potassium-hydroxide", "stock": {"strength": "45 %"}}`
	for name, test := range map[string]struct {
		change []string
		known  bool
	}{
		"with the water's":         {[]string{"temperature", warm}, true},
		"without it":               {[]string{"temperature", `{"lye": "40 °C", "room": "20 °C"}`}, false},
		"a stock of soda":          {[]string{"temperature", warm, "alkali", `{"kind": "sodium-hydroxide", "stock": {"strength": "50 %"}}`}, true},
		"a stock of potash":        {[]string{"temperature", warm, "alkali", potash}, false},
		"nothing but stock":        {[]string{"temperature", warm, "alkali", `{"kind": "sodium-hydroxide", "stock": {"strength": "33 %"}}`}, false},
		"potash, as it is weighed": {[]string{"temperature", warm, "alkali", evenAlkali}, true},
	} {
		b := plainFormula().with(test.change...).batch(t)
		text, err := b.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		if b.Lye.Heat.Final.Given() != test.known || strings.Contains(string(text), `"final_c"`) != test.known {
			t.Errorf("%s: final %s", name, b.Lye.Heat.Final)
		}
	}
}

// A stock that is thinned gives off far less heat than dry alkali dissolved: of the
// 38.6 kJ a mole for a lye of 5 mol of water the stock has given off all but what
// lies between 22.3 (50 %) and 37.8.
func TestAStockLyeStaysCoolerThanDryAlkali(t *testing.T) {
	rise := func(alkali string) float64 {
		b := plainFormula().with("alkali", alkali, "temperature", `{"water": "20 °C", "room": "20 °C"}`).batch(t)
		return b.Lye.Heat.Final.Celsius() - 20
	}
	dry, stock := rise(`{"kind": "sodium-hydroxide", "purity": "100 %"}`), rise(`{"kind": "sodium-hydroxide", "stock": {"strength": "50 %"}}`)
	// (36.3 − 22.3)/36.3 of it, and a heat capacity in between
	if stock < dry*0.3 || stock > dry*0.5 {
		t.Errorf("the stock warms by %.1f K, dry alkali by %.1f K", stock, dry)
	}
}

// What is forgotten is a line of 0 g; what is left out was weighed as planned.
func TestAForgottenLineIsNotOneThatWasLeftOut(t *testing.T) {
	as := func(weighed string) soap.Outlook {
		return plainFormula().with("weighed", `{"stage": "pot", `+weighed+`}`).batch(t).Weighed.Superfat
	}
	// half of the demand is gone: 1 − 0.95/0.5
	if got := as(`"oils": {"yard-blend": "0 g"}`).Planned.PercentText(5); got != "-90" {
		t.Errorf("without half of the oil %s, want -90", got)
	}
	if got := as(`"oils": {"hall-blend": "500 g"}`).Planned.PercentText(5); got != "5" {
		t.Errorf("with all of it %s, want 5", got)
	}
	if got := as(`"alkali": {"sodium-hydroxide": "0 g"}`).Planned.PercentText(5); got != "100" {
		t.Errorf("without alkali %s, want 100", got)
	}
}

// 150 g of citric acid take 150 × 3 × 56.105/192.123 = 131.4 g of KOH, and 80 g of
// NaOH are worth 112.2 g: none is left for the oils, and none is owed to them. Asked
// for are 0.95 × 190 + 131.4 = 311.9 g, 222.4 g of NaOH; at the middle of 99.9 and
// 100 % 142.5 g more.
func TestAcidsTakeNoMoreThanThereIs(t *testing.T) {
	b := plainFormula().with("acids", `{"acid": "citric-acid-anhydrous", "load": "150 g", "compensate": true}`,
		"weighed", `{"stage": "lye", "alkali": {"sodium-hydroxide": "80 g"}}`).batch(t)
	for _, r := range figures(b.Weighed.Superfat) {
		if r.PercentText(12) != "100" {
			t.Errorf("as weighed %v", b.Weighed.Superfat)
		}
	}
	if len(b.Weighed.Remedies) != 1 || b.Weighed.Remedies[0].AddAlkali.Mass.Text(units.Gram, 1) != "142.5" {
		t.Errorf("%+v", b.Weighed.Remedies)
	}
}

// Weighings of parts need not add up to the pot, and none moves another's superfat.
func TestEachPartIsWhatItWasWeighedAs(t *testing.T) {
	two := `{"part": "plain", "share": "50 %"}, {"part": "dusk", "share": "rest", "colourants": [{"colourant": "dusk",
		"unlisted": true, "load": "10 g", "carrier": {"liquid": "hall-blend", "ratio": "2", "from": "extra"}}]}`
	at := func(batter string) *soap.Reckoning {
		return plainFormula().with("parts", two, "weighed", `{"stage": "parts", "parts": {"dusk": {"batter": "`+batter+`"}}}`).batch(t).Weighed
	}
	half, less := at("695.065 g"), at("347.5325 g")
	if !half.Parts[0].Superfat.Planned.Equal(less.Parts[0].Superfat.Planned) || half.Parts[0].Batter != less.Parts[0].Batter {
		t.Errorf("the other part went from %+v to %+v", half.Parts[0], less.Parts[0])
	}
	if !reflect.DeepEqual(half.Superfat, less.Superfat) {
		t.Errorf("the batch went from %+v to %+v", half.Superfat, less.Superfat)
	}
	// 20 g of oil of 190 mg/g on a half of 95 g of demand, then on a quarter of 190 g:
	// 1 − 90.25/98.8 and 1 − 45.125/51.3
	if got := half.Parts[1].Superfat.Planned.PercentText(2); got != "8.65" {
		t.Errorf("with half of the pot %s, want 8.65", got)
	}
	if got := less.Parts[1].Superfat.Planned.PercentText(2); got != "12.04" {
		t.Errorf("with a quarter %s, want 12.04", got)
	}
	// by way of its share of the pot, which is held to twelve decimals
	if got := less.Parts[1].Batter; !within(massFrac(got), frac("347.5325"), frac("0.000000001")) {
		t.Errorf("it was weighed as 347.5325 g, and is %s", got)
	}
}

// Findings judge what was weighed: the plan is safe, the batch is not.
func TestFindingsJudgeWhatWasWeighed(t *testing.T) {
	for stage, says := range map[string]string{"lye": "mend it before it is poured", "pot": "mend it before it is poured", "parts": "mend it before it is poured", "moulds": "cannot be mended"} {
		b := plainFormula().with("weighed", `{"stage": "`+stage+`", "alkali": {"sodium-hydroxide": "140 g"}}`).batch(t)
		at := slices.IndexFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "superfat-below-zero" })
		if at < 0 || b.Findings[at].Severity != soap.Danger || !strings.Contains(b.Findings[at].Message(), says) {
			t.Errorf("%s: %v", stage, codes(b.Findings))
		}
		if b.Superfat.Planned.PercentText(6) != "5" || b.Superfat.LikelyLow.Sign() < 0 {
			t.Errorf("%s: the plan became %+v", stage, b.Superfat)
		}
		if b.Weighed.Stage == soap.AtMoulds && len(b.Weighed.Remedies) > 0 {
			t.Errorf("poured, and offered is %+v", b.Weighed.Remedies)
		}
	}
	// 120 g in place of 128.7 g: 1 − 0.95 × 120/128.7 = 11.4 %, more than is usual
	b := plainFormula().with("weighed", `{"stage": "pot", "alkali": {"sodium-hydroxide": "120 g"}}`).batch(t)
	if got := codes(b.Findings); !slices.Equal(got, []string{"note superfat-unusual superfat"}) {
		t.Errorf("too little alkali: %v", got)
	}
}
