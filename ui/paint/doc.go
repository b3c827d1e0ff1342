// Package paint draws text and shapes for widgets that have no parts of their own: a
// [Painter] measures, wraps and writes in a [TextStyle], and a widget that says how
// much room it needs and what it is made of gets its renderer here.
package paint
