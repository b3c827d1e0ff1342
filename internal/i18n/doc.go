// Package i18n holds the catalogs of the program's languages, a file for each.
//
// Texts are messages (package message): [In] returns the printer of a language, which formats each
// argument. The book, the hashes and the output for programs are English.
package i18n
