package present

import (
	"time"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
)

// standOf is the next act for a load, in a few words.
func standOf(l *load.Load, settles bool) Remark {
	missing := map[string]bool{}
	for _, m := range l.Missing() {
		missing[m.Field] = true
	}
	switch {
	case l.Phase == load.TurnedAway:
		return Remark{Stop, Say("refused")}
	case l.Phase == load.Ticketed || l.Phase == load.Void || l.Phase == load.Corrected:
		return Remark{Locked, Say("ticket %d", l.Number)}
	case missing["gross"]:
		return Remark{Missing, Say("weigh it full")}
	case missing["moisture"]:
		return Remark{Missing, Say("test the sample")}
	case missing["tare"]:
		return Remark{Missing, Say("weigh it empty")}
	case len(missing) > 0:
		return Remark{Missing, Say("say whose and what")}
	case !settles:
		return Remark{Stop, Say("look at the form")}
	}
	return Remark{OK, Say("issue the ticket")}
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
