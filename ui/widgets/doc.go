// Package widgets has the widgets of the window.
//
// The idea. A scale clerk works with gloves on, in sunlight, with a driver
// waiting. So every widget here keeps four promises:
//
//   - The focus is enough. A widget has a stop in a [FocusOrder], which fixes the order of
//     Tab and Enter; F-keys and Escape go to one table of Commands first.
//   - Colour is never the only signal. A State is a word, an icon and a colour.
//   - The widget shows and calculates nothing. Text comes in ready made.
//   - What a presenter shows never comes back as if a person had typed it.
//
// What a window shares (its canvas, its commands, the layer lists float on) is a [UIContext]. The
// window makes one, every form has a [FocusOrder] of its own, and the rest hangs on those two.
// Dialogs are here too, because they take the keyboard focus from the window and return it.
//
// Widgets take ready strings. The few texts of their own are in [Words].
package widgets
