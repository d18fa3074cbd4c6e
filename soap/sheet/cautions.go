package sheet

// The usual cautions, in the words of every page that shows a lye.
const (
	protect = "Alkali burns skin and can blind. Wear tight goggles, alkali-proof gloves and long sleeves; keep children " +
		"and animals away; work in fresh air. " +
		"Use heat-proof plastic (PP, HDPE) or stainless steel: no aluminium, tin, zinc or thin glass."
	mixing = "Add the alkali to cold water a little at a time, never the water to the alkali: it gets very hot and " +
		"may boil. "

	// The eyelids and the contact lenses are recalled from the precautionary statements for
	// what burns eyes (Globally Harmonised System, P305, P351 and P338), not read.
	onSkin = "rinse at once with plenty of running water for 15 minutes or more, take off splashed clothing and get " +
		"medical help; do not neutralise on the skin."
	inEyes = "rinse at once with plenty of running water for 15 minutes or more, the eyelids held open; take contact " +
		"lenses out if that is easy, and keep rinsing. Get medical help at once."
	swallowed = "get medical help at once, and do not make anyone vomit."
)

// firstAid stands apart from all else, so that it is found at a glance.
func (p *page) firstAid() {
	p.heading("First aid")
	p.wrap("On skin: ", onSkin)
	p.wrap("In eyes: ", inEyes)
	p.wrap("Swallowed: ", swallowed)
}

// cautions are all of them, for whoever mixes a lye.
func (p *page) cautions() {
	p.line("")
	p.wrap("", protect)
	p.wrap("", mixing)
	p.firstAid()
	p.line("")
	p.wrap("", "The labels and safety data sheets of what you bought, and local rules, come before this.")
}
