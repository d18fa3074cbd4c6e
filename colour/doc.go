// Package colour knows colourants: pigments, clays and pearls by their names, with
// what is published of them. Of every figure it says where it stands and how it was
// obtained. For now that is their density.
package colour
