package soap_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/soap"
	"example.com/lyewright/units/cite"
)

// Names as makers write them, from common knowledge: of the metal in powder, flake or foil,
// and which it is.
var namesOfMetal = map[string]string{
	"aluminium": "aluminium", "Aluminium powder": "aluminium", "aluminum powder": "aluminium",
	"aluminium_powder": "aluminium",
	"ALUMINUM FLAKES":  "aluminium", "fine aluminium silver powder": "aluminium", "aluminium foil": "aluminium",
	"kitchen foil": "aluminium", "tinfoil": "aluminium",
	"Tin foil": "aluminium", "silver foil (aluminium)": "aluminium", "aluminium leaf": "aluminium",
	"aluminium glitter": "aluminium", "aluminium paste": "aluminium",
	"powdered aluminium": "aluminium", "aluminium powder 99.9 %": "aluminium",
	"aluminium powder, titanium oxide beside it": "aluminium",
	"CI 77000": "aluminium", "C.I. 77000": "aluminium", "E173": "aluminium", "E 173": "aluminium",
	"Aluminiumpulver": "aluminium", "Alufolie": "aluminium", "Blattaluminium": "aluminium", "Aluminiumgrieß": "aluminium",
	"Aluminium Flocken":  "aluminium",
	"poudre d'aluminium": "aluminium", "poudre d’aluminium": "aluminium", "aluminium en poudre": "aluminium",
	"feuille d'aluminium": "aluminium", "paillettes d'aluminium": "aluminium", "papier alu": "aluminium",
	"polvo de aluminio": "aluminium", "aluminio en polvo": "aluminium", "papel de aluminio": "aluminium",
	"lámina de aluminio": "aluminium",
	"CI77000":            "aluminium", "ci77000": "aluminium", "Pigment Metal 1": "aluminium", "Al powder": "aluminium",
	"Zn dust": "zinc", "Mg ribbon": "magnesium",
	"baking foil":            "aluminium",
	"shredded aluminium can": "aluminium", "alluminio in polvere": "aluminium", "aluminiumpoeder": "aluminium",
	"zinkpoeder": "zinc",
	// One letter dropped, changed or swapped.
	"alumnium powder": "aluminium", "Aluminim flakes": "aluminium", "aluminiun powder": "aluminium",
	"magnesuim powder": "magnesium",
	"alminium powder":  "aluminium", "luminium foil": "aluminium", "aluminun": "aluminium", "mgnesium flakes": "magnesium",
	"zinc": "zinc", "zinc dust": "zinc", "zinc powder": "zinc", "Zinkstaub": "zinc", "Zink-Pulver": "zinc",
	"poudre de zinc": "zinc", "zinc en poudre": "zinc", "cinc en polvo": "zinc", "metallic zinc": "zinc",
	"CI 77945":  "zinc",
	"duralumin": "aluminium", "zinc glitter": "zinc", "magnesium glitter": "magnesium",
	"magnesium powder": "magnesium", "magnesium ribbon": "magnesium", "magnesium flakes": "magnesium",
	"Magnesiumspäne": "magnesium", "magnésium en poudre": "magnesium", "magne\u0301sium en poudre": "magnesium",
	"copeaux de magnésium": "magnesium", "magnesio en polvo": "magnesium", "magnalium": "magnesium",
}

// Names of what holds such a metal and is none, or has nothing to do with it.
var namesOfNoMetal = []string{
	"zinc oxide", "zinc oxide powder", "Zinkoxid", "Zinkoxidpulver", "oxyde de zinc", "poudre d'oxyde de zinc",
	"óxido de zinc en polvo", "oxide of zinc", "zinc stearate powder", "zinc ricinoleate", "zinc PCA powder",
	"zinc carbonate", "zinc white", "aluminium hydroxide", "aluminium hydroxide powder", "hydroxide d'aluminium",
	"Aluminiumhydroxid", "sodium aluminium silicate powder", "magnesium aluminium silicate powder",
	"aluminium lake", "aluminum lake powder", "red 40 aluminium lake", "laque d'aluminium", "Aluminiumlack",
	"aluminium starch octenylsuccinate powder", "potassium aluminium sulphate powder", "alum powder",
	"magnesium sulfate", "magnesium sulphate flakes", "magnesium chloride flakes", "Magnesiumchlorid Flocken",
	"sulfate de magnésium", "cloruro de magnesio en escamas", "sal de magnesio en polvo", "magnesium stearate powder",
	"magnesium l-threonate powder", "magnesium oil", "magnesium hydroxide", "baking powder (aluminium free)",
	"baking powder without aluminium", "Backpulver, aluminiumfrei", "polvo sin aluminio",
	"magnesia", "magnesia powder", "milk of magnesia", "magnesite powder", "aluminate powder", "alumina powder",
	"calamine powder", "Pigment White 1", "metallic gold mica",
	"aloe vera gel al naturale", "alfalfa powder", "illuminating pink mica", "aluminum zirconium chlorohydrate powder",
	"sulphate of magnesium", "solfato di magnesio", "ossido di zinco in polvere",
	"silver mica", "magnesium rich clay powder", "illuminating powder", "cinnamon powder", "alumina", "magnolia petals",
	"gold leaf", "copper foil", "rosemary leaf powder", "tin", "CI 77019", "77001", "zinnia petals", "foil", "powder",
	"alun en poudre",
}

func hydrogen(b soap.Batch) []soap.Finding { return found(b, "hydrogen") }

func TestAMetalIsKnownByItsName(t *testing.T) {
	unlisted := func(name string) soap.Batch { // of a colourant: among the additives aluminium is refused
		return plainFormula().with("parts", `{"part": "glow", "share": "100 %", "colourants": [{"colourant": `+
			strconv.Quote(name)+`, "unlisted": true, "load": "1 g"}]}`).batch(t)
	}
	for name, metal := range namesOfMetal {
		if _, err := colour.LookUp(name); err == nil {
			continue // it is known as a colourant, and no longer by its name alone
		}
		got := hydrogen(unlisted(name))
		if len(got) != 1 || got[0].Severity != danger || got[0].Subject != "parts[0].colourants[0]" ||
			!slices.Equal(got[0].Names, []string{name, metal}) || got[0].Source.How != cite.Memory {
			t.Errorf("%q is %s: %+v", name, metal, got)
		}
	}
	for _, name := range namesOfNoMetal {
		if _, err := colour.LookUp(name); err == nil {
			continue
		}
		if got := hydrogen(unlisted(name)); len(got) > 0 {
			t.Errorf("%q is no such metal: %+v", name, got)
		}
	}
}

// Wherever it stands in a part, and wherever else it would meet fresh batter or lye.
func TestAMetalIsADangerWhereverItStands(t *testing.T) {
	cups := func(changes ...string) pieces {
		return inCups().with(changes...)
	}
	for subject, p := range map[string]pieces{
		"parts[0].colourants[0]": plainFormula().with("parts", coloured(pigment("aluminium-powder", "1 g"))),
		"parts[0].colourants[1]": plainFormula().with("parts", coloured(pigment("mica", "1 g"),
			`{"colourant": "zinc dust", "unlisted": true, "load": "1 g"}`)),
		"parts[0].fragrances[0]": plainFormula().with("parts",
			`{"part": "glow", "share": "100 %", "fragrances": [{"fragrance": "magnesium powder", "unlisted": true,
				"load": "1 g"}]}`),
		"parts[0].additives[0]": plainFormula().with("parts",
			`{"part": "glow", "share": "100 %", "additives": [{"additive": "zinc glint powder", "load": "1 g",
				"glitter": "mineral"}]}`),
		"toppings[0]": cups("toppings", `{"topping": "aluminium leaf", "vessel": "cup", "mass": "0.1 g"}`),
		"embeds[0]":   cups("embeds", `{"embed": "zinc flakes", "vessel": "cup", "mass": "2 g"}`),
		"water.liquids[0]": plainFormula().with("water",
			`{"lye_concentration": "33 %", "liquids": [{"liquid": "aluminium powder in water", "share": "50 %",
				"water": "90 %"}]}`),
	} {
		got := hydrogen(p.batch(t))
		if len(got) != 1 || got[0].Subject != subject || got[0].Severity != danger || !strings.Contains(got[0].Message(),
			"hydrogen") || !strings.Contains(got[0].Message(), "Never put it into lye or batter") {
			t.Errorf("%s: %+v", subject, got)
		}
	}
	for name, p := range map[string]pieces{
		"a metallised film": plainFormula().with("parts",
			`{"part": "glow", "share": "100 %", "additives": [{"additive": "aluminium glitter", "load": "1 g",
				"glitter": "polymer", "aluminium": true}]}`),
		"a topping of mica": cups("toppings", `{"topping": "silver mica", "vessel": "cup", "mass": "0.1 g"}`),
		"swatches have them": plainFormula().with("swatches", strings.Replace(duskSwatches(t), `"read": [`, `"read": [{"swatch": "metal 1", "loads": {"aluminium-powder": "1 % of batter"}, "reflectance": [`+strings.Repeat("0.6, ", 30)+`0.6]},
			{"swatch": "metal 2", "loads": {"aluminium-powder": "2 % of batter"}, "reflectance": [`+strings.Repeat("0.7, ", 30)+`0.7]},`, 1)),
	} {
		if got := hydrogen(p.batch(t)); len(got) > 0 {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// A declaration does not outweigh a name: a powder, a flake or a foil of metal is that, whatever glitter it is said to
// be. A film with a thin layer of metal stays a warning (Amendments), if it is called a glitter and declared as film,
// and it has its layer though somebody declares that there is none.
func TestNoDeclarationOutweighsTheNameOfAMetal(t *testing.T) {
	for _, row := range []struct{ name, glitter, code string }{
		{"Aluminium powder", "polymer", "hydrogen"},
		{"Aluminium powder", "degradable-tested", "hydrogen"},
		{"aluminium flakes", "polymer", "hydrogen"},
		{"aluminium", "polymer", "hydrogen"},
		{"aluminium bronze", "polymer", "hydrogen"},
		{"aluminium glitter powder", "polymer", "hydrogen"},
		{"aluminium foil glitter", "polymer", "hydrogen"},
		{"Aluminiumpulver, Glitter", "polymer", "hydrogen"},
		{"kitchen foil", "degradable-tested", "hydrogen"},
		{"CI 77000", "polymer", "hydrogen"},
		{"aluminium glitter", "mineral", "hydrogen"},
		{"zinc dust", "polymer", "hydrogen"},
		{"zinc", "degradable-tested", "hydrogen"},
		{"magnesium flakes", "polymer", "hydrogen"},
		{"aluminium glitter", "polymer", "glitter-aluminium"},
		{"Aluflitter", "degradable-tested", "glitter-aluminium"},
		{"aluminium sequins", "polymer", "glitter-aluminium"},
		{"aluminium-free glitter", "polymer", ""},
		{"silver glitter", "polymer", ""},
	} {
		says := `"glitter": "` + row.glitter + `", "aluminium": false`
		topped := inCups().with("toppings", `{"topping": "`+row.name+`", "vessel": "cup", "mass": "0.1 g", `+says+
			`}`).batch(t)
		for _, code := range []string{"hydrogen", "glitter-aluminium"} {
			if got := found(topped, code); len(got) != 0 && code != row.code || len(got) != 1 && code == row.code {
				t.Errorf("%s as %s on top, %s: %+v", row.name, row.glitter, code, got)
			}
		}
		inside := plainFormula().with("parts", `{"part": "glow", "share": "100 %", "additives": [{"additive": "`+row.name+
			`", "load": "1 g", `+says+`}]}`)
		if row.code == "hydrogen" && metalOf(row.name) == "aluminium" { // among the additives an error
			if _, faults := read(t, inside.text()); len(faults) != 1 || !strings.Contains(faults[0].Reason, "hydrogen") ||
				!strings.Contains(faults[0].Remedy, "glitter") {
				t.Errorf("%s as %s: %v", row.name, row.glitter, faults)
			}
			continue
		}
		b := inside.batch(t)
		if got := hydrogen(b); len(got) != 0 && row.code != "hydrogen" || row.code == "hydrogen" &&
			(len(got) != 1 || got[0].Severity != danger) {
			t.Errorf("%s as %s in the batter: %+v", row.name, row.glitter, got)
		}
		if got := found(b, "glitter-aluminium"); len(got) != 0 && row.code != "glitter-aluminium" ||
			row.code == "glitter-aluminium" && len(got) != 1 {
			t.Errorf("%s as %s in the batter: %+v", row.name, row.glitter, got)
		}
	}
}

// metalOf tells the metal of the names above.
func metalOf(name string) string {
	for _, metal := range []string{"zinc", "magnesium"} {
		if strings.HasPrefix(name, metal) {
			return metal
		}
	}
	return "aluminium"
}

// An own pigment is what its numbers say, or its name: aluminium is CI 77000 (Annex IV,
// entry 117), mica CI 77019.
func TestAnOwnPigmentOfMetal(t *testing.T) {
	for _, row := range []struct{ own, names string }{
		{`"ci": ["77000"]`, "star|Aluminium powder"},
		{`"ci": ["77019", "77000"], "name": "Star silver"`, "Star silver|Aluminium powder"},
		{`"ci": ["77000:1"]`, "star|Aluminium powder"},
		{`"name": "Zinc flakes"`, "Zinc flakes|zinc"},
		{`"ci": ["77945"]`, "77945|zinc"},
		{`"ci": ["77019"]`, ""},
		{`"ci": ["77019"], "name": "Silver mica"`, ""},
		{`"ci": ["77947"], "name": "Zinc oxide, fine powder"`, ""},
	} {
		got := hydrogen(plainFormula().with("pigments", `{"colourant": "star", `+row.own+`}`, "parts",
			coloured(pigment("star", "1 g"))).batch(t))
		if row.names == "" && len(got) > 0 || row.names != "" &&
			(len(got) != 1 || strings.Join(got[0].Names, "|") != row.names) {
			t.Errorf("%s: %+v", row.own, got)
		}
	}
	// By a number nothing else is meant; by a name perhaps a salt.
	for own, may := range map[string]bool{`"ci": ["77000"]`: false, `"name": "Magnesium flakes"`: true} {
		f := hydrogen(plainFormula().with("pigments", `{"colourant": "star", `+own+`}`, "parts",
			coloured(pigment("star", "1 g"))).batch(t))[0]
		if strings.Contains(f.Message(), "If a salt") != may {
			t.Error(f.Message())
		}
	}
}

// What could hurt a person stands in every view.
func TestEveryViewCarriesTheHydrogen(t *testing.T) {
	b := plainFormula().with("swatches", duskSwatches(t), "parts",
		`{"part": "glow", "share": "100 %", "additives": [{"additive": "zinc dust", "load": "1 g"}]}`).batch(t)
	tint := tinted(t, b)
	for view, findings := range map[string][]soap.Finding{
		"batch": b.Findings, "caps": b.Caps().Findings,
		"tint": tint.Findings,
	} {
		if len(findings) == 0 || findings[0].Code != "hydrogen" || findings[0].Severity != danger {
			t.Errorf("%s: %+v", view, findings)
		}
	}
}

// An embed and a topping meet fresh batter, and so does the wall of a vessel: the name of the metal among other words
// means the metal there. What is a salt, free of it, or lined is not.
func TestAThingOfSuchAMetalIsADanger(t *testing.T) {
	for _, row := range []struct {
		list, name, metal string
	}{
		{"embeds", "aluminium star", "aluminium"},
		{"embeds", "zinc charm", "zinc"},
		{"embeds", "magnesium charm", "magnesium"},
		{"embeds", "zinc oxide star", ""},
		{"embeds", "zinc white star", ""},
		{"embeds", "star without zinc", ""},
		{"embeds", "aluminium-free star", ""},
		{"embeds", "little moon", ""},
		{"embeds", "Aluminiumstern", "aluminium"}, // in one word, as in German
		{"embeds", "Magnesiumlaterne", "magnesium"},
		{"embeds", "Aluminiumhydroxidstern", ""},
		{"embeds", "Magnesiumsulfat", ""},
		{"embeds", "Magnesiumsalz", ""},
		{"embeds", "aluminiumfreier Stern", ""},
		{"embeds", "ohne Aluminiumstern", ""},
		{"embeds", "aluminiumgrauer Mond", ""},
		{"embeds", "Alumnatenstern", ""},
		{"embeds", "Zinkenstern", ""}, // of tines
		{"embeds", "Alucard", ""},
		{"embeds", "Magnesiastern", ""},
		{"toppings", "Aluminiumlack", ""},
		{"toppings", "zinc glitter", "zinc"},
		{"toppings", "magnesium glitter", "magnesium"},
		{"toppings", "aluminium glitter", "aluminium"},
		{"toppings", "silver mica", ""},
		{"vessels", "aluminium tray", "aluminium"},
		{"vessels", "aluminium tin", "aluminium"},
		{"vessels", "zinc mould", "zinc"},
		{"vessels", "lined aluminium tray", ""},
		{"vessels", "zinc mould, coated", ""},
		{"vessels", "Aluminiumform", "aluminium"},
		{"vessels", "Aluminiumform, beschichtet", ""},
		{"vessels", "steel tray", ""},
	} {
		vessel, subject := "cup", row.list+"[0]"
		if row.list == "vessels" {
			vessel, subject = row.name, "size.vessels[0]"
		}
		changes := []string{
			"size", `{"vessels": [{"vessel": "` + vessel + `", "part": "glow", "count": 2, "volume": "80 mL"}]}`,
			"parts", `{"part": "glow"}`,
		}
		switch row.list {
		case "embeds":
			changes = append(changes, "embeds", `{"embed": "`+row.name+`", "vessel": "cup", "mass": "2 g"}`)
		case "toppings":
			changes = append(changes, "toppings", `{"topping": "`+row.name+`", "vessel": "cup", "mass": "0.1 g"}`)
		}
		got := hydrogen(plainFormula().with(changes...).batch(t))
		if row.metal == "" && len(got) > 0 || row.metal != "" && (len(got) != 1 || got[0].Severity != danger ||
			got[0].Subject != subject || !slices.Equal(got[0].Names, []string{row.name, row.metal})) {
			t.Errorf("%s, %q: %+v", row.list, row.name, got)
		}
	}
}

// No colourant is offered in place of a metal.
func TestNothingIsOfferedForTheNameOfAMetal(t *testing.T) {
	_, faults := read(t, plainFormula().with("parts", coloured(pigment("duralumin", "1 g"))).text())
	if len(faults) != 1 || strings.Contains(faults[0].Remedy, "turmeric") {
		t.Errorf("%+v", faults)
	}
}
