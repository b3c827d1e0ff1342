// Package kit is the set of widgets the desk is built from.
//
// The idea. A scale clerk works with gloves on, in sunlight, with a driver
// waiting. So every widget here keeps four promises:
//
//   - The keyboard is enough. A widget sits on a Ring, which fixes the order of
//     Tab and Enter; F-keys and Escape go to one table of Commands first.
//   - Nothing is said by colour alone. A State is a word, an icon and a colour.
//   - The widget shows, it does not reckon. Text comes in ready made, and a
//     drawing takes whole numbers per mille of its own width or height.
//   - What a presenter shows never comes back as if a person had typed it.
//
// What a window shares (its canvas, its commands, the layer lists float on) is
// a Stage. A view makes one Stage for the window, one Ring for each form, and
// hangs the rest on those two.
//
// The kit takes ready strings. The few words it speaks itself are in Words.
// Work that may be slow goes through a Runner, the only place where this
// package starts a goroutine or hands a function to the user interface's own.
package kit
