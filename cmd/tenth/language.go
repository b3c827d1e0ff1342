package main

import (
	"fmt"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/worksheet"
)

// The terminal answers in English, as its commands are. What it hands out, slips,
// papers and workings, is in the language of the house.

// language is the house's, for a working.
func (p *post) language() worksheet.Translate { return i18n.For(p.Profile().Language).Say }

// workingOf says the working of a load.
func (p *post) workingOf(l *load.Load) worksheet.Translate {
	say := p.language()
	return func(english string) string { return say(l.Details.Disposition.Remark(english)) }
}

// speak prints a line that belongs to a working.
func (p *post) speak(format string, args ...any) {
	p.say("%s", p.language()(fmt.Sprintf(format, args...)))
}
