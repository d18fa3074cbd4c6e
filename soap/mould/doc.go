// Package mould knows how much batter fills a vessel: cups, loaves, slabs,
// half-spheres, piped swirls, coats. A vessel is known by its volume, by the water
// that fills it, by its inside dimensions, or by a trial of the maker's own. It
// also knows how far a mass of batter goes, and how many batches a shelf of moulds
// asks for.
//
// Geometry is exact in itself and float64 here, rounded once to a nanolitre.
package mould
