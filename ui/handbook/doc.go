// Package handbook is the book that lies on the desk: how the program is used,
// how the arithmetic goes, and what to be careful of.
//
// The chapters are Markdown files inside the program, a folder a language and
// one file a chapter, so the handbook is there when the network is not. [In]
// gives the handbook in a language. A chapter is read into blocks (headings,
// paragraphs, lists, tables, worked sums) that a window or a terminal can set
// in its own type; only the few forms the chapters use are understood, and a
// test holds every chapter to them. Two stars are kept for words of the screen
// and keys, backticks for what is typed or stands in a file: so a test can tell
// whether a translated chapter names what the translated screen shows.
//
// [Book.Search] finds a passage by a few words as they are typed. [Book.For]
// gives the chapter that belongs to a screen, for the key that asks for help
// there.
package handbook
