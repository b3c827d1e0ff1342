// Package quantity holds the numbers of the scale house: pounds, percents,
// points, bushels, money.
//
// A number without its unit is how a ticket goes wrong, so here there is no
// such number. An [Amount] is an exact value and a [Unit] in one piece; only
// like units add, and multiplying "$/bu/pt" by points and by bushels can only
// give "$". The value is kept as a fraction of two decimals, because water
// shrink divides by (100 - Mf) and 100/84.5 has no end: nothing is rounded by
// dividing. Rounding happens in one place, [Rounding], under a rule that has a
// name, once, where the schedule in force says so.
//
// Text typed by people goes through [Parse], which knows how far a figure may
// sensibly go and answers with a sentence when it goes further.
package quantity
