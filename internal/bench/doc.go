// Package bench is the sample bench beside the scale: how a needle on a dial
// becomes a moisture that money may be settled on.
//
// A dial meter does not read moisture. It reads how grain stores a charge,
// which depends on water, on temperature, on how much grain is in the cell and
// on the kind of grain. A [Chart] holds what the meter's maker found, for one
// crop, one sample mass and one calibration: rows of dial readings, columns of
// sample temperatures. Between its cells the bench goes in straight lines both
// ways; beyond its edges it refuses. The temperature is already in the chart,
// so it is never corrected for twice.
//
// One [Reading] is a test: by dial and chart, straight from a digital meter, by
// oven, or typed in from elsewhere with a reason. [Tests] are the readings of
// one sample under the house's [Policy]; their mean is rounded once, at the
// end. A reading that stands apart is dropped by a rule and a person, and stays
// listed.
//
// Whether to believe the figure is a question of its own. [Flag]s say what is
// wrong (too cold, hot from a dryer, wrong mass, a meter nobody has checked),
// why it matters and what to do. The meter itself is watched by [Check]s
// against oven-dried references: their [Bias] is shown with how far it can be
// trusted, and is never quietly taken off a reading.
package bench
