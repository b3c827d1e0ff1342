// Package transcript records sessions of the terminal program: command lines with their output and
// exit status, as a text. Another build of the program runs the same command lines, and [Compare]
// finds where its output differs.
//
// A transcript compares a book of an older version with the current program: the output for a
// ticket, an account or a closed day must be the same. Intended differences are in a list with a
// reason each, see [Allowed].
package transcript
