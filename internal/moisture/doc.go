// Package moisture determines the moisture of a sample that money may be settled
// on, from the tests made at the bench.
//
// One [Reading] is a test: by dial and chart, from a direct-reading meter, by oven, or typed in
// from elsewhere with a reason. [Tests] are the readings of one sample under the elevator's
// [Policy]; their mean is rounded once, at the end. An outlying reading is excluded by a rule and a
// person, and stays listed.
//
// Whether the figure is reliable is a separate question. [Flag]s say what is wrong (too cold, hot
// from a dryer, wrong mass, an unchecked meter), why it matters and what to do. [Sample] is the
// retained sample and its retention period.
//
// Charts are in package chart, meters and their checks in package meter, and
// advice on whether grain is dry enough in package dryness.
package moisture
