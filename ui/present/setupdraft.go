package present

import (
	"maps"
	"slices"
	"tenthpoint/ui/model"
)

// setUpDraft is where the sheet of the set-up is kept until it is written down.
var setUpDraft = draftAt{"setup", ""}

// takeBack types what was typed before the program stopped.
func (s *SetUp) takeBack() {
	texts := s.frame.Drafts().typedBefore(setUpDraft)
	fields := s.Fields()
	for id, text := range texts {
		if slices.ContainsFunc(fields, func(f model.Field) bool { return f.ID == id }) {
			s.values[id] = text
		}
	}
	if len(typedOver(s.inBook, s.values)) > 0 {
		s.frame.Drafts().standsAgain(Say("the set-up"))
	}
}

// isWritten forgets what was typed: the book has it.
func (s *SetUp) isWritten() {
	s.inBook = maps.Clone(s.values)
	s.frame.Drafts().keep(setUpDraft, nil)
}
