package present

// Languages are the languages the desk speaks, each called by its own name.
func Languages() []Option {
	return []Option{
		{Code: "en", Name: "English", ByName: true},
		{Code: "fr", Name: "Français", ByName: true},
	}
}

// languageHint says when another language is heard: the windows that are open
// keep the one they were opened in.
func (s *SetUp) languageHint() string {
	if s.values["language"] == orElse(s.frame.Desk.Profile().Language, "en") {
		return ""
	}
	return Say("from the next start of the program on")
}

// dateOptions show today in either way of writing days.
func (s *SetUp) dateOptions() []Option {
	today := s.frame.Desk.Today()
	return []Option{
		{Code: isoDates, Name: today.String(), ByName: true},
		{Code: localDates, Name: inLetters(today), ByName: true},
	}
}
