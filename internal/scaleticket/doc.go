// Package scaleticket composes the content of a scale ticket.
//
// A ticket is composed once: [Compose] takes the load, its settlement and the elevator's name and
// makes a [Document] of ready strings, section by section, in the order of a scale ticket:
// identity, number, party, movement, weight, quality, settlement, signature, and the whole working
// in small print. Paper, roll and screen only read that document, so the preview has exactly the
// words that will print:
//
//   - package sheet draws it on a half letter sheet or A5, for print and screen,
//     and sets it as text for a roll or a terminal;
//   - [QR] packs number, net, moisture, dry weight and code for a scanner, as
//     package barcode writes them.
//
// [SampleLabel] composes the label of a retained sample.
//
// Nothing required is ever blank. What is not known yet is printed as a phrase, "not weighed", "not
// tested", "price not set", in the place where it will print. A slip never calculates: each figure
// is a step of the settlement's working. The one figure it works out itself is a net from gross and
// tare while the load cannot yet be settled.
//
// The same ticket gives the same bytes, today and in February: nothing here is random or reads the
// clock, and the date of a PDF is the date its ticket was issued.
package scaleticket
