// Package report renders papers of several parts: headings, sentences, tables, charts, a working,
// lines to sign on.
//
// The day sheet, a grower's statement, the registers and the proof of a disputed ticket are all
// composed as a [Document] of ready strings by the packages that know their meaning. This package
// only renders them: on pages ([Document.PDF]), for a terminal ([Document.Text]), as a workbook
// ([Document.XLSX]) or, table by table, as comma-separated values ([Document.CSV]). It calculates
// nothing, so all renderings have the same content, and the same document gives the same bytes.
//
// A document is composed in English and rendered in the language of its elevator.
//
// A figure stays the decimal text it was composed as, also in a spreadsheet:
// "812.40" is written into the cell as 812.40 and never by way of a binary
// fraction.
package report
