package fragrance

// Why says why something about a material is not judged. The zero value is [Unlisted].
type Why uint8

// Why something may not be judged.
const (
	Unlisted      Why = iota // its list is not complete, and there is no certificate
	UnlistedForEU            // its list is not complete, and a certificate does not speak of European law
	MaximumUnheld            // there is a maximum for what it holds, which is not held here
	NaturalTrace             // it holds a prohibited substance as a natural trace, and there is no ceiling
	NaturalWithin            // it holds a natural material by its number, whose constituents are not listed
	Specification            // its supplier must give its word for a specification
)

// String gives the reason in a few words, such as "not listed" or "maximum not held".
func (w Why) String() string {
	switch w {
	case UnlistedForEU:
		return "not listed for European law"
	case MaximumUnheld:
		return "maximum not held"
	case NaturalTrace:
		return "natural trace"
	case NaturalWithin:
		return "natural material within"
	case Specification:
		return "specification"
	default:
		return "not listed"
	}
}

// Unjudged is something about a material that the rules, or what is known of it, leave open.
// It comes from [Material.Unjudged].
type Unjudged struct {
	Why   Why    // what is lacking
	Rules []Rule // that ask for it; empty for lists that are not complete
}

// Unjudged lists what is not judged of a material under a law; nothing where nothing is left
// open. Of one of which nothing is known, it is [Unlisted].
func (m Material) Unjudged(law Law) []Unjudged {
	var list []Unjudged
	lacks, lacksForEU := !m.Given(), false
	var unheld, traces, naturals, asks []*rule
	gather := func(to, from []*rule) []*rule {
		for _, r := range from {
			if law.counts(r) {
				to = appendOnce(to, r)
			}
		}
		return to
	}
	for _, p := range m.get().parts {
		if !p.m.annex && !p.m.complete {
			if p.m.certificate.limit.Given() {
				lacksForEU = true
			} else {
				lacks = true
			}
		}
		unheld, traces, asks = gather(unheld, p.m.unheld), gather(traces, p.m.traces), gather(asks, p.m.asks)
		for _, r := range p.m.naturals { // whoever names it, it is there
			naturals = appendOnce(naturals, r)
		}
	}
	switch {
	case lacks:
		list = append(list, Unjudged{Why: Unlisted})
	case lacksForEU && law != IFRAAlone:
		list = append(list, Unjudged{Why: UnlistedForEU})
	}
	for _, of := range []struct {
		why   Why
		rules []*rule
	}{{MaximumUnheld, unheld}, {NaturalTrace, traces}, {NaturalWithin, naturals}, {Specification, asks}} {
		if len(of.rules) > 0 {
			list = append(list, Unjudged{of.why, rulesOf(of.rules)})
		}
	}
	return list
}

// Names are those of its rules, in their order.
func (u Unjudged) Names() []string {
	var names []string
	for _, r := range u.Rules {
		names = append(names, r.Name())
	}
	return names
}
