// Package help shows the handbook, opened at the chapter of the screen in front, and
// the sheet of all keys.
package help
