package lab

import (
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// queue is the loads on the yard, whose samples come to the bench, in order of arrival.
type queue []*load.Load

// find returns a load by its id; nil if it is not on the yard.
func (q queue) find(id string) *load.Load {
	l, _ := session.Find(q, func(l *load.Load) bool { return l.ID == id && id != "" })
	return l
}

// first is the load that has waited longest for its test, or else the first that is not even
// weighed; nil when none waits.
func (q queue) first() *load.Load {
	for _, step := range []load.Step{load.TestSample, load.WeighFull} {
		if i := slices.IndexFunc(q, func(l *load.Load) bool { return isUntested(l) && l.NextStep() == step }); i >= 0 {
			return q[i]
		}
	}
	return nil
}

// isUntested reports whether a load's sample is still to come to the bench. Grain that leaves is not
// tested here.
func isUntested(l *load.Load) bool {
	return l.Sample.Moisture == nil && l.Details.Direction != load.Outbound
}

// waiting says how many samples wait: as many as the yard has trucks that wait for their test. A truck
// that is not weighed yet may be tested all the same.
func (q queue) waiting(in session.Language) string {
	n, before := 0, 0
	for _, l := range q {
		switch {
		case l.NextStep() == load.TestSample:
			n++
		case isUntested(l):
			before++
		}
	}
	said := in.Say("%d samples wait for their tests.", n)
	switch n {
	case 0:
		said = in.Say("No sample waits for its test.")
	case 1:
		said = in.Say("One sample waits for its test.")
	}
	if before > 0 {
		said = session.Join(" ", said, in.Say("Not weighed and not tested yet: %d.", before))
	}
	return said
}

// withoutLoad is the option for grain that belongs to no load.
const withoutLoad = "none"

// options are the loads to choose from, those that wait for their test first.
func (q queue) options(in session.Language) []model.Option {
	var waiting, tested []model.Option
	for _, l := range q {
		o := model.Option{Code: l.ID, Name: in.Say("truck %s", session.TruckText(l.Details.Truck)), Detail: whose(in, l)}
		if m := l.Sample.Moisture; m != nil {
			o.Detail = session.Join(", ", o.Detail, in.Say("tested: %s", m.Percent))
			tested = append(tested, o)
			continue
		}
		waiting = append(waiting, o)
	}
	return append(append(waiting, tested...), model.Option{Code: withoutLoad, Name: in.Say("no load, only convert"), ByName: true})
}

// whose names a load's grain and owner.
func whose(in session.Language, l *load.Load) string {
	return session.Join(", ", in.GrainName(l.Details.Commodity), l.Details.Grower.Name)
}
