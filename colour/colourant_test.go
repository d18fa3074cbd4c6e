package colour_test

import (
	"fmt"
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
		c, found := colour.LookUpColourant(id)
		_, planned, _ := c.Density()
		if got := planned.Float(); !found || got < 0.99*want || got > 1.01*want {
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
	if got := len(colour.Colourants()); got != len(want) {
		t.Errorf("%d rows, want %d", got, len(want))
	}
	for id, figure := range want {
		c, _ := colour.LookUpColourant(id)
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
		c, _ := colour.LookUpColourant("titanium-dioxide")
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
		if !low.Given() || planned.Compare(low) < 0 || high.Compare(planned) < 0 {
			t.Errorf("%s: density %v, %v, %v", c.ID(), low, planned, high)
		}
		if c.Name() == "" || c.DensitySource().Title == "" || c.DensitySource().How != cite.Read && c.DensitySource().How != cite.Memory {
			t.Errorf("%s: name %q, source %v", c.ID(), c.Name(), c.DensitySource())
		}
		if i > 0 && strings.Compare(all[i-1].ID(), c.ID()) >= 0 {
			t.Errorf("%s is out of order", c.ID())
		}
		if same, found := colour.LookUpColourant(c.ID()); !found || same != c {
			t.Errorf("%s is not found", c.ID())
		}
	}
	if colour.DataEdition() == "" {
		t.Error("no edition")
	}
}

func TestNoSuchColourant(t *testing.T) {
	for _, id := range []string{"", "titanium", "#", "# id", "zinc-oxide ", "dusk-mica"} {
		if c, found := colour.LookUpColourant(id); found {
			t.Errorf("%q is found: %v", id, c)
		}
	}
	low, planned, high := colour.Colourant{}.Density()
	if low.Given() || planned.Given() || high.Given() || (colour.Colourant{}).DensitySource() != (cite.Source{}) {
		t.Error("the zero value has figures")
	}
}

func ExampleLookUpColourant() {
	white, _ := colour.LookUpColourant("titanium-dioxide")
	_, density, _ := white.Density()
	fmt.Println(white.Name()+":", density)
	fmt.Println(white.DensitySource())
	fmt.Println(white.Remark())
	// Output:
	// Titanium dioxide, crystal form not stated: 4.17 g/mL
	// Table of inorganic constants, CRC type, edition not stated, density, as an open data set holds it
	// anatase 3.90, rutile 4.17; planned as rutile, which most pigment grades are (recalled)
}
