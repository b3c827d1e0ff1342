package present

import "tenthpoint/ui/model"

// Languages are the languages the desk speaks, each called by its own name.
func Languages() []model.Option {
	return []model.Option{
		{Code: "en", Name: "English", ByName: true},
		{Code: "fr", Name: "Français", ByName: true},
	}
}

// languageHint says when another language is heard.
func (s *SetUp) languageHint() string {
	if s.values["language"] == orElse(s.frame.Desk.Profile().Language, "en") {
		return ""
	}
	return Say("at once, when it is written down")
}

// speak turns the window to the language the house has chosen, if that was
// another before. Whatever is typed is kept as a draft, so the screens that are
// made anew have it again.
func speak(f *Frame, before string) error {
	now := orElse(f.Desk.Profile().Language, "en")
	if f.Speak == nil || now == orElse(before, "en") {
		return nil
	}
	f.forget()
	return f.Speak(now)
}

// dateOptions show today in either way of writing days.
func (s *SetUp) dateOptions() []model.Option {
	today := s.frame.Desk.Today()
	return []model.Option{
		{Code: isoDates, Name: today.String(), ByName: true},
		{Code: localDates, Name: inLetters(today), ByName: true},
	}
}
