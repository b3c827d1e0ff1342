// Package i18n holds the catalogs of the program's languages, a file for each, and translates texts
// to the language of the elevator.
//
// Texts are messages (package message): [In] returns the printer of a language, which formats each
// argument. The book, the hashes and the output for programs are English.
//
// Finished English still reaches papers from old books, and from packages whose texts are not
// messages yet: "Net would be -380 lb (gross 24,120 lb - tare 24,500 lb)". The [Translator] of a
// language recognizes such a sentence by its format, splits it along the format and translates the
// texts in its gaps too. Other text, such as a name, is left unchanged.
package i18n
