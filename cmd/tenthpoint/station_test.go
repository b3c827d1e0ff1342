package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/printing"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/session"
)

func TestPapersGoWhereTheyWereSent(t *testing.T) {
	folder := t.TempDir()
	p := newPrinter(filepath.Join(folder, "house.book"), false)
	where, err := p.Print(context.Background(), "ticket-1", []byte("%PDF"))
	fine(t, err)
	if text, err := os.ReadFile(where); err != nil || string(text) != "%PDF" || filepath.Dir(where) != filepath.Join(folder, "papers") {
		t.Errorf("the paper is at %s: %q, %v", where, text, err)
	}
	for way, want := range map[string]printing.Destination{
		session.ToFolder: printing.Folder{Path: p.folder}, session.ToScreen: printing.Viewer{Folder: p.folder},
		session.ToQueue: printing.System{Printer: "scale house", Keep: p.folder},
	} {
		fine(t, p.send(way, "scale house"))
		got := p.way()
		if queue, waits := got.(*printing.Waiting); waits {
			got = queue.To
		}
		if !same(got, want) {
			t.Errorf("%s is %#v, want %#v", way, got, want)
		}
	}
	if err := p.send("pigeon", ""); err == nil || !strings.Contains(err.Error(), "pigeon") {
		t.Errorf("pigeon: %v", err)
	}
}

// same compares spools; one of a queue holds a slice and has no ==.
func same(a, b printing.Destination) bool {
	x, isQueue := a.(printing.System)
	if y, alike := b.(printing.System); isQueue && alike {
		return x.Printer == y.Printer && x.Keep == y.Keep
	}
	return !isQueue && a == b
}

// A simulated scale is linked, weighed on, and gone again when it is unlinked.
func TestSimulatedScale(t *testing.T) {
	p := &program{}
	scale := elevator.Scale{ID: "1", Division: quantity.Int(20, quantity.Lb), Capacity: quantity.Int(120_000, quantity.Lb), Link: elevator.SimulatedLink}
	indicator, err := p.link(context.Background(), scale, filepath.Join(t.TempDir(), "house.book"))
	fine(t, err)
	if indicator == nil || p.deck == nil {
		t.Fatal("nothing is linked")
	}
	fine(t, p.deck.RollOn(quantity.Int(52_300, quantity.Lb)))
	ctx, cancel := context.WithTimeout(context.Background(), 30*time.Second)
	defer cancel()
	weight, err := indicator.Weigh(ctx)
	fine(t, err)
	if weight.String() != "52,300 lb" {
		t.Errorf("it weighs %s", weight)
	}
	fine(t, p.unlink())
	if p.deck != nil || len(p.linked) != 0 {
		t.Error("the simulated scale is still there")
	}
	if none, err := p.link(context.Background(), elevator.Scale{}, ""); none != nil || err != nil {
		t.Errorf("without scales: %v, %v", none, err)
	}
}

// With a mistake in the elevator's own rates the desk opens without any rates,
// and the mistake is known.
func TestRatesWithAMistake(t *testing.T) {
	folder := t.TempDir()
	book := filepath.Join(folder, "house.book")
	p := &program{}
	fine(t, os.MkdirAll(p.ratesFolder(book), 0o755))
	fine(t, os.WriteFile(filepath.Join(p.ratesFolder(book), "corn.toml"), []byte("x = 1\n"), 0o600))
	d, err := p.openDesk(context.Background(), book)
	fine(t, err)
	t.Cleanup(p.close)
	if len(d.Rates().All()) != 0 || p.ratesWrong == nil || !strings.Contains(p.ratesWrong.Error(), "corn.toml:1") {
		t.Errorf("%d editions are in force; wrong is %v", len(d.Rates().All()), p.ratesWrong)
	}
}

func fine(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
