package setup

import (
	"tenthpoint/internal/i18n"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Languages are the languages of the desk, each by its own name.
func Languages() []model.Option {
	var out []model.Option
	for _, code := range i18n.Codes() {
		out = append(out, model.Option{Code: code, Name: i18n.Name(code), ByName: true})
	}
	return out
}

// languageHint says when another language takes effect.
func (s *SetUp) languageHint() string {
	if s.values["language"] == session.OrElse(s.session.Desk.Profile().Language, "en") {
		return ""
	}
	return s.session.Say("at once, when it is written down")
}

// setLanguage switches the window to the language the elevator has chosen, if it has changed. Typed
// texts are saved as a draft, so that the rebuilt screens restore them.
func setLanguage(f *session.Session, before string) error {
	now := session.OrElse(f.Desk.Profile().Language, "en")
	if f.SetLanguage == nil || now == session.OrElse(before, "en") {
		return nil
	}
	return f.SetLanguage(now)
}

// dateOptions show today in either way of writing days.
func (s *SetUp) dateOptions() []model.Option {
	today := s.session.Desk.Today()
	return []model.Option{
		{Code: session.IsoDates, Name: today.String(), ByName: true},
		{Code: session.LocalDates, Name: session.InLetters(s.session.Language, today), ByName: true},
	}
}
