// Package lab is the sample tester's bench: [Bench] tests the sample of a load and
// writes the moisture down, [Meters] keeps the log of each moisture meter against
// its reference samples, and [Samples] the retained samples on the shelf.
package lab
