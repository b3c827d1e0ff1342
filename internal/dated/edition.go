package dated

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Edition is the head of a dated file.
type Edition struct {
	ID string
	// Line is the series in which editions replace each other: "main/corn".
	Line     string
	From     quantity.Date // first day in force
	Until    quantity.Date // last day in force; zero means until replaced
	Corrects string        // id of the edition this one corrects, if any

	File string // the name it was read by
	Text []byte // the file as read
	Head string // the table of the file that says all this
}

// Member is a file that stands among others of its kind.
type Member interface {
	comparable
	Dated() Edition
}

// Days are the days an edition is in force.
func (e Edition) Days() message.Text {
	if e.Until.IsZero() {
		return message.New("from %s", e.From)
	}
	return message.New("%s to %s", e.From, e.Until)
}

// clash is a problem that shows only beside another edition.
func (e Edition) clash(key string, what, remedy message.Text) tomlfile.Problem {
	return tomlfile.Locate(e.File, e.Text).Problem(e.Head+"."+key, what, remedy)
}

// endless is the last day of an edition that has none.
var endless = quantity.MustDate("2999-12-31")

func (e Edition) lastDay() quantity.Date {
	if e.Until.IsZero() {
		return endless
	}
	return e.Until
}

// Period checks that an edition does not end before it begins and does not correct itself.
func Period(t *tomlfile.Table, e Edition) {
	if !e.Until.IsZero() && e.Until.Before(e.From) {
		t.AddProblem("until", message.New("the edition ends on %s, before it begins on %s", e.Until, e.From), message.New("Swap the two days, or leave until out for an edition without an end."))
	}
	if e.Corrects != "" && e.Corrects == e.ID {
		t.AddProblem("corrects", message.New("the edition says that it corrects itself"), message.New("Give the corrected edition a new id, and name the old one here."))
	}
}
