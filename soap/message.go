package soap

import (
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// What Detail tells apart: all words are listed at [Finding.Detail].
const (
	heldBack        = "held-back" // part-superfat-shifted: by oil that went into jugs
	maybeFragrance  = "fragrance" // additive-unjudged, colourant-unjudged: its name is also that of a fragrance
	recalledProfile = "recalled"  // typical-disputed: nobody saw the fatty acids
	waxAsGiven      = "given"     // wax-reacts-slowly: with a value of the caller's own
	stockStrength   = "stock"     // purity-single: the strength of a stock lye
	weighedSo       = "weighed"   // of superfats, and before a cause, and fragrance-over-cap: as weighed
	batchKnown      = "known"     // moulds-short: the batch is as large as it is
	muchUnknown     = "much"      // density-unknown: of oils that are much of the batter
	foilUnknown     = "unknown"   // glitter-aluminium: nobody said whether it has any
	inLastBatch     = "last"      // fragrance-over-cap: in the last of several batches
	pouredSo        = "poured"    // the same, past mending
	numbersUnknown  = "numbers"   // colourant-unjudged: its Colour Index numbers are not all known
	hardlyWhitens   = "whitens"   // nano-grade: of titanium dioxide
	perhapsF        = "f"         // temperature-high: so high that °F may have been meant
	freeAcids       = "acids"     // solid-at-pour: free acids are among them
	byItsName       = "name"      // hydrogen: its name alone tells the metal; wet-into-hot-lye: or what is in it
	vesselOfIt      = "vessel"    // hydrogen: a vessel is of the metal, by its name
	inJug           = "jug"       // lye-undissolved: it stands in its jug
	dryInJug        = "dry"       // lye-undissolved: it stands in its jug with hardly any water or none
	inBatter        = "batter"    // lye-undissolved: it is in the batter
	inEU            = "eu"        // colourant-not-permitted: under which law
	dangersMore     = "dangers"   // findings-more: some of them are dangers
	warningsMore    = "warnings"  // findings-more: none is a danger, some are warnings
	inUS            = "us"
	weighAgain      = "again"    // weighed-far: nothing is offered before it is weighed again
	acidStrength    = "strength" // acid-unusual: stronger than it is mostly sold
	nothingHeld     = "unheld"   // colourant-unjudged: its law or its stability is not held
)

// Message is the finding in a sentence, written when asked for. Its wording may
// change; Code does not.
func (f Finding) Message() string {
	name, value, limit := strings.Join(f.Names, "; "), f.figure(f.Value), f.figure(f.Limit)
	switch f.Code {
	case "superfat-below-zero":
		return f.belowZero()
	case "superfat-likely-negative":
		return f.likelyNegative()
	case "saponification-outside":
		return f.outside()
	case "saponification-unusual":
		return f.unusualValue()
	case "purity-low":
		return f.lowPurity()
	case "potassium-only":
		return name + " alone makes a soft paste, not a bar. Bars are made with sodium hydroxide, or with both."
	case "free-alkali-worst":
		return name + ": in the worst case " + value + " of the dry mass is left as free alkali (NaOH); a published limit " +
			"for bars is " + limit + ". Test a bar before it is used."
	case "part-superfat-shifted":
		if f.Detail == heldBack {
			return name + ": oil held back for carriers takes the planned superfat " + f.figure(units.Whole(0).Sub(f.Value)) +
				" below the batch's."
		}
		return name + ": its own carriers take the planned superfat " + value + " above the batch's."
	case "superfat-unusual":
		return f.unusualSuperfat()
	case "purity-assumed":
		return name + ": no purity is given. It is planned at " + value + ", with " + limit +
			" as the low end; give the certificate's figures, or titrate the lot."
	case "purity-single":
		if f.Detail == stockStrength {
			return name + ": one strength of the stock lye is given, " + value + ", and the worst case takes it as exact."
		}
		return name + ": one purity is given, " + value + ", and the worst case takes it as exact."
	case "titration-exact":
		return "No accuracy is stated of: " + strings.Join(f.Names, ", ") +
			". What was read there is taken as exact, which no reading is, and the true hydroxide may lie outside these " +
			"bounds: give half the width of what each reading may be off."
	case "range-missing":
		return name + ": no range of saponification values is published. " + value +
			" is taken as exact, and the worst case leaves it out."
	case "value-computed":
		return name + ": the saponification value, " + value +
			", is computed from the fatty acids; no measured value stands behind it."
	case "saponification-single":
		return name + ": the saponification value is given as " + value +
			" without a range. It is taken as exact, and the worst case leaves it out."
	case "saponification-replaced":
		old := "one"
		if f.Quoted != "" {
			old = f.Quoted
		}
		if len(f.Names) > 1 {
			old += " of " + f.Names[1]
		}
		return f.Names[0] + ": the saponification value given, " + value + ", is used in place of the built-in " + old + "."
	case "typical-disputed":
		acids := "the oil's own fatty acids"
		if f.Detail == recalledProfile {
			acids += " (recalled, not read)"
		}
		return name + ": the middle of the published range and the value of " + acids + " lie " + value +
			" apart. Titrate the lot, or ask for its certificate."
	case "wax-reacts-slowly":
		if f.Value.Sign() > 0 {
			name += " (" + value + " of the oils)"
		}
		if f.Detail == waxAsGiven {
			return name + ": a wax, whose esters a cold process may leave as they are. The value given is used as it stands: " +
				"the worst case does not allow for wax that does not react."
		}
		return name + ": a wax, whose esters a cold process may leave as they are. Its value is taken as a range that " +
			"begins at its free acid."
	case "figure-from-memory":
		return name + ": the saponification value used was recalled from its source, not seen there."
	case "name-note":
		return f.nameNote()
	case "lye-strong":
		return "The lye as mixed is " + value + " (alkali over alkali and water), above " + limit +
			": it grows hotter, and trace comes fast."
	case "lye-weak":
		return "The lye as mixed is " + value + " (alkali over alkali and water), below " + limit +
			": trace comes slowly, and the bars shrink as they dry."
	case "lye-undissolved":
		return f.undissolved()
	case "weighed-far":
		text := f.Names[0] + ": " + f.Names[1] + " was weighed where " + f.Names[2] +
			" is planned, less than a third. Look for a slipped point or a line that was forgotten: all else here takes the " +
			"reading at its word."
		if f.Detail == weighAgain {
			text += " Weigh it again first, jug and all: nothing is offered to mend the batch while this reading stands, and " +
				"nothing may be added on its word."
		}
		return text
	case "lye-crystallises":
		return "At " + value + " the lye lies below, or within 1 K of, the " + limit +
			" at which it begins to crystallise: warm it and stir it clear, or its alkali stays unevenly spread."
	case "lye-hot":
		return "If no heat is lost the lye reaches " + value + ", above " + limit +
			": it may boil and spit. Take colder water or ice, and add the alkali in small portions."
	case "temperatures-apart":
		return "Oils and lye are " + value + " apart; " + limit + " or less is usual when they are joined."
	case "temperature-high":
		return f.tooHot()
	case "solid-at-pour":
		text := name + ": over 10 % of the oils is of what is solid below " + value + ", and "
		if f.Limit.Given() {
			text += "the batter is to be poured at " + limit
		} else {
			text += "nothing is said of how hot the batter is poured"
		}
		text += ": it sets in lumps, with lye between them."
		if f.Detail == freeAcids {
			text += " Free acids become soap at once, and the batter seizes."
		}
		return text + " Take less, or keep oils and batter above that until it is poured."
	case "wet-into-hot-lye":
		text := name + ": alcohol, or over 5 % sugar, in the water that the alkali goes into"
		if f.Detail == byItsName {
			text += " (by its name, as the formula has no such figure of it)"
		}
		switch {
		case f.Limit.Given():
			text += ", which reaches " + value + " if no heat is lost, above " + limit
		case f.Value.Given():
			text += " at " + value + ", and how hot the alkali makes it is not known here"
		default:
			text += ", and nothing is said of how cold that is"
		}
		return text + ". It may boil over and spit: boil alcohol off beforehand, freeze it, and add the alkali a little at " +
			"a time in a tall vessel, so that it stays cool."
	case "acid-compensated":
		return name + ": alkali is added for it, " + f.Quoted + ". Leave the acid out, and the bar has too much alkali."
	case "acid-unusual":
		if f.Detail == acidStrength {
			return name + ": a strength of " + value + " is planned, above " + limit +
				". Under that name it is mostly sold at " + f.Quoted + ". Check it against the label." +
				f.SuperfatIf.sentence("At "+f.Quoted)
		}
		return name + " takes " + value + " of all the alkali, and over " + limit +
			" is unusual: acids are planned at a few percent of the oils. Check its load and its strength against the label. " +
			"With less acid than is planned, the alkali meant for it is left over, and the bar would burn skin."
	case "liquid-sugar":
		return name + ": " + value + " sugar heats the lye and the batter and browns the bar. Keep it cold, even frozen, " +
			"and add the alkali slowly."
	case "liquid-alcohol":
		return name + ": " + value + " alcohol can make the batter seize, and boils off with hot lye. Let it go off first, " +
			"warmed gently in fresh air and away from any flame, and give the figures of what is left."
	case "density-unknown":
		if f.Detail == muchUnknown {
			return name + ": no density is known here, and oils among them are " + value +
				" of the batter. The volumes take them for as dense as the rest, which is mostly lye: too much may be made, by a " +
				"third at worst. Give their density (\"density\": \"0.915 g/mL\"), or a trial."
		}
		return name + ": no density is known here. In the volumes they count at the batter's own density."
	case "findings-more":
		told := "Put right what is listed first."
		switch f.Detail {
		case dangersMore:
			return f.Value.Text(0) + " findings more are not listed, and some of them are dangers to a person: weigh nothing " +
				"by this batch before the dangers above are put right, and look again. At most " + limit + " are listed."
		case warningsMore:
			told = "None is a danger, some are warnings: put right what is listed first, and look again."
		}
		return f.Value.Text(0) + " findings more are not listed, beyond the " + limit + " that are. " + told
	case "moulds-short":
		if f.Detail == batchKnown {
			return name + ": " + f.Value.Text(0) + " are hoped for, and there are " + limit +
				". A batter cannot wait for another day."
		}
		return name + ": " + f.Value.Text(0) + " are wanted, and there are " + limit +
			". A batter cannot wait for another day: make several batches."
	case "glitter-plastic":
		return name + ": plastic glitter. In the EU soap with it may be placed on the market until 16 October 2027 and no " +
			"longer from 17 October 2027, and loose plastic glitter is out of sale since 17 October 2023; elsewhere other " +
			"rules may already forbid it. Take mica or glass, or a glitter with a report that it passed a test for " +
			"degradability."
	case "glitter-aluminium":
		if f.Detail == foilUnknown {
			return name + ": nothing is said of aluminium, and most such glitter has a layer of it. Fresh batter dissolves " +
				"aluminium and gives off hydrogen, which burns: ask for its make-up, or put it on cured bars only."
		}
		return name + ": has aluminium, which fresh batter dissolves; it gives off hydrogen, which burns. Put it on cured " +
			"bars only, or take mica or glass."
	case "embeds-present":
		return name + ": cast embeds beforehand. They set in about a quarter of an hour at room temperature, and sweat " +
			"when they are chilled."
	case "rounding-coarse":
		if f.Severity == Warning {
			return name + ": cannot be weighed on this scale, where it rounds to nothing."
		}
		return name + ": the scale changes the mass by " + value + "; a finer one would help."
	case "fragrance-over-cap":
		return f.overCap()
	case "natural-ceiling-used":
		return f.Names[0] + ": " + f.Names[1] + " is prohibited as an added ingredient, and accepted from naturals up to a " +
			"ceiling, of which " + value + " is used."
	case "certificate-older":
		return name + ": certified to amendment " + value + " of the IFRA Standards; the limits held here are of amendment " +
			limit + ". An older certificate proves nothing about the present: ask the supplier for a new one."
	case "allergens-unknown":
		its, supplier := "its", "the supplier"
		if len(f.Names) > 1 {
			its, supplier = "their", "the suppliers"
		}
		return name + ": " + its + " allergens are not all listed. The label needs them: ask " + supplier +
			", and do not read what is listed as all there is."
	case "fragrance-browns":
		return "A part meant to look " + f.Detail + " has " + name + ": " + f.Quoted +
			". No share is published at which it shows; titanium dioxide lightens it and does not stop it."
	case "fragrance-behaviour":
		return f.behaves()
	case "dose-unusual":
		return name + ": its fragrances together are " + value + " of its oils, more than is usual (" + limit +
			" or less), whatever their limits leave room for: the smell may irritate, oil may weep from the bar, and the " +
			"batter may misbehave."
	case "fragrance-unjudged":
		return f.unjudgedFragrance()
	case "load-unusual":
		than := "less than is usual"
		if f.Value.Compare(f.Limit) > 0 {
			than = "more than is usual"
		}
		return name + ": a load of " + f.Value.PercentText(4) + " % of " + f.Detail + " is " + than + " (" + f.Quoted + ")."
	case "rivers-likely":
		return name + ": " + value + " of oils in soap that gels, and from " + limit +
			" on translucent veins are likely. Keep it from gelling, or take less."
	case "colourant-unstable":
		return colourantText(f.Names) + " changes in alkali: " + f.Quoted + "."
	case "hydrogen":
		what, unless := colourantText(f.Names), ""
		if f.Detail == vesselOfIt {
			return f.Names[0] + " (" + f.Names[1] + "): fresh batter dissolves this metal and gives off hydrogen, which burns " +
				"and explodes, and the vessel may leak. Take a vessel of another material. If it is lined or coated throughout, " +
				"say so in its name."
		}
		if f.Detail == byItsName {
			what = f.Names[0] + " (" + f.Names[1] + ")"
			if !isFoil(f.Names[0]) {
				unless = " If a salt, an oxide or a lake of it is meant, write its whole name."
			}
		}
		return what + ": in lye and fresh batter this metal gives off hydrogen, which burns and explodes. " +
			"Never put it into lye or batter, nor on fresh soap." + unless
	case "colourant-not-permitted":
		return f.notPermitted()
	case "nano-grade":
		if f.Detail == hardlyWhitens {
			return name + ": of nano grade, which hardly whitens. In the European Union the label must name it as nano, and " +
				"rules of their own hold for nanomaterials."
		}
		return name + ": of nano grade. In the European Union the label must name it as nano, and rules of their own hold " +
			"for nanomaterials: ask whether its entry covers it."
	case "carrier-unlike":
		return name + ": disperses in " + f.Quoted + ": specks are likely."
	case "target-out-of-gamut":
		return name + ": its target is a colour that no screen shows; the picture of it, " + f.Quoted +
			", keeps lightness and hue and gives up chroma."
	case "colourant-unjudged", "additive-unjudged":
		if f.Detail == numbersUnknown {
			if len(f.Names) > 1 {
				return f.Names[0] + ": nothing is held here of Colour Index number " + strings.Join(f.Names[1:], ", ") +
					": the law and its stability in alkali are not judged."
			}
			return name + ": no Colour Index number is given: the law and its stability in alkali are not judged."
		}
		switch {
		case f.Detail == maybeFragrance:
			return name + ": weighed, but not judged here. It bears the name of a fragrance, and its limits as one are held: " +
				"if it is that, list it among the fragrances."
		case f.Detail == nothingHeld:
			return colourantText(f.Names) + ": nothing is held here of " + f.Quoted + "."
		case f.Code == "colourant-unjudged":
			if metalNamed(name) != "" { // hydrogen says what it is: no harmless name is offered in its place
				return name + notJudged
			}
			return unknown(name, colour.Suggest(name))
		}
		return name + notJudged
	default:
		return f.Code
	}
}

const notJudged = ": weighed, but not judged. Its limits, its behaviour and its own chemistry are not known here."

// colourantText names a colourant, and what of it the finding is about where that is
// another.
func colourantText(names []string) string {
	if len(names) > 1 {
		return names[0] + " (as it holds " + names[1] + ")"
	}
	return names[0]
}

// behaves says what a fragrance does in the batter.
func (f Finding) behaves() string {
	by := "as whoever brought it says"
	if f.Source.How == cite.Memory {
		by = "as is recalled of it"
	}
	text := f.Names[0] + ": " + f.Quoted + ", " + by + "."
	switch {
	case f.Detail == "seizes":
		return text + " The batter may set at once in the pot, with lye in it that has not reacted: try it in a spoonful, " +
			"have the moulds ready, and leave it out of a part that is piped."
	case f.Severity == Warning:
		return text + " The part is piped: add it last and stir by hand, or scent another part with it."
	default:
		return text + " Add it last, and have the moulds ready."
	}
}

// tooHot says which temperature is high, and of what.
func (f Finding) tooHot() string {
	of := "The oils"
	switch {
	case strings.HasSuffix(f.Subject, ".water"):
		return f.hotWater()
	case strings.HasSuffix(f.Subject, ".lye"):
		of = "The lye"
	case strings.HasSuffix(f.Subject, ".pour"):
		of = "The batter when it is poured"
	}
	text := of + " at " + f.figure(f.Value) + " (limit " + f.figure(f.Limit) +
		"): hot oils, lye and batter scald beside what alkali does, and the batter may boil up in the pot and run over. " +
		"Let it cool first."
	return text + f.wereF()
}

// hotWater says of the water for the alkali that it is high.
func (f Finding) hotWater() string {
	return "Water for the alkali at " + f.figure(f.Value) + " (limit " + f.figure(f.Limit) +
		"): alkali heats it further at once, and it may boil up violently, spit and run over. Take cold water or ice, and " +
		"add the alkali to it a little at a time." + f.wereF()
}

// wereF asks whether °F were meant.
func (f Finding) wereF() string {
	if f.Detail != perhapsF {
		return ""
	}
	return " Were °F meant? Then write °F."
}

// nameNote says what a name was read as, and what the table of names says of it.
func (f Finding) nameNote() string {
	name := f.Names[len(f.Names)-1]
	note := names.Note(names.Kind(f.Detail), name)
	text := "The name " + units.Quote(name)
	switch {
	case len(f.Names) == 1:
		return text + " has a note: " + note + "."
	case note == "":
		return text + " is read as " + f.Names[0] + "."
	default:
		return text + " is read as " + f.Names[0] + ", with this note: " + note + "."
	}
}

// notPermitted says which law a colourant is not listed by.
func (f Finding) notPermitted() string {
	if remark := f.Quoted; f.Detail == inUS {
		if remark != "" {
			remark = " (" + remark + ")"
		}
		return colourantText(f.Names) + ": in the United States not listed as a colour for soap" + remark +
			". That counts if it is sold as a cosmetic; true soap is none."
	}
	return colourantText(f.Names) + ": in the European Union not on the list of permitted colourants, Annex IV to " +
		"Regulation (EC) No 1223/2009. Soap for skin is always a cosmetic there."
}

// unknown says that nothing is known of a name, and what may have been meant.
func unknown(name, near string) string {
	if near != "" {
		name += ": " + near + " As it stands it is unknown"
	}
	return name + notJudged
}

// undissolved says what a lye that holds more alkali than dissolves does to the soap.
func (f Finding) undissolved() string {
	text := "The lye as weighed is " + f.figure(f.Value) + " hydroxide, and at 20 °C no more than " + f.figure(f.Limit) +
		" dissolves (hydroxide over alkali and water). "
	switch f.Detail {
	case dryInJug:
		return text + "What stays undissolved burns skin, and water that is poured on alkali boils and spits. There is " +
			"hardly any water in the jug, or none: weigh the water into a second vessel and add the alkali to it, a little " +
			"at a time, and do not go on until it is clear."
	case inJug:
		return text + "What stays undissolved burns skin: make up the water before the lye meets the oils, a little at a " +
			"time, since it heats up once more, and do not go on until it is clear."
	}
	return text + "Grains of alkali are left in the batter, and no oil mends that: they burn skin. Do not pour it for " +
		"use, and do not use it on skin."
}

// overCap says which limit is passed.
func (f Finding) overCap() string {
	name := f.Names[0]
	if f.Detail == inLastBatch {
		name += ", in the last of the batches"
	}
	of := "of what their certificates allow"
	if len(f.Names) > 1 {
		of = "of the limit of " + f.Names[1]
	}
	remedy := "lower the loads"
	switch f.Detail {
	case weighedSo:
		remedy = "what is in it cannot be taken out again, so add no more; where batter without it is left that is " +
			"not poured, stir enough of that into this part and weigh it again, else do not use it on skin"
	case pouredSo:
		remedy = "it is poured, do not use it on skin"
	}
	return name + ": its fragrances come to " + f.figure(f.Value) + " " + of + " in the dry bar. It could harm skin: " +
		remedy + "."
}

// unjudgedFragrance says what of a fragrance is not judged: its Detail is the reason, a
// [fragrance.Why]; of a plain name it is empty.
func (f Finding) unjudgedFragrance() string {
	of := ""
	if len(f.Names) > 1 {
		of = strings.Join(f.Names[1:], "; ")
	}
	switch name := f.Names[0]; f.Detail {
	case whyUnjudged(fragrance.Unlisted):
		return name + ": what it holds is not all listed, and no certificate stands in for it. Its cap is that of what is " +
			"known: ask the supplier for a certificate for category " + fragrance.Category() + "."
	case whyUnjudged(fragrance.UnlistedForEU):
		return name + ": what it holds is not all listed, and its certificate does not speak of European law, whose maxima " +
			"are smaller for some substances. Ask the supplier for them."
	case whyUnjudged(fragrance.MaximumUnheld):
		return name + ": European law has a maximum that is not held here, for " + of + "."
	case whyUnjudged(fragrance.NaturalTrace):
		return name + ": holds a natural trace of what is prohibited as an added ingredient, and for which no ceiling is " +
			"published: " + of + "."
	case whyUnjudged(fragrance.NaturalWithin):
		return name + ": holds natural materials by their numbers, and what is in those counts for nothing here: " + of +
			". Blend the built-in ones, or list their constituents."
	case whyUnjudged(fragrance.Specification):
		return name + ": needs its supplier's word for a specification. " + f.Quoted + "."
	default:
		return unknown(name, fragrance.Suggest(name))
	}
}

// Figure gives the value with its unit as the sentence has it, such as "0.6 %"; empty
// where the finding has none.
func (f Finding) Figure() string {
	if f.Unit == "" {
		return ""
	}
	return f.figure(f.Value)
}

// figure writes a value with its unit.
func (f Finding) figure(r units.Ratio) string {
	switch f.Unit {
	case "%":
		return r.PercentText(2) + " %"
	case "moulds", "findings":
		return r.Text(0) + " " + f.Unit
	case "amendment":
		return r.Text(0)
	case "K", "°C":
		return r.Text(1) + " " + f.Unit
	case "points":
		return r.PercentText(2) + " points"
	case "mg KOH/g":
		return r.MilligramsPerGramText(1) + " mg KOH/g"
	default:
		return r.Text(2)
	}
}
