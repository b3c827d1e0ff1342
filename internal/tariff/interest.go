package tariff

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Interest is simple interest on advances and on charges not paid, a year.
type Interest struct {
	Rate   rule.Cell
	By     YearBy
	Source message.Text
}

// YearBy is the day count convention of a part of a year.
type YearBy string

const (
	Days365        YearBy = "days-365"
	Days360        YearBy = "days-360"
	MonthsBegun    YearBy = "months-begun"
	MonthsComplete YearBy = "months-complete"
)

// yearWords are the ways for people, with what a year has of each.
var yearWords = map[YearBy]struct {
	said  message.Text
	units int64
}{
	Days365:        {message.Words("days of a year of 365"), 365},
	Days360:        {message.Words("days of a year of 360"), 360},
	MonthsBegun:    {message.Words("twelfths, a month begun counts whole"), 12},
	MonthsComplete: {message.Words("twelfths, whole months only"), 12},
}

// Given reports whether the tariff charges interest.
func (i Interest) Given() bool { return i.Rate.Given() }

// parts counts the days or months from one day to another.
func (i Interest) parts(from, to quantity.Date) int64 {
	switch i.By {
	case MonthsBegun:
		return int64(months(from, to.AddDays(-1), Begun))
	case MonthsComplete:
		return int64(months(from, to.AddDays(-1), Complete))
	}
	return int64(max(0, from.DaysUntil(to)))
}

// Charge writes the interest on a sum of money from one day to another on a sheet.
func (i Interest) Charge(e *Edition, s *worksheet.Sheet, id string, principal *worksheet.Step, from, to quantity.Date) *worksheet.Step {
	label := message.New("Interest")
	if !i.Given() {
		return s.Skip(id, label, quantity.Dollar, e.Money, message.New("the tariff has no interest"), message.New("%v", e.ID))
	}
	year := yearWords[i.By]
	rate := s.Rate(id+".rate", message.New("Interest a year"), i.Rate.Amount, i.Rate.Source)
	parts := s.Given(id+".time", message.New("From %s to %s", from, to), quantity.Int(i.parts(from, to), quantity.Plain), quantity.Unrounded, year.said)
	yearly := worksheet.PercentOf(rate, principal)
	return s.Work(id, label, worksheet.Over(worksheet.Times(yearly, parts), worksheet.Const(quantity.Int(year.units, quantity.Plain))), e.Money, i.Source)
}
