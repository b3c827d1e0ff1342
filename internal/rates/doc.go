// Package rates holds what an elevator has posted: how it shrinks wet grain,
// what it charges for drying and how it docks quality, as dated editions.
//
// An [Edition] is data, read from a file a manager can read too. It is in force
// for a period, covers one commodity, and once a ticket has used it it is never
// changed: a correction is a new edition that names the old one. A ticket keeps
// the edition's id and the SHA-256 of its text, so that February's dispute is
// settled under November's rules.
//
// Nothing is implied. Whether 15.0 % is above "15.0", whether a handling loss
// is added or multiplied, on which weight a discount is taken and in which
// order, what part of a point counts, to which place each line is rounded: the
// edition says, or it does not load.
//
// A file has the tables edition (id, period, commodity, order of deductions), origin (provenance),
// units, rounding, dockage where the grain has it, shrink, handling, drying, any number of
// discounts, and shares. [Read] reports every mistake in it at once, with its line and a remedy;
// [NewSet] compares editions with each other, and [Set.On] finds the one of the day of delivery.
// [Edition.Cautions] warns of rules that are allowed but unusual.
package rates
