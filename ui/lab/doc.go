// Package lab is the sample tester's bench: [Bench] tests the sample of a load and records the
// moisture, [Meters] keeps the log of each moisture meter against its reference samples, and
// [Samples] the retained samples on the shelf.
//
// A sample under test is a [SampleTest]: the texts of the next test, read with the instruments of
// the elevator; the replicates made so far, with their result; the load's other results, typed on
// its form at the yard; and the retained part. The bench shows it as one value, a [Result].
package lab
