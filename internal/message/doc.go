// Package message is what the program says to people, kept as values until the
// moment they are read.
//
// A [Text] is a key, which is the English sentence as a format, and its arguments:
// other texts, amounts, dates, counts, names. Nothing is translated where it is
// made. At the edge, on a screen, a paper or a terminal, a [Printer] looks the key
// up in the [Catalog] of its language and sets the arguments into it, each in its
// own way: a text is translated too, an amount is written with the signs of the
// language, a name stays as it is. A key that the catalog lacks is said in English
// and counted.
//
// An error is a text as well. It wraps others as fmt.Errorf does and may have a
// [Kind], which is what callers decide on; nobody reads an error's words to do so.
//
// String and Error give English, for logs, programs and all that is hashed.
package message
