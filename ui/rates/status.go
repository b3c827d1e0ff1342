package rates

import (
	"cmp"
	"slices"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// editionStatus is the status of an edition today, the ones in force first.
type editionStatus int

const (
	usedToday editionStatus = iota
	inForce
	yetToCome
	overtaken
	past
)

func statusOf(f *session.Session, e *rates.Edition) editionStatus {
	today := f.Desk.Today()
	now, err := f.Desk.Rates().On(e.Schedule, e.Commodity.ID, today)
	schedule, taken := f.Desk.Profile().Schedule(e.Commodity.ID)
	switch {
	case err == nil && now.ID == e.ID && taken && schedule == e.Schedule:
		return usedToday
	case err == nil && now.ID == e.ID:
		return inForce
	case today.Between(e.From, e.Until):
		return overtaken
	case today.Before(e.From):
		return yetToCome
	}
	return past
}

// sorted are the editions: those in use first, each sort by grain.
func sorted(f *session.Session) []*rates.Edition {
	all := slices.Clone(f.Desk.Rates().All())
	slices.SortStableFunc(all, func(a, b *rates.Edition) int {
		return cmp.Or(cmp.Compare(statusOf(f, a), statusOf(f, b)), cmp.Compare(f.GrainName(a.Commodity.ID), f.GrainName(b.Commodity.ID)),
			cmp.Compare(a.Schedule, b.Schedule), b.From.Cmp(a.From))
	})
	return all
}

// words say it of an edition.
func (s editionStatus) words(f *session.Session, e *rates.Edition) model.Status {
	switch s {
	case usedToday:
		return model.Status{State: model.OK, Text: f.Say("used here")}
	case inForce:
		return model.Status{State: model.Plain, Text: f.Say("in force")}
	case yetToCome:
		return model.Status{State: model.Wait, Text: f.Say("from %s", f.Date(e.From))}
	case overtaken:
		return model.Status{State: model.Locked, Text: f.Say("corrected")}
	}
	return model.Status{State: model.Locked, Text: f.Say("over")}
}

// statusWord is the mark of an edition in the list.
func statusWord(in session.Language, s rates.Status) string {
	switch s {
	case rates.Example:
		return in.Say("EXAMPLE")
	case rates.House:
		return in.Say("house")
	}
	return in.Say("statute")
}

// periodOf is the days an edition is in force, as the desk writes days.
func periodOf(f *session.Session, e *rates.Edition) string {
	if e.Until == (quantity.Date{}) {
		return f.Say("from %s", f.Date(e.From))
	}
	return f.Say("%s to %s", f.Date(e.From), f.Date(e.Until))
}
