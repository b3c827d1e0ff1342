// Package report is a paper of several parts: headings, sentences, tables,
// charts, lines to sign on.
//
// The day sheet, a grower's statement, the registers and the proof of a
// disputed ticket are all composed as a [Document] of ready strings by whoever
// knows their meaning. This package only sets them: on pages ([PDF]), for a
// terminal ([Document.Text]) or, table by table, as comma-separated values
// ([Table.CSV]). It calculates nothing, so what one rendering says all of them
// say, and the same document gives the same bytes.
package report
