// Package due is the list of what falls due, by day, with what becomes of each when its day passes.
package due
