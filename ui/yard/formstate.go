package yard

import (
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard/board"
	"tenthpoint/ui/yard/loadfields"
)

// formState is a preview of a load with everything typed applied: its fields, its settlement, and
// the messages beside the fields.
type formState struct {
	language   session.Language
	Load       *load.Load
	form       *entry.Form
	edition    *rates.Edition
	settlement *settle.Settlement // nil while it cannot be settled
	problems   settle.Problems

	lines    []loadfields.Line
	readings map[string]string // how each typed text was understood
	messages session.FieldMessages
	missing  map[string]bool
	lacking  []guard.Lacking
	before   *replaced       // the ticket it is to replace; nil where there is none
	asked    guard.Asked     // questions of the elevator that wait for an answer
	refused  map[string]bool // fields with invalid texts
}

// formStateOf previews a form of typed texts on a copy of its load, with the errors by field.
func formStateOf(f *session.Session, form *entry.Form, book *load.Load, texts map[string]string) *formState {
	tried := form.Tried()
	s := &formState{
		language: f.Language, Load: tried.Load, form: form, edition: tried.Edition, settlement: tried.Settlement, problems: tried.Problems,
		missing: tried.Missing, lacking: tried.Lacking, asked: tried.Asked, messages: session.FieldMessages{}, readings: map[string]string{}, refused: map[string]bool{},
	}
	s.lines = loadfields.Of(f, form, book, tried)
	for _, field := range slices.Sorted(maps.Keys(tried.Messages)) {
		r := tried.Messages[field]
		s.addMessage(s.beside(field), stateOf[r.Severity], saidOf(f.Language, r))
	}
	refused := form.Refused()
	for _, l := range s.lines {
		text, typed := texts[l.ID]
		if typed && refused[l.ID] == nil {
			s.readings[l.ID] = l.Reading(text, s.Load)
		}
		if typed && s.messages[l.ID].State == model.Stop {
			s.refused[l.ID] = true
		}
	}
	return s
}

var stateOf = map[entry.Severity]model.State{entry.Warn: model.Warn, entry.Ask: model.Warn, entry.Stop: model.Stop}

// saidOf is a remark in the language of the desk.
func saidOf(in session.Language, r entry.FieldMessage) string {
	if r.Err != nil {
		return in.Sentence(r.Err)
	}
	return in.Text(r.Text)
}

// addMessage adds a message to a field; see [session.FieldMessages].
func (s *formState) addMessage(field string, state model.State, text string) {
	s.messages.Say(field, state, text)
}

// wholeLoad is the field of a remark about the load as a whole.
const wholeLoad = entry.WholeLoad

// beside is the field of the form that a remark is shown beside.
func (s *formState) beside(field string) string {
	if _, known := s.Line(field); known {
		return field
	}
	return wholeLoad
}

// Line finds a field of the form.
func (s *formState) Line(id string) (loadfields.Line, bool) {
	return session.Find(s.lines, func(l loadfields.Line) bool { return l.ID == id })
}

// field returns a field with its text and message.
func (s *formState) field(l loadfields.Line, text string) model.Field {
	out := l.Model(s.Load, text, s.readings[l.ID])
	out.Missing = s.missing[l.ID]
	if r := s.messages[l.ID]; r.Text != "" {
		out.State, out.Note = r.State, s.language.Say(r.Text)
	}
	return out
}

// FirstMissing is the first field the ticket still lacks, or the first one with
// something wrong in it; empty when the load is whole.
func (s *formState) FirstMissing() string {
	for _, l := range s.lines {
		if s.missing[l.ID] || s.messages[l.ID].State == model.Stop {
			return l.ID
		}
	}
	return ""
}

// After is the field that follows another in working order; empty after the
// last.
func (s *formState) After(id string) string {
	i := slices.IndexFunc(s.lines, func(l loadfields.Line) bool { return l.ID == id })
	if i < 0 || i+1 >= len(s.lines) {
		return ""
	}
	return s.lines[i+1].ID
}

// sideToWeigh returns the field of the next weight from the scale: the focused one, else the first,
// of those still missing. It is empty where the focus is in a weight that exists, or all exist:
// then a person must choose.
func (s *formState) sideToWeigh(field string) string {
	if _, _, isWeight := entry.SideOf(field); isWeight {
		if s.missing[field] {
			return field
		}
		return ""
	}
	for _, l := range s.lines {
		if _, _, isWeight := entry.SideOf(l.ID); isWeight && s.missing[l.ID] {
			return l.ID
		}
	}
	return ""
}

// sides are the fields of the weights, those still missing first, with any existing weight.
func (s *formState) sides() []model.Option {
	var missing, there []model.Option
	for _, l := range s.lines {
		which, draft, isWeight := entry.SideOf(l.ID)
		if !isWeight {
			continue
		}
		if w, weighed := s.Load.Weight(which, draft); weighed {
			there = append(there, model.Option{Code: l.ID, Name: l.Label, Detail: s.language.Say("replaces %s", w.Weight), ByName: true})
		} else {
			missing = append(missing, model.Option{Code: l.ID, Name: l.Label, Detail: s.language.Say("still to come"), ByName: true})
		}
	}
	return append(missing, there...)
}

// CanSplit reports whether the trailer may still be weighed apart.
func (s *formState) CanSplit() bool { return len(s.form.Drafts()) == 1 }

// Leaves reports whether the truck takes grain away. Such a load is only weighed:
// it is sold on the buyer's test.
func (s *formState) Leaves() bool { return s.Load.Details.Direction == load.Outbound }

// Next says briefly what the load waits for, with its state.
func (s *formState) Next() model.Status {
	return board.NextAct(s.language, s.Load, s.settlement != nil)
}

// CanIssue reports whether the load is complete and settles, every typed text is valid, and every
// question of the guards is answered.
func (s *formState) CanIssue() bool {
	return s.settlement != nil && len(s.refused) == 0 && len(s.lacking) == 0 && len(s.asked) == 0 && !s.isUnchanged()
}

// WhyNotIssue returns the first reason that the ticket cannot be issued.
func (s *formState) WhyNotIssue() string {
	for _, l := range s.lines {
		if r := s.messages[l.ID]; s.refused[l.ID] && r.State == model.Stop {
			if strings.HasPrefix(r.Text, l.Label) { // the sentence names its field itself
				return r.Text
			}
			return s.language.Say("%s: %s", l.Label, r.Text)
		}
	}
	for _, m := range s.Load.Missing() {
		return s.language.Text(m.Sentence)
	}
	for _, l := range s.lines {
		if s.missing[l.ID] {
			return s.language.Say("%s is still to come.", l.Label)
		}
		if r := s.messages[l.ID]; r.State == model.Stop {
			return r.Text
		}
	}
	for _, sentence := range s.sentences() {
		return s.language.Text(sentence)
	}
	for _, l := range s.lacking {
		return s.language.Text(l.Said)
	}
	if s.isUnchanged() {
		return s.language.Say("Nothing is changed against ticket %d: there is nothing to correct. Ctrl+R gives the correction up.", s.before.load.Number)
	}
	if len(s.asked) > 0 {
		return s.language.Say("Ctrl+Shift+A answers what is asked: %s", s.language.Text(message.Texts(" ", s.questions())))
	}
	return ""
}

// questions are the unanswered questions of the guards about the load.
func (s *formState) questions() []message.Text {
	var out []message.Text
	for _, f := range s.asked {
		out = append(out, f.Said)
	}
	return out
}

// sentences are the reasons why the load cannot be settled.
func (s *formState) sentences() []message.Text {
	out := make([]message.Text, len(s.problems))
	for i, p := range s.problems {
		out[i] = p.Sentence
	}
	return out
}

// truck names the truck, for the beginning of a sentence.
func (s *formState) truck() string {
	if truck := session.TruckText(s.Load.Details.Truck); truck != "" {
		return s.language.Say("Truck %s", truck)
	}
	return s.language.Say("truck ?")
}

// Called names the load for a sentence: by its truck, else by its id.
func (s *formState) Called() string {
	switch truck := session.TruckText(s.Load.Details.Truck); {
	case truck != "":
		return s.language.Say("truck %s", truck)
	case s.Load.ID == "":
		return s.language.Say("a new truck")
	}
	return s.language.Say("load %s", s.Load.ID)
}
