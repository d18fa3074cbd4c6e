package guard_test

import (
	"bytes"
	"encoding"
	"encoding/gob"
	"encoding/json"
	"fmt"
	"go/types"
	"log/slog"
	"math/rand/v2"
	"os"
	"path"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
	"github.com/google/go-cmp/cmp"
)

const exportedTypesFile = "exported_test.go"

// exportedTypesText is the source of exportedTypes: a line for every type that the library
// exports, aliases apart.
func exportedTypesText(t *testing.T) string {
	var imports, lines []string
	paths := libraryPackages(t)
	packages := load(t, paths)
	for _, p := range paths {
		before := len(lines)
		scope := packages[p].Scope()
		for _, name := range scope.Names() {
			if object, ok := scope.Lookup(name).(*types.TypeName); ok && object.Exported() && !object.IsAlias() {
				lines = append(lines, "\tnew("+path.Base(p)+"."+name+"),\n")
			}
		}
		if len(lines) > before {
			imports = append(imports, "\t\""+p+"\"\n")
		}
	}
	slices.Sort(imports)
	slices.Sort(lines)
	return "package guard_test\n\n// Made by go test ./internal/guard -update.\n\nimport (\n" + strings.Join(imports, "") +
		")\n\n" +
		"// exportedTypes points at a value of every type that the library exports.\nvar exportedTypes = []any{\n" +
		strings.Join(lines, "") + "}\n"
}

// No type can be forgotten: the list is the library's own.
func TestTheListOfExportedTypesIsWhole(t *testing.T) {
	want := exportedTypesText(t)
	if *update {
		if err := os.WriteFile(exportedTypesFile, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(exportedTypesFile)
	if err != nil || string(got) != want {
		differences(t, exportedTypesFile, string(got), want)
		t.Errorf("%v: run go test ./internal/guard -update", err)
	}
}

// oneWay are the types that refuse to be read back, and why that is right: each says what
// to do instead. What holds one of them refuses with it.
var oneWay = map[reflect.Type]string{
	reflect.TypeFor[soap.Formula]():          "is kept as its file",
	reflect.TypeFor[soap.Batch]():            "follows from its formula",
	reflect.TypeFor[soap.AdditionWeighing](): "follows from a formula",
	reflect.TypeFor[soap.LastBatch]():        "follows from a formula",
	reflect.TypeFor[soap.Caps]():             "follows from a batch",
	reflect.TypeFor[soap.Tint]():             "follows from a batch",
	reflect.TypeFor[soap.Oil]():              "is looked up",
	reflect.TypeFor[soap.Places]():           "is of a file",
	reflect.TypeFor[fragrance.Material]():    "is looked up",
	reflect.TypeFor[fragrance.Shelf]():       "is made of what is supplied",
	reflect.TypeFor[fragrance.Verdict]():     "follows from doses",
	reflect.TypeFor[colour.Colourant]():      "is looked up",
	reflect.TypeFor[colour.Status]():         "is published of a colourant",
	reflect.TypeFor[colour.Fastness]():       "is published of a colourant",
	reflect.TypeFor[colour.Shelf]():          "is made of what is supplied",
	reflect.TypeFor[tint.Calibration]():      "follows from swatches",
	reflect.TypeFor[fault.Fault]():           "follows from an input",
	// JSON alone; gob asks for gob.Register
	reflect.TypeFor[mould.Shape](): "does not say of itself which shape it is",
	reflect.TypeFor[error]():       "is told apart by identity",
}

// refuses reports whether a type is one-way, or holds one that is.
func refuses(typ reflect.Type, seen map[reflect.Type]bool) bool {
	if _, found := oneWay[typ]; found {
		return true
	}
	if seen[typ] || len(makers[typ]) > 0 {
		return false
	}
	seen[typ] = true
	switch typ.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Array:
		return refuses(typ.Elem(), seen)
	case reflect.Struct:
		for _, f := range reflect.VisibleFields(typ) {
			if f.IsExported() && refuses(f.Type, seen) {
				return true
			}
		}
	}
	return false
}

// makers gives values of the types whose fields are hidden, by what makes them.
var makers = map[reflect.Type][]func(*rand.Rand) any{}

func made[T any](makersOfT ...func(*rand.Rand) T) {
	typ := reflect.TypeFor[T]()
	for _, make := range makersOfT {
		makers[typ] = append(makers[typ], func(r *rand.Rand) any { return make(r) })
	}
}

func whole(r *rand.Rand) int64 { return r.Int64N(2_000_000_000_000) - 1_000_000_000_000 }

func init() {
	digits := func(r *rand.Rand, n int) string {
		text := ""
		for range n {
			text += string(rune('0' + r.IntN(10)))
		}
		return text
	}
	made(func(r *rand.Rand) units.Mass { return units.Nanograms(whole(r)) })
	made(
		func(*rand.Rand) units.Ratio { return units.Ratio{} }, // not given
		func(*rand.Rand) units.Ratio { return units.Whole(0) },
		func(r *rand.Rand) units.Ratio { return units.Percent(whole(r)) },
		func(r *rand.Rand) units.Ratio { return units.MustRatio("0." + digits(r, 34)) },
	)
	made(func(r *rand.Rand) units.Sum {
		return units.Sum{}.Plus(units.Nanograms(whole(r)), units.MustRatio("0."+digits(r, 10+r.IntN(15))))
	})
	made(func(r *rand.Rand) units.Volume { return units.Millilitres(whole(r) % 1_000_000) })
	made(func(r *rand.Rand) units.Density {
		return units.GramsPerMillilitre(units.MustRatio(digits(r, 1) + "." + digits(r, 9)))
	})
	made(func(r *rand.Rand) units.Length { return units.Millimetres(whole(r) % 10_000) })
	made(func(r *rand.Rand) units.Area { return units.SquareMillimetres(whole(r) % 10_000) })
	made(
		func(*rand.Rand) units.Temperature { return units.Temperature{} },
		func(r *rand.Rand) units.Temperature { c, _ := units.CelsiusOfFloat(r.Float64()*300 - 200); return c },
	)
	made(func(r *rand.Rand) units.TemperatureDifference { return units.FahrenheitDegrees(r.IntN(200) - 100) })
	made(func(*rand.Rand) fragrance.CAS { c, _ := fragrance.ParseCAS("97-53-0"); return c })
	made(func(r *rand.Rand) fragrance.Material { return builtin(r, "clove-bud", "lavender", fragrance.LookUp) })
	made(func(r *rand.Rand) fragrance.Rule {
		caps := builtin(r, "clove-bud", "lemongrass", fragrance.LookUp).Caps(fragrance.IFRAAndEU)
		return caps[r.IntN(len(caps))].Rule
	})
	made(func(r *rand.Rand) fragrance.Verdict {
		doses := []fragrance.Dose{{Material: builtin(r, "clove-bud", "lavender", fragrance.LookUp), Mass: units.Grams(1)}}
		return fragrance.Judge(fragrance.IFRAAndEU, units.Grams(100), doses)
	})
	made(func(*rand.Rand) fragrance.Shelf {
		s, _ := fragrance.NewShelf([]fragrance.Supplied{{ID: "lantern-pear"}}, fragrance.IFRAAndEU)
		return s
	})
	made(func(r *rand.Rand) colour.Colourant {
		return builtin(r, "titanium-dioxide", "ultramarine-blue", colour.LookUp)
	})
	made(func(r *rand.Rand) colour.Status {
		return builtin(r, "titanium-dioxide", "ultramarine-blue", colour.LookUp).Under(colour.EU)
	})
	made(func(r *rand.Rand) colour.Fastness {
		return builtin(r, "titanium-dioxide", "ultramarine-blue", colour.LookUp).InAlkali()
	})
	made(func(*rand.Rand) colour.Shelf {
		s, _ := colour.NewShelf([]colour.Supplied{{ID: "lantern-blue"}})
		return s
	})
	made(func(r *rand.Rand) soap.Oil { return builtin(r, "olive", "coconut", soap.LookUpOil) })
	made(func(*rand.Rand) tint.Calibration { return calibrated() })
	made(func(*rand.Rand) mould.Shape {
		return mould.Slab{Length: units.Millimetres(250), Width: units.Millimetres(90), Height: units.Millimetres(20)}
	})
	made(func(r *rand.Rand) error { return [...]error{nil, fault.ErrRange, units.ErrUnit}[r.IntN(3)] })
	gob.Register(mould.Slab{})
}

func builtin[T any](r *rand.Rand, one, other string, lookUp func(string) (T, error)) T {
	found, err := lookUp([...]string{one, other}[r.IntN(2)])
	if err != nil {
		panic(err) // a name of this file is wrong
	}
	return found
}

// calibrated is a calibration of a plain soap and a white one.
func calibrated() tint.Calibration {
	plain, _ := tint.ParseSRGB("#e8dcc0")
	pale, _ := tint.ParseSRGB("#efe8d8")
	white, _ := tint.ParseSRGB("#f4f0e8")
	loads := func(share string) []tint.Load {
		return []tint.Load{{Colourant: "titanium-dioxide", OfBatter: units.MustRatio(share)}}
	}
	swatches := tint.Swatches{White: "titanium-dioxide", Read: []tint.Swatch{
		{Name: "plain", SRGB: &plain}, {Name: "pale", SRGB: &pale, Loads: loads("0.3 %")}, {
			Name: "white", SRGB: &white,
			Loads: loads("1 %"),
		},
	}}
	fit, err := swatches.Calibrate()
	if err != nil {
		panic(err)
	}
	return fit
}

// fill makes up what a value holds.
func fill(t *testing.T, r *rand.Rand, v reflect.Value) {
	if all := makers[v.Type()]; len(all) > 0 {
		if value := all[r.IntN(len(all))](r); value != nil {
			v.Set(reflect.ValueOf(value))
		}
		return
	}
	switch v.Kind() {
	case reflect.Bool:
		v.SetBool(r.IntN(2) == 0)
	case reflect.Uint8:
		v.SetUint(uint64(r.IntN(4)))
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(r.IntN(200) - 100))
	case reflect.Float64:
		v.SetFloat(r.NormFloat64() * 100)
	case reflect.String:
		v.SetString([...]string{"", "olive", "lantern \"walk\"", "käse\n"}[r.IntN(4)])
	case reflect.Pointer:
		if r.IntN(3) > 0 {
			v.Set(reflect.New(v.Type().Elem()))
			fill(t, r, v.Elem())
		}
	case reflect.Slice:
		for range r.IntN(3) {
			element := reflect.New(v.Type().Elem()).Elem()
			fill(t, r, element)
			v.Set(reflect.Append(v, element))
		}
	case reflect.Array:
		for i := range v.Len() {
			fill(t, r, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			switch field := v.Type().Field(i); {
			case field.IsExported():
				fill(t, r, v.Field(i))
			case field.Type.Size() > 0 && oneWay[v.Type()] == "" && field.Name != "match" && field.Name != "asked":
				// match and asked are of the solved copy inside a batch alone.
				t.Fatalf("%v hides %s: say in makers how one is made, and let it come back or refuse", v.Type(), field.Name)
			}
		}
	default:
		t.Fatalf("%v: a kind that nobody draws yet", v.Type())
	}
}

var sameValue = []cmp.Option{
	cmp.Exporter(func(reflect.Type) bool { return true }),
	cmp.Comparer(func(a, b units.Ratio) bool { return a.Equal(b) }),
	cmp.Comparer(func(a, b units.Sum) bool { return a.Compare(b) == 0 }),
	cmp.Comparer(func(a, b units.Range) bool {
		return a.Low.Equal(b.Low) && a.Typical.Equal(b.Typical) && a.High.Equal(b.High)
	}),
	cmp.Comparer(func(a, b error) bool { return a == b }),
}

// said reports whether a refusal is a sentence that names what it is about.
func saidClearly(err error) bool {
	return strings.Contains(err.Error(), ": ") && strings.Contains(err.Error(), " ") && len(err.Error()) > 30
}

// A program that keeps a value of any exported type, as JSON or through gob, gets it back
// as it was, or an error: nothing is lost in silence.
func TestNoExportedTypeLosesANumber(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 1))
	for _, pointer := range exportedTypes {
		typ := reflect.TypeOf(pointer).Elem()
		if typ.Kind() == reflect.Interface {
			continue // what it holds is of another type
		}
		may := refuses(typ, map[reflect.Type]bool{})
		for range 20 {
			value := reflect.New(typ)
			fill(t, r, value.Elem())
			keeps(t, value, may)
			logged(t, value.Elem().Interface())
		}
	}
}

// keeps holds a value to coming back, or, where it may, to refusing.
func keeps(t *testing.T, value reflect.Value, mayRefuse bool) {
	t.Helper()
	typ := value.Type().Elem()
	for name, there := range map[string]func(any, any) error{"JSON": throughJSON, "gob": throughGob} {
		back := reflect.New(typ)
		switch err := there(value.Elem().Interface(), back.Interface()); {
		case err != nil && !mayRefuse:
			t.Errorf("%v refuses %s: %v", typ, name, err)
		case err != nil && !saidClearly(err):
			t.Errorf("%v refuses %s with no more than %q", typ, name, err)
		case err == nil:
			if diff := cmp.Diff(value.Elem().Interface(), back.Elem().Interface(), sameValue...); diff != "" {
				t.Errorf("%v comes out of %s otherwise (-was +is):\n%s", typ, name, diff)
			}
		}
	}
}

func throughJSON(value, back any) error {
	text, err := json.Marshal(value)
	if err != nil {
		return err
	}
	return json.Unmarshal(text, back)
}

func throughGob(value, back any) error {
	var stream bytes.Buffer
	if err := gob.NewEncoder(&stream).Encode(value); err != nil {
		if strings.Contains(err.Error(), "has no exported fields") {
			return nil // an empty struct: there is nothing to lose
		}
		return err
	}
	return gob.NewDecoder(&stream).Decode(back)
}

// logged holds a log of JSON to what encoding/json writes, and a log of text to what the
// value's own text is: an error is said where there is none.
func logged(t *testing.T, value any) {
	t.Helper()
	var out bytes.Buffer
	slog.New(slog.NewJSONHandler(&out, nil)).Info("kept", "value", value)
	want, err := json.Marshal(value)
	_, marshals := value.(json.Marshaler)
	_, isError := value.(error)
	switch {
	case err != nil:
		want = []byte(`"!ERROR:`)
	case isError && !marshals:
		return // its sentence
	}
	var read struct{ Value json.RawMessage }
	if bad := json.Unmarshal(out.Bytes(), &read); bad != nil || !bytes.HasPrefix(plainJSON(read.Value), plainJSON(want)) {
		t.Errorf("%T: logged as %s, want %s; %v", value, read.Value, want, bad)
	}
	texts, ok := value.(encoding.TextMarshaler)
	if !ok {
		return
	}
	out.Reset()
	slog.New(slog.NewTextHandler(&out, nil)).Info("kept", "value", value)
	text, err := texts.MarshalText()
	if err != nil {
		text = []byte("!ERROR:")
	}
	if line := out.String(); !strings.Contains(line, string(text)) &&
		!strings.Contains(line, strings.Trim(fmt.Sprintf("%q", text), `"`)) {
		t.Errorf("%T: logged as %s, want %s", value, line, text)
	}
}

// plainJSON writes the characters of HTML plainly, which a log does and json.Marshal does not.
func plainJSON(text []byte) []byte {
	return []byte(strings.NewReplacer(`\u003c`, "<", `\u003e`, ">", `\u0026`, "&").Replace(string(text)))
}

// What a batch really holds, hidden fields and all, comes back or refuses, too.
func TestNothingInABatchIsLost(t *testing.T) {
	files, err := filepath.Glob("../../testdata/formulas/*.json")
	if err != nil || len(files) < 10 {
		t.Fatal(len(files), err)
	}
	seen := map[reflect.Type]int{}
	exported := map[reflect.Type]bool{}
	for _, pointer := range exportedTypes {
		exported[reflect.TypeOf(pointer).Elem()] = true
	}
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		if typ := v.Type(); exported[typ] && typ.Kind() == reflect.Struct && seen[typ] < 6 {
			seen[typ]++
			value := reflect.New(typ)
			value.Elem().Set(v)
			keeps(t, value, refuses(typ, map[reflect.Type]bool{}))
			logged(t, v.Interface())
		}
		if len(makers[v.Type()]) > 0 {
			return
		}
		switch v.Kind() {
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() {
				walk(v.Elem())
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					walk(v.Field(i))
				}
			}
		}
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if len(text) > 8<<10 || bytes.Contains(text, []byte(`"match"`)) {
			continue // takes long, and holds nothing else
		}
		formula, _, err := soap.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		batch, err := formula.Batch()
		if err != nil {
			continue // made to be refused
		}
		walk(reflect.ValueOf(batch))
		walk(reflect.ValueOf(batch.Caps()))
	}
	for _, typ := range []reflect.Type{
		reflect.TypeFor[soap.Batch](), reflect.TypeFor[soap.AdditionWeighing](),
		reflect.TypeFor[soap.Weighed](), reflect.TypeFor[soap.Vessel](), reflect.TypeFor[soap.Finding](),
	} {
		if seen[typ] == 0 {
			t.Errorf("no %v was met", typ)
		}
	}
}
