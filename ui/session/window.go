package session

import (
	"context"
	"tenthpoint/ui/model"
)

// Window is what presenters ask of the window they are shown in.
type Window interface {
	// Say puts the result of an act on the status line.
	Say(state model.State, sentence string)
	// Put puts a question before the window.
	Put(ask model.Ask)
	// Run does slow work away from the window.
	Run(job model.Job)
	// Redraw shows the facts as they now are: they changed.
	Redraw()
	// Go brings a screen to the front.
	Go(screen string)
}

// PaperWaits is the error of a paper that is not printed yet and prints by itself as
// soon as the printer does.
type PaperWaits struct{ Why error }

func (w PaperWaits) Error() string { return w.Why.Error() }
func (w PaperWaits) Unwrap() error { return w.Why }

// Printer takes a finished paper away: into a folder, to a queue, on the
// screen. It answers where the paper went.
type Printer interface {
	Print(ctx context.Context, name string, paper []byte) (where string, err error)
}
