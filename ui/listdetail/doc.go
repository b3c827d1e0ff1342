// Package listdetail is the one kind of screen that shows a list and, beside it,
// the detail of the row that is chosen: tickets and their slips, growers and their
// cards, editions, disputes, retained samples.
//
// An area brings a presenter with columns as data, a table of acts, and what is
// shown of a row. Line, list, count, focus order, buttons, and keeping the choice
// while the list changes are done here.
package listdetail
