// Package demo invents an elevator and fills its book with a season.
//
// Everything in it is made up: the elevator, its people, its growers and their trucks, every load.
// All of it says "example - not for trade". What is real is the process: each load goes through the
// same acts as a real one, in the disorder of a real yard. Samples come back after the truck is
// empty, trucks are weighed in two drafts, a tare is a stored one, a weight is typed by hand when
// the indicator is dark, a load is turned away, a ticket is voided, another corrected the day
// after.
//
// The season is generated from a random seed: the same seed, day and rates give the same book to
// the last hash, so that results can be reproduced.
package demo
