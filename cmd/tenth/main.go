// Command tenth does the work of the scale house from a terminal: the same
// acts as the window, on the same book, with no display.
//
// It is for scripts, for tests, for the day the window will not open, and for those who like
// typing. Every command reports on standard output; errors are printed on standard error as a line
// beginning with "error:" and, where something can be done about it, a line beginning with "hint:".
// The exit status is 0 only when all of it was done.
package main

import (
	"context"
	"os"
	"os/signal"
	"runtime/debug"
	"time"

	"tenthpoint/cmd/tenth/terminal"
)

// collectorPercent lets the heap grow to a few times what is in use before memory is
// collected. A command lives for a moment and reads rules most of it: at the usual
// 100 a third of its time goes into collecting what it is about to drop.
const collectorPercent = 400

func main() {
	debug.SetGCPercent(collectorPercent)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	status := run(ctx, os.Args[1:], terminal.New(time.Now, time.Local))
	stop()
	os.Exit(status)
}
