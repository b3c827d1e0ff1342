// Package levy holds what is deducted from a settlement for others, checkoffs and indemnity funds,
// as dated files: at which event, on which base, at which rate, up to which cap, from whom, for
// which place and days, and where it says so.
//
// Levies differ in event and base: soybeans pay a percent of the net market price, corn money for a
// bushel, an indemnity fund a percent of gross dollars. A file without a base is refused. Who
// confirmed a rule with its authority, and when, stands in the file; one that nobody confirmed says
// so wherever it is used.
package levy
