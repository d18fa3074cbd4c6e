package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math/big"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// object is a JSON object with its keys in the order in which they stand.
type object struct {
	keys   []string
	values map[string]any
}

// decode reads JSON into objects, lists, numbers and texts. A repeated key, null
// and a number that is not plain digits with at most six decimals are errors.
func decode(t testing.TB, text string) any {
	t.Helper()
	d := json.NewDecoder(strings.NewReader(text))
	d.UseNumber()
	value := decodeValue(t, d, "")
	if _, err := d.Token(); err != io.EOF {
		t.Errorf("more after the end: %v", err)
	}
	return value
}

func decodeValue(t testing.TB, d *json.Decoder, path string) any {
	t.Helper()
	token, err := d.Token()
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	switch token := token.(type) {
	case json.Delim:
		if token == '[' {
			list := []any{}
			for d.More() {
				list = append(list, decodeValue(t, d, fmt.Sprintf("%s[%d]", path, len(list))))
			}
			_, _ = d.Token()
			return list
		}
		o := object{values: map[string]any{}}
		for d.More() {
			key, err := d.Token()
			if err != nil {
				t.Fatalf("%s: %v", path, err)
			}
			if _, twice := o.values[key.(string)]; twice {
				t.Errorf("%s.%s stands twice", path, key)
			}
			o.keys = append(o.keys, key.(string))
			o.values[key.(string)] = decodeValue(t, d, path+"."+key.(string))
		}
		_, _ = d.Token()
		return o
	case json.Number:
		whole, decimals, _ := strings.Cut(token.String(), ".")
		if len(decimals) > 6 || strings.HasSuffix(decimals, "0") || whole == "-0" && decimals == "" ||
			strings.ContainsAny(token.String(), "eE+") {
			t.Errorf("%s is written %s", path, token)
		}
		return token
	case nil:
		t.Errorf("%s is null", path)
	}
	return token
}

// The keys of section "Out", each with the kind of its value: number, text, yes
// or no, list, object. A question mark: may be missing.
const (
	outlookKeys = "planned_pct:n as_printed_pct:n? low_pct:n likely_low_pct:n likely_high_pct:n high_pct:n complete:b " +
		"free_alkali_worst_pct:n?"
	batchKeys = "schema:t formula:t oils:l alkali:l water:o lye:o batter_g:n poured_g:n dry_g:n superfat:o parts:l " +
		"findings:l"
	partKeys = "part:t share_pct:n batter_g:n oils_g:n water_g:n poured_g:n dry_g:n superfat:o additions:l"
)

func kindOf(v any) string {
	switch v.(type) {
	case json.Number:
		return "n"
	case string:
		return "t"
	case bool:
		return "b"
	case []any:
		return "l"
	case object:
		return "o"
	}
	return "?"
}

// keyed checks the keys of an object, which stand in the order of the format.
func keyed(t *testing.T, where string, v any, keys string) object {
	t.Helper()
	o, ok := v.(object)
	if !ok {
		t.Fatalf("%s is %T", where, v)
	}
	last := -1
	for want := range strings.FieldsSeq(keys) {
		key, kind, _ := strings.Cut(want, ":")
		kind, optional := strings.CutSuffix(kind, "?")
		value, there := o.values[key]
		switch {
		case !there && !optional:
			t.Errorf("%s lacks %s", where, key)
		case there && kindOf(value) != kind:
			t.Errorf("%s.%s is %T", where, key, value)
		}
		if at := slices.Index(o.keys, key); at >= 0 {
			if at < last {
				t.Errorf("%s: %s stands out of order in %v", where, key, o.keys)
			}
			last = at
		}
	}
	return o
}

// micrograms gives a number with six decimals as a whole one.
func micrograms(t *testing.T, v any) int64 {
	t.Helper()
	r, ok := new(big.Rat).SetString(fmt.Sprint(v))
	if !ok {
		t.Fatalf("%v is no number", v)
	}
	r.Mul(r, big.NewRat(1_000_000, 1))
	if !r.IsInt() {
		t.Fatalf("%v has more than six decimals", v)
	}
	return r.Num().Int64()
}

func TestTheBatchObjectHasTheKeysOfTheFormatInTheirOrder(t *testing.T) {
	for _, path := range names(t, formulas+"/*.json") {
		t.Run(filepath.Base(path), func(t *testing.T) {
			stdout, _, _ := lyewright("", "batch", "-json", path)
			b := keyed(t, "batch", decode(t, stdout), batchKeys)
			if b.keys[0] != "schema" || b.values["schema"] != "batch/1" {
				t.Errorf("begins with %s %v", b.keys[0], b.values["schema"])
			}
			list := func(o object, key string) []any { return o.values[key].([]any) }
			for i, o := range list(b, "oils") {
				keyed(t, fmt.Sprintf("oils[%d]", i), o, "oil:t asked:t? name:t mass_g:n weigh_g:n withheld_g:n")
			}
			for i, a := range list(b, "alkali") {
				keys := "kind:t purity_pct:n mass_g:n weigh_g:n"
				if _, stock := a.(object).values["stock_g"]; stock {
					keys = "kind:t purity_pct:n mass_g:n strength_pct:n stock_g:n stock_weigh_g:n"
				}
				keyed(t, fmt.Sprintf("alkali[%d]", i), a, keys)
			}
			keyed(t, "water", b.values["water"], "asked_g:n mass_g:n weigh_g:n withheld_g:n")
			keyed(t, "lye", b.values["lye"], "concentration_pct:n water_per_alkali:n mass_g:n")
			outlooks := []object{keyed(t, "superfat", b.values["superfat"], outlookKeys)}
			for i, p := range list(b, "parts") {
				where := fmt.Sprintf("parts[%d]", i)
				part := keyed(t, where, p, partKeys)
				outlooks = append(outlooks, keyed(t, where+".superfat", part.values["superfat"], outlookKeys))
				for j, a := range list(part, "additions") {
					keys := "name:t kind:t mass_g:n weigh_g:n"
					if _, everyday := a.(object).values["asked"]; everyday {
						keys = strings.Replace(keys, "kind:t", "asked:t kind:t", 1)
					}
					if _, carried := a.(object).values["carrier"]; carried {
						keys += " carrier:t carrier_g:n carrier_weigh_g:n from:t"
					}
					if _, mixed := a.(object).values["paste_g"]; mixed {
						keys += " paste_g:n paste_weigh_g:n"
					}
					if got := keyed(t, fmt.Sprintf("%s.additions[%d]", where, j), a,
						keys); len(got.keys) != len(strings.Fields(keys)) {
						t.Errorf("%s.additions[%d] has the keys %v", where, j, got.keys)
					}
				}
			}
			severities := []string{"danger", "warning", "note"}
			rank := 0
			for i, f := range list(b, "findings") {
				where := fmt.Sprintf("findings[%d]", i)
				finding := keyed(t, where, f, "code:t severity:t subject:t message:t names:l detail:t? value:n? limit:n? unit:t? "+
					"source:t")
				at := slices.Index(severities, finding.values["severity"].(string))
				if at < rank {
					t.Errorf("%s: %s stands behind a milder one, or is unknown", where, finding.values["severity"])
				}
				rank = at
				for _, key := range []string{"code", "subject", "message", "source"} {
					if finding.values[key] == "" {
						t.Errorf("%s: %s is empty", where, key)
					}
				}
				if _, measured := finding.values["value"]; measured && finding.values["unit"] == nil {
					t.Errorf("%s has a value without a unit", where)
				}
			}
			for _, o := range outlooks {
				last := int64(-1 << 62)
				for _, key := range []string{"low_pct", "likely_low_pct", "planned_pct", "likely_high_pct", "high_pct"} {
					if at := micrograms(t, o.values[key]); at < last {
						t.Errorf("%s is lower than what stands below it: %v", key, o.values)
					} else {
						last = at
					}
				}
				if _, free := o.values["free_alkali_worst_pct"]; free != (micrograms(t, o.values["low_pct"]) < 0) {
					t.Errorf("free alkali: %v at a worst case of %v", free, o.values["low_pct"])
				}
			}
		})
	}
}

// The masses add up as printed, within a microgram for each printed figure.
func TestTheMassesOfTheBatchObjectAddUp(t *testing.T) {
	for _, path := range names(t, formulas+"/*.json") {
		t.Run(filepath.Base(path), func(t *testing.T) {
			stdout, _, _ := lyewright("", "batch", "-json", path)
			b := decode(t, stdout).(object)
			figure := func(o any, key string) int64 { return micrograms(t, o.(object).values[key]) }
			// elsewhere: lye water that stock and liquids bring; besides: the solids of
			// liquids, and acids with their water
			var elsewhere, besides, inAcids int64
			var oils, alkali, batter, poured, dry, held, heldAdded int64
			n := int64(0)
			for _, o := range b.values["oils"].([]any) {
				oils += figure(o, "mass_g")
				held += figure(o, "withheld_g")
				n++
			}
			for _, a := range b.values["alkali"].([]any) {
				alkali += figure(a, "mass_g")
				whole, weighed := "mass_g", "weigh_g"
				if a.(object).values["stock_g"] != nil {
					whole, weighed = "stock_g", "stock_weigh_g"
					elsewhere += figure(a, "stock_g") - figure(a, "mass_g")
				}
				if figure(a, weighed) > figure(a, whole) {
					t.Errorf("alkali is weighed upwards: %v", a)
				}
				n++
			}
			for _, p := range b.values["parts"].([]any) {
				part := figure(p, "batter_g")
				batter += part
				poured += figure(p, "poured_g")
				dry += figure(p, "dry_g")
				lines := int64(2)
				for _, a := range p.(object).values["additions"].([]any) {
					addition := a.(object)
					part += figure(a, "mass_g")
					lines += 2
					if addition.values["kind"] == "fragrance" && figure(a, "weigh_g") > figure(a, "mass_g") {
						t.Errorf("a fragrance is weighed upwards: %v", a)
					}
					if addition.values["carrier"] != nil {
						part += figure(a, "carrier_g")
						if addition.values["from"] == "formula" {
							heldAdded += figure(a, "carrier_g")
						}
					}
				}
				if d := part - figure(p, "poured_g"); max(d, -d) > lines {
					t.Errorf("%v: batter and additions differ from poured by %d µg", p.(object).values["part"], d)
				}
				n += lines
			}
			water := b.values["water"]
			if liquids, ok := water.(object).values["liquids"].([]any); ok {
				for _, l := range liquids {
					elsewhere += figure(l, "water_g")
					besides += figure(l, "mass_g") - figure(l, "water_g")
					n += 2
				}
			}
			if acids, ok := b.values["acids"].([]any); ok {
				for _, a := range acids {
					besides += figure(a, "mass_g")
					inAcids += figure(a, "water_g")
					n += 2
				}
			}
			for _, sum := range []struct {
				of        string
				got, want int64
			}{
				{"lye", figure(b.values["lye"], "mass_g"), alkali + elsewhere + figure(water, "mass_g")},
				{"water", figure(water, "asked_g"), figure(water, "mass_g") + figure(water, "withheld_g") + elsewhere + inAcids},
				{"batter", figure(b, "batter_g"), oils + alkali + elsewhere + besides + figure(water, "mass_g")},
				{"batter of the parts", figure(b, "batter_g"), batter},
				{"poured", figure(b, "poured_g"), poured},
				{"dry", figure(b, "dry_g"), dry},
				{"held back", held + figure(water, "withheld_g"), heldAdded},
			} {
				if d := sum.got - sum.want; max(d, -d) > n {
					t.Errorf("%s is %d, its lines add up to %d µg", sum.of, sum.got, sum.want)
				}
			}
		})
	}
}

func TestTheOilsObjectHasTheKeysOfTheFormat(t *testing.T) {
	stdout, stderr, status := lyewright("", "oils", "-json")
	if status != done || stderr != "" {
		t.Fatalf("exit %d, %q", status, stderr)
	}
	list, ok := decode(t, stdout).([]any)
	if !ok || len(list) != 59 {
		t.Fatalf("%d oils, want 59, as soap/oiltable_test.go counts them", len(list))
	}
	var ids []string
	for _, v := range list {
		o := keyed(t, "oil", v, "oil:t asked:t? name_note:t? name:t inci:t? kind:t saponification:o? iodine:o? source:t")
		id := o.values["oil"].(string)
		ids = append(ids, id)
		oil, err := soap.LookUpOil(id)
		if err != nil {
			t.Fatal(err)
		}
		if o.values["name"] != oil.Name() || o.values["kind"] != oil.Kind().String() ||
			o.values["source"] != oil.ValueSource().String() {
			t.Errorf("%s: %v", id, o.values)
		}
		if inci, _ := o.values["inci"].(string); inci != oil.INCI() {
			t.Errorf("%s: INCI %q, want %q", id, inci, oil.INCI())
		}
		same := func(what string, got any, want string) {
			t.Helper()
			digits := ""
			if got != nil {
				digits = fmt.Sprint(got)
			}
			if digits != want {
				t.Errorf("%s: %s is %q, want %q", id, what, digits, want)
			}
		}
		value := oil.Saponification()
		if s, there := o.values["saponification"]; there {
			s := keyed(t, id+".saponification", s, "low:n? typical:n high:n? middle:n? profile:n? how:t")
			same("typical", s.values["typical"], value.Typical.MilligramsPerGramText(6))
			same("middle", s.values["middle"], oil.Middle().MilligramsPerGramText(6))
			same("profile", s.values["profile"], oil.ProfileValue().MilligramsPerGramText(6))
			same("how", s.values["how"], oil.How().String())
			low, high := "", ""
			if oil.HasRange() {
				low, high = value.Low.MilligramsPerGramText(6), value.High.MilligramsPerGramText(6)
			}
			same("low", s.values["low"], low)
			same("high", s.values["high"], high)
		} else if value.Typical.Given() {
			t.Errorf("%s lacks its saponification value", id)
		}
		low, high := oil.Iodine()
		if iodine, there := o.values["iodine"]; there {
			iodine := keyed(t, id+".iodine", iodine, "low:n? high:n?")
			same("iodine low", iodine.values["low"], low.PercentText(6))
			same("iodine high", iodine.values["high"], high.PercentText(6))
		} else if low.Given() || high.Given() {
			t.Errorf("%s lacks its iodine value", id)
		}
	}
	if !slices.IsSorted(ids) {
		t.Errorf("not in the order of their ids: %v", ids)
	}
	// named ones come in the order asked for
	two, _, _ := lyewright("", "oils", "shea-butter", "-json", "olive")
	if got := decode(t, two).([]any); len(got) != 2 || got[0].(object).values["oil"] != "shea-butter" ||
		got[1].(object).values["oil"] != "olive" {
		t.Errorf("%.200s", two)
	}
}
