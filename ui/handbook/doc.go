// Package handbook is the book that lies on the desk: how the program is used,
// how the arithmetic goes, and what to be careful of.
//
// The chapters are Markdown files inside the program, one file a chapter, so
// the handbook is there when the network is not. [All] gives them in reading
// order. A chapter is read into blocks (headings, paragraphs, lists, tables,
// worked sums) that a window or a terminal can set in its own type; only the
// few forms the chapters use are understood, and a test holds every chapter to
// them.
//
// [Search] finds a passage by a few words as they are typed. [For] gives the
// chapter that belongs to a screen, for the key that asks for help there.
package handbook
