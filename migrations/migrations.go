// Package migrations holds the steps that build a book's tables, in order.
//
// A file NNNN_what.sql is one step. A book remembers the name and SHA-256 of
// every step it went through, so a step that has ever met a book is never
// edited again, not even a comment in it: what needs to be different becomes
// the next number.
package migrations

import "embed"

// NeededToRead is the last step without which a book cannot be read. Those
// after it make work faster, or keep what only a desk that writes asks for: a
// command that reads takes a book that has not been through them as it is.
const NeededToRead = 6

// Bins is the step that made the tables of bins and owners: whoever asks what lies in the house
// needs it.
const Bins = 10

// Files are all steps.
//
//go:embed *.sql
var Files embed.FS
