package yard

import (
	"bufio"
	"cmp"
	"context"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/alecthomas/kong"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
)

// asFlags are the texts of a case as a person gives them on a command line.
func asFlags(texts []entrytest.Text) []string {
	names := map[string]string{"number": "sample", "crop": "crop-year"}
	plain := strings.Fields("grower commodity class crop day truck plate trailer driver bin schedule price price-source whose consignee agent remark moisture meter why probes tester grade kept until number scale")
	args := []string{"receive", "--manual=read from the indicator"}
	for _, text := range texts {
		field, typed := text.Field, text.Typed
		side, draft, isWeight := entry.SideOf(field)
		limit, isLeave := strings.CutPrefix(field, "accept.")
		switch {
		case field == "shares" && typed == "none":
			args = append(args, "--no-shares")
		case field == "shares":
			for _, one := range strings.Split(typed, ";") {
				args = append(args, "--share="+one)
			}
		case field == "owner-terms":
			for _, one := range strings.Split(typed, ";") {
				args = append(args, "--owner-terms="+strings.TrimSpace(one))
			}
		case field == "terms" && numbered(typed) != "":
			args = append(args, numbered(typed))
		case field == "terms" && (typed == "sold" || typed == "stored" || typed == "bank" || typed == "undecided"):
			args = append(args, "--"+typed)
		case field == "terms":
			args = append(args, "--contract="+typed)
		case field == "tare" && typed == "stored":
			args = append(args, "--stored-tare")
		case isWeight && draft != "":
			args = append(args, "--"+string(side)+"="+draft+"="+typed)
		case isWeight:
			args = append(args, "--"+field+"="+typed)
		case isLeave:
			args = append(args, "--accept="+limit+"="+typed)
		case slices.Contains(plain, field):
			args = append(args, "--"+cmp.Or(names[field], field)+"="+typed)
		default:
			args = append(args, "--factor="+field+"="+typed)
		}
	}
	return args
}

// numbered is the flag for terms with a number; empty for other terms.
func numbered(typed string) string {
	for _, word := range []string{"receipt", "delayed"} {
		if number, is := strings.CutPrefix(typed, word+" "); is {
			return "--" + word + "=" + number
		}
	}
	return ""
}

// Every line of the table of typed texts means at the terminal what it means
// everywhere.
func TestParity(t *testing.T) {
	table := entrytest.Read(t, "../../..")
	editions, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	term := &terminal.Terminal{
		Context: context.Background(), Stdin: bufio.NewReader(strings.NewReader("")), Stdout: io.Discard, Stderr: io.Discard,
		Clock: func() time.Time { return entrytest.Now }, Place: time.UTC,
	}
	desks := map[string]*scalehouse.Desk{}
	for _, c := range table.Cases {
		if desks[c.House] == nil {
			desks[c.House] = entrytest.Open(t, c.House, editions)
		}
		p := &terminal.Session{Desk: desks[c.House], Terminal: term}
		form, field := flagged(t, p, asFlags(c.Texts()))
		outcome := entrytest.Outcome(form)
		if strings.HasPrefix(outcome, "refused ") && !strings.HasSuffix(outcome, " "+field) {
			t.Errorf("parity.txt:%d: the command is refused at %q, the form is %s", c.Line, field, outcome)
		}
		table.Check(t, c, outcome, entrytest.Enter(t, p.Desk, form))
	}
}

// flagged is the form of a command line, and the field at which the command is
// refused; empty when it is not.
func flagged(t *testing.T, p *terminal.Session, args []string) (*entry.Form, string) {
	t.Helper()
	form, err := parsed(t, p, args).form(p)
	if form == nil {
		t.Fatalf("%q: %v", args, err)
	}
	refused, why := form.FirstRefused()
	if (why == nil) != (err == nil) {
		t.Errorf("%q: the command says %v, the form %v", args, err, why)
	}
	if form.Details().Direction != load.Inbound {
		t.Errorf("%q receives %q", args, form.Details().Direction)
	}
	return form, refused
}

// parsed is a command line as the program reads it.
func parsed(t *testing.T, p *terminal.Session, args []string) Receive {
	t.Helper()
	var c struct {
		Receive Receive `cmd:""`
	}
	parser, err := kong.New(&c, kong.Bind(p.Terminal))
	if err == nil {
		_, err = parser.Parse(args)
	}
	if err != nil {
		t.Fatalf("%q: %v", args, err)
	}
	return c.Receive
}
