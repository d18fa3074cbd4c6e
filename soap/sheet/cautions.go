package sheet

// The usual cautions, in the words of every page that shows a lye.
const (
	protect = "Alkali burns skin and can blind. Wear tight goggles, alkali-proof gloves and long sleeves; keep children and animals away; work in fresh air. " +
		"Use heat-proof plastic (PP, HDPE) or stainless steel: no aluminium, tin, zinc or thin glass."
	mixing = "Add the alkali to cold water a little at a time, never the water to the alkali: it gets very hot and may boil. "
	rinse  = "On skin or in eyes: rinse at once with plenty of running water for 15 minutes or more, take off splashed clothing and get medical help, for eyes at once; do not neutralise on the skin. " +
		"Swallowed: get medical help at once, and do not make anyone vomit."
)

// cautions are all of them, for whoever mixes a lye.
func (p *page) cautions() {
	p.line("")
	p.wrap("", protect)
	p.wrap("", mixing+rinse)
	p.wrap("", "The labels and safety data sheets of what you bought, and local rules, come before this.")
}
