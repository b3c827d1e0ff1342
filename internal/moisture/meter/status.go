package meter

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// State is the status of a meter by its checks.
type State string

// The states, best first.
const (
	Good    State = "ok"
	Due     State = "due"     // to be checked within the days of warning
	Never   State = "never"   // no check under this calibration
	Overdue State = "overdue" // past its check date
	Failed  State = "failed"  // outside its limit at the last check
)

// CheckRule is the authority an elevator follows and how often it checks.
type CheckRule struct {
	Authority CheckTolerance
	// Hints are other rules whose limits are shown beside the Authority's and decide nothing: that
	// of official meters at a country elevator.
	Hints []CheckTolerance
	// EveryDays is the elevator's own interval; 0 means the authority's. The shorter of the two
	// counts.
	EveryDays int
	// WarnDays is the number of days before the date from which the meter shows as due.
	WarnDays int
}

// interval is the days from one check to the next; 0 for no date.
func (r CheckRule) interval() int {
	house, authority := r.EveryDays, r.Authority.EveryDays
	if house == 0 || authority > 0 && authority < house {
		return authority
	}
	return house
}

// Status is a meter's state on a day, and the reason.
type Status struct {
	Meter   string
	State   State
	Last    quantity.Date // last day with a check that counts
	NextDue quantity.Date // none when no interval is set
	// Sentence describes the state with its figures.
	Sentence message.Text
	// Failures are the errors outside the limit, one sentence each.
	Failures []message.Text
	// Hints are the results of unconfirmed rules; they decide nothing.
	Hints []message.Text
	// Ignored are checks that do not count, and why.
	Ignored []message.Text
}

// StatusOn works out a meter's status on a day from its log. Every crop's latest
// day of checks is compared with the limit: a meter that failed on corn is
// failed until corn is checked again.
func StatusOn(m Meter, checks []Check, rule CheckRule, day quantity.Date) Status {
	s := Status{Meter: m.ID}
	var counted []Check
	for _, c := range ChecksOf(m, checks, day) {
		if why := rule.Authority.ignores(c); !why.IsZero() {
			s.Ignored = append(s.Ignored, why)
			continue
		}
		counted = append(counted, c)
	}
	for _, session := range latestSessions(counted) {
		if rule.Authority.Confirmed {
			s.Failures = append(s.Failures, rule.Authority.failures(session)...)
		} else {
			s.Hints = append(s.Hints, rule.Authority.failures(session)...)
		}
	}
	for _, other := range rule.Hints {
		for _, session := range latestSessions(counted) {
			s.Hints = append(s.Hints, other.failures(session)...)
		}
	}
	s.date(counted, rule)
	s.decide(m, rule, day)
	return s
}

// ignores returns why a check does not count under the rule, or nothing.
func (a CheckTolerance) ignores(c Check) message.Text {
	switch {
	case !a.Sample.Given():
		return message.Text{}
	case !quantity.Recorded(c.Sample):
		return message.New("The check of %s with %s does not count: the sample temperature was not recorded, and %s asks for %s.", c.Day, c.Crop, a.Name, a.Sample)
	case !a.Sample.ContainsTemperature(c.Sample):
		return message.New("The check of %s with %s does not count: the sample was at %s, and %s asks for %s.", c.Day, c.Crop, c.Sample, a.Name, a.Sample)
	}
	return message.Text{}
}

// latestSessions are, crop by crop in the order they first came, the checks of
// the last day each was checked.
func latestSessions(checks []Check) [][]Check {
	var crops []string
	last := map[string][]Check{}
	for _, c := range checks {
		if _, seen := last[c.Crop]; !seen {
			crops = append(crops, c.Crop)
		}
		if before := last[c.Crop]; len(before) > 0 && before[0].Day != c.Day {
			last[c.Crop] = nil
		}
		last[c.Crop] = append(last[c.Crop], c)
	}
	out := make([][]Check, len(crops))
	for i, crop := range crops {
		out[i] = last[crop]
	}
	return out
}

// failures are the errors of one day with one crop that are outside the limit.
func (a CheckTolerance) failures(session []Check) []message.Text {
	if a.OfMean {
		return a.meanFailure(session)
	}
	var out []message.Text
	for _, c := range session {
		limit, stated := a.Allowed(c.Crop, c.Reference)
		if err := c.Error(); stated && size(err).More(limit) {
			out = append(out, a.failure(c, err, limit))
		}
	}
	return out
}

func (a CheckTolerance) failure(c Check, off, limit quantity.Amount) message.Text {
	if c.Name == "" {
		return message.New("On %s it read %s for %s of %s: off by %s, and %s allows %s.", c.Day, c.Reading, c.Crop, c.Reference, off, a.Name, limit)
	}
	return message.New("On %s it read %s for %s %s of %s: off by %s, and %s allows %s.",
		c.Day, c.Reading, c.Crop, message.Own(c.Name), c.Reference, off, a.Name, limit)
}

// meanFailure compares sums, which is the same as comparing means and divides
// nothing.
func (a CheckTolerance) meanFailure(session []Check) []message.Text {
	sum, allowed := quantity.Zero(quantity.Point), quantity.Zero(quantity.Point)
	for _, c := range session {
		limit, stated := a.Allowed(c.Crop, c.Reference)
		if !stated {
			return nil
		}
		sum, allowed = sum.Add(c.Error()), allowed.Add(limit)
	}
	if !size(sum).More(allowed) {
		return nil
	}
	if len(session) == 1 {
		return []message.Text{a.failure(session[0], sum, allowed)}
	}
	return []message.Text{message.New("On %s its errors with %s sum to %s over %s, and %s allows a mean that sums to %s.",
		session[0].Day, session[0].Crop, sum, message.Count(len(session), "%d reference", "%d references"), a.Name, allowed)}
}

// size is an amount without its sign.
func size(a quantity.Amount) quantity.Amount { return quantity.Max(a, a.Neg()) }

func (s *Status) date(counted []Check, rule CheckRule) {
	if len(counted) == 0 {
		return
	}
	s.Last = counted[len(counted)-1].Day
	if days := rule.interval(); days > 0 {
		s.NextDue = s.Last.AddDays(days)
	}
}

func (s *Status) decide(m Meter, rule CheckRule, day quantity.Date) {
	switch {
	case len(s.Failures) > 0:
		s.State = Failed
		s.Sentence = message.New("%s failed its check. %s", m.called(), message.Texts(" ", s.Failures))
	case s.Last.IsZero():
		s.State = Never
		s.Sentence = message.New("%s has no check that counts under calibration %s.", m.called(), message.Own(m.Calibration))
	case s.NextDue.IsZero():
		s.State = Good
		s.Sentence = message.New("%s was last checked on %s; no date is set for the next.", m.called(), s.Last)
	case day.After(s.NextDue):
		s.State = Overdue
		s.Sentence = message.New("%s was last checked on %s and was due on %s.", m.called(), s.Last, s.NextDue)
	case !day.Before(s.NextDue.AddDays(-rule.WarnDays)):
		s.State = Due
		s.Sentence = message.New("%s was last checked on %s and is due on %s.", m.called(), s.Last, s.NextDue)
	default:
		s.State = Good
		s.Sentence = message.New("%s was checked on %s and is next due on %s.", m.called(), s.Last, s.NextDue)
	}
}
