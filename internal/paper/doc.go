// Package paper is the page engine of everything printed or shown as print.
//
// Whoever knows what a paper means (a ticket, a day sheet, a label) sets it as
// [Block]s, pieces that stay whole when a page ends. A [Flow] fills pages with
// them. The result is a [Layout]: pages of text runs, rules, boxes and pictures at
// exact places, in whole thousandths of a point. It is made once and only drawn
// from then on:
//
//   - package paper/pdf writes it as a PDF,
//   - ui/paperview draws it on the window's canvas,
//   - package paper/plain sets lines of equally wide letters for terminals, files and
//     roll printers, for which there are no pages.
//
// Letters are measured here, from the fonts that every back end draws with, so a
// line breaks at the same word wherever it is seen.
package paper
