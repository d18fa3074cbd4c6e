package main

import (
	"fmt"
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
)

// What scripts rely on beside keys and codes: an exit status never changes its meaning,
// and a number changes only with an edition.
func TestStatusesAndEditionsAreTheListedOnes(t *testing.T) {
	var b strings.Builder
	for _, status := range []struct {
		means string
		n     int
	}{
		{"done", done},
		{"done, with a danger", dangerous},
		{"the input or the usage is wrong", wrongInput},
		{"a file cannot be read or written", cannotIO},
		{"the program failed on a formula", internal},
	} {
		fmt.Fprintf(&b, "exit status %d: %s\n", status.n, status.means)
	}
	for _, edition := range [][2]string{
		{"all the library's", soap.DataEdition()},
		{"fragrances", fragrance.DataEdition()},
		{"IFRA Standards", fragrance.Edition(fragrance.IFRAAlone)},
		{"IFRA Standards and European law", fragrance.Edition(fragrance.IFRAAndEU)},
		{"colourants", colour.DataEdition()},
		{"the observer", tint.DataEdition()},
	} {
		fmt.Fprintf(&b, "data edition, %s: %s\n", edition[0], edition[1])
	}
	matchGolden(t, "../../testdata/promised/statuses-and-editions.txt", b.String())
}
