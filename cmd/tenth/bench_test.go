package main

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
)

// TestBenchScripts runs the scripts of the sample bench. Besides the commands of
// the other scripts they have tickets under dispute.
func TestBenchScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           filepath.Join(scripts, "bench"),
		UpdateScripts: *update,
		Setup: func(e *testscript.Env) error {
			e.Setenv("TZ", "UTC")
			e.Setenv(nowVariable, "2026-10-01 13:00")
			e.Setenv("XDG_CONFIG_HOME", filepath.Join(e.WorkDir, "data"))
			e.Setenv("HOME", filepath.Join(e.WorkDir, "home"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"house-rates":      houseRates,
			"elevator":         benchElevator,
			"raise-dispute":    raiseDispute,
			"remember":         remember,
			"unchanged":        unchanged,
			"is-pdf":           isPDF,
			"figures-are-text": figuresAreText,
		},
	})
}

// benchElevator is the elevator of the other scripts with a tester.
func benchElevator(ts *testscript.TestScript, not bool, args []string) {
	setUpElevator(ts, not, args)
	ts.Check(ts.Exec("tenth", "person", "add", "Tess Lind", "--role", "tester", "--who", "Mae Orton"))
}

// atHouseBook does something at a desk on house.book, as the clerk, at the
// script's hour.
func atHouseBook(ts *testscript.TestScript, act func(context.Context, *scalehouse.Desk) error) {
	ctx := context.Background()
	book, err := sqlite.Open(ts.MkAbs("house.book"), book.Options{})
	ts.Check(err)
	defer book.Close()
	rates, err := ratefiles.ReadRates(ts.MkAbs("schedules"))
	ts.Check(err)
	charts, err := ratefiles.ReadCharts(ts.MkAbs("schedules"))
	ts.Check(err)
	now, err := time.Parse("2006-01-02 15:04", ts.Getenv(nowVariable))
	ts.Check(err)
	d, err := scalehouse.Open(ctx, book, scalehouse.Options{
		Name: "scale house", Rates: rates, Charts: charts, Place: time.UTC, Who: "Cal Reyes", Clock: func() time.Time { return now },
	})
	ts.Check(err)
	ts.Check(act(ctx, d))
}

// raise-dispute TICKET disputes the moisture of a ticket.
func raiseDispute(ts *testscript.TestScript, _ bool, args []string) {
	var number terminal.TicketNumber
	ts.Check(number.UnmarshalText([]byte(args[0])))
	atHouseBook(ts, func(ctx context.Context, d *scalehouse.Desk) error {
		_, err := disputes.Raise(ctx, d, dispute.Raised{Ticket: int64(number), By: "Cobb Hollow Farm", About: "moisture", Claim: "it was drier"})
		return err
	})
}
