package office

import (
	"cmp"
	"encoding/json"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/contract"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/duelist"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
	"tenthpoint/internal/title"
	"tenthpoint/internal/truckscale"
)

// EveningNotes returns the open items at the end of a day, one sentence each.
func EveningNotes(d Desk, l Lists, day quantity.Date) (daysheet.Notes, error) {
	var n daysheet.Notes
	for _, one := range []struct {
		into *[]message.Kept
		find func(Desk, Lists, quantity.Date) ([]message.Text, error)
	}{{&n.Yard, yardNotes}, {&n.Samples, sampleNotes}, {&n.Disputes, disputeNotes}, {&n.Meters, meterNotes}, {&n.Scales, scaleNotes}, {&n.Undecided, undecidedNotes}, {&n.Due, dueNotes}} {
		found, err := one.find(d, l, day)
		if err != nil {
			return n, err
		}
		*one.into = message.Keep(found...)
	}
	return n, nil
}

// undecidedNotes name the tickets whose grain should be decided by a day, where the law of the place
// was read and has such a day.
func undecidedNotes(d Desk, l Lists, day quantity.Date) ([]message.Text, error) {
	rules, err := title.RulesIn(d.Laws().On(day))
	if err != nil || rules.UndecidedDays == 0 {
		return nil, err
	}
	rows, err := l.Loads(terms.Open(day))
	if err != nil {
		return nil, err
	}
	all, err := terms.UndecidedIn(rows, d.Laws(), day)
	if err != nil {
		return nil, err
	}
	var late []any
	for _, u := range all {
		if !u.Due.IsZero() && !day.Before(u.Due) {
			late = append(late, u.Ticket)
		}
	}
	if len(late) == 0 {
		return nil, nil
	}
	return []message.Text{message.Count(len(late), "%[1]d part of a ticket is undecided and its day has come (ticket %[2]s): %[3]s", "%[1]d parts of tickets are undecided and their day has come (tickets %[2]s): %[3]s",
		message.List(", ", late...), rules.Said())}, nil
}

// dueDays is the number of days ahead that contracts and settlement sheets are named in the evening.
const dueDays = 7

// DueHouse is the house as its list of what falls due is told by; without tariffs storage is not looked at.
func DueHouse(d Desk, tariffs *tariff.Set) duelist.House {
	house := duelist.House{Laws: d.Laws(), FillOrder: contract.OrderOf(d.Profile())}
	if tariffs != nil {
		house.Tariff = func(commodity string, day quantity.Date) (*tariff.Edition, bool) {
			e, err := TariffInForce(d, tariffs, commodity, day)
			return e, err == nil
		}
	}
	return house
}

// TariffInForce is the tariff of the schedule the house has a grain under; of the main schedule where
// that one has none.
func TariffInForce(d Desk, tariffs *tariff.Set, commodity string, day quantity.Date) (*tariff.Edition, error) {
	schedule, _ := d.Profile().Schedule(commodity)
	return tariff.InForce(tariffs, schedule, commodity, day)
}

// dueNotes name the contracts and settlement sheets whose day has come or comes soon.
func dueNotes(d Desk, l Lists, day quantity.Date) ([]message.Text, error) {
	all, err := duelist.Written(l, DueHouse(d, nil), day, day.AddDays(dueDays))
	if err != nil {
		return nil, err
	}
	out, err := paperNotes(l)
	if err != nil {
		return nil, err
	}
	for _, one := range all {
		out = append(out, message.New("%s, grower %v: %s.", one.Day, one.Grower, one.What))
	}
	return out, nil
}

// paperNotes name the tickets that are on paper only since the book was restored.
func paperNotes(l Lists) ([]message.Text, error) {
	missing, _, err := AbsentTickets(l)
	if err != nil || len(missing) == 0 {
		return nil, err
	}
	return []message.Text{message.New("Tickets on paper only: %s. Enter them from their slips, or declare them lost.", numbering.Ranges(missing))}, nil
}

// yardNotes are the trucks without a ticket, and what each lacks.
func yardNotes(d Desk, l Lists, _ quantity.Date) ([]message.Text, error) {
	rows, err := l.Loads(book.LoadFilter{Phases: []string{string(load.OnYard), string(load.Ready)}})
	if err != nil {
		return nil, err
	}
	var out []message.Text
	for _, r := range rows {
		facts, err := l.FactsOf(LoadSubject(r.ID))
		if err != nil {
			return nil, err
		}
		one, err := Replay(r.ID, facts)
		if err != nil {
			return nil, err
		}
		out = append(out, yardLine(one))
	}
	return out, nil
}

func yardLine(l *load.Load) message.Text {
	lacks := message.New("only its ticket is due.")
	if missing := l.Missing(); len(missing) > 0 {
		sentences := make([]any, len(missing))
		for i, m := range missing {
			sentences[i] = m.Sentence
		}
		lacks = message.List(" ", sentences...)
	}
	return message.New("Load %v, %s, truck %s, came for %s: %s", l.ID, orUnknown(l.Details.Grower.Name), orUnknown(truckName(l.Details.Truck)), l.Details.Day, lacks)
}

func orUnknown(s string) message.Text {
	if s == "" {
		return message.New("not known yet")
	}
	return message.Name(s)
}

// samplesDays is the number of days back that due samples are listed in the evening; older ones are in the
// register of retained samples.
const samplesDays = 6

// sampleNotes returns a note with the number of retained samples that are due.
func sampleNotes(d Desk, l Lists, day quantity.Date) ([]message.Text, error) {
	kept, err := l.SamplesKept(day.AddDays(-samplesDays).String(), day.String())
	if err != nil || len(kept) == 0 {
		return nil, err
	}
	all, last := 0, kept[len(kept)-1]
	for _, k := range kept {
		all += k.Count
	}
	return []message.Text{message.Count(all,
		"%d sample of the last %d days is kept long enough by %s; it may be discarded after it, unless disputed.",
		"%d samples of the last %d days are kept long enough by %s; they may be discarded after it, unless disputed.",
		samplesDays+1, last.Until)}, nil
}

// disputeNotes are the disputes that wait for something.
func disputeNotes(d Desk, l Lists, day quantity.Date) ([]message.Text, error) {
	rows, err := l.Records("dispute")
	if err != nil {
		return nil, err
	}
	var out []message.Text
	for _, row := range rows {
		var one dispute.Dispute
		if err := json.Unmarshal(row.Body, &one); err != nil {
			return nil, message.Errorf("dispute %s cannot be read: %w", row.ID, err)
		}
		if one.Phase == dispute.Closed {
			continue
		}
		line := message.New("Dispute %v about ticket %d (%s): %s, another test to be asked for by %s.", one.ID, one.Raised.Ticket, one.Raised.About, string(one.Phase), one.Raised.Due)
		if overdue(one, day) {
			line = message.List(" ", line, message.New("That day has passed and no sample was sent."))
		}
		out = append(out, line)
	}
	return out, nil
}

// meterNotes describe the checks of each moisture meter on a day, when they are not in order.
func meterNotes(d Desk, l Lists, day quantity.Date) ([]message.Text, error) {
	meters, err := book.RecordsIn[MeterRecord](l)
	if err != nil {
		return nil, err
	}
	var out []message.Text
	for _, m := range meters {
		status, err := MeterStatusOn(d, l, m.Meter, day)
		if err != nil {
			return nil, err
		}
		if status.State != meter.Good {
			out = append(out, status.Sentence)
		}
	}
	return out, nil
}

// scaleNotes describe the status of each truck scale that has a log.
func scaleNotes(d Desk, l Lists, day quantity.Date) ([]message.Text, error) {
	var out []message.Text
	for _, scale := range d.Profile().Scales {
		log, err := ScaleLog(d, l, scale)
		if err != nil {
			return nil, err
		}
		if len(log.UpTo(day).Entries) == 0 {
			continue
		}
		out = append(out, log.Status(day).Said...)
	}
	return out, nil
}

// ScaleLog reads the log of a truck scale from its facts.
func ScaleLog(d Desk, l Lists, scale elevator.Scale) (truckscale.Log, error) {
	log := truckscale.Log{Scale: scale, Rules: d.Profile().Rules, Laws: d.Laws()}
	var facts []journal.Fact
	for _, subject := range truckscale.Subjects(scale.ID) {
		some, err := l.FactsOf(subject)
		if err != nil {
			return log, err
		}
		facts = append(facts, some...)
	}
	slices.SortFunc(facts, func(a, b journal.Fact) int { return cmp.Compare(a.Seq, b.Seq) })
	for _, f := range facts {
		one, err := truckscale.Read(f.Kind, f.Body)
		if err != nil {
			return log, message.Errorf("fact %d, in the log of scale %v: %w", f.Seq, scale.ID, err)
		}
		log.Entries = append(log.Entries, one)
	}
	log.Entries = truckscale.InOrder(log.Entries)
	return log, nil
}

// MeterStatusOn returns the status of a meter's checks on a day.
func MeterStatusOn(d Desk, l Lists, m meter.Meter, day quantity.Date) (meter.Status, error) {
	setup := defaultBench(d.Profile().Rules)
	all, err := book.RecordsIn[Bench](l)
	if err != nil {
		return meter.Status{}, err
	}
	if len(all) > 0 {
		setup = all[0]
	}
	rule, err := setup.checkRule(d.Laws().On(day))
	if err != nil {
		return meter.Status{}, err
	}
	checks, err := checksIn(l, m.ID)
	return meter.StatusOn(m, checks, rule, day), err
}

// checksIn are the reference samples read on a meter that stand.
func checksIn(l Lists, meterID string) ([]meter.Check, error) {
	facts, err := l.FactsOf("meter " + meterID)
	if err != nil {
		return nil, err
	}
	all, withdrawn, err := ReadChecks(facts)
	return meter.InForce(all, withdrawn), err
}
