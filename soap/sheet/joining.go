package sheet

import "example.com/lyewright/soap"

// joining says how lye and oils are joined, or, of a batch that is under way, what is to be done in place of it:
// a lye that must not be poured as it is must not be told to be poured.
func (s *sheet) joining() string {
	divide := ""
	if len(s.b.Parts) > 1 {
		divide = ", then divide the batter"
	}
	pour := " the lye slowly into the oils and stir to a light trace" + divide + "."
	r := s.b.Weighed
	switch {
	case r == nil:
		return "Pour" + pour
	case r.Stage == soap.AtLye:
		if first := s.lyeFirst(r); first != "" {
			return first + " pour" + pour
		}
		return "Pour" + pour
	case r.Lye.Undissolved && r.Stage == soap.AtMoulds:
		return "It is poured, with grains of alkali in it, and nothing mends that: do not use it on skin."
	case r.Lye.Undissolved:
		return "Do not pour this batter for use: grains of alkali are in it, and no oil mends that. Do not use it on skin."
	case r.Stage == soap.AtMoulds:
		return "It is poured."
	case len(s.doubted()) > 0:
		return "Weigh again first, as it says further up, before anything is added or poured."
	case len(r.Remedies) == 0 && s.belowPlan(r):
		return "It has too much alkali, and nothing that is offered mends it: do not use it on skin."
	case len(r.Remedies) > 0:
		return "The lye is in the oils. First add what mends the batter, as it says further up."
	case r.Stage == soap.AtPot:
		return "The lye is in the oils: stir to a light trace" + divide + "."
	default:
		return "The batter is divided."
	}
}

// lyeFirst says what the lye still needs before it may be poured; empty where it needs nothing.
func (s *sheet) lyeFirst(r *soap.Reckoning) string {
	switch {
	case len(s.doubted()) > 0:
		return "Do not pour the lye yet: weigh again first, as it says further up. When it is sure,"
	case r.Lye.Dry:
		return "Do not pour the lye as it is: hardly any water is in its jug, or none, and what stays undissolved burns " +
			"skin. First " + secondVessel + ", since it gets very hot, and do what else it says further up. Only when it is " +
			"clear,"
	case r.Lye.Undissolved:
		return "Do not pour the lye as it is: it holds more alkali than dissolves, and what stays undissolved burns skin. " +
			"First make up its water, a little at a time, since it heats up once more, and do what else it says further up. " +
			"Only when it is clear,"
	case len(r.Remedies) > 0:
		return "Do not pour the lye as it is: first mend it, as it says further up. Then"
	default:
		return ""
	}
}
