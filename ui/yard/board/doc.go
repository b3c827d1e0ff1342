// Package board is the yard as a list of trucks: whose place and key each has, how long it has waited,
// and what it waits for.
package board
