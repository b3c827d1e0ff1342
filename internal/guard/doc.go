// Package guard finds what is improbable about a load before its ticket: a price far off the
// others, grain wetter than it can be, a bin that holds other grain. Impossible figures are refused
// on input; improbable ones are compared with figures of the elevator and of the book, which the
// message names.
//
// [Check] is called by the form of a load (window, terminal, lists) and again when a ticket is
// issued. Each guard is a line of the table [Rules]; whether it remarks, asks, or asks a manager,
// and at which limits, the elevator decides in its set-up ([elevator.GuardRule]). An answer is a
// fact of the load ([load.Answered]) and holds as long as the figures that were compared stay the
// same.
package guard
