// Package report is a paper of several parts: headings, sentences, tables,
// charts, a working, lines to sign on.
//
// The day sheet, a grower's statement, the registers and the proof of a
// disputed ticket are all composed as a [Document] of ready strings by whoever
// knows their meaning. This package only sets them: on pages ([Document.PDF]),
// for a terminal ([Document.Text]), as a workbook ([Document.XLSX]) or, table
// by table, as comma-separated values ([Document.CSV]). It calculates nothing, so
// what one rendering says all of them say, and the same document gives the same
// bytes.
//
// A document is composed in English and set in the language of its house.
//
// A figure stays the decimal text it was composed as, also in a spreadsheet:
// "812.40" is written into the cell as 812.40 and never by way of a binary
// fraction.
package report
