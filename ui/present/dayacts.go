package present

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
)

// CanClose reports whether the day may be closed.
func (s *DaySheet) CanClose() bool {
	return s.sheet.Closed == nil && !s.day.After(s.frame.Desk.Today())
}

// WhyNotClose is why it may not.
func (s *DaySheet) WhyNotClose() string {
	if s.sheet.Closed != nil {
		return Say("The day is closed already. Later changes stand on the day they are made.")
	}
	return Say("The day has not come yet.")
}

// Close asks a manager to close the day.
func (s *DaySheet) Close() {
	state, text := model.Wait, Say("What is done later counts in the next day and names this one. The sheet of a closed day never changes.")
	if open := len(s.sheet.Notes.Yard); open > 0 {
		state, text = model.Warn, join("\n", text, Say("Trucks on the yard without a ticket: %d. They count on the day they leave.", open))
	}
	s.frame.Put(model.Ask{
		Draft: "close", Of: "day " + s.day.String(),
		Title: Say("Close %s?", s.frame.Date(s.day)), Text: text, State: state,
		Fields: []model.AskField{
			{ID: "who", Label: Say("Manager"), Options: s.frame.managers(), Value: s.frame.managerHere(), Chars: 24, Required: true},
			{ID: "remark", Label: Say("Remark"), Chars: 40},
		},
		Yes:  Say("Close the day"),
		Then: func(values map[string]string) { s.close(values["who"], strings.TrimSpace(values["remark"])) },
	})
}

func (s *DaySheet) close(who, remark string) {
	err := s.frame.as(who, func() error { return s.frame.Desk.CloseDay(context.Background(), s.day, remark) })
	if err != nil {
		s.frame.Fail(err)
		return
	}
	s.frame.Say(model.OK, Say("%s is closed by %s. Print the sheet and sign it.", s.frame.Date(s.day), who))
	s.frame.Changed()
}

// Print prints the sheet of the day.
func (s *DaySheet) Print() {
	s.frame.printDocument(s.paper, "day-"+s.day.String(), Say("the day sheet of %s", s.frame.Date(s.day)), true)
}

// printDocument prints a paper of several parts; wide tables lie on their side.
func (f *Frame) printDocument(d report.Document, name, what string, wide bool) {
	page := report.PageFor(f.Desk.Profile().Rules)
	if wide {
		page = page.Wide()
	}
	pdf, err := d.PDF(page)
	if err != nil {
		f.Fail(err)
		return
	}
	f.printPaper(name, what, pdf)
}

// Export writes the sheet of the day as a workbook and its tables as
// comma-separated lines.
func (s *DaySheet) Export() {
	s.frame.exportDocument(s.paper, "day-"+s.day.String(), Say("the day sheet of %s", s.frame.Date(s.day)))
}

// exportDocument writes a paper as a workbook, and every table of it that has
// rows as comma-separated lines.
func (f *Frame) exportDocument(d report.Document, name, what string) {
	for _, t := range d.Tables() {
		if len(t.Rows) == 0 {
			continue
		}
		var lines bytes.Buffer
		if err := d.CSV(&lines, t); err != nil {
			f.Fail(err)
			return
		}
		f.save(fmt.Sprintf("%s %s.csv", name, t.Name), what, lines.Bytes())
	}
	var book bytes.Buffer
	if err := d.XLSX(&book); err != nil {
		f.Fail(err)
		return
	}
	f.save(name+".xlsx", what, book.Bytes())
}

// AskStatement asks whose account is to be printed, and for which days.
func (f *Frame) AskStatement(grower string) {
	f.Put(model.Ask{
		Title: Say("Statement of an account"),
		Text:  Say("All loads of a grower, by commodity, with shares, charges and what is payable. A landlord gets only the landlord's share."),
		Fields: []model.AskField{
			{ID: "grower", Label: Say("Grower"), Options: f.known().growerOptions, Value: grower, Chars: 28, Required: true},
			{ID: "from", Label: Say("From"), Chars: 12, Hint: Say("year-month-day, or empty")},
			{ID: "to", Label: Say("Through"), Chars: 12, Hint: Say("year-month-day, or empty")},
			{ID: "files", Label: Say("Also as workbook and lines"), Tick: true},
		},
		Yes: Say("Print"),
		Check: func(values map[string]string) map[string]string {
			wrong := map[string]string{}
			for _, id := range []string{"from", "to"} {
				if _, err := dateOrNone(values[id]); err != nil {
					wrong[id] = sentence(err)
				}
			}
			return wrong
		},
		Then: func(values map[string]string) {
			from, _ := dateOrNone(values["from"])
			to, _ := dateOrNone(values["to"])
			f.printStatement(values["grower"], from, to, values["files"] == model.TickOn)
		},
	})
}

func (f *Frame) printStatement(grower string, from, to quantity.Date, files bool) {
	d, err := f.Desk.Statement(context.Background(), grower, from, to)
	if err != nil {
		f.Fail(err)
		return
	}
	what := Say("the statement of grower %s", grower)
	if files {
		f.exportDocument(d, "account-"+grower, what)
	}
	f.printDocument(d, "account-"+grower, what, true)
}
