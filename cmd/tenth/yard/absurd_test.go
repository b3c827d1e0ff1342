package yard

import (
	"bufio"
	"context"
	"errors"
	"io"
	"strings"
	"testing"
	"time"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/book"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/settle"
	"tenthpoint/schedules"
)

// Everything that nobody means is refused at the terminal, and nothing of it is
// written; a question is answered with the flag that its refusal names.
func TestAbsurdLoadsAreRefused(t *testing.T) {
	editions, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	d := entrytest.Open(t, "guarded", editions)
	term := &terminal.Terminal{
		Context: context.Background(), Stdin: bufio.NewReader(strings.NewReader("")), Stdout: io.Discard, Stderr: io.Discard,
		Clock: func() time.Time { return entrytest.Now }, Place: time.UTC,
	}
	p := &terminal.Session{Desk: d, Terminal: term}
	before := loadsOf(t, p)
	for _, c := range entrytest.Absurd(t, "../../..") {
		_, err := parsed(t, p, asFlags(c.Texts())).Enter(p)
		if err == nil {
			t.Errorf("absurd.txt:%d: %v has its ticket", c.Line, c.Typed)
		}
		question, isAsked := strings.CutPrefix(c.Outcome, "asked ")
		var asked guard.Asked
		var stopped settle.Problems // what the rates refuse is said before anything is asked
		if !isAsked || errors.As(err, &stopped) {
			continue
		}
		if !errors.As(err, &asked) || asked[0].ID != question {
			t.Errorf("absurd.txt:%d: %v is refused with %v, want the question %q", c.Line, c.Typed, err, question)
			continue
		}
		for _, complaint := range terminal.Complaints(err) {
			if !strings.Contains(complaint.Hint, "--confirm ") || !strings.Contains(complaint.Hint, asked[0].Reasons[0]) {
				t.Errorf("absurd.txt:%d: the hint is %q", c.Line, complaint.Hint)
			}
		}
	}
	if after := loadsOf(t, p); after != before {
		t.Errorf("the book had %d loads and has %d", before, after)
	}
}

func loadsOf(t *testing.T, p *terminal.Session) int {
	t.Helper()
	rows, err := p.Desk.Reader().Loads(p, book.LoadFilter{})
	if err != nil {
		t.Fatal(err)
	}
	return len(rows)
}

// An answer of the list lets the load pass and is kept with it; another does not.
func TestConfirmAnswersAQuestion(t *testing.T) {
	editions, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	term := &terminal.Terminal{
		Context: context.Background(), Stdin: bufio.NewReader(strings.NewReader("")), Stdout: io.Discard, Stderr: io.Discard,
		Clock: func() time.Time { return entrytest.Now }, Place: time.UTC,
	}
	p := &terminal.Session{Desk: entrytest.Open(t, "guarded", editions), Terminal: term}
	usual := entrytest.Case{House: "guarded", Typed: []entrytest.Text{{Field: "moisture", Typed: "36"}}}
	for reason, passes := range map[string]bool{"tested again, same result": true, "because": false, "": false} {
		args := append(asFlags(usual.Texts()), "--confirm=moisture="+reason)
		l, err := parsed(t, p, args).Enter(p)
		if passes != (err == nil) {
			t.Errorf("%q: %v", reason, err)
		}
		if err == nil && (len(l.Answers) != 1 || l.Answers[0].Reason != reason || !strings.Contains(l.Answers[0].Asked.String(), "36")) {
			t.Errorf("the book has %+v", l.Answers)
		}
	}
}
