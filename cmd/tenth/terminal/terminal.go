// Package terminal has what the commands of tenth share: standard streams, the open book, common
// flags, the parsing of typed figures, and the printing of tables, papers, tickets and errors.
package terminal

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"time"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Terminal is the environment of a command: its streams, its clock, and the global flags.
type Terminal struct {
	context.Context
	Stdin  *bufio.Reader
	Stdout io.Writer
	Stderr io.Writer
	Clock  func() time.Time
	Place  *time.Location
	// Printer translates to the language of the elevator; nil is English.
	Printer *message.Printer
	// Typing says that a person is at the terminal, who can be asked.
	Typing bool
	// Screen says that what is printed is read at a terminal, not kept.
	Screen bool
	// Computer is the account and computer that facts name; PIN is the PIN of whoever acts, where it
	// was given.
	Computer, PIN string
	// ClockAnswer is the reason for the clock's time, where one was given.
	ClockAnswer string
}

// New is the terminal this program was started at, by a clock and a time zone.
func New(clock func() time.Time, place *time.Location) *Terminal {
	return &Terminal{
		Stdin: bufio.NewReader(os.Stdin), Stdout: &escaping{out: os.Stdout}, Stderr: &escaping{out: os.Stderr},
		Clock: clock, Place: place, Typing: isTerminal(os.Stdin), Screen: isTerminal(os.Stdout),
	}
}

// isTerminal reports whether a file is a terminal, not a pipe, a file or the null device.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	empty, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, empty)
}

// Say prints a line in the language of the elevator. Strings among the arguments are names, or
// already translated; figures get the format of the language.
func (t *Terminal) Say(format string, args ...any) {
	if false {
		_ = fmt.Sprintf(format, args...) // never done: it lets go vet check every call
	}
	fmt.Fprintln(t.Stdout, t.Printer.Say(format, t.Printer.AsShown(args)...))
}

// LocalDate is the day at the terminal.
func (t *Terminal) LocalDate() quantity.Date {
	return quantity.MustDate(t.Clock().In(t.Place).Format(time.DateOnly))
}

// PrintJSON prints a value for programs. Figures are text in it, never numbers: a reader may turn a
// JSON number into a binary fraction.
func (t *Terminal) PrintJSON(v any) error {
	e := json.NewEncoder(t.Stdout)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
