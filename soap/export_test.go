package soap

// FirstBeside is the search of a promise, from a guess outwards.
var FirstBeside = firstBeside
