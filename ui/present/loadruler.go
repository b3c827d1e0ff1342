package present

import (
	"context"
	"tenthpoint/internal/office"
)

// Ruler is the moisture ruler of the load: where the rates begin to take
// something, what they shrink to, and where this load stands. Without rates
// and reading it is bare.
func (f *LoadForm) Ruler() Ruler {
	ruler, err := office.Ruler(context.Background(), f.frame.Desk, f.now.load)
	if err != nil {
		f.frame.Fail(err)
	}
	r := rulerOf(ruler)
	r.read(OK)
	m, e := f.now.load.Sample.Moisture, f.now.edition
	if m != nil && e != nil && e.Shrink.Trigger.Given() && m.Percent.More(e.Shrink.Trigger.Amount) {
		r.read(Warn)
	}
	return r
}
