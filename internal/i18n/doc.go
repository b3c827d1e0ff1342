// Package i18n holds the catalogs of the program's languages, a file for each, and says texts in
// the language of the elevator.
//
// What is said is a message (package message): [In] gives the printer of a
// language, which sets each argument in its own way. The book, the hashes and the
// output for programs are English.
//
// Finished English still reaches papers from old books, and from packages whose
// texts are not messages yet: "Net would be -380 lb (gross 24,120 lb - tare
// 24,500 lb)". The [Translator] of a language recognizes such a sentence by its
// format, takes it apart along it and says the texts in its gaps too. What is no
// text of the program, such as a name, is left as it is.
package i18n
