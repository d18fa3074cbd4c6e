package names

import "strings"

// Why says why a name is taken for no id, with what tells its meanings apart, and gives the
// ids to choose from; these are none where something that is not held may be meant, too. tell says in a few words
// what is held of an id, or is nil. The reason is empty of a name that is not known.
func (a Answer) Why(held func(id string) bool, tell func(id string) string) (reason string, choice []string) {
	switch {
	case a.Several != nil:
		reason, choice = a.choose(held, tell)
	case a.Unheld && a.ID != "":
		reason = "is known as " + a.ID + ", of which nothing is held"
	case a.Unheld:
		reason = "is known, and nothing of it is held"
	default:
		return "", nil
	}
	if a.Note != "" {
		reason += " (" + a.Note + ")"
	}
	return reason, choice
}

func (a Answer) choose(held func(id string) bool, tell func(id string) string) (reason string, choice []string) {
	var said []string
	further, lacking := false, false
	for _, m := range a.Several {
		switch {
		case m.ID == "":
			further = true
		case !held(m.ID):
			said, lacking = append(said, m.ID+", of which nothing is held"), true
		case tell == nil:
			said, choice = append(said, m.ID), append(choice, m.ID)
		default:
			said, choice = append(said, m.ID+tell(m.ID)), append(choice, m.ID)
		}
	}
	switch {
	case len(said) == 0:
		return "is known, and nothing of it is held", nil
	case further:
		said = append(said, "something else, of which nothing is held")
	}
	if further || lacking {
		choice = nil
	}
	return "may mean " + strings.Join(said, "; or "), choice
}
