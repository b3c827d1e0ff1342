// Package scalehouse is what a person at the scale house can do: open a load, weigh
// it, write down its sample, settle it, issue and print its ticket, void or
// correct it, close the day.
//
// Each act is one transaction: it replays the load's facts, asks whether the
// act may follow, appends the new fact and renews what the desk reads. Either
// all of it is on disk when the act returns, or nothing is. Who may do what is
// decided here and nowhere else.
//
// The window and the terminal program are two ways of calling the same acts.
package scalehouse
