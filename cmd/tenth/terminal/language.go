package terminal

import (
	"fmt"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/worksheet"
)

// The terminal answers in English, as its commands are. What it hands out, slips,
// papers and workings, is in the language of the house.

// Language is the house's, for a working.
func (p *Session) Language() worksheet.Translate { return i18n.In(p.Profile().Language).Word }

// WorkingOf says the working of a load.
func (p *Session) WorkingOf(l *load.Load) worksheet.Translate {
	say := p.Language()
	return func(english string) string { return say(l.Details.Disposition.Remark(english)) }
}

// Speak prints a line that belongs to a working.
func (p *Session) Speak(format string, args ...any) {
	p.Say("%s", p.Language()(fmt.Sprintf(format, args...)))
}
