package names_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/names"
)

// rows are the lines of the table, split by tabs.
func rows(t *testing.T) (rows [][]string) {
	t.Helper()
	text, err := os.ReadFile("data/names.txt")
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		if !strings.HasPrefix(line, "#") {
			rows = append(rows, strings.Split(strings.TrimRight(line, "\n"), "\t"))
		}
	}
	return rows
}

func TestFoldForgetsCaseAccentsHyphensAndApostrophes(t *testing.T) {
	tests := []struct{ name, want string }{
		{"olive", "olive"},
		{"Olive", "olive"},
		{"palm-nut oil", "palm nut oil"},
		{"palm\u2010nut\u00a0oil", "palm nut oil"}, // a hyphen of another code, a space that does not break
		{"  palm   nut ", "palm nut"},
		{"huile d'olive", "huile dolive"},
		{"huile d’olive", "huile dolive"},
		{"ERDNUSSÖL", "erdnussol"},
		{"Erdnusso\u0308l", "erdnussol"}, // the accent as a letter of its own
		{"Titanweiß", "titanweiss"},
		{"œillette", "oeillette"},
		{"cártamo", "cartamo"},
		{"Castaña", "castana"},
		{"-", ""},
		{"", ""},
		{"масло", "масло"}, // what is not Latin stays
	}
	for _, test := range tests {
		if got := names.Fold(test.name); got != test.want {
			t.Errorf("%q becomes %q, want %q", test.name, got, test.want)
		}
	}
}

// A line is found by its name, so that must stand folded, and once; and a number must have
// its note.
func TestEveryNameOfTheTableIsFoundWithWhatItMeans(t *testing.T) {
	text, err := os.ReadFile("data/notes.txt")
	if err != nil {
		t.Fatal(err)
	}
	used, seen := map[string]bool{}, map[string]bool{}
	for _, row := range rows(t) {
		if seen[row[0]] {
			t.Errorf("%s stands twice", row[0])
		}
		seen[row[0]] = true
		kind, folded, _ := strings.Cut(row[0], " ")
		if row[1] == "" {
			row[1] = folded
		}
		for written := range strings.SplitSeq(row[1], " = ") {
			if got := names.Fold(written); got != folded {
				t.Errorf("%q folds to %q, and stands as %q", written, got, folded)
			}
		}
		entry, found := names.Find(names.Kind(kind), folded)
		if !found || len(entry.Meanings) != len(row)-4 || entry.Several != (row[3] == "several") {
			t.Errorf("%s: %+v, want %q", row[0], entry, row[3:])
			continue
		}
		if !slices.Contains([]string{"one", "several"}, row[3]) || row[3] == "one" && len(entry.Meanings) != 1 {
			t.Errorf("%s: %q with %d meanings", row[0], row[3], len(entry.Meanings))
		}
		for i, m := range entry.Meanings {
			id, number, noted := strings.Cut(row[4+i], " ")
			if strings.TrimPrefix(id, "-") != m.ID || strings.Contains(m.ID, " ") || names.Fold(m.ID) != strings.ReplaceAll(m.ID,
				"-", " ") {
				t.Errorf("%s: meaning %d is %+v, want %q", row[0], i, m, row[4+i])
			}
			if used[number] = true; noted && (m.Note == "" || !strings.Contains(string(text), "\n"+number+"\t"+m.Note+"\n")) {
				t.Errorf("%s: note %q is %q", row[0], number, m.Note)
			}
		}
	}
	for line := range strings.Lines(string(text)) {
		if number, _, _ := strings.Cut(line, "\t"); !strings.HasPrefix(line, "#") && !used[number] {
			t.Errorf("note %s belongs to no name", number)
		}
	}
}

func TestNothingIsFoundThatDoesNotStandThere(t *testing.T) {
	for _, name := range []string{"", "#", "oil", "aaa", "zzz", "olive\t", "names", "edition", "olive extra moonlight"} {
		for _, kind := range []names.Kind{
			names.Oil, names.Fragrance, names.Colourant, names.Acid, names.Alkali, "", "#",
			"weather",
		} {
			if e, found := names.Find(kind, name); found {
				t.Errorf("%s %q: %+v", kind, name, e)
			}
		}
	}
}

// held are a few ids, of which the tests know everything.
func held(id string) bool {
	return slices.Contains([]string{
		"olive", "palm", "palm-kernel", "lanolin", "safflower", "sodium-hydroxide",
		"geranium",
	}, id)
}

func TestAnIDWinsAsItIsWrittenThenTheTableThenBothWithoutAnEnding(t *testing.T) {
	tests := []struct {
		kind names.Kind
		name string
		want names.Answer
	}{
		{names.Oil, "olive", names.Answer{ID: "olive"}},
		{names.Oil, "Olive", names.Answer{ID: "olive"}},
		{names.Oil, "PALM KERNEL", names.Answer{ID: "palm-kernel"}},
		{names.Oil, "Olivenöl", names.Answer{ID: "olive"}},
		{names.Oil, "huile d’olive", names.Answer{ID: "olive"}},
		{names.Fragrance, "geranium EO", names.Answer{
			ID:   "geranium",
			Note: "origins have own figures; plain geranium is the general one",
		}},
		{names.Fragrance, "Geranium Essential Oil", names.Answer{
			ID:   "geranium",
			Note: "origins have own figures; plain geranium is the general one",
		}},
		// The id lanolin stands, and the table warns of the name.
		{names.Oil, "lanolin", names.Answer{ID: "lanolin", Note: "anhydrous (saponification value 90-102) or with a " +
			"quarter of water (67-79): the old word lanolin meant the hydrous one"}},
		// The table knows it as it is written: without its ending it would be another fat.
		{names.Oil, "palm kernel fat", names.Answer{
			Note: "hydrogenated palm kernel oil (saponification value 243-248 computed) or palm kernel stearin (244-255): up " +
				"to 4 % apart",
			Several: []names.Meaning{
				{ID: "palm-kernel-hydrogenated", Note: "hydrogenated palm kernel oil (saponification value 243-248 computed) or " +
					"palm kernel stearin (244-255): up to 4 % apart"},
				{ID: "palm-kernel-stearin", Note: "hydrogenated palm kernel oil (saponification value 243-248 computed) or palm " +
					"kernel stearin (244-255): up to 4 % apart"},
			},
		}},
		{names.Oil, "peach kernel", names.Answer{ID: "peach-kernel", Unheld: true}},
		{names.Oil, "peach-kernel oil", names.Answer{ID: "peach-kernel", Unheld: true}},
		{names.Oil, "baby oil", names.Answer{Note: "no fat: takes no alkali; weigh it as an additive", Unheld: true}},
		{names.Alkali, "caustic soda", names.Answer{ID: "sodium-hydroxide"}},
		{names.Oil, "caustic soda", names.Answer{}},
		// Words that change the saponification are never left out.
		{names.Oil, "olive wax", names.Answer{}},
		{names.Oil, "olive leaf", names.Answer{}},
		{names.Oil, "palm kernel absolute", names.Answer{}},
		{names.Oil, "olive seed", names.Answer{}},
		{names.Oil, "oil", names.Answer{}},
		{names.Oil, "", names.Answer{}},
	}
	for _, test := range tests {
		got := names.Look(test.kind, test.name, held)
		if got.ID != test.want.ID || got.Note != test.want.Note || got.Unheld != test.want.Unheld ||
			!slices.Equal(got.Several, test.want.Several) {
			t.Errorf("%s %q is %+v, want %+v", test.kind, test.name, got, test.want)
		}
		if got.Found() != (test.want.ID != "" || test.want.Unheld || test.want.Several != nil) {
			t.Errorf("%q is found: %t", test.name, got.Found())
		}
	}
}

// Names that mean lye, or a carbonate, or bleach, are never taken for a hydroxide.
func TestNamesOfNoOneAlkaliAreNeverResolved(t *testing.T) {
	all := func(string) bool { return true }
	some := func(id string) bool { return id == "sodium-hydroxide" || id == "potassium-hydroxide" }
	for _, name := range []string{
		"lye", "Lye", "soda", "potash", "lejía", "lejia", "lessive", "sosa", "Pottasche",
		"baking soda", "washing soda", "soda ash", "drain cleaner",
	} {
		if got := names.Look(names.Alkali, name, some); got.ID != "" || got.Several == nil {
			t.Errorf("%s is %+v", name, got)
		}
		if got := names.Look(names.Alkali, name, all); got.ID == "sodium-hydroxide" || got.ID == "potassium-hydroxide" {
			t.Errorf("%s is %+v", name, got)
		}
	}
}

func TestALookUpAllocatesNothingWhereTheNameIsFolded(t *testing.T) {
	names.Find(names.Oil, "olive oil") // the notes are indexed once
	if n := testing.AllocsPerRun(100, func() { names.Fold("olive oil") }); n > 0 {
		t.Errorf("Fold allocates %v times", n)
	}
	if n := testing.AllocsPerRun(100, func() { names.Find(names.Oil, "moonlight") }); n > 0 {
		t.Errorf("Find allocates %v times", n)
	}
}

func BenchmarkFind(b *testing.B) {
	for b.Loop() {
		if _, found := names.Find(names.Oil, "huile dolive"); !found {
			b.Fatal("not found")
		}
	}
}

func BenchmarkLookUpOfWhatIsUnknown(b *testing.B) {
	for b.Loop() {
		if names.Look(names.Oil, "Moonlight oil", held).Found() {
			b.Fatal("found")
		}
	}
}

func BenchmarkNote(b *testing.B) {
	for b.Loop() {
		names.Note(names.Fragrance, "lavender")
	}
}
