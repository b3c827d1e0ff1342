// Package scalehouse has the use cases of the scale house: open a load, weigh it, record its
// sample, settle it, issue and print its ticket, void or correct it, close the day.
//
// Each act is one transaction: it replays the load's facts, checks that the act is allowed, appends
// the new fact and updates the read models. Either all of it is on disk when the act returns, or
// nothing is. All permissions are checked here.
//
// The window and the terminal program are two ways of calling the same acts.
package scalehouse
