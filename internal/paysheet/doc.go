// Package paysheet works out a settlement sheet: what a grower is paid for chosen tickets and parts
// of them.
//
// A sheet takes each ticket as its own edition and engine settle it, at the price of the sheet, and
// adds what the ticket does not know: storage and service to the day, levies, advances with their
// interest. Every line is a step. A sheet is a fact with all it was worked from, so it can be worked
// again in another year; its number is never given out twice, a void one keeps its own, and a
// correction names the sheet it corrects.
//
// Of a ticket that is settled in parts, each part takes what lies between two marks of the whole,
// rounded at both, so that the parts add up to the ticket to the cent.
package paysheet
