// Package transcript keeps what the terminal program said: command lines with
// their output and exit status, as a text. Another build of the program is
// given the same command lines, and [Compare] tells where it says something
// else.
//
// A transcript is how a book of an older program is held against the program
// of today: whatever was printed for a ticket, an account or a closed day must
// be printed again. Differences that are meant stand in a list with a reason
// each, see [Allowed].
package transcript
