package main

import (
	"context"
	"os"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/session"
)

// station is this computer: what it remembers, where its papers go, which scale
// it listens to.
type station struct {
	program *program
	frame   *session.Session
	printer *printer
	book    string
}

var _ session.Station = station{}

func (s station) memory() fyne.Preferences { return s.program.app.Preferences() }

// Recall gives what was remembered under a name.
func (s station) Recall(name string) string { return s.memory().String(name) }

// Remember keeps a text under a name.
func (s station) Remember(name, text string) { s.memory().SetString(name, text) }

// SendPapers makes papers go another way.
func (s station) SendPapers(way, queue string) error { return s.printer.send(way, queue) }

// MakeFolder makes a folder with all it lies in.
func (s station) MakeFolder(path string) error { return os.MkdirAll(path, 0o755) }

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

// remembered sends papers the way this computer was told to, unless the command
// line says otherwise.
func (s station) remembered(view bool) error {
	way := s.Recall("papers.way")
	if way == "" || view {
		return nil
	}
	return s.SendPapers(way, s.Recall("papers.queue"))
}
