package position

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/title"
)

// Line is one line of who owns the grain in the house. The words are keys of every book.
type Line string

const (
	Receipts   Line = "receipt" // of tickets that name one of an older series
	Negotiable Line = "negotiable"
	// NonNegotiable receipts are owed to the depositor named on them.
	NonNegotiable Line = "non-negotiable"
	Storage       Line = "stored"
	GrainBank     Line = "bank"
	Undecided     Line = "undecided"
	Depositors    Line = "depositor" // on a contract or delayed price that has not passed title

	Sold       Line = "sold"
	OnContract Line = "contract"
	Delayed    Line = "delayed"
	Shipped    Line = "shipped" // loaded out: below zero
	Counted    Line = "counted" // written off, or found on a count

	Water      Line = "water"
	Screenings Line = "dockage"
	Handling   Line = "handling"
	Quality    Line = "quality"
)

// Group sums lines by whose grain they count.
type Group string

const (
	Owed    Group = "owed"    // to depositors
	Company Group = "company" // owned by the company
	Between Group = "between" // weighed and not settled: shrink not yet posted
)

// lines is the table of the lines, in the order of papers.
var lines = []struct {
	line  Line
	group Group
	name  message.Text
}{
	{Receipts, Owed, message.New("On warehouse receipts")},
	{Negotiable, Owed, message.New("On negotiable receipts")},
	{NonNegotiable, Owed, message.New("On non-negotiable receipts")},
	{Storage, Owed, message.New("In open storage")},
	{GrainBank, Owed, message.New("In the grain bank, of depositors")},
	{Undecided, Owed, message.New("Not decided: the depositors'")},
	{Depositors, Owed, message.New("On contracts that have not passed title")},
	{Sold, Company, message.New("Bought")},
	{OnContract, Company, message.New("Received on contracts")},
	{Delayed, Company, message.New("Received at a delayed price")},
	{Shipped, Company, message.New("Loaded out")},
	{Counted, Company, message.New("Written off, or found on counts")},
	{Water, Between, message.New("Water settled and not yet dried out")},
	{Screenings, Between, message.New("Dockage settled and not yet cleaned out")},
	{Handling, Between, message.New("Handling settled and not yet lost")},
	{Quality, Between, message.New("Weight settled off for quality")},
}

// Lines are all lines, in the order of papers.
func Lines() []Line {
	out := make([]Line, len(lines))
	for i, l := range lines {
		out[i] = l.line
	}
	return out
}

// Group is the group of the line; a line that no program wrote has none.
func (l Line) Group() Group {
	for _, known := range lines {
		if known.line == l {
			return known.group
		}
	}
	return ""
}

// Name is the name of the line on papers.
func (l Line) Name() message.Text {
	for _, known := range lines {
		if known.line == l {
			return known.name
		}
	}
	return message.Words(string(l))
}

// Name is the name of the group on papers.
func (g Group) Name() message.Text {
	switch g {
	case Owed:
		return message.New("Depositors' grain")
	case Company:
		return message.New("Company-owned")
	}
	return message.New("Shrink not yet posted")
}

// LineOf is the line that grain under these terms stands in.
func LineOf(t title.Terms) Line {
	owner := t.Owner()
	switch t.Under {
	case title.Receipt:
		return Receipts
	case title.OpenStorage:
		return Storage
	case title.GrainBank:
		return GrainBank
	case title.CashSale:
		return Sold
	case title.Contract:
		return passed(owner, OnContract)
	case title.DelayedPrice:
		return passed(owner, Delayed)
	}
	return Undecided
}

func passed(owner title.Whose, line Line) Line {
	if owner == title.Houses {
		return line
	}
	return Depositors
}
