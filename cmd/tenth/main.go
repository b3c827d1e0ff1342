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
	"tenthpoint/internal/account"
)

// collectorPercent lets the heap grow to a few times the live memory before garbage collection. A
// command is short-lived and reads rules most of that time: at the default of 100 a third of it is
// spent collecting what is about to be dropped.
const collectorPercent = 400

func main() {
	debug.SetGCPercent(collectorPercent)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	t := terminal.New(time.Now, time.Local)
	t.Computer = account.Here()
	status := run(ctx, os.Args[1:], t)
	stop()
	os.Exit(status)
}
