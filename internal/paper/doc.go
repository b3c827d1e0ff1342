// Package paper is the page engine of everything printed or shown as print.
//
// A package that composes a paper (a ticket, a day sheet, a label) builds it from [Block]s, pieces
// that page breaks do not split. A [Flow] fills pages with them. The result is a [Layout]: pages of
// text runs, rules, boxes and pictures at exact places, in whole thousandths of a point. It is
// computed once and then only drawn:
//
//   - package paper/pdf writes it as a PDF,
//   - ui/paperview draws it on the window's canvas,
//   - package paper/plain sets monospaced lines for terminals, files and
//     roll printers, for which there are no pages.
//
// Letters are measured here, from the fonts that every back end draws with, so a
// line breaks at the same word wherever it is seen.
package paper
