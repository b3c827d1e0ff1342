// Package quantity holds the numbers of the scale house: pounds, percents,
// points, bushels, money.
//
// A number without its unit is how a ticket goes wrong, so here there is no such number. An
// [Amount] is an exact value and a [Unit] in one piece; only like units add, and multiplying
// "$/bu/pt" by points and by bushels can only give "$". The value is kept as a fraction of two
// decimals, because water shrink divides by (100 - Mf) and 100/84.5 never terminates: division does
// not round. Rounding happens in one place, [Rounding], by a named rule, once, where the schedule
// in force says so.
//
// Text typed by people goes through [Parse], which checks a figure against plausible limits and
// returns a readable error outside them.
package quantity
