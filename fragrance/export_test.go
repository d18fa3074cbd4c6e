package fragrance

import "context"

// Another edition of the rules, for the tests: a shelf under tables of their own.
func ShelfUnder(standards, entries string, supplied []Supplied, law Law) (Shelf, error) {
	return newShelf(context.Background(), readRules(standards, entries, schiffTable), supplied, law)
}

// Rules lists all rules of the built-in edition.
func Rules() []Rule { return rulesOf(current().all) }

// SchiffBases are the substances that count as an aldehyde, and their shares.
func SchiffBases() map[string][2]string {
	bases := map[string][2]string{}
	for cas, base := range current().schiff {
		bases[cas.text] = [2]string{base.aldehyde.text, base.share.PercentText(6)}
	}
	return bases
}

// Tables are the texts of the built-in tables.
func Tables() map[string]string {
	return map[string]string{
		"standards": standardsTable, "entries": entriesTable, "schiff": schiffTable, "colouring": colouringTable,
		"materials": materialsTable, "sources": sourcesTable,
	}
}
