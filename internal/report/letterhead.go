package report

import (
	"slices"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// ExampleMark is printed on every paper of an invented elevator.
var ExampleMark = message.New("EXAMPLE - NOT FOR TRADE")

// Of begins a paper of an elevator about a day: under its name, in its language, with the mark of an
// invented one.
func Of(p elevator.Profile, day quantity.Date) Document {
	d := Document{
		House: Letterhead(p), Language: p.Language,
		Made: time.Date(day.Year(), time.Month(day.Month()), day.Day(), 0, 0, 0, 0, time.UTC),
	}
	if p.Demo {
		d.MarkExample()
	}
	return d
}

// MarkExample marks a paper of an invented elevator, or one made by example rates, once.
func (d *Document) MarkExample() {
	if !slices.ContainsFunc(d.Marks, ExampleMark.Equal) {
		d.Marks = append(d.Marks, ExampleMark)
	}
}

// Letterhead are the lines at the head of an elevator's papers.
func Letterhead(p elevator.Profile) []string {
	place := p.Street
	if p.Street != "" && p.Town != "" {
		place += ", "
	}
	var out []string
	for _, line := range []string{p.Business, place + p.Town, p.Phone, p.Licence} {
		if line != "" {
			out = append(out, line)
		}
	}
	return out
}
