package soap

import "example.com/lyewright/soap/lye"

// TitrationFindings gives what the maker should know of a titration in order: a note,
// titration-exact, where the accuracy of the balance, of the burette or of the titrant was
// left out. Its Names are those that were. It is empty where all three are given.
func TitrationFindings(t lye.Titration) []Finding {
	names := t.TakenAsExact()
	if len(names) == 0 {
		return nil
	}
	return []Finding{{Code: "titration-exact", Severity: Note, Subject: "titration", Source: commonSource(), Names: names}}
}
