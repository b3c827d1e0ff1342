package main

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/tongue"
	"tenthpoint/internal/working"
)

// The terminal answers in English, as its commands are. What it hands out, slips,
// papers and workings, is in the language of the house.

// language is the house's, for a working.
func (p *post) language() working.Saying { return tongue.Of(p.Profile().Language).Say }

// workingOf says the working of a load.
func (p *post) workingOf(l *load.Load) working.Saying {
	say := p.language()
	return func(english string) string { return say(l.Details.Disposition.Remark(english)) }
}

// speak prints a line that belongs to a working.
func (p *post) speak(format string, args ...any) {
	p.say("%s", p.language()(fmt.Sprintf(format, args...)))
}

// knownLanguage refuses a language that the house cannot choose.
func knownLanguage(code string) error {
	if tongue.Known(code) {
		return nil
	}
	return refusal("Give --language en or --language fr", "%q is no language here", code)
}
