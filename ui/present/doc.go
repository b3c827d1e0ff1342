// Package present is what the desk's window says, without the window.
//
// A presenter holds the state of one screen as plain values and ready strings:
// which fields there are, how each was read, what is wrong with it in words,
// what the slip would look like. A view shows those strings and hands back what
// the person typed. So everything a clerk can do is tested here with no
// display, and a view has nothing to decide.
//
// Presenters reckon nothing. Every amount comes from the desk or from a
// settlement; a question such as "what is a tenth of a point worth" is answered
// by settling at both ends.
//
// What a presenter wants of its window it asks through [Window]: say this on
// the status line, put this question, do this in the background, draw yourself
// again. A question is data ([Ask]), so a test answers it like a person.
//
// A new screen is a file here with a type made from a [Frame], a file in the
// views, and a line in the views' table of screens.
package present
