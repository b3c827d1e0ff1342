// Package shape holds the geometry of bins: how much room grain takes at a depth, how high it
// stands for a volume, and how much a bin holds.
//
// The constants are those of an official bin measure, the Iowa Grain Warehouse Bureau's:
// diameter x diameter x depth x 0.7854 is the room of a round bin in cubic feet, 0.80385 bushels
// fill a cubic foot, and a cone is a third of the cylinder around it. Other constants are in print
// (0.8 bushels, or 1/1.244456 = 0.803564); the one used is named beside every result.
package shape
