package audit

import (
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// closedDays rebuilds the sheet of every closed day and compares it with the signed one: someone
// who rewrote facts, lists and chain together would still have to match it.
func (v *walk) closedDays() error {
	for _, subject := range slices.Sorted(maps.Keys(v.records)) {
		if v.records[subject].Kind != (office.DayClosed{}).Kind() {
			continue
		}
		text := strings.TrimPrefix(subject, "day ")
		if problem := v.sheetOf(text); !problem.IsZero() {
			v.found(problem)
		}
		if err := v.ctx.Err(); err != nil {
			return err
		}
	}
	return nil
}

// sheetOf returns what is wrong with the sheet of a closed day; nothing when it is the one that was
// signed.
func (v *walk) sheetOf(text string) message.Text {
	day, err := quantity.ParseDate(text)
	if err != nil {
		return message.New("A day called %q was closed, which is no day.", text)
	}
	sheet, err := office.DaySheet(v.ctx, v.desk, day)
	switch {
	case err != nil:
		return message.New("The sheet of %s cannot be made again: %v.", day, err)
	case sheet.Closed == nil:
		return message.Text{}
	case sheet.Closed.Differs:
		return message.New("The sheet of %s is not the one that was signed when the day was closed.", day)
	case sheet.Closed.Late:
		return message.New("Something entered after %s was closed counts on that day or before it. Its sheet can still be made as it was signed; a manager has to explain what came later (tenth day explain %s).", day, day)
	}
	if e := sheet.Closed.Explained; e != nil {
		v.addRemark("Something entered after %s was closed counts on that day or before it. Its sheet is as it was signed. %s explained it on %s: %s", day, e.By, e.At, e.Reason)
	}
	return message.Text{}
}
