package soap

func (w jsonWriter) lye(l *Lye) {
	w.share("concentration_pct", l.Concentration)
	w.Number("water_per_alkali", l.WaterPerAlkali.Text(6))
	w.mass("mass_g", l.Mass)
	w.share("strength_pct", l.Strength)
	w.Bool("undissolved", l.Undissolved)
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
			w.text("asked", a.Asked)
			w.Text("name", a.Acid.Name)
			w.weighing(a.Weighing)
			w.mass("water_g", a.Water)
			w.mass("takes_g", a.Takes)
		})
	}
}
