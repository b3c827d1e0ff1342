package bench

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
)

func (r Reading) checkDirect(faults *faults) {
	r.checkPercent(faults)
	faults.unless(r.Meter != "", "%s: the meter is missing; choose the one that was used", r.label())
	faults.unless(r.Chart == "", "%s: a direct-reading meter has corrected for temperature itself, so no chart belongs to it; take chart %s away", r.label(), r.Chart)
}

// checkPercent holds a moisture that was read or told between dry dust and
// water.
func (r Reading) checkPercent(faults *faults) {
	if r.Percent.Unit() != quantity.Percent {
		faults.unless(false, "%s: the moisture is missing; type it in %%", r.label())
		return
	}
	faults.unless(r.Percent.Sign() > 0 && r.Percent.Less(hundredPercent),
		"%s: a moisture of %s cannot be; it lies above 0 %% and below 100 %%", r.label(), r.Percent)
}

var hundredPercent = quantity.Int(100, quantity.Percent)

// workDirect takes the meter's own figure. Temperature and mass are recorded
// beside it and change nothing.
func (r Reading) workDirect(s *working.Sheet, e Equipment) (*working.Step, error) {
	meter, err := e.Meter(r.Meter)
	if err != nil {
		return nil, err
	}
	if meter.Method != Direct {
		return nil, fmt.Errorf("%s: %s is read by dial and chart; type the dial reading and the sample temperature", r.label(), meter.Name())
	}
	if recorded(r.Sample) {
		r.writeTemperature(s)
	}
	instrument := fmt.Sprintf("%s, calibration %s", meter.Name(), r.Calibration)
	return s.Given(r.id(), r.label(), r.Percent, quantity.Unrounded, r.by(instrument)), nil
}
