package soap

// FirstBeside is the search of a promise, from a guess outwards.
var FirstBeside = firstBeside

// BySeverity puts the most severe findings first.
var BySeverity = bySeverity
