package sheet_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"example.com/lyewright/colour"
	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

func batchOf(t *testing.T, text string) soap.Batch {
	t.Helper()
	f, _, err := soap.ParseFormula([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func write(t *testing.T, b soap.Batch, unit units.Unit) string {
	t.Helper()
	var page strings.Builder
	if err := sheet.Write(&page, b, unit); err != nil {
		t.Fatal(err)
	}
	return page.String()
}

// madeUp gives the batches of made-up formulas that a pot can make.
var madeUp = sync.OnceValue(func() (list []soap.Batch) {
	m := madeup.New(30)
	for range 100 {
		if b, err := m.Any().Batch(); err == nil {
			list = append(list, b)
		}
	}
	return list
})

// batches gives the formulas of the testdata, each on several pairs of scales, and some
// that are made up.
func batches(t *testing.T) map[string]soap.Batch {
	t.Helper()
	paths, err := filepath.Glob("../../testdata/formulas/*.json")
	if err != nil || len(paths) < 6 {
		t.Fatal(paths, err)
	}
	list := map[string]soap.Batch{}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		f, _, err := soap.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		for _, scales := range [][2]string{
			{"", ""},
			{"1 g", "0.01 g"},
			{"0.1 g", "0.1 g"},
			{"5 g", "1 g"},
			{"0.25 g", "0.5 g"},
			{"0.05 oz", "0.01 oz"},
			{"1 mg", "1 mg"},
			{"3 g", "0.7 g"},
		} {
			g := f
			if scales[0] != "" {
				g.Scale, g.Small = mass(t, scales[0]), mass(t, scales[1])
			}
			b, err := g.Batch()
			if err != nil {
				// a promise of a superfat may be out of reach of a coarse scale
				t.Logf("%s on %v: %v", path, scales, err)
				continue
			}
			list[filepath.Base(path)+" on "+strings.Join(scales[:], ", ")] = b
		}
	}
	made := madeUp()
	for i, b := range made {
		list["made up "+strconv.Itoa(i+1)] = b
	}
	if len(list) < 140 || len(made) < 80 {
		t.Errorf("only %d batches", len(list))
	}
	return list
}

func mass(t *testing.T, text string) units.Mass {
	t.Helper()
	m, err := units.ParseMass(text)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// A row is a line of the sheet with a mass.
type row struct {
	box   bool
	name  string
	mass  string
	point int // the column of the decimal point, or of where it would be
	table int // rows of one table have the same
}

var massLine = regexp.MustCompile(`^(\[ \] |    )(\S.{45}|  \S.{43}) *([0-9]+(?:\.[0-9]+)?)(?: |$)`)

func rows(page string) []row {
	var list []row
	table, broken := 0, ""
	for line := range strings.Lines(page) {
		line = strings.TrimSuffix(line, "\n")
		runes := []rune(line)
		if fields := strings.Fields(line); len(fields) > 0 && len(runes) > 50 && (fields[0] == "g" || fields[0] == "oz") {
			table++
			continue
		}
		m := massLine.FindStringSubmatchIndex(line)
		if m == nil { // the mass of a long name stands in its last line
			switch name, boxed := strings.CutPrefix(line, "[ ] "); {
			case boxed:
				broken = strings.TrimSpace(name)
			case broken != "":
				broken += " " + strings.TrimSpace(line)
			}
			continue
		}
		digits := line[m[6]:m[7]]
		end := utf8.RuneCountInString(line[:m[7]])
		point := end
		if _, decimals, found := strings.Cut(digits, "."); found {
			point = end - len(decimals) - 1
		}
		name := strings.TrimSpace(broken + " " + strings.TrimSpace(line[m[4]:m[5]]))
		list = append(list, row{broken != "" || line[m[2]:m[3]] == "[ ] ", name, digits, point, table})
		broken = ""
	}
	return list
}

func lastPlace(t *testing.T, digits string) (n int64, places int) {
	t.Helper()
	whole, decimals, _ := strings.Cut(digits, ".")
	n, err := strconv.ParseInt(whole+decimals, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return n, len(decimals)
}

// Oils, water, alkalis, the batter of each of several parts, additions and
// carriers: each has one box to tick and the mass of the batch, rounded to the
// places shown, in the batch's order.
func TestEveryWeighingHasABoxAndItsMass(t *testing.T) {
	for name, b := range batches(t) {
		for _, unit := range []units.Unit{units.Gram, units.Ounce} {
			type weighing struct {
				name string
				mass units.Mass
			}
			var want []weighing
			for _, o := range b.Oils {
				want = append(want, weighing{o.Oil.Name(), o.Weigh})
			}
			for _, a := range b.Acids {
				want = append(want, weighing{a.Acid.Name, a.Weigh})
			}
			if b.Water.Weigh.Sign() > 0 {
				want = append(want, weighing{"Water", b.Water.Weigh})
			}
			for _, l := range b.Liquids {
				want = append(want, weighing{l.Name, l.Weigh})
			}
			for _, a := range b.Alkalis {
				name := map[soap.Alkali]string{
					soap.SodiumHydroxide:    "Sodium hydroxide (NaOH)",
					soap.PotassiumHydroxide: "Potassium hydroxide (KOH)",
				}[a.Alkali]
				if a.Strength.Given() {
					want = append(want, weighing{name + ", stock lye", a.Stock.Weigh})
				} else {
					want = append(want, weighing{name, a.Dry.Weigh})
				}
			}
			_, small := b.Formula.Scales()
			for _, p := range b.Parts {
				if len(b.Parts) > 1 {
					want = append(want, weighing{
						"Batter, " + p.Share.PercentFixed(1) + " % of the pot",
						p.Batter.Round(small, units.Nearest),
					})
				}
				for _, a := range p.Additions {
					if a.Paste.Mass.Sign() > 0 {
						want = append(want, weighing{a.Name + " paste", a.Paste.Weigh})
						continue
					}
					want = append(want, weighing{a.Name, a.Weigh})
					if c := a.Carrier; c != nil {
						in := c.Name
						if c.In == soap.InOil {
							in = c.Oil.Name()
						}
						want = append(want, weighing{"in " + in, c.Weigh})
					}
				}
			}
			page := write(t, b, unit)
			if boxes := strings.Count(page, "[ ]"); boxes != len(want) {
				t.Errorf("%s in %s: %d boxes for %d weighings", name, unit, boxes, len(want))
			}
			i := 0
			for _, r := range rows(page) {
				if !r.box {
					continue
				}
				_, places := lastPlace(t, r.mass)
				if i >= len(want) {
					t.Fatalf("%s in %s: a line too many, %s", name, unit, r.name)
				}
				mass := want[i].mass.Fixed(unit, places)
				if !strings.HasPrefix(want[i].name, strings.TrimSuffix(r.name, "…")) || r.mass != mass {
					t.Fatalf("%s in %s: line %d is %s, %s; want %v", name, unit, i, r.name, r.mass, want[min(i, len(want)-1)])
				}
				i++
			}
			if i != len(want) {
				t.Errorf("%s in %s: %d lines for %d weighings", name, unit, i, len(want))
			}
		}
	}
}

func TestTotalsAreTheSumOfTheLinesAboveThem(t *testing.T) {
	totals := 0
	for name, b := range batches(t) {
		for _, unit := range []units.Unit{units.Gram, units.Ounce} {
			var sum, poured int64
			table := 0
			for _, r := range rows(write(t, b, unit)) {
				n, _ := lastPlace(t, r.mass)
				if r.table != table {
					table, sum = r.table, 0
				}
				switch {
				case r.box || strings.HasPrefix(r.name, "Batter, the whole pot"):
					sum += n
				case r.name == "Poured in all":
					if n != poured {
						t.Errorf("%s in %s: poured in all is %d, the parts are %d", name, unit, n, poured)
					}
					totals++
				case r.name == "Oils into the pot" || r.name == "Lye" || r.name == "Poured":
					if n != sum {
						t.Errorf("%s in %s: %s is %s, its lines are %d", name, unit, r.name, r.mass, sum)
					}
					if r.name == "Poured" {
						poured += n
					}
					sum = 0
					totals++
				}
			}
		}
	}
	if totals < 300 {
		t.Errorf("only %d totals", totals)
	}
}

// In a table to weigh from, the points stand one under the other. What is held
// back is told below the total of the oils, in the places of the other scale.
func TestTheMassesOfATableAreAlignedOnThePoint(t *testing.T) {
	for name, b := range batches(t) {
		for _, unit := range []units.Unit{units.Gram, units.Ounce} {
			point, places, table, total := 0, 0, 0, false
			for _, r := range rows(write(t, b, unit)) {
				_, p := lastPlace(t, r.mass)
				switch {
				case r.table != table:
					table, point, places, total = r.table, r.point, p, false
				case total && r.name != "Poured in all":
				case r.point != point || p != places:
					t.Errorf("%s in %s: %s, %s is not aligned", name, unit, r.name, r.mass)
				}
				total = total || r.name == "Oils into the pot"
			}
		}
	}
}

// A scale that shows grams shows these very digits.
func TestOnAGramScaleTheSheetShowsWhatTheScaleShows(t *testing.T) {
	for name, b := range batches(t) {
		scale, small := b.Formula.Scales()
		for _, r := range rows(write(t, b, units.Gram)) {
			division := small
			if r.table == 1 {
				division = scale
			}
			if !r.box || len(division.Text(units.Gram, 9)) > len("0.001") {
				continue // a division of ounces is not a round number of grams
			}
			if printed := mass(t, r.mass+" g"); printed.Round(division, units.Nearest) != printed {
				t.Errorf("%s: %s, %s g is not a multiple of %s", name, r.name, r.mass, division)
			}
		}
	}
}

// hasAlkali is every sheet: there is no soap without lye.
func TestEverySheetCarriesTheCautionsBesideTheirSteps(t *testing.T) {
	for name, b := range batches(t) {
		page := write(t, b, units.Gram)
		section := func(from, to string) string {
			_, after, found := strings.Cut(page, "\n"+from+"\n")
			text, _, ended := strings.Cut(after, "\n"+to+"\n")
			if !found || !ended {
				t.Fatalf("%s: no section from %s to %s", name, from, to)
			}
			return strings.Join(strings.Fields(text), " ")
		}
		lye := section("LYE", "BATTER AND PARTS")
		for _, caution := range []string{
			"Alkali burns skin and can blind", "tight goggles, alkali-proof gloves and long sleeves",
			"keep children and animals away",
			"fresh air", "no aluminium",
			"FIRST AID On skin: rinse at once with plenty of running water for 15 minutes", "do not neutralise on the skin",
			"In eyes: rinse at once with plenty of running water for 15 minutes", "take contact lenses out if that is easy",
			"Get medical help at once",
			"Swallowed: get medical help at once, and do not make anyone vomit",
		} {
			if !strings.Contains(lye, caution) {
				t.Errorf("%s: beside the lye the sheet does not say %q", name, caution)
			}
		}
		if before, _, _ := strings.Cut(lye, "[ ]"); !strings.Contains(before, "goggles") {
			t.Errorf("%s: the goggles come after the first weighing of the lye", name)
		}
		powder := false
		for _, p := range b.Parts {
			for _, a := range p.Additions {
				powder = powder || a.Kind != soap.Fragrance // an additive may dust, too
			}
		}
		if batter := section("BATTER AND PARTS", "HOW SURE THE SUPERFAT IS"); powder != strings.Contains(batter,
			"wear a dust mask") {
			t.Errorf("%s: powders %v, dust mask %v", name, powder, !powder)
		}
		flat := strings.Join(strings.Fields(page), " ")
		if !strings.Contains(flat, "Test a bar before it is used or given away") ||
			!strings.Contains(flat, "local rules, come before this sheet") {
			t.Errorf("%s: the sheet does not say that others come before it", name)
		}
		complete := b.Superfat.Complete
		for i := range b.Parts {
			complete = complete && b.Parts[i].Superfat.Complete
		}
		if incomplete := strings.Contains(page, "Not complete: no range"); incomplete == complete {
			t.Errorf("%s: complete %v, said %v", name, complete, !incomplete)
		}
		if !strings.Contains(page, "\nSources: -working") || strings.Contains(page, "\nSOURCES\n") || key.MatchString(page) {
			t.Errorf("%s: the sheet lists sources, or does not say where they are", name)
		}
	}
}

// saidOf reports whether a text says a finding: word for word, or in one paragraph with others of its case that
// has every word and every figure of it.
func saidOf(text, lead string, f soap.Finding) bool {
	message := strings.Join(strings.Fields(f.Message()), " ")
	if strings.Contains(text, lead+message) {
		return true
	}
	for _, paragraph := range regexp.MustCompile(`DANGER |WARNING | - `).Split(text, -1) {
		if !strings.Contains(paragraph, "The same holds for: ") && !strings.Contains(paragraph, "Likewise are read: ") {
			continue
		}
		words := plainWords(paragraph)
		lost := func(word string) bool { return !slices.Contains(words, word) }
		if !slices.ContainsFunc(plainWords(message), lost) {
			return true
		}
	}
	return false
}

// plainWords are the words of a text without the marks around them.
func plainWords(text string) []string {
	words := strings.Fields(text)
	for i := range words {
		words[i] = strings.Trim(words[i], "();:,.")
	}
	return words
}

// Dangers and warnings, all of them, before anything is weighed; dangers once more at the
// end; notes behind the masses.
func TestWhatIsGraveComesFirstAndDangerLastToo(t *testing.T) {
	dangers := 0
	for name, b := range batches(t) {
		page := write(t, b, units.Gram)
		before, after, _ := strings.Cut(page, "[ ] ")
		flatBefore, flatAfter := strings.Join(strings.Fields(before), " "), strings.Join(strings.Fields(after), " ")
		for _, f := range b.Findings {
			said := strings.Join(strings.Fields(f.Message()), " ")
			switch f.Severity {
			case soap.Danger:
				dangers++
				if !saidOf(flatBefore, "DANGER ", f) || !saidOf(flatAfter, "DANGER ", f) {
					t.Errorf("%s: %q is not both first and last", name, said)
				}
			case soap.Warning:
				if !saidOf(flatBefore, "WARNING ", f) || strings.Contains(flatAfter, said) {
					t.Errorf("%s: %q is not said before the first mass, once", name, said)
				}
			default:
				behind, early := flatAfter, strings.Contains(flatBefore, said)
				if strings.HasSuffix(f.Code, "-unjudged") && f.Detail == "" {
					said, early = f.Names[0], false // all together in one line; a warning may name it too
					_, behind, _ = strings.Cut(flatAfter, "Weighed, but not judged")
				}
				if early || !strings.Contains(behind, said) && !saidOf(behind, "- ", f) {
					t.Errorf("%s: %q does not stand behind the masses", name, said)
				}
			}
		}
		if end := strings.Index(page, "ONCE MORE"); end >= 0 {
			rest := page[end:]
			if strings.Contains(rest, "[ ]") || strings.Contains(rest, "WORTH KNOWING") {
				t.Errorf("%s: something stands behind the last danger", name)
			}
		}
	}
	if dangers == 0 {
		t.Error("no batch has a danger")
	}
}

func TestNoLineIsWiderThanThePage(t *testing.T) {
	for _, oil := range soap.Oils() {
		var page strings.Builder
		if err := sheet.WriteOil(&page, oil); err != nil {
			t.Fatal(err)
		}
		narrow(t, oil.ID(), page.String())
	}
	for _, c := range colour.Colourants() {
		var page strings.Builder
		if err := sheet.WriteColourant(&page, c); err != nil {
			t.Fatal(err)
		}
		narrow(t, c.ID(), page.String())
	}
	var list strings.Builder
	if err := sheet.WriteColourants(&list, colour.Colourants()); err != nil {
		t.Fatal(err)
	}
	narrow(t, "colourants", list.String())
	for name, b := range batches(t) {
		for _, unit := range []units.Unit{units.Gram, units.Ounce} {
			page := write(t, b, unit)
			narrow(t, name, page)
			var working strings.Builder
			if err := sheet.WriteWorking(&working, b); err != nil {
				t.Fatal(err)
			}
			narrow(t, name+", working", working.String())
			var tinted strings.Builder
			if err := sheet.WriteTint(&tinted, b, unit); err != nil {
				t.Fatal(err)
			}
			narrow(t, name+", tint", tinted.String())
			var caps strings.Builder
			if err := sheet.WriteCaps(&caps, b, unit); err != nil {
				t.Fatal(err)
			}
			narrow(t, name+", caps", caps.String())
			// a figure that is missing must leave out its line (of an oil's data it
			// is said that a publication does not give something)
			if strings.Contains(page+working.String(), "not given") {
				t.Errorf("%s: prints a figure that is not given", name)
			}
		}
	}
}

// narrow checks what holds of every page: at most 78 columns, no blanks at the
// end of a line, nothing that cannot be printed, nothing without a figure.
func narrow(t *testing.T, name, page string) {
	t.Helper()
	if !utf8.ValidString(page) || !strings.HasSuffix(page, "\n") {
		t.Errorf("%s: not UTF-8, or no newline at the end", name)
	}
	for line := range strings.Lines(page) {
		line = strings.TrimSuffix(line, "\n")
		if n := utf8.RuneCountInString(line); n > 78 {
			t.Errorf("%s: %d columns: %s", name, n, line)
		}
		if strings.TrimRight(line, " ") != line || strings.ContainsAny(line, "\t\r\x1b") {
			t.Errorf("%s: blanks at the end, or a control character: %q", name, line)
		}
	}
	for _, never := range []string{"NaN", "Inf", "%!", "<nil>", "-0.0 ", "\n\n\n"} {
		if strings.Contains(page, never) {
			t.Errorf("%s: prints %q", name, never)
		}
	}
}

var key = regexp.MustCompile(`\[W?(\d+)\]`)

// Every source that is cited is listed, once, and none that is not.
func TestEverySourceKeyIsListedAtTheFoot(t *testing.T) {
	check := func(name, page string) {
		text, foot, found := strings.Cut(page, "\nSOURCES\n")
		cited, listed := map[string]bool{}, 0
		for _, m := range key.FindAllStringSubmatch(text, -1) {
			cited[m[1]] = true
		}
		for line := range strings.Lines(foot) {
			if strings.HasPrefix(line, "[") {
				listed++
				if !strings.HasPrefix(strings.Replace(line, "[W", "[", 1), fmt.Sprintf("[%d]", listed)) ||
					!cited[strconv.Itoa(listed)] {
					t.Errorf("%s: %q is out of order or not cited", name, line)
				}
			}
		}
		if listed != len(cited) || found != (listed > 0) {
			t.Errorf("%s: %d sources listed, %d cited", name, listed, len(cited))
		}
	}
	for name, b := range batches(t) {
		var working strings.Builder
		if err := sheet.WriteWorking(&working, b); err != nil {
			t.Fatal(err)
		}
		check(name+", working", working.String())
	}
	for _, oil := range soap.Oils() {
		var page strings.Builder
		if err := sheet.WriteOil(&page, oil); err != nil {
			t.Fatal(err)
		}
		check(oil.ID(), page.String())
	}
}

// expression works out figures as a pocket calculator would.
type expression struct {
	tokens []string
	wrong  bool
}

var token = regexp.MustCompile(`[0-9.]+|\S`)

func (e *expression) next() string {
	if len(e.tokens) == 0 {
		return ""
	}
	return e.tokens[0]
}

func (e *expression) take() string {
	t := e.next()
	if t != "" {
		e.tokens = e.tokens[1:]
	}
	return t
}

func (e *expression) sum() float64 {
	v := e.product()
	for e.next() == "+" || e.next() == "−" {
		if e.take() == "+" {
			v += e.product()
		} else {
			v -= e.product()
		}
	}
	return v
}

func (e *expression) product() float64 {
	v := e.factor()
	for e.next() == "×" || e.next() == "/" {
		if e.take() == "×" {
			v *= e.factor()
		} else {
			v /= e.factor()
		}
	}
	return v
}

// factor takes a number or a sum in brackets, with its sign, its root or its square.
func (e *expression) factor() float64 {
	switch e.next() {
	case "−":
		e.take()
		return -e.factor()
	case "√":
		e.take()
		return math.Sqrt(e.factor())
	}
	v := e.single()
	if e.next() == "²" {
		e.take()
		v *= v
	}
	return v
}

func (e *expression) single() float64 {
	t := e.take()
	if t == "(" {
		v := e.sum()
		e.wrong = e.wrong || e.take() != ")"
		return v
	}
	v, err := strconv.ParseFloat(t, 64)
	e.wrong = e.wrong || err != nil
	return v
}

// follow works the figures of a step out and holds them against its result, within what the printing cuts off: masses
// are printed to 0.00001 g and percentages to 0.0001, and what is multiplied, or cut at last, may be off by a few.
func follow(t *testing.T, name string, s sheet.Step) {
	t.Helper()
	e := expression{tokens: token.FindAllString(s.Figures, -1)}
	want := e.sum()
	digits, unit, _ := strings.Cut(s.Result, " ")
	got, err := strconv.ParseFloat(strings.Replace(digits, "−", "-", 1), 64)
	if e.wrong || len(e.tokens) > 0 || err != nil {
		t.Errorf("%s, %s: %q cannot be followed to %q", name, s.Of, s.Figures, s.Result)
		return
	}
	if strings.HasPrefix(unit, "%") {
		want *= 100
	}
	if d := math.Abs(got - want); d > 2e-4 || d > 0.02*math.Abs(got) && d > 1e-8 {
		t.Errorf("%s, %s: %s is %v, printed as %s", name, s.Of, s.Figures, want, s.Result)
	}
}

// The working can be followed with a pocket calculator: the figures of each step give what is printed as its result.
func TestTheWorkingComesOutAsPrinted(t *testing.T) {
	followed := 0
	for name, b := range batches(t) {
		for _, s := range sheet.Working(b) {
			follow(t, name, s)
			followed++
		}
	}
	if followed < 300 {
		t.Errorf("only %d steps were followed", followed)
	}
}

func TestTheErrorOfTheWriterComesBack(t *testing.T) {
	gone := errors.New("gone")
	for _, b := range batches(t) {
		w := failing{gone}
		if err := sheet.Write(w, b, units.Gram); !errors.Is(err, gone) {
			t.Errorf("Write: %v", err)
		}
		if err := sheet.WriteWorking(w, b); !errors.Is(err, gone) {
			t.Errorf("WriteWorking: %v", err)
		}
		if err := sheet.WriteTint(w, b, units.Gram); !errors.Is(err, gone) {
			t.Errorf("WriteTint: %v", err)
		}
		if err := sheet.WriteTintPage(w, b); !errors.Is(err, gone) {
			t.Errorf("WriteTintPage: %v", err)
		}
		break
	}
	if err := sheet.WriteColourants(failing{gone}, colour.Colourants()); !errors.Is(err, gone) {
		t.Errorf("WriteColourants: %v", err)
	}
	if err := sheet.WriteColourant(failing{gone}, colour.Colourants()[0]); !errors.Is(err, gone) {
		t.Errorf("WriteColourant: %v", err)
	}
	if err := sheet.WriteOils(failing{gone}, soap.Oils()); !errors.Is(err, gone) {
		t.Errorf("WriteOils: %v", err)
	}
	if err := sheet.WriteOil(failing{gone}, soap.Oils()[0]); !errors.Is(err, gone) {
		t.Errorf("WriteOil: %v", err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// An own oil brings every choice of a value that a built-in one cannot show.
func TestAnOilOfOnesOwnIsExplainedInTheWorking(t *testing.T) {
	b := batchOf(t, `{"formula":"Own oils","oils":[
		{"oil":"lot-1","name":"Lot one","share":"30 %","saponification":"190"},
		{"oil":"lot-2","name":"Lot two","share":"30 %","saponification":{"low":"188","high":"194"}},
		{"oil":"lot-3","name":"Lot three","share":"rest","profile":{"C18:1":"71 %","C16:0":"29 %"}}],
		"alkali":[{"kind":"sodium-hydroxide","purity":"98 %"}],"superfat":"6 %","water":{"per_alkali":"2"},"size":{"oils":"800 g"}}`)
	var page bytes.Buffer
	if err := sheet.WriteWorking(&page, b); err != nil {
		t.Fatal(err)
	}
	flat := strings.Join(strings.Fields(page.String()), " ")
	for _, said := range []string{
		"given with the formula, without a range", "given with the formula, from a range of 188 to 194",
		"computed from its fatty acids; no value is published", "water = alkali × water per alkali",
		"purity 98 %, one figure",
	} {
		if !strings.Contains(flat, said) {
			t.Errorf("the working does not say %q", said)
		}
	}
	narrow(t, "own oils", page.String())
}

// Names of any script stay in their column.
// Of two alkalis each weighing says what stands on its bottle, right below its line.
func TestTwoAlkalisAreToldApartByTheirBottles(t *testing.T) {
	text := func(alkali string) string {
		return `{"formula": "Lantern bars", "oils": [{"oil": "olive", "share": "100 %"}], "alkali": [` + alkali + `],
			"superfat": "6 %", "water": {"lye_concentration": "32 %"}, "size": {"oils": "800 g"}}`
	}
	page := write(t, batchOf(t, text(`{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}, "saponifies": "90 %"},
		{"kind": "potassium-hydroxide", "stock": {"strength": "45 %"}, "saponifies": "10 %"}`)), units.Gram)
	lines := strings.Split(page, "\n")
	for label, want := range map[string]string{
		"(NaOH)": "label says NaOH, purity 98 % (97 to 99 %)",
		"(KOH)":  "label says KOH, strength 45 %",
	} {
		found := false
		for i, line := range lines[:len(lines)-1] {
			if strings.HasPrefix(line, "[ ] ") && strings.Contains(line, label) {
				found = strings.Contains(lines[i+1], want)
			}
		}
		if !found {
			t.Errorf("%q is not said below the line of %s", want, label)
		}
	}
	if one := write(t, batchOf(t, text(`{"kind": "sodium-hydroxide", "purity": "98 %"}`)),
		units.Gram); strings.Contains(one, "label says") {
		t.Error("one alkali cannot be confused with another")
	}
}

func TestALongNameKeepsItsColumn(t *testing.T) {
	for _, name := range []string{"Lard from the farm behind the hill, of the autumn lot", strings.Repeat("ä", 100), "x"} {
		b := batchOf(t, `{"formula":"cups","oils":[{"oil":"lot-1","name":"`+name+`","share":"40 %","saponification":"190"},{"oil":"olive","share":"rest"}],
			"alkali":[{"kind":"sodium-hydroxide","purity":"98 %"}],"superfat":"6 %","water":{"per_alkali":"2"},"size":{"oils":"800 g"}}`)
		list := rows(write(t, b, units.Gram))
		if len(list) < 2 || list[0].point != list[1].point || list[0].mass != "320.0" {
			t.Errorf("%s: %v", name, list[:min(2, len(list))])
		}
	}
}

// The oil of a jug may have a name as long as it likes, in a paste too: its lines keep to
// the page and stand in from what they carry.
func TestALongNameOfAJugKeepsItsColumn(t *testing.T) {
	long := strings.TrimSpace(strings.Repeat("Oil of the hill behind the hall ", 6))
	for _, carrier := range []string{`"ratio":"2"`, `"ratio":"2","paste":true`} {
		b := batchOf(t, `{"formula":"cups","oils":[{"oil":"lot-1","name":"`+long+`","share":"40 %","saponification":"190"},{"oil":"olive","share":"rest"}],
			"alkali":[{"kind":"sodium-hydroxide","purity":"98 %"}],"superfat":"6 %","water":{"per_alkali":"2"},"size":{"oils":"800 g"},
			"parts":[{"part":"base","share":"rest","colourants":[{"colourant":"kaolin","load":"1 % of oils","carrier":{"liquid":"lot-1",`+carrier+`}}]}]}`)
		page := write(t, b, units.Gram)
		narrow(t, carrier, page)
		_, part, _ := strings.Cut(page, "\nbase\n")
		part, _, _ = strings.Cut(part, "Poured")
		in := 0
		for line := range strings.Lines(part) {
			if strings.Contains(line, "hill") {
				in++
				if line = strings.Replace(line, "[ ]", "   ", 1); len(line)-len(strings.TrimLeft(line, " ")) < 6 {
					t.Errorf("%q is not within its colourant", line)
				}
			}
		}
		if in < 2 {
			t.Errorf("%s: the name of the oil stands in %d lines: %s", carrier, in, part)
		}
	}
}
