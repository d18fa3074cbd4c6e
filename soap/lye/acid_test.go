package lye_test

import (
	"strings"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Protons × M(hydroxide)/M(acid), worked out by hand to four places from the atomic
// weights of IUPAC 2021 (recalled): 3 × 39.997/192.123 and so on.
var acids = []struct {
	id          string
	protons     int
	molar       string // g/mol
	naoh, koh   string // g per g of acid
	waterFormed string // protons × 18.015/M, and the crystal water's 18.015/210.138
}{
	{"acetic-acid", 1, "60.052", "0.666", "0.9343", "0.3"},
	{"citric-acid-anhydrous", 3, "192.123", "0.6246", "0.8761", "0.2813"},
	{"citric-acid-monohydrate", 3, "210.138", "0.571", "0.801", "0.3429"},
	{"lactic-acid", 1, "90.078", "0.444", "0.6228", "0.2"},
	{"lauric-acid", 1, "200.322", "0.1997", "0.2801", "0.0899"},
	{"oleic-acid", 1, "282.468", "0.1416", "0.1986", "0.0638"},
	{"palmitic-acid", 1, "256.43", "0.156", "0.2188", "0.0703"},
	{"stearic-acid", 1, "284.484", "0.1406", "0.1972", "0.0633"},
}

func TestAcidsTakeUpTheAlkaliWorkedOutByHand(t *testing.T) {
	known := lye.Acids()
	if len(known) != len(acids) {
		t.Fatalf("%d acids, want %d", len(known), len(acids))
	}
	for i, c := range acids {
		a, err := lye.LookUpAcid(c.id)
		if err != nil {
			t.Fatal(err)
		}
		if known[i].ID != c.id {
			t.Errorf("%s stands where %s should", known[i].ID, c.id)
		}
		got := []string{
			a.Molar.Text(3), a.Neutralises(lye.SodiumHydroxide).Text(4),
			a.Neutralises(lye.PotassiumHydroxide).Text(4), a.WaterFormed().Text(4),
		}
		want := []string{c.molar, c.naoh, c.koh, c.waterFormed}
		for j := range got {
			if got[j] != want[j] {
				t.Errorf("%s: M, NaOH, KOH, water %v, want %v", c.id, got, want)
				break
			}
		}
		if a.ID != c.id || a.Name == "" || a.Protons != c.protons ||
			a.Crystal.Given() != (c.id == "citric-acid-monohydrate") {
			t.Errorf("%s: %+v", c.id, a)
		}
	}
}

// Acid and hydroxide become salt and water: for a gram of acid, 1.3432 g of the
// sodium salt of anhydrous citric acid, 1.2281 of the monohydrate's, 1.2440 and
// 1.3660 of lactic and acetic acid's (worked out by hand from the salts' own
// masses, 258.069/192.123 and so on).
func TestAcidAndHydroxideBecomeSaltAndWater(t *testing.T) {
	for id, salt := range map[string]string{
		"citric-acid-anhydrous": "1.3432", "citric-acid-monohydrate": "1.2281", "lactic-acid": "1.244",
		"acetic-acid": "1.366",
		"lauric-acid": "1.1097", "palmitic-acid": "1.0857", "stearic-acid": "1.0773", "oleic-acid": "1.0778",
	} {
		a, err := lye.LookUpAcid(id)
		if err != nil {
			t.Fatal(err)
		}
		left := units.Whole(1).Add(a.Neutralises(lye.SodiumHydroxide)).Sub(a.WaterFormed())
		if got := left.Text(4); got != salt {
			t.Errorf("%s: %s g of salt, want %s", id, got, salt)
		}
	}
}

func TestAnUnknownAcidOffersWhatIsKnown(t *testing.T) {
	for id, offered := range map[string]string{
		"citric": "citric-acid", "lactik acid": "lactic-acid",
		"lantern": "citric-acid-anhydrous", "": "citric-acid-anhydrous",
	} {
		a, err := lye.LookUpAcid(id)
		refused(t, a, err, "acid", fault.ErrUnknown)
		if err == nil || !strings.Contains(err.Error(), offered) {
			t.Errorf("%q: %v, want %s", id, err, offered)
		}
	}
}
