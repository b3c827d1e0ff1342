// Package worksheet records a calculation step by step while it is made.
//
// A settlement is not computed first and explained afterwards: it is recorded line by line on a
// [Sheet], as a careful clerk would on paper, and a figure that is not on the sheet does not exist.
// Each [Step] holds its label, the expression that made it, the exact result, the rounding and the
// rounded figure, and where its rule came from. Steps are the operands of later steps, so the sheet
// is a tree; its readers (slip, screen, dispute sheet, terminal) show what was computed, because
// nothing else was.
//
// A rule that was looked at and did not apply is a step too, with its reason:
// "no drying charge: 14.8 % is not above 15.0 %".
//
// A later step always uses the earlier step's rounded figure, the one that is
// printed, so every line can be redone from the paper with a pocket
// calculator.
package worksheet
