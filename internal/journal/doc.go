// Package journal is the book's idea without its file: what happened, in
// order, and never altered.
//
// Every act at the desk is a [Fact]: who did what to which load, when, at
// which desk, and the details. Facts are only ever added. A typo is mended by
// a later fact that corrects it, a cancelled ticket by one that voids it; the
// state of a load is whatever its facts, read in order, say it is.
//
// Facts form a chain. Each one carries the hash of the fact before it, and
// its own hash covers that and everything it says:
//
//	fact 1         fact 2         fact 3
//	Prev: Genesis  Prev: hash 1   Prev: hash 2
//	Hash: hash 1   Hash: hash 2   Hash: hash 3
//
// So a byte changed anywhere, a fact taken out, put in or moved is found by
// [Check], which names the fact. What a chain cannot show by itself is that
// its end was cut off: for that a printed hash, a backup or the ticket numbers
// given out are compared with it.
//
// The package is pure. The time comes from whoever acts, and storing is the
// store's business.
package journal
