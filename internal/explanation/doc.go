// Package explanation tells how one ticket was worked out, so that a grower can
// follow it.
//
// The question at the window is "show me how you got from 52,300 lb to 812.44
// bushels". The answer is not an explanation written beside the calculation; it
// is the calculation itself, step by step in words and in figures, with the row
// of the posted rates each step used quoted from the edition the book kept on
// the day. Beside it is what another tenth of moisture, another edition or
// the bare water formula would have made, each settled afresh. The last page
// tells how to do it again by hand, and whose word outranks the paper's.
//
// Screen, paper and terminal show the same document.
package explanation
