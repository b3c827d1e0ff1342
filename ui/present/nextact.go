package present

import (
	"time"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// standOf is the next act for a load, in a few words.
func standOf(l *load.Load, settles bool) model.Remark {
	missing := map[string]bool{}
	for _, m := range l.Missing() {
		missing[m.Field] = true
	}
	switch {
	case l.Phase == load.TurnedAway:
		return model.Remark{State: model.Stop, Text: Say("refused")}
	case l.Phase == load.Ticketed || l.Phase == load.Void || l.Phase == load.Corrected:
		return model.Remark{State: model.Locked, Text: Say("ticket %d", l.Number)}
	case missing["gross"]:
		return model.Remark{State: model.Missing, Text: Say("weigh it full")}
	case missing["moisture"]:
		return model.Remark{State: model.Missing, Text: Say("test the sample")}
	case missing["tare"]:
		return model.Remark{State: model.Missing, Text: Say("weigh it empty")}
	case len(missing) > 0:
		return model.Remark{State: model.Missing, Text: Say("say whose and what")}
	case !settles:
		return model.Remark{State: model.Stop, Text: Say("look at the form")}
	}
	return model.Remark{State: model.OK, Text: Say("issue the ticket")}
}

// waits is how long a truck has been here, in hours and minutes.
func waits(since, now string) string {
	from, err1 := time.Parse(journal.TimeLayout, since)
	to, err2 := time.Parse(journal.TimeLayout, now)
	if err1 != nil || err2 != nil || to.Before(from) {
		return ""
	}
	minutes := int(to.Sub(from).Minutes())
	switch {
	case minutes < 1:
		return Say("just came")
	case minutes < 60:
		return Say("%d min", minutes)
	case minutes < 24*60:
		return Say("%d h %02d min", minutes/60, minutes%60)
	}
	return Say("%d days", minutes/60/24)
}
