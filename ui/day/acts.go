package day

import (
	"context"
	"strings"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// CanClose reports whether the day may be closed.
func (s *DaySheet) CanClose() bool {
	return s.sheet.Closed == nil && !s.day.After(s.session.Desk.Today())
}

// WhyNotClose is why it may not.
func (s *DaySheet) WhyNotClose() string {
	if s.sheet.Closed != nil {
		return s.session.Say("The day is closed already. Later changes stand on the day they are made.")
	}
	return s.session.Say("The day has not come yet.")
}

// Close asks a manager to close the day.
func (s *DaySheet) Close() {
	state, text := model.Wait, s.session.Say("What is done later counts in the next day and names this one. The sheet of a closed day never changes.")
	if open := len(s.sheet.Notes.Yard); open > 0 {
		state, text = model.Warn, session.Join("\n", text, s.session.Say("Trucks on the yard without a ticket: %d. They count on the day they leave.", open))
	}
	s.session.Put(model.Ask{
		Draft: "close", Of: "day " + s.day.String(),
		Title: s.session.Say("Close %s?", s.session.Date(s.day)), Text: text, State: state,
		Fields: []model.AskField{
			{ID: "who", Label: s.session.Say("Manager"), Options: s.session.Managers(), Value: s.session.ManagerHere(), Chars: 24, Required: true},
			{ID: "remark", Label: s.session.Say("Remark"), Chars: 40},
		},
		Yes:  s.session.Say("Close the day"),
		Then: func(values map[string]string) { s.close(values["who"], strings.TrimSpace(values["remark"])) },
	})
}

func (s *DaySheet) close(who, remark string) {
	err := s.session.As(who, func() error { return scalehouse.CloseDay(context.Background(), s.session.Desk, s.day, remark) })
	if err != nil {
		s.session.Fail(err)
		return
	}
	s.session.Notify(model.OK, s.session.Say("%s is closed by %s. Print the sheet and sign it.", s.session.Date(s.day), who))
	s.session.Changed()
}

// Print prints the sheet of the day.
func (s *DaySheet) Print() {
	session.PrintDocument(s.session, s.paper, "day-"+s.day.String(), s.session.Say("the day sheet of %s", s.session.Date(s.day)), true)
}

// Export writes the sheet of the day as a workbook and its tables as
// comma-separated lines.
func (s *DaySheet) Export() {
	session.ExportDocument(s.session, s.paper, "day-"+s.day.String(), s.session.Say("the day sheet of %s", s.session.Date(s.day)))
}
