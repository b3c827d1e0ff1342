package moisture

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// judge gathers the flags of every test kept and of the sample as a whole.
func (r *Result) judge(e Equipment, h Procedure) {
	for _, o := range r.kept() {
		for _, f := range h.Trust.Flags(o.Reading, o.Step.Value(), e) {
			if f.Test > 0 || !r.has(f.Code) {
				r.Flags = append(r.Flags, f)
			}
		}
	}
	if r.kept()[0].Reading.Method.UsesMeter() {
		r.requireTests(h) // one oven test or certificate is enough
	}
	r.tooWide(h)
	sortFlags(r.Flags)
}

func (r *Result) has(code Code) bool {
	return slices.ContainsFunc(r.Flags, func(f Flag) bool { return f.Code == code })
}

// raise flags the sample as a whole. It stops the ticket when the elevator says so, for the crop or
// for all of them.
func (r *Result) raise(h Procedure, code Code, what, why, do message.Text) {
	stops := slices.Contains(h.Policy.Blocks, code) || slices.Contains(h.Trust.Blocks, code)
	r.Flags = append(r.Flags, Flag{Code: code, What: what, Why: why, Do: do, Blocking: stops})
}

// tooWide flags tests that differ by more than the policy allows. Nothing is
// dropped for it: that takes a rule and a person.
func (r *Result) tooWide(h Procedure) {
	if !r.Spread.Value().More(h.Policy.Spread) {
		return
	}
	r.raise(h, WideSpread, message.New("The tests differ by %s, more than the %s allowed.", h.Policy.ShownSpread(r.Spread.Value()), h.Policy.Spread),
		message.Words("One of them was not this grain as it is."), message.Words("Mix the sample, test again, and leave a test out only by rule and by name."))
}

// ShownSpread rounds a spread to hundredths of a point for people to read: to the nearest, or up
// where a spread just over the limit would read as allowed.
func (p Policy) ShownSpread(spread quantity.Amount) quantity.Amount {
	shown := hundredth.Apply(spread)
	if spread.More(p.Spread) && !shown.More(p.Spread) {
		return upToHundredth.Apply(spread)
	}
	return shown
}

var (
	hundredth     = quantity.To("0.01", quantity.HalfUp)
	upToHundredth = quantity.To("0.01", quantity.Up)
)

// requireTests sets the number of tests still missing: the policy's count, and more when the mean
// is near a limit.
func (r *Result) requireTests(h Procedure) {
	done := len(r.kept())
	for _, l := range h.Limits {
		if h.Policy.isNear(r.Moisture.Exact(), l) {
			r.Near = append(r.Near, l)
		}
	}
	if done < h.Policy.Count {
		r.More = h.Policy.Count - done
		r.raise(h, TooFewTests, message.New("%s, and the house asks for %s.", tests(done), tests(h.Policy.Count)),
			message.Words("One test may be off by chance."), message.New("Test %s more.", times(r.More)))
	}
	if len(r.Near) > 0 && done < h.Policy.NearCount {
		r.More = h.Policy.NearCount - done
		r.raise(h, NearLimit, message.New("%s is within %s of %s.", r.Moisture.Printed(), h.Policy.Near, limitNames(r.Near)),
			message.Words("A tenth may decide what is charged."), message.New("Test %s more and take the mean of %d.", times(r.More), h.Policy.NearCount))
	}
}

func limitNames(limits []Limit) message.Text {
	names := make([]any, len(limits))
	for i, l := range limits {
		names[i] = message.List(" ", l.Name, l.At)
	}
	return message.List(" and ", names...)
}

func tests(n int) message.Text {
	if n == 1 {
		return message.New("One test")
	}
	return message.New("%d tests", n)
}

func times(n int) message.Text {
	if n == 1 {
		return message.New("once")
	}
	return message.New("%d times", n)
}
