package money

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// paper is an empty paper of the house about a day.
func paper(p elevator.Profile, day quantity.Date, name, about message.Text) report.Document {
	d := report.Of(p, day)
	d.Title, d.About = name, about
	d.Footer = message.New("No legal or tax advice: the authority and the contract outrank the program that made this paper.")
	return d
}
