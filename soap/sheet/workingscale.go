package sheet

import (
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// scales reckons what is weighed of every mass that is no whole number of divisions of its scale: the nearest one, of
// alkali and fragrances the one below.
func (w *working) scales() {
	oils, small := w.b.Formula.Scales()
	for _, o := range w.b.Oils {
		w.rounded(o.Oil.Name(), o.Weighing, oils, units.Nearest)
	}
	for _, a := range w.b.Acids {
		w.rounded(a.Acid.Name, a.Weighing, small, units.Nearest)
	}
	w.rounded("Water", w.b.Water.Weighing, small, units.Nearest)
	for _, l := range w.b.Liquids {
		w.rounded(l.Name, l.Weighing, small, units.Nearest)
	}
	for _, a := range w.b.Alkalis {
		weighing, _ := a.ToWeigh()
		w.rounded(alkaliName(a.Alkali), weighing, small, units.Down)
	}
	for i := range w.b.Parts {
		p := &w.b.Parts[i]
		for _, a := range p.Additions {
			w.addition(p.Name, &a, small)
		}
	}
}

// addition reckons the same of an addition and of its carrier, of a paste of both together.
func (w *working) addition(part string, a *soap.AdditionWeighing, small units.Mass) {
	of := part + ": " + a.Name
	if a.Paste.Mass.Sign() > 0 {
		w.rounded(of+" paste", a.Paste, small, units.Nearest)
		return
	}
	how := units.Nearest
	if a.Kind == soap.Fragrance {
		how = units.Down
	}
	w.rounded(of, a.Weighing, small, how)
	if c := a.Carrier; c != nil {
		w.rounded(of+", in "+carrierName(c), c.Weighing, small, units.Nearest)
	}
}

func (w *working) rounded(of string, x soap.Weighing, division units.Mass, how units.Rounding) {
	exact, ok := x.Mass.Per(division)
	whole, _ := x.Weigh.Per(division)
	if !ok || x.Mass == x.Weigh {
		return
	}
	says := ", to the nearest whole number"
	if how == units.Down {
		says = ", down to a whole number"
	}
	one := division.Text(units.Gram, 9)
	w.add(Step{
		Of: of, Formula: "to weigh = whole divisions of the scale × division",
		Figures: whole.Text(0) + " × " + one, Result: x.Weigh.Text(units.Gram, 6) + " g",
		Because: x.Mass.Text(units.Gram, 6) + " / " + one + " = " + exact.Text(6) + says,
	})
}
