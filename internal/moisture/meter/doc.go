// Package meter describes moisture meters and judges them by their checks
// against oven-dried reference samples.
//
// A [Meter] has a calibration and the limits posted for each grain. Its [Check]s determine its
// [Status]: checked, due, overdue or failed by the tolerance that an authority sets
// ([CheckTolerance]). Their [Bias], the mean error with its 95 % interval, is shown and is never
// taken off a reading.
package meter
