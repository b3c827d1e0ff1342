package board

import (
	"time"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// RowOf is a truck in the list of the yard: owner, grain, waiting time, and the next act.
func RowOf(in session.Language, l *load.Load, settles bool, now string) model.TruckRow {
	truck := session.TruckText(l.Details.Truck)
	if truck == "" {
		truck = in.Say("truck ?")
	}
	return model.TruckRow{
		ID: l.ID, Truck: truck,
		Who:   session.Join(", ", l.Details.Grower.Name, in.GrainName(l.Details.Commodity)),
		Waits: waits(in, l.Opened.At, now),
		Next:  NextAct(in, l, settles),
	}
}

// NextAct is the next act for a load, in a few words.
func NextAct(in session.Language, l *load.Load, settles bool) model.Status {
	missing := map[string]bool{}
	for _, m := range l.Missing() {
		missing[m.Field] = true
	}
	switch {
	case l.Phase == load.TurnedAway:
		return model.Status{State: model.Stop, Text: in.Say("refused")}
	case l.Phase == load.Ticketed || l.Phase == load.Void || l.Phase == load.Corrected:
		return model.Status{State: model.Locked, Text: in.Say("ticket %d", l.Number)}
	case missing["gross"]:
		return model.Status{State: model.Missing, Text: in.Say("weigh it full")}
	case missing["moisture"]:
		return model.Status{State: model.Missing, Text: in.Say("test the sample")}
	case missing["tare"]:
		return model.Status{State: model.Missing, Text: in.Say("weigh it empty")}
	case len(missing) > 0:
		return model.Status{State: model.Missing, Text: in.Say("say whose and what")}
	case !settles:
		return model.Status{State: model.Stop, Text: in.Say("look at the form")}
	}
	return model.Status{State: model.OK, Text: in.Say("issue the ticket")}
}

// waits returns the time between two of the book's times, in hours and minutes: how long a truck
// has been here.
func waits(in session.Language, since, now string) string {
	from, err1 := time.Parse(journal.TimeLayout, since)
	to, err2 := time.Parse(journal.TimeLayout, now)
	if err1 != nil || err2 != nil || to.Before(from) {
		return ""
	}
	minutes := int(to.Sub(from).Minutes())
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
