package soap

import (
	"slices"

	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// What is usual at the bench, in °C: habits of the trade, without a source.
const (
	hotLye       = 80 // of the lye when it meets the oils
	hotOils      = 60 // of oils and batter
	aboveMelting = 10 // K: what has to be melted may be so much hotter
	fahrenheit   = 80 // above it °F may have been meant
	hotWater     = 40 // of the water that alkali goes into, and of a lye that has what boils over
	solidAbove   = 40 // what melts above it sets in a batter of the usual warmth
)

// warmth judges temperatures that are too high, and what is solid at those given.
func (j *judge) warmth() {
	t, at := top("temperature"), j.s.f.Temperature
	high := func(key string, warm units.Temperature, limit units.Ratio) {
		if !warm.Given() || warm.Ratio().Compare(limit) <= 0 {
			return
		}
		path := t
		subject := path.at(key)
		f := Finding{
			Code: "temperature-high", Severity: Warning, Subject: subject.String(), Value: warm.Ratio(),
			Limit: limit, Unit: "°C", Source: commonSource(),
		}
		if f.Value.Compare(units.Whole(fahrenheit)) > 0 {
			f.Detail = perhapsF
		}
		j.add(f)
	}
	limit := units.Whole(hotOils)
	for i := range j.b.Oils {
		if melting := j.b.Oils[i].Oil.get().melting; melting.Given() {
			if melted := melting.Add(units.Whole(aboveMelting)); melted.Compare(limit) > 0 {
				limit = melted
			}
		}
	}
	high("oils", at.Oils, limit)
	high("lye", at.Lye, units.Whole(hotLye))
	high("water", at.Water, units.Whole(hotWater))
	high("pour", at.Pour, limit)
	j.solid(at.Pour)
	j.wet(at.Water)
}

// solid judges free acids, waxes and fully hardened fats that set before they are poured.
func (j *judge) solid(pour units.Temperature) {
	f := Finding{
		Code: "solid-at-pour", Severity: Warning, Subject: "oils", Unit: "°C",
		Source: cite.Source{How: cite.Memory},
	}
	var hard units.Mass
	for i := range j.b.Oils {
		oil := j.b.Oils[i].Oil
		row := oil.get()
		if !row.melting.Given() || row.melting.Compare(units.Whole(solidAbove)) <= 0 || !row.hard() {
			continue
		}
		hard = hard.Add(j.real().oils[i])
		if !slices.Contains(f.Names, row.name) {
			f.Names = append(f.Names, row.name)
		}
		if !f.Value.Given() || row.melting.Compare(f.Value) > 0 {
			f.Value = row.melting
		}
		if row.kind == Acid {
			f.Detail = freeAcids
		}
	}
	share, _ := hard.Per(j.real().oilTotal)
	if settled(share).Compare(units.Percent(10)) <= 0 {
		return
	}
	if pour.Given() {
		if f.Limit = pour.Ratio(); f.Limit.Compare(f.Value) >= 0 {
			return
		}
	}
	j.add(f)
}

// hard reports whether it is a free acid, a wax or a fully hardened fat: one with hardly a
// double bond left, up to 5 g of iodine per 100 g (the figure is our choice).
func (row *oilRow) hard() bool {
	iodine := row.iodineHigh
	if built, known := builtIn(row.meant()); known && !iodine.Given() {
		iodine = built.row.iodineHigh
	}
	return row.kind == Acid || row.kind == Wax || iodine.Given() && iodine.Compare(units.Percent(5)) <= 0
}

// wet judges liquids that boil over where alkali heats them: what counts is how hot the lye gets if no heat is lost,
// not only how cold its water was. Where a label's figure is not given, the name tells.
func (j *judge) wet(water units.Temperature) {
	f := Finding{Code: "wet-into-hot-lye", Severity: Warning, Subject: "water", Source: commonSource()}
	for i := range j.b.Liquids {
		line := j.s.liquids[i].line
		if line.Alcohol.Sign() > 0 || line.Sugar.Compare(units.Percent(5)) > 0 {
			f.Names = append(f.Names, line.Name)
			continue
		}
		alcohol, sugar := boilsOver(line.Name)
		if alcohol && !line.Alcohol.Given() || sugar && !line.Sugar.Given() {
			f.Names, f.Detail = append(f.Names, line.Name), byItsName
		}
	}
	if len(f.Names) == 0 {
		return
	}
	if water.Given() {
		f.Value, f.Unit = water.Ratio(), "°C"
		peak := j.lyeOfBatch().Heat.Final
		if peak.Given() && peak.Compare(water) > 0 {
			f.Value = peak.Ratio()
		}
		limit := units.Whole(hotWater)
		switch above := f.Value.Compare(limit) > 0; {
		case above:
			f.Limit = limit
		case peak.Given():
			return // a stock that was thinned cold, or a very thin lye
		}
	}
	j.add(f)
}
