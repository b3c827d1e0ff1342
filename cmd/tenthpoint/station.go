package main

import (
	"context"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/ui/session"
)

// station has the settings of this computer: remembered values, printer and scale.
type station struct {
	program *program
	frame   *session.Session
	printer *printer
	book    string
}

var _ session.Station = station{}

func (s station) memory() fyne.Preferences { return s.program.app.Preferences() }

// Recall returns the value remembered under a name.
func (s station) Recall(name string) string { return s.memory().String(name) }

// Remember keeps a text under a name.
func (s station) Remember(name, text string) { s.memory().SetString(name, text) }

// SendPapers makes papers go another way.
func (s station) SendPapers(way, queue string) error { return s.printer.send(way, queue) }

// MakeFolder makes a folder with its parents.
func (s station) MakeFolder(path string) error { return atomicfile.MakeFolder(path) }

// Relink listens to the scale again.
func (s station) Relink() error {
	p := s.program
	if err := p.unlink(); err != nil {
		return err
	}
	var err error
	scale, _ := s.frame.Scale()
	s.frame.Indicator, err = p.link(context.Background(), scale, s.book)
	s.frame.Deck = p.deck
	return err
}

// remembered sets the printer this computer was told to use, unless the command line overrides it.
func (s station) remembered(view bool) error {
	way := s.Recall("papers.way")
	if way == "" || view {
		return nil
	}
	return s.SendPapers(way, s.Recall("papers.queue"))
}
