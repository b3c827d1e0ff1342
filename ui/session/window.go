package session

import (
	"context"
	"maps"
	"slices"
	"strings"
	"tenthpoint/ui/model"
)

// Window is the window as presenters see it.
type Window interface {
	// Say shows the result of an act on the status line.
	Say(state model.State, sentence string)
	// Put opens a dialog for a question.
	Put(ask model.Ask)
	// Run does slow work away from the window.
	Run(job model.Job)
	// Redraw shows the facts as they now are: they changed.
	Redraw()
	// Go brings a screen to the front.
	Go(screen string)
}

// PaperWaits is the error of a paper that is queued and will be printed as soon as the printer is
// ready.
type PaperWaits struct{ Why error }

func (w PaperWaits) Error() string { return w.Why.Error() }
func (w PaperWaits) Unwrap() error { return w.Why }

// Printer takes a finished paper away: into a folder, to a queue, on the
// screen. It answers where the paper went.
type Printer interface {
	Print(ctx context.Context, name string, paper []byte) (where string, err error)
}

// Scans are the handlers of codes that a reader types, by the mark that a code begins with.
type Scans map[string]func(code string)

// Marks are the marks of all codes.
func (s Scans) Marks() []string { return slices.Sorted(maps.Keys(s)) }

// Read does what a code asks for.
func (s Scans) Read(code string) {
	for mark, do := range s {
		if strings.HasPrefix(code, mark) {
			do(code)
		}
	}
}
