package guard

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// farBack is the number of days a business day may lie in the past.
const farBack = 7

// findDayAhead asks about a day that has not come yet.
func findDayAhead(c *check) {
	if c.Details.Day.IsZero() || !c.Details.Day.After(c.Today) {
		return
	}
	ahead := c.Today.DaysUntil(c.Details.Day)
	c.say(Finding{
		Field: "day", About: about(c.Details.Day.String()),
		Said: message.Count(ahead, "Day %[2]s lies %[1]d day ahead of today, %[3]s.", "Day %[2]s lies %[1]d days ahead of today, %[3]s.", c.Details.Day, c.Today),
	}, c.limits(""))
}

// findDayBack asks about a day far back. A load that takes the place of another
// ticket has the day of that.
func findDayBack(c *check) {
	if c.Details.Day.IsZero() || c.InPlaceOf() > 0 {
		return
	}
	by, most := c.limits(""), int64(farBack)
	if by.To != nil && by.To.Unit() == quantity.Count {
		if whole, exact := by.To.Decimal(); exact {
			most = whole.IntPart()
		}
	}
	back := c.Details.Day.DaysUntil(c.Today)
	if int64(back) <= most {
		return
	}
	c.say(Finding{
		Field: "day", About: about(c.Details.Day.String()),
		Said: message.New("Day %s lies %d days back; today is %s.", c.Details.Day, back, c.Today),
	}, by)
}
