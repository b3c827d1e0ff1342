package money

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/report"
	"tenthpoint/internal/tariff"
)

// Notice is a tariff as a paper to post where growers see it.
func Notice(e *tariff.Edition, p elevator.Profile) report.Document {
	d := paper(p, e.From, message.New("Posted charges: %v", e.Title), message.New("%s, tariff %v, SHA-256 %v", e.Days(), e.ID, e.Hash))
	if e.Status == tariff.Example {
		d.Marks = []message.Text{message.New(rates.ExampleMark)}
	}
	for _, group := range grouped(e.Lines()) {
		t := report.Table{Name: group[0].Section, Columns: []report.Column{{Title: message.New("What")}, {Title: message.New("Charge")}}}
		for _, l := range group {
			t.Rows = append(t.Rows, report.Row{Cells: []message.Text{l.Label, l.Value}})
		}
		d.Blocks = append(d.Blocks, report.Heading{Text: group[0].Section}, t)
	}
	return d
}

// grouped parts posted lines by their section.
func grouped(lines []rule.Line) [][]rule.Line {
	var out [][]rule.Line
	for _, l := range lines {
		if last := len(out) - 1; last >= 0 && out[last][0].Section.Equal(l.Section) {
			out[last] = append(out[last], l)
			continue
		}
		out = append(out, []rule.Line{l})
	}
	return out
}

// paper is an empty paper of the house about a day.
func paper(p elevator.Profile, day quantity.Date, name, about message.Text) report.Document {
	d := report.Of(p, day)
	d.Title, d.About = name, about
	d.Footer = message.New("No legal or tax advice: the authority and the contract outrank the program that made this paper.")
	return d
}
