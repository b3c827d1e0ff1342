// Package yard is where trucks are received: the trucks that are here, and the
// form of one load with its slip, its moisture ruler and its figures.
//
// A [LoadForm] holds one load while it is entered. What is typed goes in by
// [LoadForm.Type]; package entry reads it, and what the load comes to leaves as
// one value, a [Preview], from which everything on the screen is drawn. [Yard]
// holds the forms of all trucks, and [Screen] shows the current one.
package yard
