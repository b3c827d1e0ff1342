package present

import (
	"context"
	"strings"

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
	PrintDocument(s.frame, s.paper, "day-"+s.day.String(), Say("the day sheet of %s", s.frame.Date(s.day)), true)
}

// Export writes the sheet of the day as a workbook and its tables as
// comma-separated lines.
func (s *DaySheet) Export() {
	ExportDocument(s.frame, s.paper, "day-"+s.day.String(), Say("the day sheet of %s", s.frame.Date(s.day)))
}
