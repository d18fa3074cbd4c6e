package colour_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

func price(t testing.TB, text string) colour.Price {
	t.Helper()
	p, err := colour.ParsePrice(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestAnOwnColourant(t *testing.T) {
	density, _ := units.ParseDensity("2.9 g/mL")
	mica := colour.Supplied{
		ID: "dusk-mica", Name: "Dusk mica", CI: []string{"77019", "77510", "99999"}, Density: density, DispersesIn: colour.Oil, Nano: true,
		Usual: colour.Usual{Low: colour.Load{Of: colour.OfBatter, Share: units.Percent(1)}, High: colour.Load{Of: colour.OfBatter, Share: units.Percent(2)}},
		Price: price(t, "12.40 per 100 g"),
	}
	list := []colour.Supplied{mica, {ID: "titanium-dioxide", Price: price(t, "9 per 100 g")}}
	shelf, err := colour.NewShelf(list)
	if err != nil {
		t.Fatal(err)
	}
	list[0].CI[0] = "00000" // the shelf is its own
	c, found := shelf.Find("dusk-mica")
	if !found || c.Name() != "Dusk mica" || !slices.Equal(c.CI(), []string{"77019", "77510", "99999"}) || !c.Nano() || c.Price().Of(units.Grams(5)).Text(4) != "0.62" {
		t.Errorf("%+v", c)
	}
	if _, planned, _ := c.Density(); planned != density || c.DensitySource().How != cite.Given || c.Remark() != "" {
		t.Errorf("%v, %v", planned, c.DensitySource())
	}
	if known, unknown := c.Parts(); len(known) != 2 || known[0].ID() != "mica" || known[1].ID() != "ferric-ferrocyanide" || !slices.Equal(unknown, []string{"99999"}) {
		t.Errorf("%v, %v", known, unknown)
	}
	if d := c.Disperses(); d.In != colour.Oil || !d.Only || d.Text != "oil" {
		t.Errorf("%+v", d)
	}
	if u, given := c.Usual(true); !given || u.High.Text(2) != "2 % of batter" || c.Whitens() || !c.Is("77510") || c.Is("00000") {
		t.Errorf("%+v", u)
	}
	// Under a built-in id what is given stands in place of what is built in.
	white, found := shelf.Find("titanium-dioxide")
	if known, _ := white.Parts(); !found || !white.IsWhite() || white.Name() != "Titanium dioxide, crystal form not stated" || white.Price().Of(units.Grams(100)).Text(2) != "9" || len(known) != 1 || !white.Whitens() {
		t.Errorf("%+v", white)
	}
	if c, found := shelf.Find("mica"); !found || c.Price().Given() || c.Price().Of(units.Grams(1)).Given() {
		t.Errorf("%+v", c)
	}
	if c, found := shelf.Find("night"); found || c.Given() {
		t.Errorf("%+v", c)
	}
	if plain, _ := (colour.Shelf{}).Find("kaolin"); plain.Name() != "Kaolin (white clay)" {
		t.Errorf("%+v", plain)
	}
}

func TestWhatIsWrongWithOwnColourants(t *testing.T) {
	usual := func(low, high colour.Load) colour.Usual { return colour.Usual{Low: low, High: high} }
	of := func(base colour.Base, percent int) colour.Load {
		return colour.Load{Of: base, Share: units.Percent(percent)}
	}
	for _, row := range []struct {
		list []colour.Supplied
		want []string
	}{
		{make([]colour.Supplied, 101), []string{"are 101 pigments"}},
		{[]colour.Supplied{{}}, []string{"[0].colourant: is missing"}},
		{[]colour.Supplied{{ID: "a"}, {ID: "b"}, {ID: "a"}}, []string{`[2].colourant: "a" stands twice, first at pigments[0]`}},
		{[]colour.Supplied{{ID: "a", CI: make([]string, 21)}}, []string{"[0].ci: are 21 numbers"}},
		{[]colour.Supplied{{ID: "a", CI: []string{"CI 77891", "7789", "77891:", "77891:123", "77891:1", "77891:1"}}}, []string{`[0].ci[0]: "CI 77891" is not`, `[0].ci[1]: "7789"`, `[0].ci[2]: "77891:"`, `[0].ci[3]: "77891:123"`, `[0].ci[5]: "77891:1" stands twice`}},
		{[]colour.Supplied{{ID: "a", DispersesIn: 8}}, []string{"[0].disperses_in: is not known"}},
		{[]colour.Supplied{{ID: "a", Usual: usual(of(colour.OfOils, 1), colour.Load{})}}, []string{"[0].usual.high: is missing"}},
		{[]colour.Supplied{{ID: "a", Usual: usual(colour.Load{}, of(colour.OfOils, 1))}}, []string{"[0].usual.low: is missing"}},
		{[]colour.Supplied{{ID: "a", Usual: usual(of(colour.OfOils, 2), of(colour.OfOils, 1))}}, []string{`[0].usual.low: "2 % of oils" is the low end, above the high end`}},
		{[]colour.Supplied{{ID: "a", Usual: usual(of(colour.OfOils, 1), of(colour.OfBatter, 2))}}, []string{"[0].usual: has a low end of oils and a high end of batter"}},
		{[]colour.Supplied{{ID: "a", Usual: usual(of(colour.OfOils, 1), of(colour.OfOils, 101))}}, []string{`[0].usual.high: "101 % of oils" is not from 0 % to 100 %`}},
		{[]colour.Supplied{{ID: "a", Usual: usual(of(colour.OfDry, 1), of(colour.OfDry, 2))}}, []string{"[0].usual.low: is neither of oils nor of batter"}},
		{[]colour.Supplied{{ID: "a", Price: colour.Price{Amount: units.Whole(-1), Per: units.Grams(1)}}}, []string{"[0].price: is not an amount"}},
		{[]colour.Supplied{{ID: "a", Price: colour.Price{Amount: units.Whole(1)}}}, []string{"[0].price: is not an amount"}},
		{[]colour.Supplied{{ID: "a", Usual: usual(of(colour.OfOils, 0), of(colour.OfOils, 100)), Price: colour.Price{Amount: units.Whole(0), Per: units.Grams(1)}}}, nil},
	} {
		_, err := colour.NewShelf(row.list)
		var faults fault.Faults
		if err != nil && !errors.As(err, &faults) || len(faults) != len(row.want) {
			t.Errorf("%v, want %v", err, row.want)
			continue
		}
		for i, want := range row.want {
			if !strings.Contains(faults[i].Error(), want) {
				t.Errorf("%v, want %s", faults[i], want)
			}
		}
	}
}

func TestPrices(t *testing.T) {
	for text, want := range map[string]string{"12.40 per 100 g": "0.124", "0 per 1 g": "0", "3 per 1 kg": "0.003", "28.349523125 per 1 oz": "1", "1000000 per 1 g": "1000000"} {
		if got := price(t, text).Of(units.Grams(1)); got.Text(11) != want {
			t.Errorf("%s: %s a gram", text, got.Text(11))
		}
	}
	for _, text := range []string{"", "12.40", "12.40 per", "12.40 per 100", "12.40 per 0 g", "per 100 g", "-1 per 1 g", "1e3 per 1 g", "12,40 per 100 g", "1000001 per 1 g", "€12 per 100 g", strings.Repeat("9", 1<<20) + " per 1 g"} {
		var bad *units.ParseError
		if p, err := colour.ParsePrice(text); !errors.As(err, &bad) || p.Given() || bad.Reason == "" {
			t.Errorf("%.30q: %v, %v", text, p, err)
		}
	}
}

// Loads turn into one another through the masses of their part: 0.8 % of 500 g of oils is
// 4 g, 0.5 % of 800 g of batter, 0.625 % of 640 g dry.
func TestLoadsConvert(t *testing.T) {
	a := colour.Amounts{Oils: units.Grams(500), Batter: units.Grams(800), Dry: units.Grams(640)}
	texts := map[colour.Base]string{colour.OfOils: "0.8 % of oils", colour.OfBatter: "0.5 % of batter", colour.OfDry: "0.625 % of the dry part"}
	for from := range texts {
		load := a.Load(units.Grams(4), from)
		if load.Text(6) != texts[from] || a.Mass(load) != units.Grams(4) {
			t.Errorf("%s is %v", load.Text(6), a.Mass(load))
		}
		for to, want := range texts {
			if got := a.Convert(load, to); got.Text(6) != want {
				t.Errorf("%s is %s, want %s", load.Text(6), got.Text(6), want)
			}
		}
	}
	none := colour.Amounts{Oils: units.Grams(500)}
	if load := none.Convert(colour.Load{Of: colour.OfOils, Share: units.Percent(1)}, colour.OfBatter); load.Share.Given() {
		t.Errorf("of nothing: %v", load)
	}
	if load := a.Convert(colour.Load{}, colour.OfBatter); load.Share.Given() {
		t.Errorf("from nothing: %v", load)
	}
}

func FuzzParsePrice(f *testing.F) {
	f.Add("12.40 per 100 g") // as a maker writes it
	f.Fuzz(func(t *testing.T, text string) {
		p, err := colour.ParsePrice(text)
		if err != nil {
			var fault *units.ParseError
			if p.Given() || p.Per.Sign() != 0 || !errors.As(err, &fault) || fault.Reason == "" || fault.Remedy == "" || !strings.Contains(text, fault.Text) {
				t.Errorf("%q: %v beside %v", text, p, err)
			}
			return
		}
		if p.Amount.Sign() < 0 || p.Amount.Compare(units.Whole(1_000_000)) > 0 || p.Per.Sign() <= 0 || !p.Of(units.Grams(1)).Given() {
			t.Errorf("%q: %v", text, p)
		}
		// What it is for costs what was asked, and as it prints it reads back.
		if cost := p.Of(p.Per); !cost.Equal(p.Amount.Round(12, units.Nearest)) { // as a quotient is
			t.Errorf("%q: %s costs %v", text, p.Per, cost)
		}
		printed := p.Amount.Text(34) + " per " + p.Per.String()
		if back, err := colour.ParsePrice(printed); err != nil || !back.Amount.Equal(p.Amount) || back.Per != p.Per {
			t.Errorf("%q is %s, which reads back as %v, %v", text, printed, back, err)
		}
	})
}

// One number is enough to say what a pigment is.
func TestAnOwnColourantIsItsNumbers(t *testing.T) {
	shelf, err := colour.NewShelf([]colour.Supplied{{ID: "dusk-mica", Name: "Dusk mica", CI: []string{"77019"}}})
	if err != nil {
		t.Fatal(err)
	}
	if c, found := shelf.Find("dusk-mica"); !found || !c.Is("77019") || c.Is("77891") {
		t.Errorf("%v: mica %t, titanium dioxide %t", c.CI(), c.Is("77019"), c.Is("77891"))
	}
}
