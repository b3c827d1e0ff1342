package present

import (
	"strings"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// warn says what does not stop a ticket and should be looked at twice.
func (f *LoadForm) warn() {
	if s, ok := f.frame.Scale(); ok {
		if net, known := desk.Net(f.now.load); known && net.Sign() > 0 {
			if light := s.LightNet(net); light != "" {
				f.now.remark("tare", model.Warn, light)
			}
		}
	}
	for _, stop := range f.now.load.Sample.Stops {
		f.now.remark("moisture", model.Warn, stop.Sentence)
	}
	for _, flag := range f.now.load.Sample.Flags {
		f.now.remark("moisture", model.Warn, flagWords(flag))
	}
	f.warnNearLimit()
}

// flagWords is a doubt about a reading without the code it begins with.
func flagWords(flag string) string {
	if _, words, coded := strings.Cut(flag, ": "); coded {
		return words
	}
	return flag
}

// nearLimit is how close to a class limit a moisture is tested three times
// (Canadian grading guide, chapter 2).
var nearLimit = quantity.Of("0.5", quantity.Percent)

// warnNearLimit asks for three tests where the moisture lies near the limit of
// a class, in houses under the Canadian rules.
func (f *LoadForm) warnNearLimit() {
	m := f.now.load.Sample.Moisture
	if m == nil {
		return
	}
	for _, class := range f.frame.Desk.MoistureClasses(f.now.load) {
		if class.HasUpTo && within(m.Percent, class.UpTo, nearLimit) {
			f.now.remark("moisture", model.Warn, Say("Within %s of the limit of %s, %s: test three times and take the mean.", nearLimit, class.Name, class.UpTo.FixedString(1)))
		}
	}
}

func within(a, limit, distance quantity.Amount) bool {
	return !a.Less(limit.Sub(distance)) && !a.More(limit.Add(distance))
}
