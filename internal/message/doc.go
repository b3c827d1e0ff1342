// Package message has the program's messages to people as values that are translated when shown.
//
// A [Text] is a key, which is the English sentence as a format, and its arguments: other texts,
// amounts, dates, counts, names. Nothing is translated where it is made. At the edge, on a screen,
// a paper or a terminal, a [Printer] looks the key up in the [Catalog] of its language and formats
// the arguments: a text is translated too, an amount is written in the format of the language, a
// name stays unchanged. A key that the catalog lacks is printed in English and counted.
//
// An error is a text as well. It wraps others as fmt.Errorf does and may have a [Kind], which is
// what callers decide on, never its words.
//
// String and Error return English, for logs, programs and everything that is hashed.
package message
