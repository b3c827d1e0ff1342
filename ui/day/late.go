package day

import (
	"context"
	"strings"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// late are the acts entered after the day was closed that count on it all the same,
// which only books of earlier programs have.
type late struct{ *DaySheet }

// status tells of what was entered after the day was closed and counts on it or before
// it: that somebody has to explain it, or who has. It is empty where nothing was.
func (s late) status() model.Status {
	c := s.sheet.Closed
	switch {
	case c == nil:
	case c.Late:
		return model.Status{State: model.Stop, Text: s.session.Say("Something entered after the day was closed counts on it or before it. The sheet is the one that was signed; Ctrl+Shift+E lets a manager explain what came later.")}
	case c.Explained != nil:
		return model.Status{State: model.Warn, Text: s.session.Say("Entered later, explained by %s, %s: %s", c.Explained.By, c.Explained.At, c.Explained.Reason)}
	}
	return model.Status{}
}

// waits reports whether something entered later waits for an explanation.
func (s late) waits() bool { return s.sheet.Closed != nil && s.sheet.Closed.Late }

// ask asks a manager why something entered later counts on the closed day.
func (s late) ask() {
	s.session.Put(model.Ask{
		Draft: "explain", Of: "day " + s.day.String(),
		Title: s.session.Say("Explain what came after %s was closed?", s.session.Date(s.day)),
		Text:  s.session.Say("The sheet stays as it was signed and names the reason."), State: model.Warn,
		Fields: []model.AskField{
			{ID: "who", Label: s.session.Say("Manager"), Options: s.session.Managers(), Value: s.session.ManagerHere(), Chars: 24, Required: true},
			{ID: "reason", Label: s.session.Say("Reason"), Chars: 40, Required: true},
		},
		Yes:  s.session.Say("Explain it"),
		Then: func(values map[string]string) { s.explain(values["who"], strings.TrimSpace(values["reason"])) },
	})
}

func (s late) explain(who, reason string) {
	err := s.session.As(who, func() error { return scalehouse.ExplainDay(context.Background(), s.session.Desk, s.day, reason) })
	if err != nil {
		s.session.Fail(err)
		return
	}
	s.session.Notify(model.OK, s.session.Say("what came after %s was closed is explained.", s.session.Date(s.day)))
	s.session.Changed()
}
