package model

import "context"

// Job is work that may take longer than a blink.
type Job struct {
	// Topic groups jobs. A newer job on a topic cancels the older one, whose Done is then never
	// called. Jobs without a topic are independent.
	Topic string
	Title string // name of the work, for the work bar; empty shows none
	// Do touches nothing a presenter holds but its own variables, and no widget. It
	// should give up soon after the context ends. It may be nil.
	Do func(ctx context.Context, report func(done, total int)) error
	// Progress and Done run on the user interface again; both may be nil. Done gets the result of
	// Do, or context.Canceled when a person stopped the job.
	Progress func(done, total int)
	Done     func(err error)
}
