package intake_test

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/intake"
)

// preview reads a list that must have no problem of its own.
func preview(s *scene, kind imports.Kind, text string) intake.List {
	s.T.Helper()
	t, problems, err := intake.Preview(ctx, s.Desk, kind, string(kind)+".csv", []byte(text))
	must(s.T, err)
	if len(problems) > 0 {
		s.T.Fatal(problems)
	}
	return t
}

func takeOver(s *scene, kind imports.Kind, text string) {
	s.T.Helper()
	_, _, err := intake.Take(ctx, s.Desk, preview(s, kind, text), false, nil)
	must(s.T, err)
}

func TestGrowersAndTrucksTakenOver(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	takeOver(s, imports.Trucks, imports.Example(imports.Trucks))
	growers, err := office.Growers(ctx, s.Desk)
	must(t, err)
	trucks, err := office.Trucks(ctx, s.Desk)
	must(t, err)
	if len(growers) != 3 || growers[2].Shares[0].GrowerID != "G3" || len(trucks) != 2 || trucks[0].Tare.String() != "24,300 lb" {
		t.Errorf("growers %+v\ntrucks %+v", growers, trucks)
	}
	again := preview(s, imports.Growers, "code,name\nG1,Ada Field\nG2,Leonard Lord\nG4,New One\n")
	if got := fmt.Sprint(again.Change); got != "[as it is changes Len Lord new]" {
		t.Errorf("preview: %s", got)
	}
	if got := fmt.Sprint(preview(s, imports.Trucks, imports.Example(imports.Trucks)).Change); got != "[as it is as it is]" {
		t.Errorf("preview: %s", got)
	}
	s.Verify()
}

// A list says nothing of what it has no column for, nor of farms, former names, the drying that owners
// share, and cards that have ended: all of that stays.
func TestListKeepsWhatItDoesNotSay(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	takeOver(s, imports.Trucks, imports.Example(imports.Trucks))
	half, whole := quantity.Int(1, quantity.Plain), quantity.Int(2, quantity.Plain)
	renter := elevator.Grower{
		ID: "G3", Name: "Bo Renter", Phone: "555-0103", Former: []string{"B. Renter"},
		Shares: []elevator.Share{
			{GrowerID: "G3", Parts: quantity.Int(2, quantity.Plain), Of: quantity.Int(3, quantity.Plain), Drying: &quantity.Portion{Parts: half, Of: half}},
			{GrowerID: "G1", Parts: quantity.Int(1, quantity.Plain), Of: quantity.Int(3, quantity.Plain)},
		},
		Farms: []elevator.Farm{{Name: "North", Shares: []elevator.Share{{GrowerID: "G3", Parts: half, Of: whole}, {GrowerID: "G2", Parts: half, Of: whole}}}},
	}
	must(t, scalehouse.SetGrower(ctx, s.Desk, renter))
	must(t, scalehouse.TakeOver(ctx, s.As(housetest.Manager).Desk, "G2", elevator.Takeover{Grower: "G1", Kind: elevator.Merged, Day: s.Desk.Today(), Reason: "sold out"}))

	takeOver(s, imports.Growers, "code,name,address,shares\nG3,Bo Renter,9 Mill Road,G3=2/3; G1=1/3\nG2,Len Lord,,\n")
	takeOver(s, imports.Trucks, "number,plate\nT1,ABC 2\n")
	growers, err := office.Growers(ctx, s.Desk)
	must(t, err)
	renter.Address = "9 Mill Road"
	for _, g := range growers {
		switch g.ID {
		case "G3":
			if !reflect.DeepEqual(g, renter) {
				t.Errorf("the card is %+v\nwant %+v", g, renter)
			}
		case "G2":
			if g.Into == nil || g.Into.Grower != "G1" {
				t.Errorf("the card that ended is %+v", g)
			}
		}
	}
	trucks, err := office.Trucks(ctx, s.Desk)
	must(t, err)
	if trucks[0].Plate != "ABC 2" || trucks[0].Grower != "G1" || trucks[0].Tare == nil || trucks[0].Tare.String() != "24,300 lb" {
		t.Errorf("the truck is %+v", trucks[0])
	}
	again := preview(s, imports.Growers, "code,name,phone\nG3,Bo Renter,555-0103\n")
	if got := fmt.Sprint(again.Change); got != "[as it is]" {
		t.Errorf("preview: %s", got)
	}
	s.Verify()
}

func TestSameListIsTakenOnce(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	before := s.Contents()
	_, _, err := intake.Take(ctx, s.Desk, preview(s, imports.Growers, imports.Example(imports.Growers)), false, nil)
	refused(t, err, errortest.Refused("growers.csv"))
	if s.Contents() != before {
		t.Error("something was written")
	}
}

const pastHead = "day,commodity,grower,truck,gross,tare,moisture,disposition,price,old_ticket\n"

// season of past loads, not in the order of their days.
const pastLoads = pastHead +
	"2026-09-15,corn,G1,T1,52300,24300,18.4,sold,4.15,A-2\n" +
	"2026-09-14,corn,G3,T1,51000,24300,17.0,stored,,A-1\n" +
	"2026-09-15,corn,G1,T2,50000,24000,14.1,sold,4.15 $/bu,A-3\n"

func TestPastLoadsCountOnTheirOwnDays(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	takeOver(s.As(housetest.Manager), imports.Loads, pastLoads)
	for number, want := range map[int64]string{1: "A-1 2026-09-14 2", 2: "A-2 2026-09-15 0", 3: "A-3 2026-09-15 0"} {
		l, err := office.Ticket(ctx, s.Desk, number)
		must(t, err)
		got := fmt.Sprint(l.Details.OldTicket, l.Details.Remark, " ", l.IssuedDay, " ", len(l.Details.Shares))
		if got != want || !l.Manual() || !strings.HasPrefix(l.Weighings[0].Reason, "loads.csv:") {
			t.Errorf("ticket %d: %q, want %q; %+v", number, got, want, l.Weighings)
		}
	}
	sheet, err := office.DaySheet(ctx, s.Desk, quantity.MustDate("2026-09-15"))
	must(t, err)
	if sheet.Numbers.Message().String() != "2 to 3, 2 in all: 2 in force, 0 void, 0 corrected; no number is missing" {
		t.Error(sheet.Numbers.Message())
	}
	s.Verify()
}

// In a book that has gone on, past loads count on the day they are taken over,
// and no sheet of an earlier day changes.
func TestPastLoadsTakenOverLate(t *testing.T) {
	s := housetest.Workday(t)
	must(t, scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}))
	must(t, scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G3", Name: "Bo Renter"}))
	before := string(housetest.PDF(t, s.DayPaper(housetest.Oct1), housetest.Wide))
	takeOver(s, imports.Loads, pastLoads)
	for number := int64(9); number <= 11; number++ {
		l, err := office.Ticket(ctx, s.Desk, number)
		must(t, err)
		if l.IssuedDay != housetest.Oct2 { // the first of October is closed
			t.Errorf("ticket %d counts on %s", number, l.IssuedDay)
		}
	}
	if string(housetest.PDF(t, s.DayPaper(housetest.Oct1), housetest.Wide)) != before {
		t.Error("a closed day changed")
	}
	s.Verify()
}

// A cell of a past load means what the same text means at the scale: a grower may
// be named, and a bin is one of the list.
func TestCellsOfPastLoadsAreTextsOfALoad(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	must(t, scalehouse.SetBin(ctx, s.As(housetest.Manager), elevator.Bin{ID: "Q1", Name: "Pit one"}))
	list := preview(s, imports.Loads, "day,commodity,grower,truck,gross,tare,moisture,bin\n"+
		"2026-09-14,Corn,bo renter,T1,52300,24300,18.4,pit ONE\n"+
		"2026-09-14,corn,G1,T1,52300,24300,18.4,Q9\n")
	if p := list.Rows[0].Past; p == nil || p.Facts.Details.Grower.ID != "G3" || p.Facts.Details.Bin != "Q1" || len(p.Facts.Details.Shares) != 2 || p.Facts.Sample.Tester != "" {
		t.Errorf("the first row is %+v, %v", p, list.Rows[0].Problems)
	}
	if got := fmt.Sprint(list.Rows[1].Problems); !strings.Contains(got, `line 3, bin: there is no pit or bin "Q9" here`) {
		t.Errorf("the second row: %s", got)
	}
}

func TestPastLoadsThatCannotBe(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	s.As(housetest.Manager)
	list := preview(s, imports.Loads, pastHead+
		"2026-09-14,corn,G1,T1,52300,24300,18.4,,,A-1\n"+
		"2026-09-14,corn,G9,T1,52300,24300,18.4,,,A-2\n"+
		"2025-09-14,corn,G1,T1,52300,24300,18.4,,,A-3\n"+
		"2026-12-24,corn,G1,T1,52300,24300,18.4,,,A-4\n"+
		"2026-09-14,soybeans,G1,T1,52300,24300,12.0,,,A-5\n"+
		"2026-09-14,corn,G1,T1,52300,24300,18.4,,4.15 $/t,A-6\n")
	var got []string
	for _, p := range list.Problems() {
		got = append(got, p.String())
	}
	for i, want := range []string{
		`line 3, grower: there is no grower "G9"`, "line 4, day: no rates are in force for corn on 2025-09-14", "line 5, day: 2026-12-24 has not come yet; today is 2026-10-01",
		"line 6, commodity: soybeans is not taken here", "line 7, price: Price \"4.15 $/t\" is in $/t, not in $/bu"} {
		if i >= len(got) || !strings.HasPrefix(got[i], want) {
			t.Fatalf("problems:\n%s\nwant %d: %s", strings.Join(got, "\n"), i, want)
		}
	}
	before := s.Contents()
	_, _, err := intake.Take(ctx, s.Desk, list, false, nil)
	refused(t, err, errortest.Refused("5", "6", "loads.csv"))
	refused(t, err, errortest.Refused("3", "G9"))
	if s.Contents() != before {
		t.Error("something was written")
	}
	var steps []string
	taken, skipped, err := intake.Take(ctx, s.Desk, list, true, func(done, all int) { steps = append(steps, fmt.Sprintf("%d/%d", done, all)) })
	must(t, err)
	if taken != 1 || skipped != 5 || fmt.Sprint(steps) != "[1/6 2/6 3/6 4/6 5/6 6/6]" {
		t.Errorf("%d taken, %d left out, progress %v", taken, skipped, steps)
	}
	s.Verify()
	_, _, err = intake.Take(ctx, s.Desk, preview(s, imports.Loads, pastHead+"2026-09-14,corn,G9,T1,52300,24300,18.4,,,A-2\n"), true, nil)
	refused(t, err, errortest.NotFound("loads.csv"))
}

func TestWhoMayTakeOver(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	_, _, err := intake.Take(ctx, s.Desk, preview(s, imports.Loads, pastLoads), false, nil)
	refused(t, err, errortest.Refused())
	s.As(housetest.Tester)
	_, _, err = intake.Take(ctx, s.Desk, preview(s, imports.Trucks, imports.Example(imports.Trucks)), false, nil)
	refused(t, err, errortest.Refused())
}

// manyPast is a list long enough to be stopped in the middle.
func manyPast(rows int) string {
	var b strings.Builder
	b.WriteString(pastHead)
	for i := range rows {
		fmt.Fprintf(&b, "2026-09-14,corn,G1,T1,%d,24300,18.4,,,A-%d\n", 50000+i*20, i)
	}
	return b.String()
}

func TestStoppedTakeoverLeavesNothing(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	s.As(housetest.Manager)
	before := s.Contents()
	stopped, stop := context.WithCancel(ctx)
	_, _, err := intake.Take(stopped, s.Desk, preview(s, imports.Loads, manyPast(50)), false, func(done, _ int) {
		if done == 20 {
			stop()
		}
	})
	if !errors.Is(err, context.Canceled) || s.Contents() != before {
		t.Errorf("error %v; the book has changed: %v", err, s.Contents() != before)
	}
	takeOver(s, imports.Loads, manyPast(50))
	s.Verify()
}

const killedBook = "TENTHPOINT_DESK_TEST_BOOK"

// TestMain is also the program that is killed in the middle of a takeover.
func TestMain(m *testing.M) {
	path := os.Getenv(killedBook)
	if path == "" {
		os.Exit(m.Run())
	}
	if err := takeOverForever(path); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// takeOverForever takes past loads over, says when half is done, and waits there
// to be killed.
func takeOverForever(path string) error {
	kept, err := sqlite.Open(path, book.Options{})
	if err != nil {
		return err
	}
	corn, err := rates.Read("house-corn.toml", []byte(housetest.HouseCorn))
	if err != nil {
		return err
	}
	set, _ := rates.NewSet(corn)
	d, err := scalehouse.Open(ctx, kept, scalehouse.Options{Rates: set, Place: time.UTC, Who: housetest.Manager, Clock: func() time.Time { return time.Date(2026, 10, 1, 13, 0, 0, 0, time.UTC) }})
	if err != nil {
		return err
	}
	list, _, err := intake.Preview(ctx, d, imports.Loads, "loads.csv", []byte(manyPast(200)))
	if err != nil {
		return err
	}
	_, _, err = intake.Take(ctx, d, list, false, func(done, _ int) {
		if done == 100 {
			fmt.Println("half")
			time.Sleep(time.Hour)
		}
	})
	return err
}

func TestKilledTakeoverLeavesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "elevator.book")
	kept, err := sqlite.Open(path, book.Options{Create: true})
	must(t, err)
	s := housetest.On(t, kept)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	before := s.Contents()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), killedBook+"="+path)
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	must(t, err)
	must(t, child.Start())
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil || line != "half\n" {
		t.Fatalf("the child said %q: %v", line, err)
	}
	must(t, child.Process.Kill())
	_ = child.Wait() // it was killed
	if s.Contents() != before {
		t.Error("something of the killed takeover is in the book")
	}
	takeOver(s.As(housetest.Manager), imports.Loads, manyPast(200))
	if rows, err := kept.Loads(ctx, book.LoadFilter{Phases: []string{string(load.Ticketed)}}); err != nil || len(rows) != 200 {
		t.Errorf("%d loads afterwards: %v", len(rows), err)
	}
	s.Verify()
}
