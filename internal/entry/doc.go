// Package entry is a load while it is being entered: texts by field, what they
// mean, and what would be written down.
//
// A [Form] lies over a load as the book has it, or over a blank one. Whoever
// enters something sets texts by the id of a field: a clerk at a screen, a flag
// of a command, a cell of an imported list. [Form.Tried] reads all of them onto a
// copy of the load, settles it, and says beside each field what is wrong or
// doubtful; [Form.Facts] is what an act then writes. Nothing is written here.
//
// What a text may be is decided in this package and nowhere else: the fields are
// rows of a table, by part in who.go, weights.go, sample.go and terms.go, each
// with its parser, its limits and its list; growers, trucks, bins, contracts and
// grains are found by what people type in lookup.go; which edition a load is
// settled under is [EditionOf]; what stops a ticket is [Stops]. A [Trial] is a
// load of which nothing is in a book, and a [Test] one reading at the moisture
// bench, by the same parsers.
//
// The package is pure: what it needs to know of the elevator comes through
// [House], and it has no clock.
package entry
