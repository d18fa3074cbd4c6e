package soap

import "example.com/lyewright/units"

func (w jsonWriter) lye(l *Lye) {
	w.share("concentration_pct", l.Concentration)
	w.Number("water_per_alkali", l.WaterPerAlkali.Text(6))
	w.mass("mass_g", l.Mass)
	w.share("strength_pct", l.Strength)
	if l.VolumeKnown {
		w.Number("volume_ml", l.Volume.Text(3))
	}
	w.Number("crystallises_c", l.Crystallises.Text(2))
	if h := l.Heat; h.Final.Given() {
		w.Number("final_c", h.Final.Text(2))
		w.Number("rise_k", h.Rise.Text(2))
		w.Number("boiling_c", h.Boils.Text(2))
		w.Bool("extrapolated", h.Extrapolated)
	}
}

func (w jsonWriter) liquids(liquids []LiquidWeighing) {
	for i := range liquids {
		l := &liquids[i]
		w.Object("", func() {
			w.Text("liquid", l.Name)
			w.weighing(l.Weighing)
			w.mass("water_g", l.Water)
		})
	}
}

func (w jsonWriter) acids(acids []AcidWeighing) {
	for i := range acids {
		a := &acids[i]
		w.Object("", func() {
			w.Text("acid", a.Acid.ID)
			w.Text("name", a.Acid.Name)
			w.weighing(a.Weighing)
			w.mass("water_g", a.Water)
			w.mass("takes_g", a.Takes)
		})
	}
}

func (w jsonWriter) reckoning(r *Reckoning) {
	w.Text("stage", r.Stage.String())
	w.outlook(&r.Superfat)
	w.List("parts", func() {
		for i := range r.Parts {
			p := &r.Parts[i]
			w.Object("", func() {
				w.Text("part", p.Name)
				w.mass("batter_g", p.Batter)
				w.mass("poured_g", p.Poured)
				w.outlook(&p.Superfat)
			})
		}
	})
	w.List("remedies", func() {
		for i := range r.Remedies {
			w.Object("", func() { w.remedy(&r.Remedies[i]) })
		}
	})
}

func (w jsonWriter) remedy(r *Remedy) {
	if r.Part != "" {
		w.Text("part", r.Part)
	}
	weighing := func(key string, m Weighing) {
		w.mass(key+"_g", m.Mass)
		w.mass(key+"_weigh_g", m.Weigh)
	}
	switch {
	case r.Oil != "":
		w.Text("oil", r.Oil)
		weighing("add", r.Add)
	case r.AddAlkali.Mass != units.Mass{}:
		w.Text("kind", r.Alkali.String())
		weighing("alkali", r.AddAlkali)
	default:
		if r.UseLye.Mass.Sign() > 0 {
			weighing("lye", r.UseLye)
			w.mass("of_lye_g", r.OfLye)
		}
		weighing("water", r.AddWater)
	}
	w.mass("batter_g", r.Batter)
	w.mass("poured_g", r.Poured)
	w.share("water_per_oils_pct", r.WaterPerOils)
	w.outlook(&r.Superfat)
}
