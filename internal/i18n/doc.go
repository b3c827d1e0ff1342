// Package i18n is the language of a house.
//
// Whatever the program tells people it tells in English first: labels, reasons,
// sentences with figures in them. English is what the book keeps, what hashes
// are taken of and what programs are given. The language of the house is put on
// last, where something is shown or printed: [Of] gives a house its tongue, and
// [Tongue.Say] gives a finished English text in it.
//
// A text that was made with figures in it, "Net would be -380 lb (gross 24,120 lb
// - tare 24,500 lb)", is known by its format and taken apart along it; what was
// in its gaps is said too. What is no text of the program, such as a name, stays
// what it is.
package i18n
