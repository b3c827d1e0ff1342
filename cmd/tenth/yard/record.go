package yard

import (
	"fmt"
	"slices"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// record records what was typed of a load, and prints the warnings and what the load still lacks.
func record(p *terminal.Session, id string, form *entry.Form) error {
	tried := form.Tried()
	if _, err := enter(p, form.Facts(), id); err != nil {
		return err
	}
	warn(p, form, tried)
	return SayStanding(p, id)
}

// warn prints the warnings about what was typed.
func warn(p *terminal.Session, form *entry.Form, tried entry.Tried) {
	fields := form.Read()
	if slices.ContainsFunc(fields, isWeight) {
		fields = append(fields, "tare") // the net is spoken of there
	}
	for _, field := range fields {
		if r := tried.Messages[field]; r.Severity == entry.Warn || r.Severity == entry.Ask {
			fmt.Fprintln(p.Stderr, p.Printer.Word("warning:"), terminal.Sentence(p.Printer.Text(r.Text)))
			delete(tried.Messages, field)
		}
	}
}

func isWeight(field string) bool {
	_, _, is := entry.SideOf(field)
	return is
}

// enter records facts as one act; an empty id opens a load.
func enter(p *terminal.Session, facts entry.Facts, id string) (entered string, err error) {
	err = p.Batch(p, func(w *scalehouse.Batch) (err error) {
		entered, err = scalehouse.Enter(p, w, id, facts)
		return err
	})
	return entered, err
}

// SayStanding prints what a load on the yard still lacks.
func SayStanding(p *terminal.Session, id string) error {
	l, err := office.Load(p, p.Desk, id)
	if err != nil {
		return err
	}
	w := waitingFor(p, l)
	if w.Net != "" {
		p.Say("Load %s: net %s.", l.ID, w.Net)
	}
	for _, lack := range w.Lacks {
		p.Say("Load %s: %s", l.ID, lack)
	}
	if len(w.Lacks) == 0 {
		p.Say("Load %s is whole: issue its ticket with \"tenth issue %s\".", l.ID, l.ID)
	}
	return nil
}
