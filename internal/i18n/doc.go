// Package i18n translates the program's texts into the language of the house.
//
// Every text is made in English first: labels, reasons, sentences with figures in
// them. The book, the hashes and the output for programs are English. Texts are
// translated last, where they are shown or printed: [For] gives the [Translator]
// of a language, and [Translator.Say] translates a finished English text.
//
// A text with figures in it, "Net would be -380 lb (gross 24,120 lb - tare
// 24,500 lb)", is recognized by its format and taken apart along it; the texts in
// its gaps are translated too. What is no text of the program, such as a name, is
// left as it is.
package i18n
