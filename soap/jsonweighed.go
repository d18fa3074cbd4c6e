package soap

import "example.com/lyewright/units"

func (w jsonWriter) reckoning(r *Reckoning) {
	w.Text("stage", r.Stage.String())
	w.Object("lye", func() { w.lye(&r.Lye) })
	w.mass("batter_g", r.Batter)
	w.mass("poured_g", r.Poured)
	w.mass("dry_g", r.Dry)
	if r.Volumes != nil {
		w.Object("size", func() { w.size(r.Volumes) })
	}
	w.outlook(&r.Superfat)
	w.List("parts", func() {
		for i := range r.Parts {
			p := &r.Parts[i]
			w.Object("", func() {
				w.Text("part", p.Name)
				w.share("share_pct", p.Share)
				w.mass("batter_g", p.Batter)
				w.mass("oils_g", p.Oils)
				w.mass("poured_g", p.Poured)
				w.mass("dry_g", p.Dry)
				if p.Density.Given() {
					w.volume("volume_ml", p.Volume)
					w.Number("density_g_per_ml", p.Density.Text(6))
				}
				w.outlook(&p.Superfat)
				w.additions(p.Additions)
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
	water := "water"
	if r.SecondVessel { // a key of its own, since water_g is poured into the jug
		water = "second_vessel_water"
	}
	switch {
	case r.Oil != "":
		w.Text("oil", r.Oil)
		weighing("add", r.Add)
	case r.AddAlkali.Mass != units.Mass{}:
		w.Text("kind", r.Alkali.String())
		weighing("alkali", r.AddAlkali)
		if r.AddWater.Mass.Sign() > 0 {
			weighing(water, r.AddWater)
		}
	default:
		if r.UseLye.Mass.Sign() > 0 {
			weighing("lye", r.UseLye)
			w.mass("of_lye_g", r.OfLye)
			if r.WaterFirst {
				w.Bool("water_first", true)
			}
		}
		weighing(water, r.AddWater)
	}
	w.mass("batter_g", r.Batter)
	w.mass("poured_g", r.Poured)
	w.share("water_per_oils_pct", r.WaterPerOils)
	w.outlook(&r.Superfat)
}
