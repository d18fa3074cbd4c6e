package colour_test

import (
	"bytes"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/lyewright/colour"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// The JSON of a colourant holds every figure that the library gives of it, and no more: a
// figure that is missing is a missing key.
func TestTheJSONOfAColourantIsWhatTheLibrarySays(t *testing.T) {
	own, err := colour.NewShelf([]colour.Supplied{{ID: "dusk-mica", Name: "Dusk mica", CI: []string{"77019"}}})
	if err != nil {
		t.Fatal(err)
	}
	dusk, _ := own.Find("dusk-mica")
	for _, c := range append(colour.Colourants(), dusk) {
		text, err := json.Marshal(c)
		if err != nil {
			t.Fatal(err)
		}
		decoder := json.NewDecoder(bytes.NewReader(text))
		decoder.UseNumber()
		var got map[string]any
		if err := decoder.Decode(&got); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(viewOf(c), got); diff != "" {
			t.Errorf("%s:\n%s", c.ID(), diff)
		}
	}
}

// A colourant of the maker's own reaches the JSON with its loads, rounded to six decimals of a
// percentage, halves upwards: 0.12345649 % is 0.123456 %, 2.0000005 % is 2.000001 %.
func TestTheLoadsOfAMakersOwnAreRoundedToSixDecimals(t *testing.T) {
	end := func(share string) colour.Load { return colour.Load{Of: colour.OfBatter, Share: units.MustRatio(share)} }
	shelf, err := colour.NewShelf([]colour.Supplied{{ID: "dusk-mica", Usual: colour.Usual{
		Low:  end("0.12345649 %"),
		High: end("2.0000005 %"),
	}}})
	if err != nil {
		t.Fatal(err)
	}
	dusk, _ := shelf.Find("dusk-mica")
	text, err := json.Marshal(dusk)
	if err != nil {
		t.Fatal(err)
	}
	if want := `"low_pct":0.123456,"high_pct":2.000001,"base":"of batter"`; !strings.Contains(string(text), want) {
		t.Errorf("%s, want %s in it", text, want)
	}
}

func viewOf(c colour.Colourant) map[string]any {
	with := func(object map[string]any, key, text string) {
		if text != "" {
			object[key] = text
		}
	}
	ci := []any{}
	for _, number := range c.CI() {
		ci = append(ci, number)
	}
	want := map[string]any{"data_edition": colour.DataEdition(), "colourant": c.ID(), "name": c.Name(), "ci": ci}
	with(want, "asked", c.Asked())
	with(want, "name_note", c.NameNote())
	with(want, "chemistry", c.Chemistry())
	with(want, "note", c.Note())
	if low, planned, high := c.Density(); planned.Given() {
		density := map[string]any{
			"low": json.Number(low.Text(9)), "planned": json.Number(planned.Text(9)), "high": json.Number(high.Text(9)),
			"source": c.DensitySource().String(),
		}
		with(density, "remark", c.Remark())
		want["density_g_per_ml"] = density
	}
	for key, law := range map[string]colour.Law{"eu": colour.EU, "us": colour.US} {
		s := c.Under(law)
		status := map[string]any{"standing": s.Standing.String()}
		with(status, "clause", s.Clause)
		with(status, "remark", s.Remark)
		if s.Source() != (cite.Source{}) {
			status["source"] = s.Source().String()
		}
		want[key] = status
	}
	if fast := c.InAlkali(); fast.Stability != colour.StabilityUnknown {
		want["alkali"] = map[string]any{
			"stability": fast.Stability.String(), "text": fast.Text,
			"source": fast.Source().String(),
		}
	}
	if in := c.Disperses(); in.In != 0 {
		want["disperses"] = map[string]any{"only": in.Only, "text": in.Text, "source": in.Source.String()}
	}
	usual := []any{}
	roles := map[bool]string{false: "", true: ""}
	if c.Whitens() {
		roles = map[bool]string{false: "alone", true: "beside another"}
	}
	for _, beside := range []bool{false, true} {
		u, given := c.Usual(beside)
		if !given || beside && !c.Whitens() {
			continue
		}
		load := map[string]any{
			"low_pct": json.Number(u.Low.Share.PercentText(6)), "high_pct": json.Number(u.High.Share.PercentText(6)),
			"base": u.Low.Of.String(), "source": u.Source.String(),
		}
		with(load, "role", roles[beside])
		usual = append(usual, load)
	}
	want["usual"] = usual
	return want
}

// A source is given with the title, the edition and, where a row names none of its own, the
// place that sources.txt has.
func TestSourcesAreThoseOfTheirTable(t *testing.T) {
	text, err := os.ReadFile("data/sources.txt")
	if err != nil {
		t.Fatal(err)
	}
	type publication struct{ title, edition string }
	published := map[publication][]string{} // its places
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		fields := append(strings.Split(strings.TrimSuffix(line, "\n"), "\t"), "")
		key := publication{fields[1], fields[2]}
		published[key] = append(published[key], fields[3])
	}
	checked := 0
	for _, c := range colour.Colourants() {
		for _, source := range []cite.Source{
			c.DensitySource(), c.InAlkali().Source(), c.Under(colour.EU).Source(),
			c.Under(colour.US).Source(),
		} {
			if source == (cite.Source{}) {
				continue
			}
			checked++
			if published[publication{source.Title, source.Edition}] == nil {
				t.Errorf("%s: %q, %q is no line of sources.txt", c.ID(), source.Title, source.Edition)
			}
		}
		for _, source := range []cite.Source{c.DensitySource(), c.InAlkali().Source()} {
			if source != (cite.Source{}) && !slices.Contains(published[publication{source.Title, source.Edition}],
				source.Place) {
				t.Errorf("%s: %q of %q is no place of sources.txt", c.ID(), source.Place, source.Title)
			}
		}
	}
	if checked < 100 {
		t.Errorf("only %d sources were checked", checked)
	}
}
