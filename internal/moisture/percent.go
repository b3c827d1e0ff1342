package moisture

import (
	"strings"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func (r Reading) checkDirect(faults *fault.List) {
	r.checkPercent(faults)
	faults.Unless(r.Meter != "", "%s: the meter is missing; choose the one that was used", r.label())
	faults.Unless(r.Chart == "", "%s: a direct-reading meter has corrected for temperature itself, so no chart belongs to it; take chart %s away", r.label(), r.Chart)
}

// checkPercent checks that a moisture is physically possible.
func (r Reading) checkPercent(faults *fault.List) {
	if r.Percent.Unit() != quantity.Percent {
		faults.Add("%s: the moisture is missing; type it in %%", r.label())
		return
	}
	faults.Unless(r.Percent.Sign() > 0 && r.Percent.Less(hundredPercent),
		"%s: a moisture of %s cannot be; it lies above 0 %% and below 100 %%", r.label(), r.Percent)
}

var hundredPercent = quantity.Int(100, quantity.Percent)

// workDirect takes the meter's own figure. Temperature and mass are recorded
// beside it and change nothing.
func (r Reading) workDirect(s *worksheet.Sheet, e Equipment) (*worksheet.Step, error) {
	used, err := e.Meter(r.Meter)
	if err != nil {
		return nil, err
	}
	if used.Method != meter.Direct {
		return nil, message.Invalid.Errorf("%s: %s is read by dial and chart; type the dial reading and the sample temperature", r.label(), used.Name())
	}
	if quantity.Recorded(r.Sample) {
		r.writeTemperature(s)
	}
	instrument := message.New("%v, calibration %v", used.Name(), r.Calibration)
	return s.Given(r.id(), r.label(), r.Percent, quantity.Unrounded, r.by(instrument)), nil
}

func (r Reading) checkTyped(faults *fault.List) {
	r.checkPercent(faults)
	faults.Unless(strings.TrimSpace(r.Reason) != "", "%s: a moisture typed by hand needs a reason, such as the number of the certificate it is from", r.label())
}

// workTyped takes the figure over with the reason beside it.
func (r Reading) workTyped(s *worksheet.Sheet) *worksheet.Step {
	step := s.Given(r.id(), r.label(), r.Percent, quantity.Unrounded, r.by(message.New("typed by hand")))
	return s.Note(step, message.New("%v", strings.TrimSpace(r.Reason)))
}
