// Package moisture determines the moisture of a sample that money may be settled
// on, from the tests made at the bench.
//
// One [Reading] is a test: by dial and chart, from a direct-reading meter, by
// oven, or typed in from elsewhere with a reason. [Tests] are the readings of one
// sample under the house's [Policy]; their mean is rounded once, at the end. An
// outlying reading is excluded by a rule and a person, and stays listed.
//
// Whether to believe the figure is a separate question. [Flag]s say what is wrong
// (too cold, hot from a dryer, wrong mass, a meter nobody has checked), why it
// matters and what to do. [Sample] is what is kept of the grain, and for how long.
//
// Charts are in package chart, meters and their checks in package meter, and
// advice on whether grain is dry enough in package dryness.
package moisture
