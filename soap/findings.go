package soap

import (
	"cmp"
	"slices"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

func commonSource() cite.Source { return cite.Source{How: cite.CommonPractice} }

// freeAlkaliLimit is the most free caustic alkali in a combination bar, 0.05 %
// as NaOH.
func freeAlkaliLimit() (units.Ratio, cite.Source) {
	return units.MustRatio("0.05 %"), cite.Source{Title: "ASTM D2179, combination (soap and surfactant) toilet bar", Edition: "65 (1990)e1, withdrawn", Place: "clause 5.1, free alkali as NaOH", How: cite.Read}
}

// judge gives the batch its findings.
func (b *Batch) judge(s *solved) error {
	if faults := s.run.spend(s.asked.lines()); len(faults) > 0 {
		return faults
	}
	found, faults := findings(s, b)
	if len(faults) > 0 {
		return faults
	}
	b.Findings, b.more = boundedFindings(found)
	return nil
}

// findings judges a batch: most severe first, then in input order.
func findings(s *solved, b *Batch) ([]Finding, Faults) {
	j := judge{s: s, b: b, found: make([]Finding, 0, 24)} // room for more than most batches have
	j.weighed()
	j.oils()
	if faults := s.run.look(); len(faults) > 0 {
		return nil, faults
	}
	j.alkalis()
	j.superfat()
	j.lye()
	j.liquids()
	j.acids()
	j.temperatures()
	j.warmth()
	if faults := s.run.look(); len(faults) > 0 {
		return nil, faults
	}
	j.vessels()
	for i := range b.Parts {
		if faults := s.run.spend(1 + len(b.Parts[i].Additions)); len(faults) > 0 {
			return nil, faults
		}
		j.part(i)
	}
	if faults := s.run.look(); len(faults) > 0 {
		return nil, faults
	}
	j.blends()
	j.allergens()
	return bySeverity(j.found), nil
}

// bySeverity puts the most severe first and keeps the order of those alike. A finding is
// large: each is moved at most once to where it belongs, and none into a list of its own.
func bySeverity(found []Finding) []Finding {
	var room [64]int // for the places of as many as most batches have
	place := room[:0]
	if len(found) > len(room) {
		place = make([]int, 0, len(found))
	}
	var next [Danger + 1]int // how many there are, then where the next belongs
	for i := range found {
		next[found[i].Severity]++
	}
	before := 0
	for severity := int(Danger); severity >= int(Note); severity-- {
		before, next[severity] = before+next[severity], before
	}
	for i := range found {
		severity := found[i].Severity
		place = append(place, next[severity])
		next[severity]++
	}
	for i := range found {
		for place[i] != i {
			to := place[i]
			found[i], found[to] = found[to], found[i]
			place[i], place[to] = place[to], to
		}
	}
	return found
}

type judge struct {
	s     *solved
	b     *Batch
	found []Finding

	others   *prospects  // for what another figure would do; nil until it is asked for
	together *SuperfatIf // with all that is doubted at what is usual; nil where no oil's value is doubted
}

func (j *judge) add(f Finding) { j.found = append(j.found, f) }

func (j *judge) oils() {
	var waxes units.Mass
	var waxNames, recalled []string
	given := true // every wax has a value of the caller's own
	wax := func(oil Oil) {
		given = given && oil.Choice() == AsGiven
		if !slices.Contains(waxNames, oil.Name()) {
			waxNames = append(waxNames, oil.Name())
		}
	}
	for i := range j.b.Oils {
		oil := j.b.Oils[i].Oil
		if oil.Kind() == Wax {
			waxes = waxes.Add(j.real().oils[i])
			wax(oil)
		}
		if oil.recalled() {
			recalled = append(recalled, oil.Name())
		}
	}
	for i := range j.s.loads {
		for _, l := range j.s.loads[i] {
			if l.addition.Carrier.In != InOil || l.line >= 0 {
				continue
			}
			if l.oil.Kind() == Wax {
				wax(l.oil)
			}
			if l.oil.recalled() && !slices.Contains(recalled, l.oil.Name()) {
				recalled = append(recalled, l.oil.Name())
			}
		}
	}
	if len(waxNames) > 0 {
		f := Finding{Code: "wax-reacts-slowly", Subject: "oils", Limit: units.Percent(3), Unit: "%", Source: commonSource(), Names: waxNames}
		f.Value, _ = waxes.Per(j.real().oilTotal)
		f.Value = settled(f.Value)
		if f.Value.Compare(f.Limit) > 0 {
			f.Severity = Warning
		}
		if given {
			f.Detail = waxAsGiven
		}
		j.add(f)
	}
	if len(recalled) > 0 {
		j.add(Finding{Code: "figure-from-memory", Subject: "oils", Source: cite.Source{How: cite.Memory}, Names: recalled})
	}
	odd := j.oddValues()
	list := top("oils")
	for i := range j.b.Oils {
		t := list.item(i)
		j.oilName(t, j.b.Oils[i].Oil)
		j.oilValue(t, j.b.Oils[i].Oil)
		if len(odd) > 0 && odd[0].Subject == t.String() {
			j.add(odd[0])
			odd = odd[1:]
		}
		j.coarse(t, j.b.Oils[i].Oil.Name(), j.b.Oils[i].Weighing)
	}
}

// oilName says what an oil was asked for as, and what the table of names says of that.
func (j *judge) oilName(t trail, oil Oil) {
	if row := oil.get(); !row.replaced || row.asked != "" {
		j.named(t, names.Oil, row.id, row.asked, row.nameNote)
	}
}

// named says what a line was asked for as where that is not its id, and what the table of
// names says of its name.
func (j *judge) named(t trail, kind names.Kind, id, asked, note string) {
	if asked == "" && note == "" {
		return
	}
	f := Finding{
		Code: "name-note", Subject: t.String(), Names: []string{id}, Detail: string(kind),
		Source: cite.Source{How: cite.Memory},
	}
	if asked != "" {
		f.Names = append(f.Names, asked)
	}
	j.add(f)
}

// additionName says what a fragrance or a colourant was asked for as, and what the table of
// names says of that.
func (j *judge) additionName(t trail, a *AdditionWeighing) {
	kind := names.Fragrance
	switch a.Kind {
	case Additive:
		return
	case Colourant:
		kind = names.Colourant
	}
	note := "" // of the maker's own there is none
	if a.Kind == Fragrance && fragrance.Known(a.Name) || a.Kind == Colourant && a.Colourant.Given() &&
		!a.Colourant.Supplied() {
		note = names.Note(kind, cmp.Or(a.Asked, a.Name))
	}
	j.named(t, kind, a.Name, a.Asked, note)
}

// plainName says of what is only a name that it is not judged. An additive that bears the
// name of a fragrance or a colourant may be that, and pass its limits.
func (j *judge) plainName(t trail, a *AdditionWeighing) {
	f := Finding{
		Code: unjudged(a.Kind), Severity: Warning, Subject: t.String(), Names: []string{a.Name},
		Source: cite.Source{How: cite.Given},
	}
	switch {
	case a.maybeFragrance():
		f.Detail = maybeFragrance
	case a.Kind == Additive:
		f.Severity = Note
	}
	j.add(f)
}

// maybeFragrance reports whether what is only a name, among additives or colourants, bears that of a fragrance, so that
// it may be that and pass its limits.
func (a *AdditionWeighing) maybeFragrance() bool {
	if a.Kind == Fragrance || a.Material.Given() || a.Kind == Colourant && a.Colourant.Given() {
		return false
	}
	scent := meaning(Fragrance, a.Name)
	return scent.ID != "" && !scent.Unheld || len(scent.Several) > 0
}

// oilValue judges where an oil's saponification value comes from.
func (j *judge) oilValue(t trail, oil Oil) {
	row := oil.get()
	j.rangeless(t, oil)
	value := func(code string) Finding {
		return Finding{
			Code: code, Subject: t.String(), Value: row.saponification.Typical, Unit: "mg KOH/g",
			Names: []string{row.name}, Source: oil.ValueSource(),
		}
	}
	if built, replaced := row.inPlaceOf(); replaced {
		f := value("saponification-replaced")
		if built.HasRange() {
			old := built.Saponification()
			f.Quoted = old.Low.MilligramsPerGramText(1) + " to " + old.High.MilligramsPerGramText(1)
		}
		if !row.builtIn && built.Name() != row.name {
			f.Names = append(f.Names, built.Name())
		}
		j.add(f)
	}
	if row.ranged && row.choice != AsGiven && row.kind != Wax && row.profileValue.Given() {
		apart := row.middle.Sub(row.profileValue)
		if apart.Sign() < 0 {
			apart = row.profileValue.Sub(row.middle)
		}
		if limit := thousandths(15); apart.Compare(row.middle.Times(limit)) > 0 {
			f := value("typical-disputed")
			f.Value, f.Limit, f.Unit = apart.Over(row.middle), limit, "%"
			if row.profileHow == cite.Memory {
				f.Detail = recalledProfile
			}
			j.add(f)
		}
	}
}

// rangeless judges an oil that no published range stands behind.
func (j *judge) rangeless(t trail, oil Oil) {
	row := oil.get()
	if row.ranged {
		return
	}
	f := Finding{
		Severity: Warning, Subject: t.String(), Value: row.saponification.Typical, Unit: "mg KOH/g",
		Names: []string{row.name}, Source: oil.ValueSource(),
	}
	if row.choice == AsGiven {
		f.Code, f.Severity = "saponification-single", Note
		j.add(f)
		return
	}
	if row.builtIn && !row.replaced {
		f.Code = "range-missing"
		j.add(f)
	}
	if row.choice == FromProfile {
		f.Code = "value-computed"
		j.add(f)
	}
}

// recalled reports whether the oil's value rests on figures that nobody saw.
func (o Oil) recalled() bool {
	row := o.get()
	switch row.choice {
	case AsGiven:
		return false
	case FromProfile:
		return row.builtIn && !row.replaced && row.profileHow == cite.Memory
	case AtProfile:
		return row.how == cite.Memory || row.profileHow == cite.Memory
	default:
		return row.how == cite.Memory
	}
}

func (j *judge) alkalis() {
	list := top("alkali")
	for i := range j.b.Alkalis {
		a := &j.b.Alkalis[i]
		t := list.item(i)
		j.named(t, names.Alkali, a.Alkali.String(), j.s.f.Alkalis[i].Asked, "")
		f := Finding{Subject: t.String(), Value: a.Purity.Typical, Unit: "%", Names: []string{a.Alkali.Name()}}
		switch {
		case j.s.f.Alkalis[i].assumed():
			f.Code, f.Severity = "purity-assumed", Warning
			f.Limit, f.Source = purityFloor(), AssumedPuritySource()
			j.add(f)
		case a.Strength.Given() && a.Strength.Single():
			f.Code, f.Value, f.Source, f.Detail = "purity-single", a.Strength.Typical, cite.Source{How: cite.Given},
				stockStrength
			j.add(f)
		case a.Strength.Given():
		case a.Purity.Single():
			f.Code, f.Source = "purity-single", cite.Source{How: cite.Given}
			j.add(f)
		}
		j.lowPurity(t, i)
		weighing, _ := a.ToWeigh()
		j.coarse(t, a.Alkali.Name(), weighing)
	}
	if len(j.b.Alkalis) == 1 && j.b.Alkalis[0].Alkali == PotassiumHydroxide {
		j.add(Finding{
			Code: "potassium-only", Subject: list.String(), Names: []string{PotassiumHydroxide.Name()},
			Source: commonSource(),
		})
	}
}

func (j *judge) lye() {
	f := Finding{Subject: "water", Value: settled(j.lyeOfBatch().Concentration), Unit: "%", Source: commonSource()}
	switch weak, strong := units.Percent(25), units.Percent(45); {
	case f.Value.Compare(strong) > 0:
		f.Code, f.Limit = "lye-strong", strong
		j.add(f)
	case f.Value.Compare(weak) < 0:
		f.Code, f.Limit = "lye-weak", weak
		j.add(f)
	}
	j.coarse(top("water"), "water", j.b.Water.Weighing)
}

// superfatOfBatch is the superfat that is judged: as weighed, where it was.
func (j *judge) superfatOfBatch() *Outlook {
	if j.b.Weighed != nil {
		return &j.b.Weighed.Superfat
	}
	return &j.b.Superfat
}

// lyeOfBatch is the lye that is judged.
func (j *judge) lyeOfBatch() *Lye {
	if j.b.Weighed != nil {
		return &j.b.Weighed.Lye
	}
	return &j.b.Lye
}

// superfatOf is that of a part.
func (j *judge) superfatOf(part int) *Outlook {
	if j.b.Weighed != nil {
		return &j.b.Weighed.Parts[part].Superfat
	}
	return &j.b.Parts[part].Superfat
}

func (j *judge) part(i int) {
	p, superfat := j.b.judgedPart(i), j.superfatOf(i)
	list := top("parts")
	t := list.item(i)
	names := []string{p.Name}
	if len(j.b.Formula.Parts) == 0 {
		names[0] = "The batch" // the maker named no part
	}
	j.negative(t, i, names)
	if free := superfat.FreeAlkaliWorst; free.Given() {
		f := Finding{Code: "free-alkali-worst", Subject: t.String(), Value: free, Unit: "%", Names: names}
		f.Limit, f.Source = freeAlkaliLimit()
		if free.Compare(f.Limit) > 0 {
			f.Severity = Warning
		}
		j.add(f)
	}
	shift := settled(superfat.Planned.Sub(j.superfatOfBatch().Planned))
	if limit := thousandths(5); shift.Compare(limit) > 0 || units.Whole(0).Sub(shift).Compare(limit) > 0 {
		f := Finding{
			Code: "part-superfat-shifted", Subject: t.String(), Value: shift, Limit: limit, Unit: "points",
			Source: cite.Source{How: cite.Computed}, Names: names,
		}
		if shift.Sign() < 0 {
			f.Detail = heldBack
		}
		j.add(f)
	}
	for k := range p.Additions {
		a, l := &p.Additions[k], &j.s.loads[i][k]
		list := t.at(l.list())
		line := list.item(l.at())
		j.additionName(line, a)
		j.glitter(line, a.Name, l.addition.Glitter, l.addition.Foil)
		j.metal(line, a, l.addition.Glitter)
		if !a.Material.Given() && (a.Kind != Colourant || !a.Colourant.Given()) {
			j.plainName(line, a)
		}
		if a.Kind == Colourant && a.Colourant.Given() {
			j.colourant(line, a)
			j.usual(line, p, k)
		}
		if plan := &j.b.Parts[i].Additions[k]; plan.Paste.Mass.Sign() > 0 {
			j.coarse(line, a.Name, plan.Paste)
		} else {
			j.additionCoarse(line, plan, l)
		}
	}
	j.rivers(i, t)
	j.target(i, t)
	j.dose(i, t)
	j.scent(i, t)
}

// additionCoarse judges the lines of an addition that is no paste, as they are planned.
func (j *judge) additionCoarse(line trail, a *AdditionWeighing, l *loaded) {
	j.coarse(line, a.Name, a.Weighing)
	if a.Carrier == nil {
		return
	}
	if l.addition.Carrier.Oil.Asked() != "" {
		j.oilName(line.at("carrier"), l.addition.Carrier.Oil)
	}
	if a.Carrier.In == InOil && l.line < 0 {
		j.rangeless(line.at("carrier"), a.Carrier.Oil)
	}
	j.coarse(line.at("carrier"), a.Carrier.Name, a.Carrier.Weighing)
}

// real is the batch as it is judged: as weighed, where something was.
func (j *judge) real() *solved {
	if j.s.real != nil {
		return j.s.real
	}
	return j.s
}

// settled drops the digits of a share that the birth of a mass, rounded to a
// nanogram, may have moved: a lye asked for at a limit is not beyond it.
func settled(share units.Ratio) units.Ratio { return share.Round(9, units.Nearest) }

func unjudged(kind AdditionKind) string {
	switch kind {
	case Fragrance:
		return "fragrance-unjudged"
	case Additive:
		return "additive-unjudged"
	default:
		return "colourant-unjudged"
	}
}

// coarse judges a line to weigh that its scale changes by over 2 %.
func (j *judge) coarse(t trail, name string, w Weighing) {
	change := w.Weigh.Sub(w.Mass)
	if change.Sign() < 0 {
		change = w.Mass.Sub(w.Weigh)
	}
	limit := units.Percent(2)
	if change.Compare(product(w.Mass, limit, units.Down)) <= 0 || dust(w.Mass) {
		return
	}
	f := Finding{
		Code: "rounding-coarse", Subject: t.String(), Limit: limit, Unit: "%", Source: commonSource(),
		Names: []string{name},
	}
	f.Value, _ = change.Per(w.Mass)
	if w.Weigh.Sign() == 0 {
		f.Severity = Warning
	}
	j.add(f)
}
