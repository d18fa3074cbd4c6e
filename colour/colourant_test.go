package colour_test

import (
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/units/cite"
)

// Gettens and Stout, Painting Materials (1942), table of physical properties of
// pigments, as read: titanium dioxide (rutile) 4.2, zinc oxide 5.65, ultramarine
// 2.34, barytes 4.45. The table's figures, from elsewhere in part, agree within 1 %.
func TestDensitiesAgainstASecondTable(t *testing.T) {
	for id, want := range map[string]float64{"titanium-dioxide-rutile": 4.2, "zinc-oxide": 5.65, "ultramarine-blue": 2.34, "barium-sulfate": 4.45} {
		c, err := colour.LookUp(id)
		_, planned, _ := c.Density()
		if got := planned.Float(); err != nil || got < 0.99*want || got > 1.01*want {
			t.Errorf("%s: %v, want about %v", id, got, want)
		}
	}
}

// Copied from the tables that this one was made from, in g/mL: an edit of any figure
// shows here.
func TestTheTableHoldsEveryPublishedDensity(t *testing.T) {
	want := map[string]string{
		"titanium-dioxide": "4.17", "titanium-dioxide-rutile": "4.17", "titanium-dioxide-anatase": "3.9", "zinc-oxide": "5.6",
		"iron-oxide-red": "5.25", "iron-oxide-yellow": "4.26", "iron-oxide-black": "5.17", "ultramarine-blue": "2.34",
		"chromium-oxide-green": "5.22", "chromium-hydroxide-green": "3.32", "ferric-ferrocyanide": "1.83", "carbon-black": "1.8",
		"mica": "2.8", "bismuth-oxychloride": "7.72", "kaolin": "2.6", "barium-sulfate": "4.49", "calcium-carbonate": "2.71",
	}
	ranges := map[string][2]string{"titanium-dioxide": {"3.9", "4.17"}, "ferric-ferrocyanide": {"1.8", "1.83"}, "kaolin": {"2.59", "2.6"}}
	recalled := map[string]bool{"carbon-black": true, "mica": true}
	for _, c := range colour.Colourants() {
		if _, listed := want[c.ID()]; listed != (c.DensitySource() != cite.Source{}) {
			t.Errorf("%s has a density here: %t, in the table: %t", c.ID(), listed, !listed)
		}
	}
	for id, figure := range want {
		c, _ := colour.LookUp(id)
		low, planned, high := c.Density()
		ends, ranged := ranges[id]
		if !ranged {
			ends = [2]string{figure, figure}
		}
		if low.Text(9) != ends[0] || planned.Text(9) != figure || high.Text(9) != ends[1] {
			t.Errorf("%s: %v, %v, %v, want %s, %s, %s", id, low, planned, high, ends[0], figure, ends[1])
		}
		if how := c.DensitySource().How; (how == cite.Memory) != recalled[id] {
			t.Errorf("%s: %v", id, how)
		}
	}
}

func TestLookingUpAllocatesNothing(t *testing.T) {
	if allocations := testing.AllocsPerRun(100, func() {
		c, _ := colour.LookUp("titanium-dioxide")
		_, _, _ = c.Density()
	}); allocations > 0 {
		t.Errorf("%v allocations", allocations)
	}
}

func TestEveryRowIsWhole(t *testing.T) {
	all := colour.Colourants()
	if len(all) == 0 {
		t.Fatal("no colourants")
	}
	for i, c := range all {
		low, planned, high := c.Density()
		if planned.Given() != low.Given() || planned.Compare(low) < 0 || high.Compare(planned) < 0 {
			t.Errorf("%s: density %v, %v, %v", c.ID(), low, planned, high)
		}
		for what, source := range map[string]cite.Source{"density": c.DensitySource(), "EU": c.Under(colour.EU).Source(), "US": c.Under(colour.US).Source(), "alkali": c.InAlkali().Source()} {
			if source != (cite.Source{}) && (source.Title == "" || source.How != cite.Read && source.How != cite.Memory) {
				t.Errorf("%s, %s: source %v", c.ID(), what, source)
			}
		}
		if c.Name() == "" || c.Chemistry() == "" || planned.Given() && c.DensitySource() == (cite.Source{}) || c.Under(colour.EU).Source() == (cite.Source{}) {
			t.Errorf("%s: %q, %q", c.ID(), c.Name(), c.Chemistry())
		}
		if f := c.InAlkali(); f.Stability != colour.StabilityUnknown && (f.Text == "" || strings.HasSuffix(f.Text, ".") || f.Source() == (cite.Source{})) {
			t.Errorf("%s: %+v", c.ID(), f)
		}
		if d := c.Disperses(); d.In != 0 && (d.Text == "" || d.Source.How == cite.Unknown) {
			t.Errorf("%s: %+v", c.ID(), d)
		}
		if i > 0 && strings.Compare(all[i-1].ID(), c.ID()) >= 0 {
			t.Errorf("%s is out of order", c.ID())
		}
		if same, err := colour.LookUp(c.ID()); err != nil || same != c {
			t.Errorf("%s is not found", c.ID())
		}
	}
	if colour.DataEdition() == "" {
		t.Error("no edition")
	}
}

func TestNoSuchColourant(t *testing.T) {
	for _, id := range []string{"", "titanium", "#", "# id", "zinc-oxide\n", "dusk-mica"} {
		if c, err := colour.LookUp(id); err == nil {
			t.Errorf("%q is found: %v", id, c)
		}
	}
	low, planned, high := colour.Colourant{}.Density()
	if low.Given() || planned.Given() || high.Given() || (colour.Colourant{}).DensitySource() != (cite.Source{}) {
		t.Error("the zero value has figures")
	}
}

// Copied by hand from the tables that this one was made from: Colour Index numbers, entry
// of Annex IV, section of 21 CFR, standing in the United States (y: listed for soap that is
// a cosmetic, n: not, ?: no statement), what alkali makes of it.
func TestTheTableHoldsEveryPublishedStanding(t *testing.T) {
	const table = `
acid-red-52|45100|71||n|not known
activated-charcoal|77268:1|128||n|stable
alkanet|75530|||?|unstable
aluminium-powder|77000|117|73.2645|y|gives off hydrogen
annatto|75120|109|73.2030|y|usable
anthocyanins||149||n|unstable
barium-sulfate|77120|122||?|stable
beetroot||148||n|unstable
beta-carotene|40800 75130|55|73.2095|y|stable
bismuth-oxychloride|77163|123|73.2162|y|doubtful
blue-1-lake|42090|63|74.2101|y|unstable
calcium-carbonate|77220|124||?|stable
caramel||146|73.2085|y|stable
carbon-black|77266|126|74.2052|n|stable
carmine|75470|115|73.2087|y|unstable
chlorophyllin|75810|116|73.2125|n|stable
chromium-hydroxide-green|77289|130|73.2326|y|stable
chromium-oxide-green|77288|129|73.2327|y|stable
coloured-clays|77004 77015 77491 77492 77489|119|73.2250|n|stable
ferric-ferrocyanide|77510|138|73.2299|y|unstable
indigo|73000|98||n|stable
iron-oxide-black|77499|137|73.2250|y|stable
iron-oxide-red|77491|135|73.2250|y|stable
iron-oxide-yellow|77492|136|73.2250|y|stable
kaolin|77004|119||n|stable
madder|75330|||?|unstable
manganese-violet|77742|140|73.2775|y|unstable
mica|77019||73.2496|y|stable
paprika||147||n|usable
phthalo-blue|74160|105||n|stable
phthalo-green|74260|107||n|stable
red-30-lake|73360|100|74.2330|y|stable
red-40-lake|16035|32|74.2340|y|unstable
red-7-lake|15850|27|74.2307|y|unstable
titanium-dioxide|77891|143|73.2575|y|stable
titanium-dioxide-anatase|77891|143|73.2575|y|stable
titanium-dioxide-rutile|77891|143|73.2575|y|stable
turmeric|75300|114||n|unstable
ultramarine-blue|77007|120|73.2725|y|usable
ultramarine-pink|77007|120|73.2725|y|usable
ultramarine-violet|77007|120|73.2725|y|usable
yellow-5-lake|19140|44|74.2705|y|unstable
zinc-oxide|77947|144|73.2991|y|stable
`
	rows := strings.Split(strings.TrimSpace(table), "\n")
	if got := len(colour.Colourants()); got != len(rows) {
		t.Errorf("%d colourants, want %d", got, len(rows))
	}
	standing := map[colour.Standing]string{colour.Permitted: "y", colour.NotPermitted: "n", colour.Unknown: "?"}
	for _, row := range rows {
		f := strings.Split(row, "|")
		c, err := colour.LookUp(f[0])
		if err != nil {
			t.Fatal(err)
		}
		eu, us := c.Under(colour.EU), c.Under(colour.US)
		if got := strings.Join(c.CI(), " "); got != f[1] {
			t.Errorf("%s: CI %s, want %s", f[0], got, f[1])
		}
		if !strings.Contains(eu.Clause, f[2]) || (eu.Standing == colour.Permitted) != (f[2] != "") {
			t.Errorf("%s: EU %+v, want entry %s", f[0], eu, f[2])
		}
		if !strings.Contains(us.Clause, f[3]) || (us.Clause == "") != (f[3] == "") || standing[us.Standing] != f[4] {
			t.Errorf("%s: US %+v, want %s, %s", f[0], us, f[3], f[4])
		}
		if got := c.InAlkali().Stability.String(); got != f[5] {
			t.Errorf("%s: %s in alkali, want %s", f[0], got, f[5])
		}
	}
}

// Of several rows with a number that which has the fewest others, then the first.
func TestAColourIndexNumberLeadsToItsColourant(t *testing.T) {
	for ci, want := range map[string]string{"77891": "titanium-dioxide", "77007": "ultramarine-blue", "77004": "kaolin", "77491": "iron-oxide-red", "77489": "coloured-clays", "75130": "beta-carotene", "77268:1": "activated-charcoal", "77268": "", "": "", "12345": ""} {
		c, found := colour.OfCI(ci)
		if c.ID() != want || found != (want != "") {
			t.Errorf("%s: %s, %t", ci, c.ID(), found)
		}
		if found && !c.Is(ci) {
			t.Errorf("%s is not of %s", ci, c.ID())
		}
	}
}
