package bench

import (
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
)

func (r Reading) checkTyped(faults *faults) {
	r.checkPercent(faults)
	faults.unless(strings.TrimSpace(r.Reason) != "", "%s: a moisture typed by hand needs a reason, such as the number of the certificate it is from", r.label())
}

// workTyped takes the figure over with the reason beside it.
func (r Reading) workTyped(s *working.Sheet) *working.Step {
	step := s.Given(r.id(), r.label(), r.Percent, quantity.Unrounded, r.by("typed by hand"))
	return s.Note(step, strings.TrimSpace(r.Reason))
}
