package schema_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// An output is a JSON text that the command gave, and the schema that is to describe it.
type output struct {
	schema, from string
	text         string
	value        any
}

// A printer runs the command and collects what it gives.
type printer struct {
	t       testing.TB
	command string
	outputs []output
}

// outputs gives the JSON of every command, of every example formula and of every wrong one:
// one by one, as files together, and as lines of a stream.
func outputs(t testing.TB) []output {
	t.Helper()
	watch(t, "../../cmd/lyewright/*.go", "../../cmd/lyewright/help.txt")
	p := &printer{t: t, command: filepath.Join(scratch, "lyewright.exe")}
	if said, err := exec.Command("go", "build", "-o", p.command, "../../cmd/lyewright").CombinedOutput(); err != nil {
		t.Fatalf("the command: %v, %s", err, said)
	}
	right := slices.Concat(glob(t, "../../testdata/formulas/*.json"), glob(t, "../../testdata/worked/*.json"))
	wrong := glob(t, "../../testdata/formulas/wrong/*.json")
	var lines strings.Builder
	for _, path := range wrong {
		lines.Write(bytes.ReplaceAll(read(t, path), []byte("\n"), []byte(" ")))
		lines.WriteByte('\n')
	}
	for _, text := range examples(t) {
		lines.WriteString(strings.ReplaceAll(text, "\n", " ") + "\n")
	}
	for _, verb := range []string{"batch", "cap", "tint"} {
		for _, text := range slices.Concat(examples(t)[:2], rareBatches(t)) {
			p.run(text, verb, "-json", "-")
		}
		p.run("", slices.Concat([]string{verb, "-json"}, right, wrong, []string{"none.json"})...)
		p.run(lines.String(), verb, "-json", "-lines", "-")
		p.run("{}", verb, "-json", "-units", "oz", "-")
	}
	for _, path := range wrong[:2] {
		p.run("", "batch", "-json", path)
	}
	p.run("", "cap", "-json", "-law", "eu", "../../testdata/formulas/scented-cups.json")
	p.run("", "cap", "-json", "-law", "ifra", "../../testdata/formulas/scented-cups.json")
	p.run("", "batch", "-json", "-pieces", "30", "../../testdata/formulas/lantern-cups.json")
	for _, verb := range []string{"oils", "fragrance", "colourants"} {
		p.run("", verb, "-json")
		p.run("", verb, "-json", "nothing-of-the-kind")
	}
	p.run("", "oils", "-json", "olive", "macadamia")
	p.run("", "oils", "-json", "Olivenöl")
	p.run("", "fragrance", "-json", "peppermint oil", "geranium")
	p.run("", "colourants", "-json", "charcoal", "Berlin blue")
	p.run(`{"formula": "Lantern names", "oils": [{"oil": "olive oil", "share": "rest"}],
		"alkali": [{"kind": "caustic soda", "purity": {"low": "97 %", "high": "99 %"}}], "superfat": "5 %",
		"water": {"per_alkali": "2"},
		"size": {"oils": "500 g"}, "acids": [{"acid": "vinegar", "strength": "5 %", "load": "1 % of oils",
			"compensate": true}], "parts": [{"part": "bars", "share": "100 %", "colourants": [{"colourant": "charcoal",
			"load": "2 g"}]}], "weighed": {"stage": "parts", "parts": {"bars": {"additions": {"charcoal": "2.1 g"}}}}}`,
		"batch", "-json", "-")
	p.run("", "oils", "-json", "lanolin")
	for _, line := range []string{
		"titration|-sample|1 g|-normality|1|-first|24 mL|-total|24.2 mL|-balance|0.001 g|-burette|0.05 mL|-titrant|0.2 %",
		"titration|-sample|1 g|-normality|1|-total|24.4 mL",
		"titration|-alkali|KOH|-sample|1 g|-normality|1|-total|16 mL|-carbonate-max|2 %",
		"titration|-sample|1 kilo",
		"heat|-water|200 g|-water-temperature|20 °C|-alkali-mass|100 g",
		"heat|-alkali|KOH|-water|200 g|-water-temperature|20 °C|-alkali-mass|86 g",
		"heat",
		"density|-strength|33 %|-temperature|20 °C|-mass|350 g",
		"density|-alkali|KOH|-strength|48 %|-temperature|20 °C",
		"density|-reading|1.33 g/mL|-temperature|20 °C",
		"stock|-strength|50 %|-make|1 kg",
		"stock|-strength|50 %|-hydroxide|100 g|-lye|33 %",
		"acids",
		"stock|-strength|40 %|-make|1 kg|-alkali|caustic soda",
		"stock",
		"stok",
	} {
		p.run("", slices.Concat([]string{"lye"}, strings.Split(line, "|"), []string{"-json"})...)
	}
	return p.outputs
}

// run keeps every JSON text on standard output, or on standard error where there is none.
func (p *printer) run(stdin string, args ...string) {
	p.t.Helper()
	run := exec.Command(p.command, args...)
	run.Stdin = strings.NewReader(stdin)
	var out, errs bytes.Buffer
	run.Stdout, run.Stderr = &out, &errs
	var exit *exec.ExitError
	if err := run.Run(); err != nil && !errors.As(err, &exit) {
		p.t.Fatal(err)
	}
	if out.Len() == 0 {
		out = errs
	} else if errs.Len() > 0 {
		p.t.Errorf("%.80q: %s", args, errs.String())
	}
	for line := range bytes.Lines(out.Bytes()) {
		o := output{from: strings.Join(args[:min(4, len(args))], " "), text: string(line), value: decoded(p.t, line)}
		if object, ok := o.value.(map[string]any); ok {
			o.schema, _ = object["schema"].(string)
		} else {
			o.schema = args[0] + "/1"
		}
		p.outputs = append(p.outputs, o)
		// and each item by itself, so that a change to one is soon judged
		if list, ok := o.value.([]any); ok && len(list) > 1 {
			for _, item := range list {
				alone := []any{item}
				p.outputs = append(p.outputs, output{o.schema, o.from, encoded(p.t, alone), alone})
			}
		}
	}
}

// mayBeMissing are keys that may be left out of the object they stand in, and when.
func mayBeMissing() map[string]string {
	return map[string]string{
		"batch/1 acids":                                 "no acids",
		"batch/1 alkali[].purity_source":                "no published grade",
		"batch/1 alkali[].asked":                        "it is named by its id",
		"batch/1 acids[].asked":                         "it is named by its id",
		"batch/1 parts[].additions[].asked":             "it is named by its id",
		"batch/1 weighed.parts[].additions[].asked":     "it is named by its id",
		"batch/1 better_split":                          "nothing better is known, or vessels say how much is made",
		"batch/1 parts[].superfat.as_printed_pct":       "a scale shows nothing of the oils",
		"batch/1 pieces_complete":                       "vessels say how much is made",
		"batch/1 superfat.as_printed_pct":               "a scale shows nothing of the oils",
		"batch/1 batches":                               "one batch is enough",
		"batch/1 embeds":                                "no embeds",
		"batch/1 findings[].superfat_if":                "no figure is held against another",
		"batch/1 findings[].superfat_if.likely_low_pct": "nothing is certain to saponify",
		"batch/1 file":                                  "no stream, or standard input",
		"batch/1 findings[].detail":                     "the usual case of a code",
		"batch/1 findings[].limit":                      "held against no figure",
		"batch/1 input_line":                            "no lines",
		"batch/1 last_batch":                            "one batch is enough, or its mass is known",
		"batch/1 last_batch.pieces[].volume_spread_pct": "no piped top",
		"batch/1 lye.boiling_c":                         "not known of so strong a lye",
		"batch/1 lye.crystallises_c":                    "not known, or never above 0 °C",
		"batch/1 lye.volume_ml":                         "the lye's temperature is not given",
		"batch/1 pieces[].volume_spread_pct":            "no piped top",
		"batch/1 oils[].asked":                          "it is named by its id",
		"oils/1 [].asked":                               "it is named by its id",
		"fragrance/1 [].asked":                          "it is named by its id",
		"fragrance/1 [].name_note":                      "nothing is to be said",
		"colourants/1 [].asked":                         "it is named by its id",
		"colourants/1 [].name_note":                     "nothing is to be said",
		"oils/1 [].name_note":                           "nothing is to be said",
		"batch/1 scaled":                                "no number of pieces was asked for",
		"batch/1 toppings":                              "no toppings",
		"batch/1 water.liquids":                         "no liquids",
		"batch/1 weighed":                               "nothing was weighed",
		"batch/1 weighed.lye.boiling_c":                 "not known of so strong a lye",
		"batch/1 weighed.lye.crystallises_c":            "not known, or never above 0 °C",
		"batch/1 weighed.lye.volume_ml":                 "the lye's temperature is not given",
		"batch/1 weighed.parts[].additions[].note":      "nothing is noted",
		"batch/1 weighed.size":                          "no vessels",
		"batch/1 weighed.remedies[].part":               "it is for all parts",
		"batch/1 weighed.remedies[].water_first":        "the lye dissolves",
		"cap/1 findings[].superfat_if":                  "no figure is held against another",
		"cap/1 findings[].superfat_if.likely_low_pct":   "nothing is certain to saponify",
		"batch/1 note":                                  "nothing is noted",
		"batch/1 oils[].note":                           "nothing is noted",
		"batch/1 alkali[].note":                         "nothing is noted",
		"batch/1 parts[].note":                          "nothing is noted",
		"batch/1 parts[].additions[].note":              "nothing is noted",
		"batch/1 pieces[].note":                         "nothing is noted",
		"batch/1 last_batch.pieces[].note":              "nothing is noted",
		"cap/1 file":                                    "no stream, or standard input",
		"cap/1 findings[].detail":                       "the usual case of a code",
		"cap/1 findings[].limit":                        "held against no figure",
		"cap/1 input_line":                              "no lines",
		"cap/1 parts[].allergens[].at_most":             "the figure is one",
		"cap/1 parts[].allergens[].members":             "no group",
		"cap/1 parts[].counted_as_dry":                  "nothing is counted so",
		"cap/1 piece.allergens[].at_most":               "the figure is one",
		"cap/1 piece.allergens[].members":               "no group",
		"cap/1 pieces":                                  "one kind of piece",
		"cap/1 pieces[].allergens[].at_most":            "the figure is one",
		"cap/1 pieces[].allergens[].members":            "no group",
		"cap/1 pieces[].in_last_batch":                  "a piece of every batch",
		"colourants/1 [].alkali":                        "not known",
		"colourants/1 [].chemistry":                     "not stated",
		"colourants/1 [].density_g_per_ml":              "not known",
		"colourants/1 [].density_g_per_ml.remark":       "nothing to remark",
		"colourants/1 [].disperses":                     "not known",
		"colourants/1 [].eu.clause":                     "none is held",
		"colourants/1 [].eu.remark":                     "none is held",
		"colourants/1 [].eu.source":                     "none is held",
		"colourants/1 [].note":                          "nothing to note",
		"colourants/1 [].us.clause":                     "none is held",
		"colourants/1 [].us.remark":                     "none is held",
		"colourants/1 [].us.source":                     "none is held",
		"colourants/1 [].usual[].role":                  "it makes no difference",
		"error/1 errors[].kind":                         "a file that cannot be read",
		"error/1 file":                                  "no stream, or standard input",
		"error/1 input_line":                            "no lines",
		"fragrance/1 [].constituents[].high_pct":        "only the other end is printed",
		"fragrance/1 [].constituents[].low_pct":         "only the other end is printed",
		"fragrance/1 [].constituents[].name":            "no name is held",
		"fragrance/1 [].latin":                          "no one plant",
		"fragrance/1 [].rules[].ask":                    "nothing to ask",
		"fragrance/1 [].rules[].limit_pct":              "no figure",
		"fragrance/1 [].rules[].list":                   "on no list of allergens",
		"lye-density/1 asked":                           "it is named by its id",
		"lye-heat/1 asked":                              "it is named by its id",
		"lye-stock/1 asked":                             "it is named by its id",
		"lye-titration/1 asked":                         "it is named by its id",
		"lye-density/1 boiling_c":                       "not known of so strong a lye",
		"lye-density/1 upper":                           "the strength was given",
		"lye-density/1 volume_ml":                       "no mass is given",
		"lye-heat/1 boiling_c":                          "not known of so strong a lye",
		"lye-titration/1 low_pct":                       "one end point, and no most carbonate",
		"oils/1 [].figures[].high":                      "only the other end is printed",
		"oils/1 [].figures[].low":                       "only the other end is printed",
		"oils/1 [].figures[].remark":                    "nothing to remark",
		"oils/1 [].inci":                                "not known",
		"oils/1 [].iodine":                              "not known",
		"oils/1 [].iodine.high":                         "only the other end is printed",
		"oils/1 [].iodine.low":                          "only the other end is printed",
		"oils/1 [].latin":                               "no one plant or animal",
		"oils/1 [].saponification":                      "no value is published",
		"oils/1 [].saponification.middle":               "no value is printed",
		"oils/1 [].saponification.profile":              "too few of its acids are named",
		"tint/1 findings[].superfat_if":                 "no figure is held against another",
		"tint/1 findings[].superfat_if.likely_low_pct":  "nothing is certain to saponify",
		"tint/1 file":                                   "no stream, or standard input",
		"tint/1 findings[].detail":                      "the usual case of a code",
		"tint/1 findings[].limit":                       "held against no figure",
		"tint/1 fit.name":                               "the swatches have no name",
		"tint/1 input_line":                             "no lines",
		"tint/1 parts[].additives_not_counted":          "no additives",
		"tint/1 parts[].best_delta_e00":                 "no loads were looked for",
		"tint/1 parts[].beyond_swatches":                "no such load",
		"tint/1 parts[].browned_by":                     "no such fragrance",
		"tint/1 parts[].coats":                          "no coat",
		"tint/1 parts[].cost":                           "no price",
		"tint/1 parts[].pearls":                         "no pearl",
		"tint/1 parts[].prices_lacking":                 "every price is known, or none",
		"tint/1 parts[].target":                         "no target",
		"tint/1 parts[].whiter":                         "no white",
	}
}

// Every output is held against its schema; then its keys are dropped, renamed, given another
// type, and joined by one that nobody knows, each once at every place and in every company.
func TestTheSchemasDescribeEveryOutput(t *testing.T) {
	t.Parallel()
	all := outputs(t)
	documents := map[string]*document{}
	printed := map[string]bool{} // places
	var requests []request
	type asked struct {
		of       output
		at, what string
	}
	var questions []asked
	ask := func(q asked, r request) {
		questions, requests = append(questions, q), append(requests, r)
	}
	seen := map[string]bool{}
	values := map[string]json.RawMessage{} // of each key, one that was printed
	for _, o := range all {
		document := documentOf(t, o.schema)
		for s := range document.spots(o.value) {
			if of, ok := s.value.(map[string]any); ok {
				for key, value := range of {
					if at := o.schema + " " + joined(s.place, key); values[at] == nil {
						values[at] = json.RawMessage(encoded(t, value))
					}
				}
			}
		}
	}
	for _, o := range all {
		if documents[o.schema] == nil {
			documents[o.schema] = documentOf(t, o.schema)
		}
		ask(asked{o, "", "as it is"}, request{Name: o.schema, Instance: json.RawMessage(o.text)})
		if list, ok := o.value.([]any); ok && len(list) > 1 {
			continue
		}
		for s := range documents[o.schema].spots(o.value) {
			printed[o.schema+" "+s.place] = true
			of, ok := s.value.(map[string]any)
			if !ok {
				continue
			}
			keys := slices.Sorted(maps.Keys(of))
			company := o.schema + " " + s.place + " " + strings.Join(keys, ",")
			for _, key := range keys {
				company += "," + typeOf(of[key])
				if _, described := s.says.member(of, key); !described {
					t.Errorf("%s: %s.%s is not described", o.from, s.path, key)
				}
			}
			if seen[company] {
				continue
			}
			seen[company] = true
			ask(asked{o, s.place, "with one key more"},
				request{Name: o.schema, Changes: []change{{At: s.steps, Set: nobodysKey, Value: json.RawMessage(`{}`)}}})
			for _, shape := range s.says.shapes() {
				for _, key := range shape.keys() {
					if _, there := of[key]; !there && values[o.schema+" "+joined(s.place, key)] != nil {
						ask(asked{o, joined(s.place, key), "added"},
							request{Name: o.schema, Changes: []change{{At: s.steps, Set: key, Value: values[o.schema+" "+
								joined(s.place, key)]}}})
					}
				}
			}
			for _, key := range keys {
				at := joined(s.place, key)
				ask(asked{o, at, "dropped"}, request{Name: o.schema, Changes: []change{{At: s.steps, Drop: key}}})
				value := json.RawMessage(encoded(t, of[key]))
				ask(asked{o, at, "renamed"}, request{Name: o.schema, Changes: []change{{
					At: s.steps, Drop: key, Set: key + "_2",
					Value: value,
				}}})
				for _, other := range []string{`1`, `"1"`, `true`, `[1]`, `{"a": 1}`, `null`} {
					if typeOf(of[key]) != typeOf(decoded(t, []byte(other))) {
						ask(asked{o, at, other}, request{
							Name:    o.schema,
							Changes: []change{{At: s.steps, Set: key, Value: json.RawMessage(other)}},
						})
					}
				}
			}
		}
	}
	missing, used := mayBeMissing(), map[string]bool{}
	for i, said := range verdicts(t, requests...) {
		q := questions[i]
		at := q.of.schema + " " + q.at
		switch q.what {
		case "as it is", "with one key more":
			if said != "" {
				t.Errorf("%s, %s %s: %s", q.of.from, q.at, q.what, said)
			}
		case "dropped", "renamed":
			if said == "" && missing[at] == "" {
				t.Errorf("%s: %s %s is taken", q.of.from, at, q.what)
			}
			used[at] = used[at] || said == ""
		case "added": // where a key may not be missing, whether it stands there follows from the others
			if said == "" && missing[at] == "" {
				t.Errorf("%s: %s %s is taken", q.of.from, at, q.what)
			}
		default:
			if said == "" && (at != "cap/1 parts[].fragrances[].binding" || q.what != `"1"` && q.what != `null`) {
				t.Errorf("%s: %s as %s is taken", q.of.from, at, q.what)
			}
		}
	}
	for at := range missing {
		if !used[at] {
			t.Errorf("%s is listed as sometimes missing, and is always required", at)
		}
	}
	for name, d := range documents {
		for place := range d.values() {
			if at := name + " " + place; !printed[at] {
				t.Errorf("%s is described, and no output has it", at)
			}
		}
	}
	if len(documents) != 12 || len(all) < 600 || len(questions) < 3000 {
		t.Errorf("%d schemas, %d outputs, %d questions: not all", len(documents), len(all), len(questions))
	}
}

func typeOf(v any) string {
	switch v.(type) {
	case nil:
		return "null"
	case bool:
		return "bool"
	case json.Number:
		return "number"
	case string:
		return "string"
	case []any:
		return "list"
	default:
		return "object"
	}
}

// promised are the keys that the format promises, typed from it and not from the schemas;
// with a question mark those that may be missing.
func promised() map[string]string {
	const asWeighed = "planned_pct low_pct likely_low_pct likely_high_pct high_pct complete free_alkali_worst_pct"
	const outlook = "planned_pct as_printed_pct? low_pct likely_low_pct likely_high_pct high_pct complete " +
		"free_alkali_worst_pct"
	return map[string]string{
		"batch/1": `schema data_edition formula batter_g poured_g dry_g filled_g reserve_g loss_g batches? ` +
			under("oils[]", "oil name mass_g weigh_g withheld_g") +
			under("alkali[]", "kind purity_pct mass_g weigh_g strength_pct stock_g stock_weigh_g") +
			under("water", "asked_g mass_g weigh_g withheld_g") + under("water.liquids[]", "liquid mass_g weigh_g water_g") +
			under("acids[]", "acid name mass_g weigh_g water_g takes_g") +
			under("lye", "concentration_pct water_per_alkali mass_g strength_pct undissolved volume_ml? crystallises_c? "+
				"final_c rise_k boiling_c?") +
			under("size", "density_g_per_ml density_spread_pct poured_at_c pot_ml oils_ml lye_ml") + under("superfat", outlook) +
			under("parts[]", "part share_pct batter_g oils_g water_g poured_g dry_g filled_g reserve_g loss_g volume_ml "+
				"density_g_per_ml") + under("parts[].superfat", outlook) +
			under("parts[].additions[]", "name kind mass_g weigh_g carrier carrier_g carrier_weigh_g from paste_g "+
				"paste_weigh_g") +
			under("pieces[]", "vessel part count filled short_g fresh_g pour_g volume_ml volume_spread_pct?") +
			"pieces_complete? better_split? " + under("better_split", "pieces_complete parts") + under("better_split.parts[]",
			"part share_pct") + under("embeds[]", "embed vessel count mass_g") +
			under("toppings[]", "topping vessel count mass_g") +
			under("last_batch", "oils_g poured_g pieces") + under("scaled", "pieces_asked pieces") +
			under("weighed", "stage lye batter_g poured_g dry_g superfat parts remedies") +
			under("weighed.superfat", asWeighed) +
			under("weighed.parts[]", "part share_pct batter_g oils_g poured_g dry_g superfat additions") +
			under("weighed.remedies[]", "part? oil add_g add_weigh_g lye_g of_lye_g water_g kind alkali_g batter_g poured_g "+
				"water_per_oils_pct superfat") +
			under("findings[]", "code severity subject message names detail? value limit? unit source"),
		"cap/1": `schema category law edition findings notices allergen_lists ` +
			under("parts[]", "part judged_as_a_whole unjudged dry_g oils_g fragrance_of_dry_bar_pct most_used "+
				"most_used_share_pct allergens allergens_complete counted_as_dry?") +
			under("parts[].fragrances[]", "fragrance dose_g of_oils_pct of_dry_bar_pct of_dry_piece_pct binding limit_pct "+
				"brings_pct cap_of_dry_bar_pct share_of_limit_pct cap_g cap_of_oils_pct next judged complete unjudged "+
				"no_limit_known") +
			under("piece", "fragrance_of_dry_pct allergens_complete") + under("piece.allergens[]",
			"name of_dry_pct at_most? list only_in_part part"),
		"tint/1": `schema order findings notices ` +
			under("fit", "bands delta_e00_mean delta_e00_max spare_swatches swatches") +
			under("fit.swatches[]", "swatch delta_e00") +
			under("parts[]", "part lab srgb in_gamut target? delta_e00 floor reachable best_delta_e00? missing at_most loads "+
				"cost? whiter? coats? in_no_swatch") +
			under("parts[].loads[]", "colourant weigh_g load_of_batter_pct load_of_oils_pct load_of_dry_pct "+
				"found_of_batter_pct at"),
		"error/1": "schema errors " + under("errors[]", "path text reason remedy message kind? line column"),
		"oils/1": under("[]", "oil name inci? kind saponification? iodine? source") + under("[].saponification",
			"low typical high middle? profile? how") + under("[].iodine", "low? high?"),
	}
}

func under(place, keys string) string {
	return place + "." + strings.ReplaceAll(keys, " ", " "+place+".") + " "
}

func TestTheSchemasRequireWhatTheFormatPromises(t *testing.T) {
	missing := mayBeMissing()
	for name, keys := range promised() {
		described := map[string]bool{}
		for place := range documentOf(t, name).values() {
			described[place] = true
		}
		for _, key := range strings.Fields(keys) {
			key, mayMiss := strings.CutSuffix(key, "?")
			if _, listed := missing[name+" "+key]; !described[key] || listed != mayMiss {
				t.Errorf("%s %s: described %v, may be missing %v", name, key, described[key], listed)
			}
		}
	}
}
