// Package listdetail is the screen with a list and, beside it, the detail of the chosen row:
// tickets and their slips, growers and their cards, editions, disputes, retained samples.
//
// An area supplies a presenter with columns as data, a table of acts, and the detail of a row. This
// package does the search line, list, count, focus order and buttons, and keeps the choice while
// the list changes.
package listdetail
