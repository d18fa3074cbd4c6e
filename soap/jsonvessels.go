package soap

import "example.com/lyewright/units"

func (w jsonWriter) volume(key string, v units.Volume) { w.Number(key, v.Text(3)) }

// size writes the volumes of a batch that fills vessels.
func (w jsonWriter) size(v *Volumes) {
	w.Number("poured_at_c", v.At.Text(2))
	w.Number("density_g_per_ml", v.Density.Text(6))
	w.share("density_spread_pct", v.Spread)
	w.volume("pot_ml", v.Pot)
	w.volume("oils_ml", v.Oils)
	w.volume("lye_ml", v.Lye)
}

func (w jsonWriter) pieces(f *Formula, pieces []Piece) {
	for i := range pieces {
		p := &pieces[i]
		w.Object("", func() {
			w.Text("vessel", p.Vessel)
			w.text("note", f.VesselNamed(p.Vessel).Note)
			w.Text("part", p.Part)
			w.Int("count", p.Count)
			w.Int("filled", p.Filled)
			w.mass("short_g", p.Short)
			w.mass("fresh_g", p.Fresh)
			w.mass("pour_g", p.Pour)
			w.volume("volume_ml", p.Volume)
			if p.Spread.Sign() > 0 {
				w.share("volume_spread_pct", p.Spread)
			}
		})
	}
}

func (w jsonWriter) extras(list, key string, extras []ExtraCount) {
	if len(extras) == 0 {
		return
	}
	w.List(list, func() {
		for i := range extras {
			e := &extras[i]
			w.Object("", func() {
				w.Text(key, e.Name)
				w.Text("vessel", e.Vessel)
				w.Int("count", e.Count)
				w.mass("mass_g", e.Mass)
			})
		}
	})
}

// filled writes how a mass that is poured is divided.
func (w jsonWriter) filled(filled, reserve, loss units.Mass) {
	w.mass("filled_g", filled)
	w.mass("reserve_g", reserve)
	w.mass("loss_g", loss)
}

func (w jsonWriter) split(split *Split) {
	w.Int("pieces_complete", split.PiecesComplete)
	w.List("parts", func() {
		for _, p := range split.Parts {
			w.Object("", func() {
				w.Text("part", p.Name)
				w.share("share_pct", p.Share)
			})
		}
	})
}

// vessels writes what fills the vessels of a batch.
func (w jsonWriter) vessels(b *Batch) {
	w.List("pieces", func() { w.pieces(&b.Formula, b.Pieces) })
	if b.Formula.SizeKnown() {
		w.Int("pieces_complete", b.PiecesComplete)
		if better := b.Better; better != nil {
			w.Object("better_split", func() { w.split(better) })
		}
	}
	w.extras("embeds", "embed", b.Embeds)
	w.extras("toppings", "topping", b.Toppings)
	if n := b.Formula.Size.Pieces; n > 0 {
		w.Object("scaled", func() {
			w.Int("pieces_asked", n)
			w.Int("pieces", b.PiecesInAll())
		})
	}
	if b.Batches > 1 {
		w.Int("batches", b.Batches)
	}
	if last := b.Last; last != nil {
		w.Object("last_batch", func() {
			w.mass("oils_g", last.Oils)
			w.mass("poured_g", last.Poured)
			w.List("pieces", func() { w.pieces(&b.Formula, last.Pieces) })
		})
	}
}
