// Package yard is where trucks are received: the trucks that are here, and the
// form of the load in hand with its slip, its ruler and its figures.
//
// A [LoadForm] holds one load while it is entered: each field with what was typed
// in it, how it was read and what is wrong with it. [Yard] holds the forms of all
// trucks, and [Screen] shows the one in hand.
package yard
