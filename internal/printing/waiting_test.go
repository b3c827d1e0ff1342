package printing

import (
	"context"
	"errors"
	"slices"
	"testing"
)

// tray is a printer that can be off.
type tray struct {
	off     bool
	printed []string
}

var errOff = errors.New("the printer is off")

func (t *tray) Send(_ context.Context, job Job) (Receipt, error) {
	if t.off {
		return Receipt{}, errOff
	}
	t.printed = append(t.printed, job.Name+string(job.Bytes))
	return Receipt{Where: "tray", Copies: job.Copies}, nil
}

func slipJob(name string) Job {
	return Job{Name: name, MIME: PDF, Bytes: []byte(" of " + name), Copies: 2}
}

// A printer that is off is said at once; what waits prints later, in its order and
// once.
func TestWhatWaitsPrintsLater(t *testing.T) {
	printer := &tray{off: true}
	folder := t.TempDir()
	queue := &Waiting{To: printer, Folder: folder}
	for _, name := range []string{"ticket-1", "ticket-2-reprint-1"} {
		_, err := queue.Send(t.Context(), slipJob(name))
		var waits Waits
		if !errors.As(err, &waits) || waits.Job != name || !errors.Is(err, errOff) {
			t.Fatalf("%s: %v", name, err)
		}
	}
	if jobs, err := queue.Jobs(); err != nil || !slices.Equal(jobs, []string{"ticket-1", "ticket-2-reprint-1"}) {
		t.Errorf("waiting are %v, %v", jobs, err)
	}
	printer.off = false
	again := &Waiting{To: printer, Folder: folder} // the program was started again
	if _, err := again.Send(t.Context(), slipJob("ticket-3")); err != nil {
		t.Fatal(err)
	}
	want := []string{"ticket-1 of ticket-1", "ticket-2-reprint-1 of ticket-2-reprint-1", "ticket-3 of ticket-3"}
	if !slices.Equal(printer.printed, want) {
		t.Errorf("printed %v, want %v", printer.printed, want)
	}
	if taken, err := again.Resume(t.Context()); taken != 0 || err != nil || len(printer.printed) != 3 {
		t.Errorf("printed again: %d, %v", taken, err)
	}
}

// A job whose sending was stopped may have been taken: it is not kept.
func TestStoppedJobIsNotKept(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	queue := &Waiting{To: &tray{off: true}, Folder: t.TempDir()}
	if _, err := queue.Send(ctx, slipJob("ticket-1")); err == nil || errors.As(err, new(Waits)) {
		t.Errorf("error %v", err)
	}
	if jobs, err := queue.Jobs(); err != nil || len(jobs) != 0 {
		t.Errorf("waiting are %v, %v", jobs, err)
	}
}

// A job that cannot be printed at all is refused and does not hold up the others.
func TestBrokenJobDoesNotWait(t *testing.T) {
	queue := &Waiting{To: &tray{off: true}, Folder: t.TempDir()}
	if _, err := queue.Send(t.Context(), Job{Name: "empty", MIME: PDF, Copies: 1}); err == nil || errors.As(err, new(Waits)) {
		t.Errorf("error %v", err)
	}
	if jobs, _ := queue.Jobs(); len(jobs) != 0 {
		t.Errorf("waiting are %v", jobs)
	}
}

// Files that people put beside what waits are left alone.
func TestOtherFilesAreLeftAlone(t *testing.T) {
	for _, name := range []string{"notes.txt", "1x-ticket.pdf", "000001-2x-ticket.doc", "a-1x-ticket.pdf", "000001-ax-t.pdf"} {
		if f, ok := parseWaiting(name); ok {
			t.Errorf("%q was read as %+v", name, f)
		}
	}
	if f, ok := parseWaiting("000012-2x-ticket-9.escpos"); !ok || f.number != 12 || f.job.Copies != 2 || f.job.Name != "ticket-9" || f.job.MIME != Roll {
		t.Errorf("read as %+v", f)
	}
}

// What lpstat of CUPS says of a printer that is paused, unplugged, at work (its words
// from memory).
func TestPrinterThatIsOff(t *testing.T) {
	for words, want := range map[string]string{
		"printer front is idle.  enabled since Mon 30 Nov 2026 10:00:00\n":                                                    "",
		"printer front now printing front-12.  enabled since Mon 30 Nov 2026 10:00:00\n":                                      "",
		"printer front disabled since Mon 30 Nov 2026 10:00:00 -\n\tPaused\n":                                                 "Paused",
		"printer front disabled since Mon 30 Nov 2026 10:00:00 -\n":                                                           "printer front disabled since Mon 30 Nov 2026 10:00:00 -",
		"printer front now printing front-12.  enabled since Mon 30 Nov 2026 10:00:00\n\tUnplugged or turned off\n":           "Unplugged or turned off",
		"printer front now printing front-12.  enabled since Mon 30 Nov 2026 10:00:00\n\tThe printer is offline or in use.\n": "The printer is offline or in use.",
		"": "",
	} {
		if got := offIn(words); got != want {
			t.Errorf("%q: off because of %q, want %q", words, got, want)
		}
	}
}

// Bytes for a receipt printer go to the queue as they are, and not through one that
// would change them.
func TestRollIsSentRaw(t *testing.T) {
	job := Job{Name: "ticket-1", MIME: Roll, Bytes: []byte{0x1B, '@'}, Copies: 1}
	if c := (System{}).lp(job); !slices.Equal(c.args[len(c.args)-2:], []string{"-o", "raw"}) {
		t.Errorf("lp is given %v", c.args)
	}
	if _, err := (System{OS: "windows", Keep: t.TempDir()}).Send(t.Context(), job); err == nil {
		t.Error("a queue of Windows took it")
	}
}
