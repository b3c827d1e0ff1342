package setup

import (
	"maps"
	"slices"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// SetUpDraft is the key of the set-up's draft.
var SetUpDraft = session.DraftAt{Place: "setup", ID: ""}

// takeBack restores what was typed before the program stopped.
func (s *SetUp) takeBack() {
	texts := s.session.Drafts().TypedBefore(SetUpDraft)
	fields := s.Fields()
	for id, text := range texts {
		if slices.ContainsFunc(fields, func(f model.Field) bool { return f.ID == id }) {
			s.values[id] = text
		}
	}
	if len(session.TypedOver(s.inBook, s.values)) > 0 {
		s.session.Drafts().StandsAgain(s.session.Say("the set-up"))
	}
}

// isWritten discards what was typed: the book has it.
func (s *SetUp) isWritten() {
	s.inBook = maps.Clone(s.values)
	s.session.Drafts().SaveSync(SetUpDraft, nil)
}
