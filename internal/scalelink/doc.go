// Package scalelink reads the weighing indicator of a truck scale.
//
// An indicator sends without being asked. Several times a second it transmits a short frame, "[+
// 52300lb G S]", with the weight it shows, the unit, whether that is gross or net, and whether the
// truck has come to rest. Every maker frames this differently and there is no one standard, so a
// frame is described here as data: a [Profile], read from TOML, defines the bytes a frame starts
// and ends with, where its fields are, and what each letter in them means. Two examples of our own
// are shipped; a yard copies the nearer one and changes it until the desk shows what the indicator
// shows.
//
// Three questions decide whether bytes on a wire are a weight for a ticket:
//
//   - Is it a whole frame? Noise, a lost byte or a line cut in half must never
//     become a smaller weight. Frames have a fixed or bounded length, letters
//     not described refuse the frame, and a line received from its middle is
//     discarded.
//   - Is it now? A reading that is not fresh is not a reading: [Link] gives an
//     error when the line is down, silent, or only noise, and says which.
//   - Is it a weight? [Scale] takes a reading only at rest, above zero, gross,
//     in whole scale divisions and not over 105 % of capacity. Each refusal is
//     a message for the clerk, and all of them are returned at once.
//
// A [Link] is the same over a serial port and over TCP; only the [Dialer] differs. It reconnects
// automatically, with a longer delay after each failure. The [Simulator] is an indicator without a
// scale: a truck rolls on, the weight climbs axle by axle, swings, and comes to rest. The demo yard
// and the tests weigh on it.
//
// Weights are exact amounts of package quantity; no binary fraction is used. Frames hold what the
// indicator shows, so nothing is rounded here: a figure that is not whole divisions is refused, not
// corrected.
package scalelink
