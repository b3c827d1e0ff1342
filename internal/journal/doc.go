// Package journal is the append-only log of what happened, independent of how it is stored.
//
// Every act at the desk is a [Fact]: who did what to which load, when, at which desk, and the
// details. Facts are only ever added. A typo is corrected by a later fact, a cancelled ticket
// voided by one; the state of a load is its facts replayed in order.
//
// Facts form a chain. Each one carries the hash of the fact before it, and its own hash covers that
// and its whole content:
//
//	fact 1         fact 2         fact 3
//	Prev: Genesis  Prev: hash 1   Prev: hash 2
//	Hash: hash 1   Hash: hash 2   Hash: hash 3
//
// So a byte changed anywhere, a fact removed, inserted or moved is found by [Check], which names
// the fact. A chain alone cannot show that its end was cut off: for that a printed hash, a backup
// or the ticket numbers given out are compared with it.
//
// The package is pure. The caller passes the time, and storing is the job of package book.
package journal
