// Package shell is the desk's window: what the presenters say, drawn.
//
// A view shows ready strings and hands back what a person typed or chose. It
// reads no amount and works none out; if there is something to decide, the
// presenter decides it. So a view is short: widgets of the kit, put where they
// belong, and two directions of wire.
//
// The window has a rail at the left with the trucks on the yard and the list of
// screens, the screen in front, and one line at the foot that repeats the result
// of every act. The yard stays in sight whatever screen is open: a driver is
// waiting.
//
// A new screen is a type that is a [Screen], in a file of its own, and a line
// in the table of screens (screens.go). Everything it can do is in its Acts,
// which feed the menus, the keys, the buttons and the sheet of keys.
package shell
