// Package truckscale keeps the log of a truck scale: zero checks, check weighings
// against known weights, comparisons of two scales, seals and certificate, and
// whether the scale is in service.
//
// Certificate and service are records, the last one of a scale being in force; the
// other entries are facts about the scale.
//
// [Log] is replayed from the facts and [Log.Status] is the status of the scale on a day. The
// tolerance of a scale ([ToleranceFor]) differs by rule set; one not read in its source is shown
// but fails nothing.
package truckscale
