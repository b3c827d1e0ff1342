package meter

import (
	"fmt"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Meter is one moisture meter of the elevator.
type Meter struct {
	// ID is the elevator's own name for it; Model and Serial are the maker's.
	ID     string `json:"id"`
	Model  string `json:"model"`
	Serial string `json:"serial,omitempty"`
	// Method is ByDial or Direct.
	Method Method `json:"method"`
	// Calibration is the edition in force on the meter now.
	Calibration string `json:"calibration"`
	// Ambient is the room temperature the meter is made for and MaxDifference the most the grain
	// may differ from it, by the maker. A dial meter's chart has both too, and the chart's are
	// used.
	Ambient       quantity.Span   `json:"ambient"`
	MaxDifference quantity.Amount `json:"max_difference"`
	// Tolerance is the maker's tolerance, in points to either side.
	Tolerance quantity.Amount `json:"tolerance"`
	// Crops are the limits posted beside the meter for each grain; a crop that
	// is not there has none posted.
	Crops []CropLimits `json:"crops,omitempty"`
}

// CropLimits are a meter's limits for one crop. Each may be left out.
type CropLimits struct {
	Crop     string          `json:"crop"`
	Mass     quantity.Amount `json:"mass"`               // g
	Moisture quantity.Span   `json:"moisture"`           // %
	Sample   quantity.Span   `json:"sample_temperature"` // of the grain
}

// Name is the meter for people: "bench-1 (Example dial meter A)".
func (m Meter) Name() string { return fmt.Sprintf("meter %s (%s)", m.ID, m.Model) }

// called begins a sentence about the meter.
func (m Meter) called() message.Text { return message.New("Meter %v (%v)", m.ID, m.Model) }

// For returns the meter's limits for a crop.
func (m Meter) For(crop string) CropLimits {
	for _, limits := range m.Crops {
		if limits.Crop == crop {
			return limits
		}
	}
	return CropLimits{Crop: crop}
}

// Check lists everything wrong with the meter's description.
func (m Meter) Check() []error {
	var faults fault.List
	faults.Unless(m.ID != "", "a meter has no id; give each meter a short name, such as bench-1")
	faults.Unless(m.Model != "", "meter %s has no model; write what its plate says, for the charts go by it", m.ID)
	faults.Unless(m.Method.UsesMeter(), "meter %s is neither read by dial nor direct; say which", m.ID)
	faults.Unless(m.Calibration != "", "meter %s has no calibration edition; read it from the meter or its charts", m.ID)
	faults.Unless(!quantity.Recorded(m.Tolerance) || m.Tolerance.Unit() == quantity.Point && m.Tolerance.Sign() > 0,
		"meter %s has a tolerance of %s; write it in points, such as 0.5 pt, or leave it out", m.ID, m.Tolerance)
	faults.Unless(!quantity.Recorded(m.MaxDifference) || quantity.IsTemperature(m.MaxDifference),
		"meter %s has a largest difference of %s; write it in degrees", m.ID, m.MaxDifference)
	faults.Unless(!m.Ambient.Given() || quantity.IsTemperature(m.Ambient.Low) && m.Ambient.Low.Unit() == m.Ambient.High.Unit(),
		"meter %s may stand at %s, which is no range of temperatures", m.ID, m.Ambient)
	for _, l := range m.Crops {
		l.check(&faults, m.ID)
	}
	return faults
}

func (l CropLimits) check(faults *fault.List, meter string) {
	faults.Unless(l.Crop != "", "meter %s has limits posted for no grain; name the grain", meter)
	faults.Unless(!quantity.Recorded(l.Mass) || l.Mass.Unit() == quantity.Gram && l.Mass.Sign() > 0,
		"meter %s is posted for %s of %s; write grams, such as 250 g", meter, l.Mass, l.Crop)
	faults.Unless(!l.Moisture.Given() || IsMoisture(l.Moisture.Low) && IsMoisture(l.Moisture.High),
		"meter %s is posted for %s from %s, which is no range of moistures", meter, l.Crop, l.Moisture)
	faults.Unless(!l.Sample.Given() || quantity.IsTemperature(l.Sample.Low) && l.Sample.Low.Unit() == l.Sample.High.Unit(),
		"meter %s is posted for %s at %s, which is no range of temperatures on one scale", meter, l.Crop, l.Sample)
}

// IsMoisture reports whether a is a percent that grain can have.
func IsMoisture(a quantity.Amount) bool {
	return a.Unit() == quantity.Percent && a.Sign() > 0 && a.Less(quantity.Int(100, quantity.Percent))
}
