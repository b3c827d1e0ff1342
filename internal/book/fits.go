package book

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"tenthpoint/internal/load"
)

// Fits reports whether a row is among those the filter chooses. Engines choose by SQL; this is for
// rows that are not in their tables yet.
func (f LoadFilter) Fits(r LoadRow) bool {
	return f.namesIt(r) && f.spansIt(r) &&
		(!f.Undecided || r.isUndecided()) &&
		(len(f.Phases) == 0 || slices.Contains(f.Phases, r.Phase)) &&
		(f.OnDay == "" || r.IssuedDay == f.OnDay || r.EndedDay == f.OnDay) &&
		(f.Grower == "" || r.Grower == f.Grower || slices.Contains(r.Owners, f.Grower)) &&
		(f.Text == "" || r.says(f.Text))
}

func (f LoadFilter) namesIt(r LoadRow) bool {
	for _, of := range []struct{ want, is string }{
		{f.ID, r.ID}, {f.IssuedDay, r.IssuedDay}, {f.EndedDay, r.EndedDay}, {f.Commodity, r.Commodity},
		{f.Truck, r.Truck}, {f.Bin, r.Bin}, {f.Sample, r.Sample},
	} {
		if of.want != "" && of.want != of.is {
			return false
		}
	}
	for _, of := range []struct{ want, is int64 }{{f.Ticket, r.Ticket}, {f.Corrects, r.Corrects}, {f.Reissues, r.Reissues}} {
		if of.want != 0 && of.want != of.is {
			return false
		}
	}
	return true
}

// spansIt leaves out what has no ticket or day where a span of them is asked for.
func (f LoadFilter) spansIt(r LoadRow) bool {
	if (f.FromTicket != 0 || f.ToTicket != 0) && r.Ticket == 0 {
		return false
	}
	if f.FromTicket != 0 && r.Ticket < f.FromTicket || f.ToTicket != 0 && r.Ticket > f.ToTicket {
		return false
	}
	return inSpan(r.IssuedDay, f.FromDay, f.ToDay) && inSpan(r.EndedDay, f.EndedFrom, f.EndedTo) && inSpan(r.KeepUntil, "", f.KeptUntil)
}

func inSpan(day, from, to string) bool {
	return (from == "" || day >= from) && (to == "" || day != "" && day <= to)
}

// says reports whether a text is part of what a list shows of the row, or its ticket.
func (r LoadRow) says(text string) bool {
	part := smallASCII(text)
	for _, in := range []string{r.GrowerName, r.Truck, r.Commodity} {
		if strings.Contains(smallASCII(in), part) {
			return true
		}
	}
	return r.Ticket != 0 && strconv.FormatInt(r.Ticket, 10) == text
}

// smallASCII makes letters small as engines do in a search: those of ASCII.
func smallASCII(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'A' && r <= 'Z' {
			r += 'a' - 'A'
		}
		return r
	}, text)
}

// Order compares two rows by the order of the filter's list.
func (f LoadFilter) Order(a, b LoadRow) int {
	by := cmp.Or(cmp.Compare(a.Ticket, b.Ticket), cmp.Compare(a.ID, b.ID))
	if f.Newest {
		return -by
	}
	return by
}

// HasSample reports whether a sample of the load is kept on the shelf. The load of a corrected
// ticket, and of a void one that was reissued, has handed its sample on; one that was to take a
// ticket's place and was turned away has handed it back.
func (r LoadRow) HasSample() bool {
	inPlace := r.Corrects != 0 || r.Reissues != 0
	return r.Kept != "" && r.Phase != "corrected" && r.ReissuedBy == 0 && (r.Phase != "refused" || !inPlace)
}

// isUndecided reports whether a row has a ticket in force, and one word that decides all of it is
// missing.
func (r LoadRow) isUndecided() bool {
	return r.Phase == string(load.Ticketed) && (r.Disposition == "" || len(r.Titles) > 0)
}
