// Package guard holds tests of the house as a whole, and nothing else: which way imports
// go, what the library promises to those who import it, and that every entry point has
// an example.
package guard
