// Package grain has the commodities: which ones a country elevator takes, what a bushel of each
// weighs by law, what is measured on a sample and how each result is recorded, and the tables that
// grade it.
//
// A [Commodity] is a kind of grain with its list of [Factor]s. A factor is anything a tester
// records about a sample: moisture, test weight, dockage, damage, a musty odor. Each has one
// recording rule ("to the nearest tenth", "whole and half pounds, the rest dropped"), and the same
// measurement recorded by another grain's rule gives another figure, so the rule belongs to the
// grain and not to the input form.
//
// There are two kinds of table besides the factors. The United States grade tables (7 CFR 810) put
// a lot into the best grade all of whose limits it meets; see [Commodity.Grade]. The Canadian
// moisture classes (straight, tough, damp, moist, wet) follow from moisture alone; see [Class].
//
// Both are advice at the scale. A grade is official only when a licensed
// inspector gives it, and a grade is never claimed above what was tested.
// Rules that nobody has read in the document they come from are marked "from
// memory" and decide nothing.
package grain
