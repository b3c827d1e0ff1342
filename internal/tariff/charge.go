package tariff

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/title"
)

// Kind parts what is charged on a depositor's grain from what is charged on the house's own.
type Kind string

const (
	Storage Kind = "storage"
	Service Kind = "service"
)

// Charge is the storage charge of grain under some titles.
type Charge struct {
	Kind  Kind
	Label message.Text
	Under []title.Under
	// Free is the time without a charge; a zero End is none.
	Free End
	// FromDelivery says that the day of delivery is day 1; otherwise the day after is.
	FromDelivery bool
	// LastCounts says that the day it is reckoned to is charged.
	LastCounts bool
	// ByField says that the days of every load begin with the last load of its field.
	ByField bool
	Bands   []Band
	// Least is the smallest charge once anything is charged, for the whole or for each month begun.
	Least         rule.Cell
	LeastPerMonth bool
	Source        message.Text
}

func (c Charge) isFor(under title.Under) bool { return slices.Contains(c.Under, under) }

// How says how a band is charged.
type How string

const (
	// Flat is once, for any day in the band.
	Flat How = "flat"
	// Daily is for each day in the band.
	Daily How = "daily"
	// Monthly is for each month, counted from the first day charged in the band.
	Monthly How = "monthly"
)

// Part says what a month that is not whole counts.
type Part string

const (
	// Begun months count in full.
	Begun Part = "begun"
	// Complete months count alone.
	Complete Part = "complete"
	// ByDay months are days of a thirtieth each.
	ByDay Part = "by-day"
)

// Band is one stretch of the time, from where the one before ends.
type Band struct {
	Label message.Text
	End   End // the last band has none
	How   How
	// Rate is per bu, cwt or t: the flat charge, or that of a month.
	Rate   rule.Cell
	Posted Posted // of a daily band
	Part   Part   // of a monthly band
	Source message.Text
}

// says is the charge of the band as posted.
func (b Band) says() message.Text {
	switch b.How {
	case Daily:
		return b.Posted.said()
	case Monthly:
		return message.New("%s a month, %s", b.Rate.Amount.Written(), partWords[b.Part])
	}
	return message.New("%s once", b.Rate.Amount.Written())
}

var partWords = map[Part]message.Text{
	Begun: message.Words("a month begun counts whole"), Complete: message.Words("whole months only"),
	ByDay: message.Words("a day is a thirtieth"),
}
