package printing

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/internal/message"
)

// Destination takes print jobs. Send returns once the job has left the program (on disk, in the
// queue, at the viewer) or with an error that says why not. A Destination may be used from several
// goroutines at once.
type Destination interface {
	Send(ctx context.Context, job Job) (Receipt, error)
}

// The kinds of paper this program makes.
const (
	PDF  = "application/pdf"
	Text = "text/plain"
	// Roll is the bytes of a receipt printer, which no print queue may change.
	Roll = "application/vnd.escpos"
)

// KindOf tells what a finished paper is by its first bytes: a receipt printer's begin
// with the command that resets it.
func KindOf(paper []byte) string {
	if bytes.HasPrefix(paper, []byte("\x1b@")) {
		return Roll
	}
	return PDF
}

// Bounds of a job. They stop a slip of the finger (999 copies) and a runaway
// document, not any honest use.
const (
	MostCopies    = 20
	MostBytes     = 64 << 20
	MostNameRunes = 120
)

// Job is one finished document. Name is a file name without folder or
// extension ("ticket-1042"); MIME is PDF, Text or Roll; Copies counts from 1.
type Job struct {
	Name   string
	MIME   string
	Bytes  []byte
	Copies int
}

// Receipt says where a job went. It never says that it was printed: no spooler knows that.
type Receipt struct {
	Where   string // a file's path, a queue's request id, or the program asked
	Copies  int    // how many copies were asked of the next hand
	Certain bool   // false when the destination does not confirm
	Off     string // why the printer does not print now, if the queue reports it
}

// Check returns every fault of the job at once, joined; nil when it can be sent.
func (j Job) Check() error {
	return errors.Join(append(j.nameFaults(), j.contentFaults()...)...)
}

func (j Job) nameFaults() []error {
	var faults []error
	say := func(format string, a ...any) { faults = append(faults, message.Invalid.Errorf(format, a...)) }
	switch {
	case strings.TrimSpace(j.Name) == "":
		say("The print job has no name. Give it one, for example ticket-1042.")
	case !utf8.ValidString(j.Name) || strings.ContainsFunc(j.Name, unsafeInFileName):
		say("The print job name %q holds a character that file names cannot have. Use letters, digits, spaces, dots and dashes.", j.Name)
	case strings.HasPrefix(j.Name, ".") || strings.HasPrefix(j.Name, "-") || j.Name != strings.TrimSpace(j.Name):
		say("The print job name %q starts or ends with a dot, a dash or a space. Start it with a letter or a digit.", j.Name)
	}
	if n := utf8.RuneCountInString(j.Name); n > MostNameRunes {
		say("The print job name is %d letters long; at most %d fit a file name. Shorten it.", n, MostNameRunes)
	}
	return faults
}

func (j Job) contentFaults() []error {
	var faults []error
	say := func(format string, a ...any) { faults = append(faults, message.Invalid.Errorf(format, a...)) }
	switch {
	case j.MIME != PDF && j.MIME != Text && j.MIME != Roll:
		say("Print job %q is of the kind %q; only %s, %s and %s can be printed.", j.Name, j.MIME, PDF, Text, Roll)
	case j.MIME == Text && !utf8.Valid(j.Bytes):
		say("Print job %q is called text but holds bytes that are not letters (it is not UTF-8).", j.Name)
	}
	if len(j.Bytes) == 0 {
		say("Print job %q is empty: there is nothing to print.", j.Name)
	}
	if len(j.Bytes) > MostBytes {
		say("Print job %q is %d bytes long; at most %d are taken. Print it in parts.", j.Name, len(j.Bytes), MostBytes)
	}
	if j.Copies < 1 || j.Copies > MostCopies {
		say("Print job %q asks for %d copies. Ask for 1 to %d.", j.Name, j.Copies, MostCopies)
	}
	return faults
}

// unsafeInFileName covers Unix and Windows alike, so that a name valid at the desk is valid on a
// USB stick too.
func unsafeInFileName(r rune) bool {
	return unicode.IsControl(r) || r == unicode.ReplacementChar || strings.ContainsRune(`/\:*?"<>|`, r)
}

// extension is the file ending of the job's kind, dot included.
func (j Job) extension() string {
	switch j.MIME {
	case PDF:
		return ".pdf"
	case Roll:
		return ".escpos"
	}
	return ".txt"
}
