package season

import "tenthpoint/internal/quantity"

// firstMonth is the month a season begins in: before winter wheat comes in.
const firstMonth = 6

// Began is the first day of the season that a day is in.
func Began(day quantity.Date) quantity.Date {
	year := day.Year()
	if day.Month() < firstMonth {
		year--
	}
	first, _ := quantity.NewDate(year, firstMonth, 1)
	return first
}
