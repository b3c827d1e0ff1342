package present

import "context"

// Window is what presenters ask of the window they are shown in.
type Window interface {
	// Say puts the result of an act on the status line.
	Say(state State, sentence string)
	// Put puts a question before the window.
	Put(ask Ask)
	// Run does slow work away from the window.
	Run(job Job)
	// Redraw shows the facts as they now are: they changed.
	Redraw()
	// Go brings a screen to the front.
	Go(screen string)
}

// Job is work that may take longer than a blink. Do touches nothing a presenter
// holds but its own variables; Done, on the window's side again, reads them.
type Job struct {
	Topic string // a newer job on a topic makes the older one's answer stale
	Title string // what is being done, for the work bar; empty shows none
	Do    func(ctx context.Context, report func(done, total int)) error
	Done  func(err error)
}

// Printer takes a finished paper away: into a folder, to a queue, on the
// screen. It answers where the paper went.
type Printer interface {
	Print(ctx context.Context, name string, pdf []byte) (where string, err error)
}
