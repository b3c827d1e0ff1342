package bench

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
)

// Meter is one moisture meter of the house.
type Meter struct {
	// ID is the house's own name for it; Model and Serial are the maker's.
	ID     string `json:"id"`
	Model  string `json:"model"`
	Serial string `json:"serial,omitempty"`
	// Method is ByDial or Direct.
	Method Method `json:"method"`
	// Calibration is the edition in force on the meter now.
	Calibration string `json:"calibration"`
	// Ambient is where the meter may stand and MaxDifference the most the grain
	// may differ from it, by the maker. A dial meter's chart says both too, and
	// the chart's are used.
	Ambient       Span            `json:"ambient"`
	MaxDifference quantity.Amount `json:"max_difference"`
	// Tolerance is what the maker claims, in points to either side.
	Tolerance quantity.Amount `json:"tolerance"`
	// Crops are the limits posted beside the meter for each grain; a crop that
	// is not there has none posted.
	Crops []CropLimits `json:"crops,omitempty"`
}

// CropLimits are what a meter answers for with one crop. Each may be left out.
type CropLimits struct {
	Crop     string          `json:"crop"`
	Mass     quantity.Amount `json:"mass"`               // g
	Moisture Span            `json:"moisture"`           // %
	Sample   Span            `json:"sample_temperature"` // of the grain
}

// Name is the meter for people: "bench-1 (Example dial meter A)".
func (m Meter) Name() string { return fmt.Sprintf("meter %s (%s)", m.ID, m.Model) }

// For is what the meter answers for with a crop.
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
	var faults faults
	faults.unless(m.ID != "", "a meter has no id; give each meter a short name, such as bench-1")
	faults.unless(m.Model != "", "meter %s has no model; write what its plate says, for the charts go by it", m.ID)
	faults.unless(m.Method.UsesMeter(), "meter %s is neither read by dial nor direct; say which", m.ID)
	faults.unless(m.Calibration != "", "meter %s has no calibration edition; read it from the meter or its charts", m.ID)
	faults.unless(!recorded(m.Tolerance) || m.Tolerance.Unit() == quantity.Point && m.Tolerance.Sign() > 0,
		"meter %s has a tolerance of %s; write it in points, such as 0.5 pt, or leave it out", m.ID, m.Tolerance)
	faults.unless(!recorded(m.MaxDifference) || isTemperature(m.MaxDifference),
		"meter %s has a largest difference of %s; write it in degrees", m.ID, m.MaxDifference)
	faults.unless(!m.Ambient.Given() || isTemperature(m.Ambient.Low) && m.Ambient.Low.Unit() == m.Ambient.High.Unit(),
		"meter %s may stand at %s, which is no range of temperatures", m.ID, m.Ambient)
	for _, l := range m.Crops {
		l.check(&faults, m.ID)
	}
	return faults
}

func (l CropLimits) check(faults *faults, meter string) {
	faults.unless(l.Crop != "", "meter %s has limits posted for no grain; name the grain", meter)
	faults.unless(!recorded(l.Mass) || l.Mass.Unit() == quantity.Gram && l.Mass.Sign() > 0,
		"meter %s is posted for %s of %s; write grams, such as 250 g", meter, l.Mass, l.Crop)
	faults.unless(!l.Moisture.Given() || isMoisture(l.Moisture.Low) && isMoisture(l.Moisture.High),
		"meter %s is posted for %s from %s, which is no range of moistures", meter, l.Crop, l.Moisture)
	faults.unless(!l.Sample.Given() || isTemperature(l.Sample.Low) && l.Sample.Low.Unit() == l.Sample.High.Unit(),
		"meter %s is posted for %s at %s, which is no range of temperatures on one scale", meter, l.Crop, l.Sample)
}

// Equipment is what stands at the bench: the house's charts and meters, and how
// each meter stands with its checks on the day, by its id. A meter whose
// standing is not given counts as never checked.
type Equipment struct {
	Charts    *Shelf
	Meters    []Meter
	Standings map[string]Standing
}

// Meter finds a meter; the error lists those there are.
func (e Equipment) Meter(id string) (Meter, error) {
	ids := make([]string, len(e.Meters))
	for i, m := range e.Meters {
		if m.ID == id {
			return m, nil
		}
		ids[i] = m.ID
	}
	if len(ids) == 0 {
		return Meter{}, fmt.Errorf("there is no meter %q, and none is entered; a manager enters the house's meters first", id)
	}
	return Meter{}, fmt.Errorf("there is no meter %q; entered are %s", id, strings.Join(ids, ", "))
}

// Check lists everything wrong with the equipment.
func (e Equipment) Check() []error {
	var out []error
	seen := map[string]bool{}
	for _, m := range e.Meters {
		out = append(out, m.Check()...)
		if seen[m.ID] {
			out = append(out, fmt.Errorf("two meters are called %s; give one of them another id", m.ID))
		}
		seen[m.ID] = true
	}
	return out
}
