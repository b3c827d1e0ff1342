package present

import (
	"context"
	"tenthpoint/ui/model"
)

// Ruler is the moisture ruler of the load: where the rates begin to take
// something, what they shrink to, and where this load stands. Without rates
// and reading it is bare.
func (f *LoadForm) Ruler() model.Ruler {
	ruler, err := f.frame.Desk.Ruler(context.Background(), f.now.load)
	if err != nil {
		f.frame.Fail(err)
	}
	r := rulerOf(ruler)
	markReading(&r, model.OK)
	m, e := f.now.load.Sample.Moisture, f.now.edition
	if m != nil && e != nil && e.Shrink.Trigger.Given() && m.Percent.More(e.Shrink.Trigger.Amount) {
		markReading(&r, model.Warn)
	}
	return r
}
