package board

import (
	"time"

	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// RowOf is a truck in the list of the yard: owner, grain, waiting time, and the next act. A wait is
// late after so many minutes.
func RowOf(in session.Language, l *load.Load, settles bool, now string, limit int) model.TruckRow {
	truck := session.TruckText(l.Details.Truck)
	if truck == "" {
		truck = in.Say("truck ?")
	}
	waited, known := minutesBetween(l.Opened.At, now)
	row := model.TruckRow{
		ID: l.ID, Truck: truck,
		Who:    session.Join(", ", l.Details.Grower.Name, in.GrainName(l.Details.Commodity)),
		Late:   known && waited > limit,
		Next:   NextAct(in, l, settles),
		Column: columnOf(l.NextStep(), settles),
	}
	if l.Details.Commodity != "" {
		row.Look = look.Of(l.Details.Commodity)
	}
	if known {
		row.Waits = waits(in, waited)
	}
	return row
}

// NextAct is the next act for a load, in a few words.
func NextAct(in session.Language, l *load.Load, settles bool) model.Status {
	switch l.Phase {
	case load.TurnedAway:
		return model.Status{State: model.Stop, Text: in.Say("refused")}
	case load.Ticketed, load.Void, load.Corrected:
		return model.Status{State: model.Locked, Text: in.Say("ticket %d", l.Number)}
	}
	switch l.NextStep() {
	case load.WeighFull:
		return model.Status{State: model.Missing, Text: in.Say("weigh it full")}
	case load.TestSample:
		return model.Status{State: model.Missing, Text: in.Say("test the sample")}
	case load.WeighEmpty:
		return model.Status{State: model.Missing, Text: in.Say("weigh it empty")}
	case load.SayWhose:
		return model.Status{State: model.Missing, Text: in.Say("say whose and what")}
	}
	if !settles {
		return model.Status{State: model.Stop, Text: in.Say("look at the form")}
	}
	return model.Status{State: model.OK, Text: in.Say("issue the ticket")}
}

// minutesBetween is the time between two of the book's times in whole minutes; unknown where one is
// no time or the later comes first.
func minutesBetween(since, now string) (minutes int, known bool) {
	from, err1 := time.Parse(journal.TimeLayout, since)
	to, err2 := time.Parse(journal.TimeLayout, now)
	if err1 != nil || err2 != nil || to.Before(from) {
		return 0, false
	}
	return int(to.Sub(from).Minutes()), true
}

// waits says how long a truck has been here, in hours and minutes.
func waits(in session.Language, minutes int) string {
	switch {
	case minutes < 1:
		return in.Say("just came")
	case minutes < 60:
		return in.Say("%d min", minutes)
	case minutes < 24*60:
		return in.Say("%d h %02d min", minutes/60, minutes%60)
	}
	return in.Say("%d days", minutes/60/24)
}
