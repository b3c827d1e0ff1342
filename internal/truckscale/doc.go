// Package truckscale keeps the log of a truck scale: zero checks, check weighings
// against known weights, comparisons of two scales, seals and certificate, and
// whether the scale is in service.
//
// Certificate and service are records, the last one of a scale being in force; the
// other entries are facts about the scale.
//
// [Log] is what the facts add up to and [Log.Status] how the scale stands on a
// day. How far a scale may be off ([ToleranceFor]) differs by rule set; what nobody
// has read in its source is told and fails nothing.
package truckscale
