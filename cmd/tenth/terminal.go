package main

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"time"

	"tenthpoint/internal/quantity"
)

// terminal is where a command is typed: its streams, its clock, and what was
// typed for every command alike.
type terminal struct {
	context.Context
	in    *bufio.Reader
	out   io.Writer
	err   io.Writer
	clock func() time.Time
	place *time.Location
	// typing tells that a person sits at it, who can be asked.
	typing bool
}

func newTerminal(clock func() time.Time, place *time.Location) *terminal {
	return &terminal{
		in: bufio.NewReader(os.Stdin), out: os.Stdout, err: os.Stderr,
		clock: clock, place: place, typing: isTerminal(os.Stdin),
	}
}

// isTerminal tells a terminal from a pipe, a file and the empty device.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	empty, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, empty)
}

// say prints a line.
func (t *terminal) say(format string, args ...any) { fmt.Fprintf(t.out, format+"\n", args...) }

// today is the day at the terminal.
func (t *terminal) today() quantity.Date {
	return quantity.MustDate(t.clock().In(t.place).Format(time.DateOnly))
}

// asJSON prints a value for programs. Figures are text in it, never numbers:
// whoever reads a JSON number may make a binary fraction of it.
func (t *terminal) asJSON(v any) error {
	e := json.NewEncoder(t.out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
