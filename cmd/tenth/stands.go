package main

import (
	"tenthpoint/internal/office"
)

// stands says what a load on the yard still lacks.
func (p *post) stands(id string) error {
	l, err := office.Load(p, p.Desk, id)
	if err != nil {
		return err
	}
	w := p.waits(l)
	if w.Net != "" {
		p.say("Load %s: net %s.", l.ID, w.Net)
	}
	for _, lack := range w.Lacks {
		p.say("Load %s: %s", l.ID, lack)
	}
	if len(w.Lacks) == 0 {
		p.say("Load %s is whole: issue its ticket with \"tenth issue %s\".", l.ID, l.ID)
	}
	return nil
}
