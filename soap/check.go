package soap

import (
	"context"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

// The bounds of a formula. More is refused before it costs anything.
const (
	mostOils      = 100
	mostParts     = 50
	mostAdditions = 50  // in a part
	mostName      = 200 // bytes
	mostNote      = 500 // bytes
)

// Check says what is wrong with a formula on its face: everything missing, out
// of its bounds, or at odds with something else, all together. The error is
// [Faults], nil where there are none, with paths as in a file and no line; there are at
// most a hundred, and one more that says where there would be more. What only the working
// shows, [Formula.Batch] says.
func (f Formula) Check() error {
	_, err := f.named().checked(context.Background())
	return err
}

// checked is Check; it gives the maker's own fragrances and colourants, too. Where ctx ends, it stops, and what it
// says counts for nothing.
func (f *Formula) checked(ctx context.Context) (mine, error) {
	c := checker{f: f, ctx: ctx}
	c.check()
	return c.mine, bounded(c.after(nil, nil), c.full()).OrNil()
}

// after adds what the check found to what is said already, but for what rests
// on that: one mistake is said once. meant are paths that a mistyped key
// probably meant.
func (c *checker) after(said Faults, meant []string) Faults {
	for i := range c.found {
		if found := &c.found[i]; !found.touches(said, meant) {
			said = append(said, found.Fault)
		}
	}
	return said
}

// checker collects faults together with the inputs each was found from, so
// that the reader can drop those whose inputs it could not read.
type checker struct {
	f          *Formula
	ctx        context.Context
	found      []checked
	jugs       []Oil // carriers from outside the formula, seen so far
	lostSwatch bool  // something of the formula's swatches could not be read
	// inSwatches are the colourants that stand in the formula's swatches.
	inSwatches []string
	mine
}

type checked struct {
	Fault
	inputs []string // paths besides the fault's own; "[]" stands for any index
}

func (c *checker) fault(t trail, text, reason, remedy string, kind error, inputs ...string) {
	if c.full() {
		return // before its path is spelled
	}
	c.found = append(c.found, checked{Fault{Path: t.String(), Text: text, Reason: reason, Remedy: remedy, Kind: kind}, inputs})
}

// full reports whether more was found than is told.
func (c *checker) full() bool { return len(c.found) > mostFaults }

// add takes over a fault that another package found.
func (c *checker) add(f Fault, inputs ...string) {
	if !c.full() {
		c.found = append(c.found, checked{f, inputs})
	}
}

func (c *checker) check() {
	c.name(top("formula"), c.f.Name)
	if reason, remedy := noteFault(c.f.Note); c.f.Note != "" && reason != "" {
		c.fault(top("note"), c.f.Note, reason, remedy, ErrRange)
	}
	c.oils()
	c.alkalis()
	c.superfat()
	c.water()
	c.size()
	c.scales()
	c.markets()
	if c.ended() {
		return
	}
	c.materials()
	if c.ended() {
		return
	}
	c.colouring()
	if c.ended() {
		return
	}
	c.parts()
	c.totals()
	if c.ended() {
		return
	}
	c.vessels()
	c.acids()
	c.temperatures()
	if c.ended() {
		return
	}
	c.weighed()
}

// ended reports whether nobody waits for the check any more.
func (c *checker) ended() bool { return c.ctx.Err() != nil }

// name checks a name that is needed.
func (c *checker) name(t trail, name string) {
	if name == "" {
		c.fault(t, "", "is missing", "give it a name", ErrMissing)
		return
	}
	if reason, remedy := nameFault(name); reason != "" {
		c.fault(t, name, reason, remedy, ErrRange)
	}
}

// note checks the note of a line, which it may have.
func (c *checker) note(t trail, note string) {
	if note == "" {
		return
	}
	if reason, remedy := noteFault(note); reason != "" {
		line := t // a copy, so that a line without costs nothing
		c.fault(line.at("note"), note, reason, remedy, ErrRange)
	}
}

// nameFault says what is wrong with a name, "" if nothing is.
func nameFault(name string) (reason, remedy string) {
	return textFault(name, mostName, "write a name")
}

// noteFault says what is wrong with a note, "" if nothing is.
func noteFault(note string) (reason, remedy string) {
	return textFault(note, mostNote, "write a note, or leave it out")
}

// textFault says what is wrong with a text of at most so many bytes; blank is the remedy of
// one that is blank.
func textFault(text string, most int, blank string) (reason, remedy string) {
	if len(text) > most {
		return "is " + strconv.Itoa(len(text)) + " bytes long", "use at most " + strconv.Itoa(most) + " bytes"
	}
	if strings.TrimSpace(text) == "" {
		return "is blank", blank
	}
	if !utf8.ValidString(text) {
		return "is not UTF-8", "write it in UTF-8"
	}
	if what, remedy := strictjson.Hidden(text); what != "" {
		return "has " + what, remedy
	}
	return "", ""
}

func percentText(r units.Ratio) string { return r.PercentText(12) + " %" }

// itemPath is the path of an item of a list.
func itemPath(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// percent checks a percentage over zero and up to a bound. Zero is allowed
// where zero is true, the bound itself where it is not below.
func (c *checker) percent(t trail, value units.Ratio, most int, zero, below bool) {
	limit := units.Percent(most)
	switch over := value.Compare(limit); {
	case value.Sign() < 0 || value.Sign() == 0 && !zero:
		c.fault(t, percentText(value), "is not above 0 %", "", ErrRange)
	case over > 0 || over == 0 && below:
		reason, remedy := "is above "+strconv.Itoa(most)+" %", "write at most "+strconv.Itoa(most)+" %"
		if below {
			reason, remedy = "is not below "+strconv.Itoa(most)+" %", ""
		}
		c.fault(t, percentText(value), reason, remedy, ErrRange)
	}
}

// plain checks a plain number over zero and up to a bound.
func (c *checker) plain(t trail, value units.Ratio, most int) {
	switch {
	case value.Sign() <= 0:
		c.fault(t, value.Text(12), "is not above 0", "", ErrRange)
	case value.Compare(units.Whole(most)) > 0:
		c.fault(t, value.Text(12), "is above "+strconv.Itoa(most), "write at most "+strconv.Itoa(most), ErrRange)
	}
}

// mass checks a mass over zero and up to a tonne.
func (c *checker) mass(t trail, value units.Mass) {
	switch {
	case value.Sign() <= 0:
		c.fault(t, value.String(), "is not above 0 g", "", ErrRange)
	case value.Compare(units.Grams(units.Tonne)) > 0:
		c.fault(t, value.String(), "is more than a tonne", "write at most 1000 kg", ErrRange)
	}
}

// exactlyOne checks that one of several alternatives is given.
func (c *checker) exactlyOne(t trail, remedy string, given ...bool) bool {
	switch count(given...) {
	case 1:
		return true
	case 0:
		c.fault(t, "", "is missing", remedy, ErrMissing)
	default:
		c.fault(t, "", "is given in more than one way", remedy, ErrConflict)
	}
	return false
}

// twice refuses a name that stands on an earlier line of a list: same says whether
// the j-th is the same, key is the name's on a line.
func (c *checker) twice(list trail, key string, i int, name string, same func(j int) bool, remedy string) {
	if name == "" {
		return // said already
	}
	for j := range i {
		if same(j) {
			above := list // a copy, so that a formula in order costs nothing
			line, first := above.item(i), above.item(j)
			path := first.String()
			c.fault(line.at(key), name, "stands twice, first at "+path, remedy, ErrConflict, path+"."+key)
			return
		}
	}
}

func count(given ...bool) (n int) {
	for _, g := range given {
		if g {
			n++
		}
	}
	return n
}

func whole(share units.Ratio) bool { return share.Equal(units.Whole(1)) }
