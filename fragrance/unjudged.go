package fragrance

// Why says why something about a material is not judged.
type Why uint8

const (
	Unlisted      Why = iota // its list is not complete, and there is no certificate
	UnlistedForEU            // its list is not complete, and a certificate does not speak of European law
	MaximumUnheld            // there is a maximum for what it holds, which is not held here
	NaturalTrace             // it holds a prohibited substance as a natural trace, and there is no ceiling
	Specification            // its supplier must give its word for a specification
)

// Unjudged is something that the rules leave open.
type Unjudged struct {
	Why   Why
	Rules []Rule // empty for lists that are not complete
}

// Unjudged lists what is not judged of a material under a law. Of one of which nothing
// is known, it is Unlisted.
func (m Material) Unjudged(law Law) []Unjudged {
	var list []Unjudged
	lacks, lacksForEU := false, false
	var unheld, traces, asks []*rule
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
	}{{MaximumUnheld, unheld}, {NaturalTrace, traces}, {Specification, asks}} {
		if len(of.rules) > 0 {
			list = append(list, Unjudged{of.why, rulesOf(of.rules)})
		}
	}
	return list
}
