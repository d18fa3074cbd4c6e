package soap

import (
	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
)

// A stray is an oil whose value, the caller's own, lies outside what is published of the oil
// that it is or means, or of each that it may mean.
type stray struct {
	passing
	line      int
	oil       Oil
	standards []standard
}

// oddValues judges the values of the caller's own: against what is published of the oil, and
// where it is none that is known, against what fats have. Fats known here need from about
// 190 to 265 mg KOH/g, some fractions and acids more, waxes less (common practice).
//
// The findings stand in the order of the lines, one a line at most.
func (j *judge) oddValues() []Finding {
	var found []Finding
	var strays []stray
	list := top("oils")
	for i := range j.b.Oils {
		oil := j.b.Oils[i].Oil
		if !oil.get().brought() {
			continue
		}
		value := oil.Saponification().Typical
		if standards := oil.heldAgainst(); standards != nil {
			if how, outside := passes(value, standards); outside {
				strays = append(strays, stray{how, i, oil, standards})
				found = append(found, Finding{}) // judged together, below
			}
			continue
		}
		t := list.item(i)
		if f, unusual := unusualValue(t, oil.Name(), value); unusual {
			found = append(found, f)
		}
	}
	judged := j.strays(strays)
	for i := range found {
		if found[i].Code == "" {
			found[i], judged = judged[0], judged[1:]
		}
	}
	return found
}

// unusualValue judges a value against what fats have.
func unusualValue(t trail, name string, value units.Ratio) (f Finding, unusual bool) {
	f = Finding{
		Code: "saponification-unusual", Subject: t.String(), Value: value, Unit: "mg KOH/g",
		Names: []string{name}, Source: commonSource(),
	}
	switch least, most := units.MilligramsPerGram(155), units.MilligramsPerGram(290); {
	case value.Compare(most) > 0:
		f.Severity, f.Limit = Warning, most
	case value.Compare(least) < 0:
		f.Limit = least
	default:
		return Finding{}, false
	}
	return f, true
}

// liquidFat judges the value of a liquid's fat, the nth that has any: that of a milk or a cream against what is
// published of milk fat, and that of another against what fats have.
func (j *judge) liquidFat(t trail, line *LiquidLine, nth int) {
	value := line.Saponification.Plan()
	milk, source, _ := published("milk-fat")
	how, outside := passes(value, []standard{{milk, source}})
	if !isDairy(line.Name) {
		if f, unusual := unusualValue(t, line.Name, value); unusual {
			j.add(f)
		}
		return
	}
	if !outside {
		return
	}
	usual := *line
	usual.Saponification = milk.Saponification()
	superfat := j.prospects().with(func(p *prospect) { p.liquids[nth].demand = usual.fatDemand() })
	f := Finding{
		Code: "saponification-outside", Subject: t.String(), Value: value, Limit: how.end, Unit: "mg KOH/g",
		Names: []string{line.Name, milk.Name()}, Source: source, SuperfatIf: &superfat,
	}
	switch {
	case superfat.negative():
		f.Severity = Danger
	case how.above || soundsLikeSodium(value):
		f.Severity = Warning
	}
	j.add(f)
}

// isDairy reports whether a name is of an animal's milk or cream, in English, German, French, Spanish or Italian: not
// of the milk of a plant.
func isDairy(name string) bool {
	const dairy wordList = " milk buttermilk cream kefir yoghurt yogurt quark milch buttermilch ziegenmilch kuhmilch" +
		" schafmilch stutenmilch sahne rahm schmand lait creme leche nata latte panna yaourt joghurt "
	const plants wordList = " coconut coco kokos cocos almond almonds mandel amande almendra mandorla soy soya soja oat" +
		" oats hafer avoine avena rice reis riz arroz riso hemp hanf cashew nut nuts hazelnut pea peanut plant vegan" +
		" vegetable palm sun body hand macadamia pistachio sesame poppy shea cocoa tiger "
	is := false
	for _, word := range names.Words(names.Fold(name)) {
		if plants.has(word) {
			return false
		}
		is = is || dairy.has(word)
	}
	return is
}

// strays works out what the superfat would be with the published value in place of each
// value that lies outside, of each alone and of all of them together, and of low purities with
// them.
func (j *judge) strays(strays []stray) []Finding {
	if len(strays) == 0 {
		return nil
	}
	found := make([]Finding, len(strays))
	var all, above []Oil
	var allIDs, aboveIDs []string
	for i := range strays {
		s := &strays[i]
		all, allIDs = append(all, s.lowest), append(allIDs, s.oil.ID())
		if s.above {
			above, aboveIDs = append(above, s.lowest), append(aboveIDs, s.oil.ID())
		}
	}
	prospects := j.prospects()
	bottles := j.lowPurities()
	replaced := func(oils []Oil, ids []string) SuperfatIf {
		swap := swapOils(oils, ids)
		return prospects.with(func(p *prospect) {
			swap(p)
			j.usualBottles(p)
		})
	}
	// What too high values hide, those that are too low may make up for: what counts for
	// the high ones is the worse of both readings.
	together, ofAll := replaced(above, aboveIDs), replaced(all, allIDs)
	if len(above) == 0 || ofAll.worse(&together) {
		together = ofAll
	}
	j.together = &together
	list := top("oils")
	for i := range strays {
		s := &strays[i]
		t := list.item(s.line)
		f := Finding{
			Code: "saponification-outside", Subject: t.String(), Value: s.oil.Saponification().Typical, Limit: s.end,
			Unit: "mg KOH/g", Names: []string{s.oil.Name()}, Source: s.source,
		}
		for _, of := range s.standards {
			if len(s.standards) > 1 || of.oil.Name() != s.oil.Name() {
				f.Names = append(f.Names, of.oil.Name())
			}
		}
		f.Quoted = s.oil.get().like.near
		superfat := prospects.with(swapOils([]Oil{s.lowest}, []string{s.oil.ID()}))
		if len(strays)+bottles > 1 && (s.above || len(above) == 0) && together.worse(&superfat) {
			superfat, f.Detail = together, allTogether
			if bottles > 0 {
				f.Detail = allDoubts
			}
		}
		f.SuperfatIf = &superfat
		titrated := j.titrated(s.line)
		switch {
		case superfat.negative() && !titrated:
			f.Severity = Danger
		case s.above || soundsLikeSodium(f.Value):
			f.Severity = Warning
		}
		switch {
		case titrated && f.Detail != "":
			f.Detail = titratedLot + "-" + f.Detail
		case titrated:
			f.Detail = titratedLot
		}
		found[i] = f
	}
	return found
}

// titrated reports whether the lot on a line was titrated: it says so and gives a range.
func (j *judge) titrated(line int) bool {
	return j.b.Formula.Oils[line].Measured && j.b.Oils[line].Oil.HasRange()
}

// soundsLikeSodium reports whether a value looks like mg of NaOH per gram, 120 to 150:
// that is 168 to 210 mg of KOH, which most oils need.
func soundsLikeSodium(value units.Ratio) bool {
	return value.Compare(units.MilligramsPerGram(120)) >= 0 && value.Compare(units.MilligramsPerGram(150)) <= 0
}
