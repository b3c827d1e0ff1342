// Package handbook is the user manual: how the program is used, how the arithmetic works, and what
// to be careful of.
//
// The chapters are Markdown files inside the program, a folder a language and one file a chapter,
// so the handbook is there when the network is not. [In] returns the handbook in a language. A
// chapter is read into blocks (headings, paragraphs, lists, tables, worked sums) that a window or a
// terminal can set in its own type; only the few forms the chapters use are understood, and a test
// holds every chapter to them. Two stars are kept for words of the screen and keys, backticks for
// what is typed or is in a file: so a test can check whether a translated chapter names what the
// translated screen shows.
//
// [Book.Search] finds a passage by a few words as they are typed. [Book.For] returns the chapter of
// a screen, for its help key.
package handbook
