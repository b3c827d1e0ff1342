// Package rule has the parts of an edition's rules: cells and rows with their place in the file,
// the weights a rule applies to, the lines a rule is posted in, and [Method], the object that holds
// everything particular to one way of shrinking, drying or docking.
//
// Each kind of rule is a package beside this one: shrink, handling, drying, discount. It has a
// Rule, as read from an edition, a table Methods, and a file for each method.
package rule
