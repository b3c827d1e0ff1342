// Package entry is the form of a load being entered: texts by field, their meaning, and the facts
// they would write.
//
// A [Form] edits a load of the book, or a blank one. Every client sets texts by the id of a field:
// a screen, a flag of a command, a cell of an imported list. [Form.Tried] applies all of them to a
// copy of the load, settles it, and reports for each field what is wrong or doubtful; [Form.Facts]
// are the facts an act then writes. Nothing is written here.
//
// All validation of texts is in this package: the fields are rows of a table, by part in who.go,
// weights.go, sample.go and terms.go, each with its parser, its limits and its list; growers,
// trucks, bins, contracts and grains are found by what people type in lookup.go; which edition a
// load is settled under is [EditionOf]; what stops a ticket is [Stops]. A [Trial] is a load that is
// not in a book, and a [Test] one reading at the moisture bench, by the same parsers.
//
// The package is pure: what it needs to know of the elevator comes through
// [House], and it has no clock.
package entry
