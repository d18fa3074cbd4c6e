package fragrance_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/madeup"
)

// Rows that chance has chosen (seeds 7103, 7104, 7105), typed in a second time from the
// tables that these were made from: a slip of either hand shows.

// Standards of the 51st Amendment, category 9: number, standing, limit in percent, the
// first of its registry numbers.
var typedStandards = []struct{ number, standing, limit, cas string }{
	{"034", "limit", "0.92", "4748-78-1"},
	{"155", "prohibited", "", "34131-99-2"},
	{"084", "limit", "1.4", "8006-81-3"},
	{"254", "limit", "2.4", "122-67-8"},
	{"243", "limit", "0.46", "97-42-7"},
	{"186", "specification", "", "138-86-3"},
	{"160", "prohibited", "", "92-48-8"},
	{"059", "limit", "0.15", "1205-17-0"},
	{"076", "limit", "0.79", "17369-59-4"},
	{"150", "prohibited", "", "18318-83-7"},
	{"080", "limit", "0.1", "90028-67-4"},
	{"106", "prohibited", "", "73157-43-4"},
	{"145", "prohibited", "", "5146-66-7"},
	{"178", "prohibited", "", "91-22-5"},
	{"070", "limit", "0.84", "8021-36-1"},
	{"060", "limit", "2.9", "101-39-3"},
	{"016", "limit", "0.18", "99-49-0"},
	{"062", "limit", "0.092", "111-12-6"},
	{"263", "limit", "0.29", "98-53-3"},
	{"246", "limit", "1.1", "67633-96-9"},
	{"023", "limit", "0.52", "91-64-5"},
	{"192", "limit", "4.6", "515-69-5"},
	{"224", "limit", "3.7", "74338-72-0"},
	{"237", "limit", "1.8", "338735-71-0"},
	{"093", "free", "", "8008-26-2"},
	{"168", "prohibited", "", "83-66-9"},
	{"221", "limit", "2.6", "70788-30-6"},
	{"170", "prohibited", "", "81-15-2"},
	{"267", "limit", "0.21", "358331-95-0"},
	{"052", "limit", "0.59", "2111-75-3"},
	{"067", "limit", "0.1", "90028-68-5"},
	{"144", "prohibited", "", "623-15-4"},
	{"107", "prohibited", "", "57-06-7"},
	{"151", "prohibited", "", "13393-93-6"},
	{"258", "limit", "0.84", "72403-67-9"},
	{"163", "prohibited", "", "87-05-8"},
}

// Entries of Annex III of which the list of allergens speaks, as consolidated and amended:
// entry, name for the label, list, limit in percent, registry numbers. What of the drawn
// rows that list does not have stands with its name alone, and is not counted.
var typedEntries = []struct{ entry, name, list, limit, cas string }{
	{"154", "Myroxylon Pereirae Oil/Extract", "new", "0.4", "8007-00-9"},
	{"074", "Amylcinnamyl Alcohol", "old", "", "101-85-9"},
	{"196", "Lippia Citriodora Absolute", "new", "0.2", "8024-12-2;85116-63-8"},
	{"081", "Benzyl Cinnamate", "old", "", "103-41-3"},
	{"346", "Vanillin", "new", "", "121-33-5"},
	{"363", "Narcissus Extract", "new", "", "90064-26-9;68917-12-4;90064-27-0;90064-25-8"},
	{"x08", "Styrax", "", "", ""},
	{"087", "Hexyl Cinnamal", "old", "", "101-86-0"},
	{"350", "Citrus Aurantium Flower Oil", "new", "", "72968-50-4;8028-48-6;8016-38-4"},
	{"x05", "Isocyclogeraniol", "", "", ""},
	{"355", "Eucalyptus Globulus Oil", "new", "", "97926-40-4;8000-48-4"},
	{"339", "Trimethylcyclopentenyl Methylisopentenol", "new", "", "67801-20-1"},
	{"358", "Juniperus Virginiana Oil", "new", "", "8000-27-9;85085-41-2"},
	{"357", "Jasmine Oil/Extract", "new", "", "84776-64-7;90045-94-6;8022-96-6;8024-43-9"},
	{"088", "Limonene", "old", "", "138-86-3;7705-14-8;5989-27-5;5989-54-8"},
	{"369", "Geranyl Acetate", "new", "", "105-87-3"},
	{"332", "Beta-Caryophyllene", "new", "", "87-44-5"},
	{"083", "Butylphenyl Methylpropional", "", "", ""},
	{"086", "Citronellol", "old", "", "106-22-9;26489-01-0;1117-61-9;7540-51-4"},
	{"x03", "Menthadiene-7-methyl formate", "", "", ""},
	{"070", "Citral", "old", "", "5392-40-5;141-27-5;106-26-3"},
	{"335", "Hexadecanolactone", "new", "", "109-29-5"},
	{"345", "Trimethylbenzenepropanol", "new", "", "103694-68-4"},
}

// Constituents of essential oils: material, registry number, publication as the table has
// it, both ends in percent; "" where none is printed.
var typedConstituents = []struct{ row, low, high string }{
	{"ginger 106-23-0 IFRA Standards, Annex on contributions from other sources", "", "0.4"},
	{"lavandin-abrial 531-59-9 IFRA Standards, Annex on contributions from other sources", "", "0.01"},
	{"lavender 115-95-7 ISO 3515, oil of lavender", "25", "47"},
	{"lemongrass 5392-40-5 Merck Index, Oil of lemon grass", "75", "85"},
	{"rosemary-spanish-type 123-35-3 European Pharmacopoeia, Rosemary oil (1846)", "1.5", "5.0"},
	{"clove-leaf 6753-98-6 de Groot, Schmidt, Monographs in Contact Allergy, vol. 2", "0.5", "3.0"},
	{"sweet-orange 5989-27-5 European Pharmacopoeia, Sweet orange oil (1811)", "92.0", "97.0"},
	{"litsea-cubeba 94-59-7 IFRA Standards, Annex on contributions from other sources", "", "0.05"},
	{"thyme-red 106-24-1 IFRA Standards, Annex on contributions from other sources", "", "0.06"},
	{"thyme-red 93-15-2 IFRA Standards, Annex on contributions from other sources", "", "0.01"},
	{"lemon-expressed 141-27-5 European Pharmacopoeia, Lemon oil (0620)", "0.5", "2.3"},
	{"cassia 100-52-7 IFRA Standards, Annex on contributions from other sources", "", "1.0"},
	{"bitter-orange 106-24-1 IFRA Standards, Annex on contributions from other sources", "", "0.02"},
	{"petitgrain-bigarade 106-23-0 IFRA Standards, Annex on contributions from other sources", "", "0.05"},
	{"bitter-orange 99-49-0 IFRA Standards, Annex on contributions from other sources", "", "0.05"},
	{"tea-tree 552-02-3 ISO 4730, oil of Melaleuca", "", "1.5"},
	{"rosemary-spanish-type 99-87-6 European Pharmacopoeia, Rosemary oil (1846)", "1.0", "2.2"},
	{"lavender-absolute 531-59-9 IFRA Standards, Annex on contributions from other sources", "", "3.8"},
	{"litsea-cubeba 72203-98-6 IFRA Standards, Annex on contributions from other sources", "", "1.0"},
	{"rose-absolute 141-27-5 IFRA Standards, Annex on contributions from other sources", "", "0.07"},
	{"ylang-ylang-ii 5392-40-5 IFRA Standards, Annex on contributions from other sources", "", "0.09"},
	{"benzoin-siam-resinoid 104-54-1 IFRA Standards, Annex on contributions from other sources", "", "0.36"},
	{"geranium 5392-40-5 IFRA Standards, Annex on contributions from other sources", "", "0.5"},
	{"bergamot-expressed 106-24-1 IFRA Standards, Annex on contributions from other sources", "", "0.04"},
	{"peppermint 470-82-6 European Pharmacopoeia, Peppermint oil", "3.5", "14.0"},
	{"spike-lavender 106-24-1 IFRA Standards, Annex on contributions from other sources", "", "0.2"},
	{"geranium 35154-45-1 IFRA Standards, Annex on contributions from other sources", "", "0.1"},
	{"clove-bud 93-15-2 IFRA Standards, Annex on contributions from other sources", "", "0.1"},
	{"pine-scots 505-57-7 IFRA Standards, Annex on contributions from other sources", "", "0.02"},
	{"tea-tree 99-87-6 ISO 4730, oil of Melaleuca", "0.5", "12"},
	{"melissa 141-27-5 IFRA Standards, Annex on contributions from other sources", "", "29.6"},
	{"cassia 104-55-2 IFRA Standards, Annex on contributions from other sources", "", "79.5"},
	{"rosemary-moroccan-and-tunisian-type 76-22-2 European Pharmacopoeia, Rosemary oil (1846)", "5", "15"},
	{"spearmint 6485-40-1 IFRA Standards, Annex on contributions from other sources", "", "66.07"},
	{"lavender 106-68-3 ISO 3515, oil of lavender", "", "3"},
	{"eucalyptus 76-22-2 British Pharmacopoeia, Eucalyptus Oil", "", "0.1"},
	{"marjoram-sweet 99-49-0 IFRA Standards, Annex on contributions from other sources", "", "0.4"},
	{"geranium-bourbon 106-22-9 ISO 4731, oil of geranium", "42", "55"},
	{"eucalyptus-citriodora 106-26-3 IFRA Standards, Annex on contributions from other sources", "", "0.03"},
}

// rulesOf counts the rules of a body.
func rulesOf(body fragrance.Body) (n int) {
	for _, r := range fragrance.Rules() {
		if r.Body() == body {
			n++
		}
	}
	return n
}

func TestStandardsTypedInAgain(t *testing.T) {
	words := map[fragrance.Standing]string{fragrance.Limited: "limit", fragrance.Prohibited: "prohibited", fragrance.Unrestricted: "free", fragrance.Purity: "specification"}
	madeup.Sampled(t, "standards.txt", len(typedStandards), 36, rulesOf(fragrance.IFRA), 263)
	for _, typed := range typedStandards {
		r := ruleOf(t, fragrance.IFRA, typed.number)
		if words[r.Standing()] != typed.standing || r.Limit().PercentText(12) != typed.limit || r.Substances()[0].String() != typed.cas {
			t.Errorf("%s %s: %v, %s, %s, typed in as %+v", r.Number(), r.Name(), r.Standing(), r.Limit().PercentText(12), r.Substances()[0], typed)
		}
	}
}

func TestEntriesTypedInAgain(t *testing.T) {
	madeup.Sampled(t, "entries.txt", len(typedEntries), 23, rulesOf(fragrance.EU), 98)
	for _, typed := range typedEntries {
		r := ruleOf(t, fragrance.EU, typed.entry)
		if r.Name() != typed.name {
			t.Errorf("%s is %s, typed in as %s", typed.entry, r.Name(), typed.name)
		}
		if typed.cas == "" {
			continue
		}
		var cas []string
		for _, number := range r.Substances() {
			cas = append(cas, number.String())
		}
		if r.List().String() != typed.list || r.Limit().PercentText(12) != typed.limit || strings.Join(cas, ";") != typed.cas {
			t.Errorf("%s %s: list %s, limit %s, %v, typed in as %+v", r.Number(), r.Name(), r.List(), r.Limit().PercentText(12), cas, typed)
		}
	}
}

func TestConstituentsTypedInAgain(t *testing.T) {
	figures := map[string][]fragrance.Figure{} // of tea tree two editions of one standard
	rows := 0
	for _, m := range fragrance.Materials() {
		for _, f := range m.Figures() {
			row := m.ID() + " " + f.CAS.String() + " " + f.Source.Title
			figures[row] = append(figures[row], f)
			rows++
		}
	}
	madeup.Sampled(t, "materials.txt", len(typedConstituents), 39, rows, 589)
	for _, typed := range typedConstituents {
		text := func(end string) string { return strings.TrimSuffix(end, ".0") }
		if !slices.ContainsFunc(figures[typed.row], func(f fragrance.Figure) bool {
			return f.Low.PercentText(6) == text(typed.low) && f.High.PercentText(6) == text(typed.high)
		}) {
			t.Errorf("%s: %+v, typed in as %s to %s", typed.row, figures[typed.row], typed.low, typed.high)
		}
	}
}

// A material cannot hold more than itself: the least of all that one publication prints of
// it stays below 100 %, and so does every single figure.
func TestTheLeastOfAllConstituentsFitsInTheMaterial(t *testing.T) {
	for _, m := range fragrance.Materials() {
		least := map[string]float64{}
		for _, f := range m.Figures() {
			if f.Low.Given() {
				least[f.Source.String()] += f.Low.Float()
			}
			if f.High.Given() && f.High.Float() > 1 {
				t.Errorf("%s: %s at %s", m.ID(), f.CAS, f.High)
			}
		}
		for source, sum := range least {
			if sum > 1 {
				t.Errorf("%s, %s: %.3f of it at least", m.ID(), source, sum)
			}
		}
	}
}

// How many rows of the rules and compositions a second hand has typed, here or beside the
// other tables; that no edit goes unseen the sums of every column hold.
func TestTheShareOfTheRulesThatIsChecked(t *testing.T) {
	standards, entries, constituents := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, row := range typedStandards {
		standards[row.number] = true
	}
	for _, number := range strings.Fields("100 048 043 077 062 076 071 083 094 097 044 015 179 110 112 158 154 018 055 023 007 067 080 206") { // tables_test.go
		standards[number] = true
	}
	for _, row := range typedEntries {
		entries[row.entry] = row.cas != ""
	}
	for _, number := range strings.Fields("102 073 072 157 089 175 154 196 323 308") { // tables_test.go
		entries[number] = true
	}
	for _, row := range typedConstituents {
		constituents[row.row] = true
	}
	rows := 0
	for _, m := range fragrance.Materials() {
		rows += len(m.Figures())
	}
	madeup.Covered(t, "standards.txt", standards, rulesOf(fragrance.IFRA), 55)
	madeup.Covered(t, "entries.txt", entries, rulesOf(fragrance.EU), 27)
	madeup.Covered(t, "materials.txt", constituents, rows, 39)
}
