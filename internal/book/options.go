package book

import "time"

// Options say how a book is opened. The zero value opens an existing book for
// reading and writing.
type Options struct {
	Create   bool // make the book, and its place, if it is not there
	ReadOnly bool // never write; a book too old to be read is refused with [ErrOld]
	// Bins refuses a book for reading that was written by programs which did not keep what lies in
	// each bin, and whose it is.
	Bins     bool
	AnyPlace bool          // write also on a network drive or in a synced folder
	Busy     time.Duration // how long to wait for another program's write; 0 means 5 s
}
