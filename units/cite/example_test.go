package cite_test

import (
	"fmt"

	"example.com/lyewright/units/cite"
)

// What was recalled says so, and what was read needs no word.
func ExampleSource() {
	pound := cite.Source{
		Title: "NIST Handbook 44", Edition: "2014 edition",
		Place: "Appendix C, p. C-12", How: cite.Read,
	}
	fmt.Println(pound)
	zero := cite.Source{
		Title: "SI brochure", Edition: "9th edition",
		Place: "2.3.1", How: cite.Memory,
	}
	fmt.Println(zero)
	fmt.Println(cite.Source{How: cite.CommonPractice})
	// Output:
	// NIST Handbook 44, 2014 edition, Appendix C, p. C-12
	// SI brochure, 9th edition, 2.3.1 (recalled, not read)
	// common practice
}

// Which of a list of figures did nobody see in print?
func ExampleHow() {
	for _, how := range []cite.How{cite.Read, cite.Memory, cite.Computed} {
		if how != cite.Read {
			fmt.Println(how)
		}
	}
	// Output:
	// memory
	// computed
}

// The words of the tables, letter for letter.
func ExampleParseHow() {
	fmt.Println(cite.ParseHow("common practice") == cite.CommonPractice)
	fmt.Println(cite.ParseHow("hearsay"))
	// Output:
	// true
	// unknown
}
