package office

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/textsearch"
)

// ofLoad understands "grain corn", "moisture 15..15.5", "hour 14" and "with drying".
func (l *SearchLine) ofLoad(kind, which string) bool {
	switch {
	case l.isWord(kind, "grain"):
		return l.grain(which)
	case l.isWord(kind, "moisture"):
		return l.moisture(which)
	case l.isWord(kind, "hour"):
		return l.hour(which)
	case l.isWord(kind, "with"):
		return l.with(which)
	}
	return false
}

// grain understands the id of a grain, or its whole name.
func (l *SearchLine) grain(which string) bool {
	for _, c := range grain.All() {
		if textsearch.Equal(c.ID, which) || textsearch.Equal(l.say(c.Name), which) {
			l.Search.Commodity = c.ID
			l.part("%s and no other grain", message.Words(c.Name))
			return true
		}
	}
	return false
}

// moisture understands one moisture, and two with dots between: from the first to below the second.
func (l *SearchLine) moisture(which string) bool {
	from, below, isRange := strings.Cut(which, "..")
	low, err := searchedMoisture.Parse(from)
	if err != nil {
		return false
	}
	if !isRange {
		l.moistures(low, low.Add(finest))
		l.part("with a moisture of %s", low)
		return true
	}
	high, err := searchedMoisture.Parse(below)
	if err != nil {
		return false
	}
	l.moistures(low, high)
	l.part("with a moisture from %s to below %s", low, high)
	return true
}

func (l *SearchLine) moistures(from, below quantity.Amount) {
	l.Search.MoistFrom, l.Search.MoistBelow = from.In(quantity.Plain).Written(), below.In(quantity.Plain).Written()
}

// searchedMoisture is a moisture as it is typed into a search; finest is less than one is recorded to.
var (
	searchedMoisture = quantity.Field{Name: "Moisture", Unit: quantity.Percent, Places: 3, Min: quantity.Zero(quantity.Percent), Max: quantity.Int(100, quantity.Percent)}
	finest           = quantity.Of("0.001", quantity.Percent)
)

// hour understands an hour of the clock. Without a day it is one of today.
func (l *SearchLine) hour(which string) bool {
	n, err := strconv.Atoi(which)
	if err != nil || n < 0 || n > 23 {
		return false
	}
	l.Search.Hour = twoDigits(n)
	if l.Search.FromDay == "" {
		l.days(l.today.String(), l.today.String())
	}
	l.part("that came from %s to %s o'clock", message.Name(l.Search.Hour), message.Name(twoDigits((n+1)%24)))
	return true
}

func twoDigits(n int) string { return fmt.Sprintf("%02d", n) }

// charged are the words for lines of a settlement that a ticket may have.
var charged = map[string]string{
	"drying": settle.LineDrying, "services": settle.LineServices, "handling": settle.LineHandling,
	"discounts": settle.LineDiscounts, "premiums": settle.LinePremiums,
}

func (l *SearchLine) with(which string) bool {
	for word, line := range charged {
		if l.isWord(which, word) {
			l.Search.With = line
			l.part("with %s", message.Words(word))
			return true
		}
	}
	return false
}

// onTheClock turns an hour of the wall's clock into times as facts carry them. The clock is asked, for it
// may be put forward or back between two days.
func onTheClock(d Desk, s Search) Search {
	day, err := quantity.ParseDate(s.FromDay)
	if s.Hour == "" || err != nil {
		return s
	}
	const quarters = 3 * 24 * 4 // of the day, of the one before and of the one after
	for at := range quarters {
		stamp := quarterOf(day.AddDays(-1), at)
		switch inHour := strings.HasPrefix(d.Local(stamp), day.String()+" "+s.Hour); {
		case inHour && s.CameFrom == "":
			s.CameFrom = stamp
		case !inHour && s.CameFrom != "" && s.CameBefore == "":
			s.CameBefore = stamp
		}
	}
	if s.CameFrom == "" { // an hour that the clock leaves out
		s.CameFrom, s.CameBefore = quarterOf(day, 0), quarterOf(day, 0)
	}
	return s
}

// quarterOf is the time so many quarters of an hour after midnight of a day, as facts carry it.
func quarterOf(day quantity.Date, quarters int) string {
	const inDay = 24 * 4
	day, quarters = day.AddDays(quarters/inDay), quarters%inDay
	return fmt.Sprintf("%sT%02d:%02d:00Z", day, quarters/4, quarters%4*15)
}

// byEitherCard lets a search find a grower's tickets by the codes and names of all cards that lead
// to it.
func byEitherCard(ctx context.Context, d Desk, s Search) (Search, error) {
	all, err := Growers(ctx, d)
	if err != nil {
		return s, err
	}
	s.Terms = slices.Clone(s.Terms)
	for _, card := range elevator.Cards(all) {
		if len(card.Codes)+len(card.Names) < 2 {
			continue
		}
		if slices.Contains(card.Codes, s.Grower) {
			s.AlsoGrowers = card.Codes
		}
		names := slices.Concat(card.Codes, card.Names, []string{card.Name})
		for i, t := range s.Terms {
			if slices.ContainsFunc(names, func(name string) bool { return textsearch.Contains(name, t.Text) }) {
				s.Terms[i].Growers = append(s.Terms[i].Growers, card.Codes...)
			}
		}
	}
	return s, nil
}
