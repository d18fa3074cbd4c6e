package main

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// module writes a small module and loads it.
func module(t *testing.T, files map[string]string) *program {
	t.Helper()
	root := t.TempDir()
	files["go.mod"] = "module example.com/lantern\n\ngo 1.26\n"
	for name, text := range files {
		path := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	p, err := load(root)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

const scaleTypes = `package scale

type Rounding int

const (
	Nearest Rounding = iota
	Down
	Up
)

type Mass struct{ ng int }

func (m Mass) Add(n Mass) Mass     { return Mass{m.ng + n.ng} }
func (m Mass) Sub(n Mass) Mass     { return Mass{m.ng - n.ng} }
func (m Mass) Compare(n Mass) int  { return m.ng - n.ng }
func (m Mass) Round(Rounding) Mass { return m }

type Range struct{ Low, High Mass }

func between(a, b Mass, text, other string) {}
`

func TestEveryOperatorMakesItsMistakes(t *testing.T) {
	for _, row := range []struct{ operator, body, from, to string }{
		{"arithmetic", "x = x * 3", "*", "/"},
		{"arithmetic", "x -= 2", "-=", "+="},
		{"arithmetic", "x++", "++", "--"},
		{"relation", "yes = x <= 3", "<=", "<"},
		{"relation", "yes = x == 3", "==", "!="},
		{"compared", "yes = m.Compare(n) < 0", "<", "<="},
		{"compared", "yes = m.Compare(n) < 0", "<", ">"},
		{"boolean", "yes = yes && x > 0", "&&", "||"},
		{"boolean", "yes = !yes", "!yes", "yes"},
		{"boolean", "yes = true", "true", "false"},
		{"negation", "if yes { x = 1 }", "yes", "!(yes)"},
		{"constant", "x = 41", "41", "42"},
		{"constant", "y = 2.5", "2.5", "2.525"},
		{"dropped", "x = 9", "x = 9", ""},
		{"dropped", "between(m, n, t, u)", "between(m, n, t, u)", ""},
		{"method", "m = m.Add(n)", "Add", "Sub"},
		{"method", "x = min(x, 3)", "min", "max"},
		{"rounding", "m = m.Round(Down)", "Down", "Up"},
		{"rounding", "m = m.Round(Down)", "Down", "Nearest"},
		{"arguments", "between(m, n, t, u)", "m, n", "n, m"},
		{"arguments", "m = m.Sub(n)", "m.Sub(n", "(n).Sub(m"},
		{"end", "m = r.Low", "Low", "High"},
	} {
		source := scaleTypes + "\nfunc work(m, n Mass, r Range, x int, y float64, yes bool, t, u string) {\n" + row.body + "\n}\n"
		p := module(t, map[string]string{"scale/scale.go": source})
		found, err := p.changesIn(p.packages["scale"])
		if err != nil {
			t.Fatal(err)
		}
		at := slices.IndexFunc(found, func(c change) bool {
			return c.function == "work" && c.operator == row.operator && c.from == row.from && c.to == row.to
		})
		if at < 0 {
			t.Errorf("%s of %q: %q for %q is not among %+v", row.operator, row.body, row.to, row.from, found)
			continue
		}
		c := found[at]
		if err := p.compiles(map[string]string{c.file: c.apply(source)}); err != nil {
			t.Errorf("%s: %v", c.key(), err)
		}
	}
}

func TestTextAndWhatHasNoOrderAreLeftAlone(t *testing.T) {
	p := module(t, map[string]string{"scale/scale.go": scaleTypes + "\nfunc work(m, n Mass, t, u string) { between(m, m, t, u); _ = t + u; _ = m.Add(n) }\n"})
	found, err := p.changesIn(p.packages["scale"])
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range found {
		if c.function == "work" && (c.operator == "arguments" || c.operator == "arithmetic") {
			t.Errorf("%s", c.key())
		}
	}
}

func TestTheSameSeedTakesTheSameSample(t *testing.T) {
	list := make([]change, 100)
	for i := range list {
		list[i].start = i
	}
	packages := [][]change{list, list[:25]}
	a, b, c := chosen(packages, 30, 1), chosen(packages, 30, 1), chosen(packages, 30, 2)
	if len(a) != 30 || !slices.Equal(a, b) || slices.Equal(a, c) {
		t.Errorf("%d, %d and %d", len(a), len(b), len(c))
	}
}
