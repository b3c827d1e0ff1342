// Package yard has the screen that receives trucks: the trucks on the yard, and the form of one
// load with its slip, its moisture ruler and its figures.
//
// A [LoadForm] holds one load while it is entered. [LoadForm.Type] takes what is typed; package
// entry parses it, and the result is one value, a [Preview], from which everything on the screen is
// drawn. [Yard] holds the forms of all trucks, and [Screen] shows the current one.
package yard
