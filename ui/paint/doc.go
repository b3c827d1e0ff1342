// Package paint draws text and shapes for widgets that have no parts of their own: a [Painter]
// measures, wraps and draws text in a [TextStyle], and a widget that implements a minimum size and
// a paint function gets its renderer here.
package paint
