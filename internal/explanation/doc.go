// Package explanation shows how one ticket was calculated, step by step, for the grower.
//
// The question at the window is "show me how you got from 52,300 lb to 812.44 bushels". The answer
// is not an explanation written beside the calculation; it is the calculation itself, step by step
// in words and in figures, with the row of the posted rates each step used quoted from the edition
// the book kept on the day. It also shows the result with another tenth of moisture, another
// edition or the pure water formula, each settled separately. The last page says how to repeat it
// by hand, and which authority outranks the paper.
//
// Screen, paper and terminal show the same document.
package explanation
