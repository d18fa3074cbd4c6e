// Package cite names the published source of a figure: what was published, which edition,
// where in it the figure stands, and how the figure was obtained. A figure without these
// does not enter the library, and whoever gets one can say where it is from.
//
// A [Source] stands beside the figures of the built-in tables, beside the limits of
// findings, and beside what a model gives. Its [How] says whether somebody saw the figure
// in a copy of the publication ([Read]), recalled it ([Memory]), has it from the trade
// without a source ([CommonPractice]), worked it out ([Computed]) or brought it ([Given]).
//
//	pound := cite.Source{
//		Title: "NIST Handbook 44", Edition: "2014 edition",
//		Place: "Appendix C, p. C-12", How: cite.Read,
//	}
//	return pound.String() // NIST Handbook 44, 2014 edition, Appendix C, p. C-12
//
// What was not read is never printed as if it had been: a recalled figure says so in
// every line that names it. An edition may be "edition not stated", where the text that
// was seen does not print one. That a source is named does not make a figure right for
// what is in one's own bottle: the papers that came with it come first.
//
// All types are plain values.
package cite
