// Package rule is what the rules of an edition are made of: cells and rows with
// the place they stand in, the weights that something is taken on, the lines a
// rule is posted in, and [Method], the object that holds everything particular
// to one way of shrinking, drying or docking.
//
// Each kind of rule is a package beside this one: shrink, handling, drying,
// discount. It has a Rule, which is what an edition says, a table Methods, and a
// file for each method.
package rule
