package madeup

import (
	"slices"
	"strconv"
	"strings"

	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/internal/strictjson"
)

// Twisted gives the file of a formula with one to four mistakes and odd wishes: slipped
// points, doubled and dropped keys, extreme figures, a promise in place of a plan, a size in
// batter, an acid or a milk of any size, carriers out of the formula. Much of it is refused.
// What is not an object is given back as it is.
func (m *Maker) Twisted(text []byte) []byte {
	root, bad := strictjson.Parse(text, 100)
	if bad != nil || root.Kind != strictjson.Object {
		return text
	}
	twists := []func(*strictjson.Node){
		m.slipPoint, m.slipPoint, m.extreme, m.extreme, m.otherUnit, m.double, m.drop,
		m.promise, m.batter, m.acid, m.milk, m.carry, m.carry, m.together, m.together,
	}
	for range m.Between(1, 4) {
		twists[m.IntN(len(twists))](&root)
	}
	w := jsonwrite.New()
	write(w, "", &root)
	return w.Bytes()
}

func write(w *jsonwrite.Writer, key string, n *strictjson.Node) {
	switch n.Kind {
	case strictjson.Object:
		w.Object(key, func() {
			for i := range n.Members {
				write(w, n.Members[i].Key, &n.Members[i].Value)
			}
		})
	case strictjson.Array:
		w.List(key, func() {
			for i := range n.Items {
				write(w, "", &n.Items[i])
			}
		})
	case strictjson.String:
		w.Text(key, n.Text)
	case strictjson.Bool:
		w.Bool(key, n.Text == "true")
	case strictjson.Null:
		w.Null(key)
	default:
		w.Number(key, n.Text)
	}
}

// each calls f with every value of a tree, the outer ones first.
func each(n *strictjson.Node, f func(*strictjson.Node)) {
	f(n)
	for i := range n.Items {
		each(&n.Items[i], f)
	}
	for i := range n.Members {
		each(&n.Members[i].Value, f)
	}
}

// anyOf draws one of the values that fit; nil where none does.
func (m *Maker) anyOf(root *strictjson.Node, fits func(*strictjson.Node) bool) *strictjson.Node {
	var all []*strictjson.Node
	each(root, func(n *strictjson.Node) {
		if fits(n) {
			all = append(all, n)
		}
	})
	if len(all) == 0 {
		return nil
	}
	return all[m.IntN(len(all))]
}

// figure splits a quantity into its figure and what follows; ok is false of any other value.
func figure(n *strictjson.Node) (digits, rest string, ok bool) {
	if n.Kind != strictjson.String && n.Kind != strictjson.Number {
		return "", "", false
	}
	end := 0
	for end < len(n.Text) && (n.Text[end] >= '0' && n.Text[end] <= '9' || n.Text[end] == '.') {
		end++
	}
	return n.Text[:end], n.Text[end:], end > 0
}

func isFigure(n *strictjson.Node) bool { _, _, ok := figure(n); return ok }

// slipPoint moves a point by one to three places.
func (m *Maker) slipPoint(root *strictjson.Node) {
	n := m.anyOf(root, isFigure)
	if n == nil {
		return
	}
	digits, rest, _ := figure(n)
	whole, fraction, _ := strings.Cut(digits, ".")
	switch places := m.Between(1, 3); m.IntN(2) {
	case 0:
		fraction += strings.Repeat("0", places)
		whole, fraction = whole+fraction[:places], fraction[places:]
	default:
		whole = strings.Repeat("0", places) + whole
		whole, fraction = whole[:len(whole)-places], whole[len(whole)-places:]+fraction
	}
	whole = strings.TrimLeft(whole, "0")
	if whole == "" {
		whole = "0"
	}
	if fraction = strings.TrimRight(fraction, "0"); fraction != "" {
		whole += "." + fraction
	}
	n.Text = whole + rest
}

// extreme puts a figure at an end of what can be written, or beyond.
func (m *Maker) extreme(root *strictjson.Node) {
	if n := m.anyOf(root, isFigure); n != nil {
		figures := []string{
			"0", "0.000000001", "0.001", "1", "33", "50", "99.999999", "100", "1000", "9999", "1000000",
			"1000000000000", "-5",
		}
		_, rest, _ := figure(n)
		n.Text = figures[m.IntN(len(figures))] + rest
	}
}

// otherUnit changes what a figure is of.
func (m *Maker) otherUnit(root *strictjson.Node) {
	if n := m.anyOf(root, func(n *strictjson.Node) bool { return n.Kind == strictjson.String && isFigure(n) }); n != nil {
		rests := []string{" %", " % of oils", " % of batter", " g", " kg", " mg", " oz", ""}
		digits, _, _ := figure(n)
		n.Text = digits + rests[m.IntN(len(rests))]
	}
}

// double writes an item of a list, or a key, twice.
func (m *Maker) double(root *strictjson.Node) {
	n := m.anyOf(root, func(n *strictjson.Node) bool { return len(n.Items)+len(n.Members) > 0 })
	if n == nil {
		return
	}
	if len(n.Items) > 0 {
		n.Items = append(slices.Clone(n.Items), n.Items[m.IntN(len(n.Items))])
	} else {
		n.Members = append(slices.Clone(n.Members), n.Members[m.IntN(len(n.Members))])
	}
}

// drop leaves an item of a list, or a key, out.
func (m *Maker) drop(root *strictjson.Node) {
	n := m.anyOf(root, func(n *strictjson.Node) bool { return len(n.Items)+len(n.Members) > 1 })
	if n == nil {
		return
	}
	if len(n.Items) > 0 {
		i := m.IntN(len(n.Items))
		n.Items = slices.Delete(slices.Clone(n.Items), i, i+1)
	} else {
		i := m.IntN(len(n.Members))
		n.Members = slices.Delete(slices.Clone(n.Members), i, i+1)
	}
}

// put gives a key of an object a value, in place of one that is there.
func put(object *strictjson.Node, key string, value strictjson.Node) {
	for i := range object.Members {
		if object.Members[i].Key == key {
			object.Members[i].Value = value
			return
		}
	}
	object.Members = append(slices.Clone(object.Members), strictjson.Member{Key: key, Value: value})
}

// value reads a JSON text that is written here.
func value(text string) strictjson.Node {
	n, bad := strictjson.Parse([]byte(text), 100)
	if bad != nil {
		panic(bad)
	}
	return n
}

// together asks for what ties everything to the pot at once: a promise of what is in the pot,
// beside an acid or a milk and a carrier.
func (m *Maker) together(root *strictjson.Node) {
	m.promise(root)
	m.batter(root)
	if m.IntN(3) == 0 {
		m.milk(root)
	} else {
		m.acid(root)
	}
	m.carry(root)
}

// promise asks for a superfat in the worst case, where figures without a width are given one.
func (m *Maker) promise(root *strictjson.Node) {
	put(root, "superfat", value(`{"at_least": "`+strconv.Itoa(m.IntN(8))+` %"}`))
	if oils := root.Get("oils"); oils != nil {
		for i := range oils.Items {
			if given := oils.Items[i].Get("saponification"); given != nil && given.Kind == strictjson.String {
				*given = value(`{"low": "188", "high": "196"}`)
			}
		}
	}
	if alkali := root.Get("alkali"); alkali != nil {
		for i := range alkali.Items {
			if purity := alkali.Items[i].Get("purity"); purity != nil {
				*purity = value(`{"low": "97 %", "high": "99 %"}`)
			}
		}
	}
}

// batter asks for so much in the pot.
func (m *Maker) batter(root *strictjson.Node) {
	sizes := []string{"1 g", "40 g", "500 g", "1 kg", "20 kg", "1000 kg"}
	put(root, "size", value(`{"batter": "`+sizes[m.IntN(len(sizes))]+`"}`))
}

// load is an amount of any size.
func (m *Maker) load() string {
	switch m.IntN(3) {
	case 0:
		return strconv.Itoa(m.Between(1, 60)) + " % of oils"
	case 1:
		return strconv.Itoa(m.Between(1, 60)) + " % of batter"
	default:
		return strconv.Itoa(m.Between(1, 2000)) + " g"
	}
}

// acid adds an acid.
func (m *Maker) acid(root *strictjson.Node) {
	id := []string{"citric-acid-anhydrous", "lactic-acid", "acetic-acid"}[m.IntN(3)]
	put(root, "acids", value(`[{"acid": "`+id+`", "load": "`+m.load()+
		`", "strength": {"low": "79 %", "high": "81 %"}, "compensate": `+strconv.FormatBool(m.IntN(3) > 0)+`}]`))
}

// milk adds a liquid with fat.
func (m *Maker) milk(root *strictjson.Node) {
	water := root.Get("water")
	if water == nil || water.Kind != strictjson.Object {
		return
	}
	amount := `"share": "` + strconv.Itoa(m.Between(1, 100)) + ` %"`
	if m.IntN(2) == 0 {
		amount = `"mass": "` + strconv.Itoa(m.Between(1, 10_000)) + ` g"`
	}
	put(water, "liquids", value(`[{"liquid": "hall milk", `+amount+`, "water": "`+strconv.Itoa(m.Between(5, 90))+
		` %", "fat": "`+strconv.Itoa(m.Between(1, 10))+` %", "saponification": {"low": "218", "high": "235"}}]`))
}

// carry gives the first addition of a part a carrier, at times an oil of the formula; a
// formula without parts gets one.
func (m *Maker) carry(root *strictjson.Node) {
	liquid := []string{"water", "glycerin", "olive"}[m.IntN(3)]
	if oils := root.Get("oils"); oils != nil && len(oils.Items) > 0 && m.IntN(2) == 0 {
		if id := oils.Items[m.IntN(len(oils.Items))].Get("oil"); id != nil && id.Kind == strictjson.String {
			liquid = id.Text
		}
	}
	w := jsonwrite.New()
	w.Object("", func() {
		w.Text("liquid", liquid)
		w.Text("ratio", []string{"0.5", "2", "20", "300", "1000"}[m.IntN(5)])
		if m.IntN(3) > 0 {
			w.Text("from", []string{"formula", "extra"}[m.IntN(2)])
		}
	})
	carrier := value(string(w.Bytes()))
	parts := root.Get("parts")
	if parts == nil || len(parts.Items) == 0 {
		put(root, "parts", value(`[{"part": "base", "share": "rest", "colourants": [{"colourant": "titanium-dioxide", "load": "`+m.load()+`"}]}]`))
		parts = root.Get("parts")
	}
	for _, list := range []string{"colourants", "fragrances", "additives"} {
		if additions := parts.Items[m.IntN(len(parts.Items))].Get(list); additions != nil && len(additions.Items) > 0 {
			put(&additions.Items[0], "carrier", carrier)
			return
		}
	}
}
