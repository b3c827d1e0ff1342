// Package shell is the main window: it draws what the presenters provide.
//
// A view shows ready strings and returns what a person typed or chose. It parses and calculates no
// amount; the presenter decides. So a view is short: widgets, their layout, and the wiring in both
// directions.
//
// The window has a sidebar at the left with the trucks on the yard and the list of screens, the
// screen in front, and a status line that repeats the result of every action. The yard stays
// visible whatever screen is open: a driver is waiting.
//
// A new screen is a type that is a [Screen], in a file of its own, and a line
// in the table of screens (screens.go). Everything it can do is in its Acts,
// which feed the menus, the keys, the buttons and the sheet of keys.
package shell
