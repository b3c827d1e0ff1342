package quantity

// The Gregorian calendar as day numbers, so that days can be counted. Years
// are taken to begin in March, which puts the odd day of a leap year last.

// daysInEra is the length of the 400 years after which the calendar repeats.
const daysInEra = 146097

func isLeap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

func daysInMonth(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if isLeap(year) {
			return 29
		}
		return 28
	}
	return 31
}

// dayNumber counts days from 1 March of the year 0.
func (d Date) dayNumber() int {
	year, month := int(d.year), int(d.month)-3
	if month < 0 {
		year, month = year-1, month+12
	}
	return daysBefore(year) + (153*month+2)/5 + int(d.day) - 1
}

// daysBefore counts the days before 1 March of a year not below zero.
func daysBefore(year int) int { return 365*year + year/4 - year/100 + year/400 }

// dateOfDay is the date with a day number.
func dateOfDay(n int) Date {
	year := n * 400 / daysInEra
	for daysBefore(year+1) <= n {
		year++
	}
	for daysBefore(year) > n {
		year--
	}
	rest := n - daysBefore(year)
	month := (5*rest + 2) / 153
	day := rest - (153*month+2)/5 + 1
	if month += 3; month > 12 {
		year, month = year+1, month-12
	}
	return Date{int16(year), int8(month), int8(day)}
}
