package moisture

import (
	"strings"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
)

// Equipment is the elevator's charts and meters, and the status of each meter on the day, by its
// id. A meter without a status counts as never checked.
type Equipment struct {
	Charts   *chart.Set
	Meters   []meter.Meter
	Statuses map[string]meter.Status
}

// Meter finds a meter; the error lists those there are.
func (e Equipment) Meter(id string) (meter.Meter, error) {
	ids := make([]string, len(e.Meters))
	for i, m := range e.Meters {
		if m.ID == id {
			return m, nil
		}
		ids[i] = m.ID
	}
	if len(ids) == 0 {
		return meter.Meter{}, message.NotFound.Errorf("there is no meter %q, and none is entered; a manager enters the house's meters first", id)
	}
	return meter.Meter{}, message.NotFound.Errorf("there is no meter %q; entered are %s", id, strings.Join(ids, ", "))
}

// Check lists everything wrong with the equipment.
func (e Equipment) Check() []error {
	var out []error
	seen := map[string]bool{}
	for _, m := range e.Meters {
		out = append(out, m.Check()...)
		if seen[m.ID] {
			out = append(out, message.Invalid.Errorf("two meters are called %s; give one of them another id", m.ID))
		}
		seen[m.ID] = true
	}
	return out
}
