// Package headoffice is the protocol between sites and their head office: how the chain of a site travels,
// as lines, and what is said of it when it came.
//
// A site keeps its own book and works without a line to anybody. When there is one, or a stick, the
// facts of its journal are copied to the office in order. The office keeps them as they are, checks
// each against its hash and the fact before it, and never edits one. Sending is therefore free of
// consequence: whatever came already is passed over, whatever is missing is asked for, and after any
// interruption both sides go on from the last fact that the office has.
//
// What cannot be mended by sending again is named: a chain that breaks, facts of another site, a
// place of the chain that holds two different facts. The last is a fork. It comes from a book that
// was restored from an old copy and worked on; the office keeps both branches and merges nothing.
package headoffice
