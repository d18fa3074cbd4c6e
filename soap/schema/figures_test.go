package schema_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// bounds are those that any figure of a formula has, in any unit.
func bounds() []string {
	return []string{
		"0", "0.001", "0.1", "0.7", "1", "1.2", "5", "10", "15", "30", "32", "50", "52.8", "59", "60", "100", "101", "140", "212", "273.15", "288.15", "300",
		"333.15", "373.15", "393.7007874", "450", "1000", "2204.6226218487758", "10000", "35273.961949580412", "100000", "155000.31", "1000000", "100000000", "1000000000", "0.000001",
		"3.527396", "0.2204622", "0.00003527396", "0.0000022046",
	}
}

// figures are the digits that a quantity is tried with: of every size; at every bound; where
// taking turns into refusing, also beside it by less and by more than what rounds away; and
// forms that are right or wrong by themselves.
func figures(suits func(digits string) bool) []string {
	seen := map[string]bool{}
	write := func(r *big.Rat) string {
		return strings.TrimRight(strings.TrimRight(r.FloatString(34), "0"), ".")
	}
	rat := func(text string) *big.Rat {
		r, _ := new(big.Rat).SetString(text)
		return r
	}
	times := func(r *big.Rat, by string) *big.Rat { return new(big.Rat).Mul(r, rat(by)) }
	for _, text := range bounds() {
		bound := rat(text)
		seen[text] = true
		seen[write(times(bound, "0.99"))], seen[write(times(bound, "1.01"))] = true, true
		if text != "0" && suits(write(times(bound, "0.99"))) == suits(write(times(bound, "1.01"))) {
			continue
		}
		for _, off := range []string{
			"1", "0.1", "0.01", "0.0000006", "0.0000005", "0.0000004", "0.00000006", "0.00000004", "0.000000006", "0.000000004", "0.0000000006", "0.0000000005", "0.0000000004",
			"0.0000000000006", "0.0000000000005", "0.0000000000004", "0.0000000000000001",
		} {
			seen[write(new(big.Rat).Add(bound, rat(off)))] = true
			if less := new(big.Rat).Sub(bound, rat(off)); less.Sign() >= 0 {
				seen[write(less)] = true
			}
		}
	}
	for _, digits := range []string{"1", "5", "99999999"} {
		for exponent := -14; exponent <= 10; exponent++ {
			seen[write(rat(fmt.Sprintf("%se%d", digits, exponent)))] = true
		}
	}
	for _, form := range []string{
		"", "-1", "-0", "-0.0000001", "+1", " 1", "1.", ".5", "1.5.5", "1,5", "1e2", "1E2", "0x1", "١", "½", "1 000", "1_000", "NaN", "rest", "max",
		"007", "0000000000000001", "00000000000000001", "0100", "00100.00", "1.10", "1." + strings.Repeat("0", 34), "1." + strings.Repeat("0", 35), "5." + strings.Repeat("3", 34), "5." + strings.Repeat("3", 35),
	} {
		seen[form] = true
	}
	return slices.Sorted(maps.Keys(seen))
}

// unitsTried are all units that any quantity has, right and wrong, with and without spaces.
func unitsTried() []string {
	return []string{
		"", " ", " %", "%", "  %", " % ", " %%", "\u00a0%", " percent", " g", "g", "  g", " G", " gr", " kg", " mg", " oz", " lb", " t", " µg", " mL", "mL", " ml", " L", " l", " mm", "mm", " cm", " m", " in", " ft", "\"",
		" mm²", " cm²", "cm2", " m²", " in²", " in2", " °C", "°C", " C", " °F", "F", " K", " °K", " c", " mg/g", "mg/g", " mg KOH/g", " g/mL", "g/mL", " g/ml", " kg/L",
		" % of oils", "% of batter", " % of oil", " % of  oils", " g of oils", " % of water", " nm", "nm", "  nm", " per 100 g", " per 1 kg", " per 0 g", " per oz", "  per 100 g", " per 2000 kg", " per 1000000.0000000004 g", "\n", " g\n", " %\n",
	}
}

// A figure is a kind of quantity that the schema defines, and where a formula has one.
type figure struct {
	definition string
	example    string
	spot       spot
}

// figuresOf finds a place for every definition of a text that is a quantity.
func figuresOf(t testing.TB, d *document, texts []string) []figure {
	t.Helper()
	quantities := map[string]bool{}
	for name, node := range d.definitions {
		for at := node.(map[string]any); at != nil; {
			_, patterned := at["pattern"]
			if patterned && name != "name" && name != "note" && name != "srgb" { // texts, no quantities
				quantities[name] = true
			}
			to, refers := at["$ref"].(string)
			if !refers {
				break
			}
			at = d.definitions[strings.TrimPrefix(to, "#/$defs/")].(map[string]any)
		}
	}
	found := map[string]figure{}
	ends := regexp.MustCompile(`\.(low|typical|high)$`) // where the other ends are in the way
	shortest := slices.SortedFunc(slices.Values(texts), func(a, b string) int { return len(a) - len(b) })
	for _, text := range shortest {
		for s := range d.spots(decoded(t, []byte(text))) {
			if _, ok := s.value.(string); !ok || ends.MatchString(s.place) && s.place != "pigments[].usual.high" {
				continue
			}
			for name := range quantities {
				if _, have := found[name]; !have && (s.says.refersOnlyTo(name) || name == "pour_temperature" && s.place == "temperature.pour" && strings.Contains(text, `"vessels"`)) {
					found[name] = figure{name, text, s}
				}
			}
		}
	}
	for name := range quantities {
		if _, have := found[name]; !have && !slices.Contains([]string{"percentage", "number", "load_share"}, name) {
			t.Errorf("no example has a %s by itself", name)
		}
	}
	var list []figure
	for _, name := range slices.Sorted(maps.Keys(found)) {
		list = append(list, found[name])
	}
	return list
}

// refersOnlyTo reports whether a value is a definition, or one of several forms of which it
// is the only text.
func (v value) refersOnlyTo(name string) bool {
	target := "#/$defs/" + name
	if v.node["$ref"] == target {
		return true
	}
	node := v.document.target(v.node)
	list, _ := node["anyOf"].([]any)
	for _, one := range list {
		if one := one.(map[string]any); one["$ref"] == target {
			return len(list) > 1
		}
	}
	return false
}

// within reports whether a path lies in an object.
func within(path, object string) bool { return strings.HasPrefix(path, object+".") }

// looser are the units whose bound a pattern draws at a whole one above.
func looser(text string) bool {
	for _, unit := range []string{"oz", "lb", "in", "in²", "in2"} {
		if strings.HasSuffix(strings.TrimSpace(text), unit) {
			return true
		}
	}
	return false
}

// written gives the texts that a kind of quantity is tried with: every unit with a few
// figures, and every figure with the units that suit it. suits says whether one or the other
// takes a text.
func written(suits func(string) bool) []string {
	var texts []string
	tried := map[string]bool{}
	for _, before := range []string{"", "1 per "} {
		for _, unit := range unitsTried() {
			few, plain := []string{"0", "1", "50", "192.5"}, false
			for _, digits := range few {
				text := before + digits + unit
				plain = plain || suits(text)
				texts = append(texts, text)
			}
			if spelled := before + strings.TrimSpace(unit); plain && !tried[spelled] {
				tried[spelled] = true
				for _, digits := range figures(func(digits string) bool { return suits(before + digits + unit) }) {
					texts = append(texts, before+digits+unit)
				}
			}
		}
	}
	return texts
}

// Each kind of quantity is written in every way and size at one place of a formula: the
// schema takes it where the reader does.
func TestTheSchemaReadsQuantitiesAsTheReaderDoes(t *testing.T) {
	t.Parallel()
	d := documentOf(t, "formula/1")
	list := figuresOf(t, d, smaller(t, examples(t)))
	var requests []request
	for _, f := range list {
		part := map[string]any{"$schema": d.root["$schema"], "$defs": d.definitions}
		node := f.spot.says.node
		if target := "#/$defs/" + f.definition; node["$ref"] == target || f.definition == "pour_temperature" {
			node = map[string]any{"$ref": target}
		}
		maps.Copy(part, node)
		requests = append(requests, request{Name: f.definition, Schema: json.RawMessage(encoded(t, part))})
	}
	reader := make([]func(string) bool, len(list)) // whether it refuses a text
	texts := make([][]string, len(list))
	for i, f := range list {
		instance := decoded(t, []byte(f.example))
		before, after, _ := strings.Cut(encoded(t, put(t, instance, f.spot.steps, nobodysKey)), `"`+nobodysKey+`"`)
		known := map[string]bool{}
		reader[i] = func(text string) bool {
			refused, asked := known[text]
			if asked {
				return refused
			}
			known[text] = slices.ContainsFunc(faultsOf(t, before+encoded(t, text)+after), func(fault soap.Fault) bool {
				return (fault.Path == f.spot.path || strings.HasSuffix(f.spot.place, "{}") && within(f.spot.path, fault.Path)) && !errors.Is(fault.Kind, soap.ErrConflict) && !errors.Is(fault.Kind, soap.ErrMissing)
			})
			return known[text]
		}
		texts[i] = written(func(text string) bool { return !reader[i](text) })
		for _, text := range texts[i] {
			requests = append(requests, request{Name: f.definition, Instance: json.RawMessage(encoded(t, text))})
		}
	}
	said := verdicts(t, requests...)[len(list):]
	for i, f := range list {
		takes, refuses, loose := 0, 0, 0
		for j, text := range texts[i] {
			wrong, refused := said[j] != "", reader[i](text)
			switch {
			case wrong && refused:
				refuses++
			case !wrong && !refused:
				takes++
			case !wrong && looser(text):
				loose++
			default:
				t.Errorf("%s at %s: %q: the schema refuses it: %v, the reader: %v", f.definition, f.spot.path, text, wrong, refused)
			}
		}
		said = said[len(texts[i]):]
		if takes < 3 || refuses < 150 || loose > 200 {
			t.Errorf("%s: %d taken, %d refused, %d taken by the schema alone", f.definition, takes, refuses, loose)
		}
	}
}
