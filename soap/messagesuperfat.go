package soap

import (
	"strings"

	"example.com/lyewright/units"
)

// What Detail tells apart of a superfat, and of a value that it rests on.
const (
	fromScale   = "scale" // superfat-likely-negative: what makes most of the doubt
	fromRanges  = "ranges"
	fromPurity  = "purity"
	fromPlan    = "plan"     // no one doubt alone: it is planned so low
	saltBar     = "salt"     // superfat-unusual: of a salt bar
	byWorstCase = "at-least" // superfat-unusual: the plan that keeps a worst case
	allTogether = "together" // saponification-outside: with every such value replaced
	allDoubts   = "doubts"   // and purity-low: with every value and purity that is doubted replaced
	waxUnspent  = "wax"      // superfat-likely-negative: by the published range of a wax, not the value given
	titratedLot = "measured" // saponification-outside: the maker titrated the lot
)

// belowZero is the sentence of a part that has more alkali than it takes up.
func (f Finding) belowZero() string {
	is := "the superfat is " + f.figure(f.Value) + ", below zero: there is more alkali than the oils take up. The bar " +
		"would burn skin"
	switch name := strings.Join(f.Names, "; "); f.Detail {
	case weighedSo:
		return name + ": as weighed, " + is + ": mend it before it is poured, or do not use it on skin."
	case pouredSo:
		return name + ": as weighed, " + is + ", and it cannot be mended any more: do not use it on skin."
	default: // the superfat written is not below zero
		return name + ": as planned, " + is + ". Oil held back for other parts leaves this one too much alkali: write " +
			"\"from\": \"extra\" for that carrier, or raise the superfat."
	}
}

// likelyNegative is the sentence of a part that may well have more alkali than it takes up.
func (f Finding) likelyNegative() string {
	name := strings.Join(f.Names, "; ")
	may := "the superfat may well be below zero, " + f.figure(f.Value) + " at the low end of what is likely. "
	if cause, ok := strings.CutPrefix(f.Detail, weighedSo+"-"); ok {
		return name + ": as weighed, " + may + doubt(cause) + "The bar could burn skin: mend it before it is poured, or do " +
			"not use it on skin."
	}
	if cause, ok := strings.CutPrefix(f.Detail, pouredSo+"-"); ok {
		return name + ": as weighed, " + may + doubt(cause) + "It cannot be mended any more: do not use it on skin."
	}
	remedy := "It is planned too low for all that is in doubt: raise the superfat."
	switch f.Detail {
	case fromScale:
		remedy = doubt(f.Detail) + "Weigh on a finer scale, or make more."
	case fromRanges:
		remedy = doubt(f.Detail) + "Use lots whose values are known more closely, from a certificate or a titration, or " +
			"raise the superfat."
	case waxUnspent:
		remedy = doubt(f.Detail) + "Take less wax, or leave the value of a built-in one out, so that it is planned " +
			"by its range."
	case fromPurity:
		remedy = doubt(f.Detail) + "Titrate it, or take its certificate's figures, or raise the superfat."
	}
	return name + ": " + may + "The bar could burn skin. " + remedy
}

// doubt says what makes most of the doubt about a superfat.
func doubt(cause string) string {
	switch cause {
	case fromScale:
		return "Most of the doubt comes from the scale. "
	case fromRanges:
		return "Most of the doubt comes from the ranges of the saponification values. "
	case fromPurity:
		return "Most of the doubt comes from the purity of the alkali, or the strength of an acid. "
	case waxUnspent:
		return "A cold process may leave the esters of a wax as they are, whatever value is given: that is the figure with " +
			"its published range in place of it, and from nothing up to that value where none is published. "
	default:
		return ""
	}
}

// unusualSuperfat is the sentence of a superfat that few bars have.
func (f Finding) unusualSuperfat() string {
	value, limit := f.figure(f.Value), f.figure(f.Limit)
	text := "A superfat of " + value
	if f.Detail == weighedSo {
		text = "As weighed, the superfat of " + value
	}
	switch {
	case f.Value.Sign() < 0:
		return text + " is below zero: alkali is left over."
	case f.Value.Compare(f.Limit) < 0:
		return text + " leaves less room for error than is usual (" + limit + " or more)."
	case f.Value.Compare(units.Percent(30)) > 0:
		text += " is far more than is usual (" + limit + " or less): most of the oil stays oil."
		switch f.Detail {
		case byWorstCase:
			return text + " A worst case asked for on a coarse scale can lead here."
		case weighedSo:
			return text + " Look for alkali that was forgotten, or for a slipped point."
		default:
			return text + " Look for a slipped point."
		}
	case f.Detail == saltBar:
		return text + " is more than is usual of other soap (" + limit + " or less). A bar with so much salt is hard, " +
			"and 15 to 20 % is usual of it."
	default:
		return text + " is more than is usual (" + limit + " or less): a soft bar that may turn rancid."
	}
}

// sentence says what the superfat would be in a case; empty where nothing was worked out.
func (s *SuperfatIf) sentence(ifSo string) string {
	if s == nil {
		return ""
	}
	text := " " + ifSo + ", the superfat is " + s.Batch.PercentText(2) + " %"
	if s.OfPart.PercentText(2) != s.Batch.PercentText(2) {
		text += ", of the part " + units.Quote(s.Part) + " " + s.OfPart.PercentText(2) + " %"
	}
	if s.LikelyLow.Given() {
		text += ", and " + s.LikelyLow.PercentText(2) + " % at the low end of what is likely"
	}
	switch {
	case !s.negative():
		return text + "."
	case s.OfPart.Sign() < 0:
		return text + ": the bar would burn skin."
	default:
		return text + ": the bar could burn skin."
	}
}

// lowPurity is the sentence of an alkali that is planned at a low purity.
func (f Finding) lowPurity() string {
	ifSo := "If the bottle holds " + f.usualPurity() + ", as most do"
	if f.Detail == allDoubts {
		ifSo += ", and every other value and purity that is doubted here is at what is usual"
	}
	return strings.Join(f.Names, "; ") + ": a purity of " + f.figure(f.Value) + " is planned, below the " +
		f.figure(f.Limit) +
		" that is usual at the least, and the lower it is the more is weighed. Check it against the label." +
		f.SuperfatIf.sentence(ifSo)
}

// usualPurity is what the finding's alkali usually holds.
func (f Finding) usualPurity() string {
	usual, least := usualPurity(SodiumHydroxide)
	if !f.Limit.Equal(least) {
		usual, _ = usualPurity(PotassiumHydroxide)
	}
	return f.figure(usual)
}

// outside is the sentence of a value that lies outside what is published.
func (f Finding) outside() string {
	side := "below"
	if f.Value.Compare(f.Limit) > 0 {
		side = "above"
	}
	of := ""
	switch {
	case len(f.Names) > 1 && f.Quoted != "":
		of = " of " + strings.Join(f.Names[1:], " and ") + `, which "` + f.Quoted + `" is taken for by its letters`
	case len(f.Names) > 2:
		of = " of each oil that the name may mean (" + strings.Join(f.Names[1:], "; ") + ")"
	case len(f.Names) > 1:
		of = " of " + f.Names[1]
	}
	text := f.Names[0] + ": the saponification value, " + f.figure(f.Value) + ", lies " + side + " what is published" +
		of + ", " + f.figure(f.Limit) + "."
	if soundsLikeSodium(f.Value) {
		text += " Is it in milligrams of NaOH? Times 1.4027 it is milligrams of KOH, which are meant here."
	}
	ifSo := "With the published value in its place"
	if len(f.Names) > 2 {
		ifSo = "With the lowest published value in its place"
	}
	detail, titrated := strings.CutPrefix(f.Detail, titratedLot)
	switch strings.TrimPrefix(detail, "-") {
	case allTogether:
		ifSo = "With the published values in place of this one and the others like it"
	case allDoubts:
		ifSo = "With the published value in its place, and every other value and purity that is doubted here at what is usual"
	}
	text += f.SuperfatIf.sentence(ifSo)
	if f.Severity == Danger && strings.HasPrefix(f.Subject, "water.") {
		return text + " Take the published value of its fat."
	}
	if f.Severity == Danger {
		return text + " Take the oil that is built in as it is, or titrate the lot and write its range with " +
			"\"measured\": true."
	}
	if titrated {
		return text + " It is taken as it was titrated: be sure of the titration and of the lot."
	}
	return text + " Check it against the certificate."
}

// unusualValue is the sentence of a value that few fats have.
func (f Finding) unusualValue() string {
	text := f.Names[0] + ": a saponification value of " + f.figure(f.Value)
	if f.Value.Compare(f.Limit) > 0 {
		return text + " is above " + f.figure(f.Limit) + ", more than almost every fat and oil takes up. Check it: where " +
			"it is too high, alkali is left over and the bar burns skin."
	}
	text += " is below " + f.figure(f.Limit) + ", less than fats and oils take up but for waxes. Check it."
	if soundsLikeSodium(f.Value) {
		text += " Is it in milligrams of NaOH? Times 1.4027 it is milligrams of KOH, which are meant here."
	}
	return text
}
