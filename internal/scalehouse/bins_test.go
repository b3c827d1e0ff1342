package scalehouse_test

import (
	"errors"
	"testing"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

func lbs(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

func ofBin(name string, pounds int64) []bin.Weighed {
	return []bin.Weighed{{Bin: name, Weight: lbs(pounds)}}
}

func transfer(from, to string, pounds int64) bin.Movement {
	return bin.Movement{What: bin.Transfer, Commodity: "corn", From: ofBin(from, pounds), Into: ofBin(to, pounds)}
}

// binScene is an elevator with bins.
type binScene struct{ *scene }

// withBins sets bins up: corn from Pit 1 goes on to B1.
func withBins(t *testing.T) *binScene {
	s := &binScene{housetest.New(t)}
	foot := func(n int64) quantity.Amount { return quantity.Int(n, quantity.Foot) }
	for _, b := range []elevator.Bin{
		{ID: "Pit 1", Name: "Pit 1", Paths: []elevator.Path{{Commodity: "corn", To: "B1"}}},
		{ID: "B1", Name: "Bin 1", Commodity: "corn", Shape: shape.Shape{Form: shape.Round, Diameter: foot(30), Wall: foot(20)}},
		{ID: "B2", Name: "Bin 2", Commodity: "corn"},
		{ID: "B4", Name: "Bin 4", Commodity: "soybeans"},
	} {
		must(t, scalehouse.SetBin(ctx, s.Desk, b))
	}
	return s
}

// lies is what lies in a bin now.
func (s *binScene) lies(t *testing.T, name string) quantity.Amount {
	t.Helper()
	rows, err := s.Store.BinsBefore(ctx, "9999")
	must(t, err)
	for _, r := range rows {
		if r.Bin == name {
			return r.Close.Balance()
		}
	}
	return lbs(0)
}

// Grain received at a pit lies in the bin that its usual path leads to, as weighed; void, it is gone
// from there.
func TestUsualPathOfAPit(t *testing.T) {
	s := withBins(t)
	_, number := s.Ticket()
	if got := s.lies(t, "B1"); !got.Equal(lbs(28_000)) {
		t.Fatalf("%s lie in B1, want 28,000 lb", got)
	}
	if got := s.lies(t, "Pit 1"); !got.IsZero() {
		t.Errorf("%s lie in the pit", got)
	}
	s.At("2026-10-02 09:00")
	s.Answered()
	must(t, scalehouse.Void(ctx, s.As(housetest.Manager).Desk, number, "a trial"))
	if got := s.lies(t, "B1"); !got.IsZero() {
		t.Errorf("%s lie in B1 after its ticket was voided", got)
	}
	s.Verify()
}

func TestMovementIsEnteredAndUndone(t *testing.T) {
	s := withBins(t)
	s.Ticket()
	m, err := scalehouse.MoveGrain(ctx, s.Desk, transfer("B1", "B2", 8_000))
	must(t, err)
	if m.Number != 1 || m.By != housetest.Clerk || !s.lies(t, "B1").Equal(lbs(20_000)) || !s.lies(t, "B2").Equal(lbs(8_000)) {
		t.Fatalf("%+v: %s and %s", m, s.lies(t, "B1"), s.lies(t, "B2"))
	}
	s.Verify()
	back, err := scalehouse.UndoMovement(ctx, s.Desk, 1, "never moved")
	must(t, err)
	if back.Number != 2 || !s.lies(t, "B1").Equal(lbs(28_000)) || !s.lies(t, "B2").IsZero() {
		t.Errorf("%+v: %s and %s", back, s.lies(t, "B1"), s.lies(t, "B2"))
	}
	for _, again := range []int64{1, 2} {
		if _, err := scalehouse.UndoMovement(ctx, s.Desk, again, "again"); !errors.Is(err, message.Refused) {
			t.Errorf("movement %d was undone again: %v", again, err)
		}
	}
	s.Verify()
}

// A tape in the bin: 20 ft of a bin 30 ft across at 56 lb/bu are 636,395 lb; posting that is a
// manager's act.
func TestMeasureUp(t *testing.T) {
	s := withBins(t)
	s.Ticket()
	m := bin.Movement{What: bin.MeasureUp, Commodity: "corn", Reason: "month's end", Count: &bin.Count{
		Bin: "B1", Counted: lbs(0), Measure: &shape.Measure{Depth: quantity.Int(20, quantity.Foot), TestWeight: quantity.Of("56", quantity.LbPerBushel)},
	}}
	seen, err := scalehouse.MoveGrain(ctx, s.Desk, m)
	must(t, err)
	if !seen.Count.Counted.Equal(lbs(636_395)) || !seen.Count.Book.Equal(lbs(28_000)) || !s.lies(t, "B1").Equal(lbs(28_000)) {
		t.Errorf("%+v, and %s lie there", seen.Count, s.lies(t, "B1"))
	}
	m.Count.Posted = true
	if _, err := scalehouse.MoveGrain(ctx, s.Desk, m); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk posted a measure-up: %v", err)
	}
	posted, err := scalehouse.MoveGrain(ctx, s.As(housetest.Manager).Desk, m)
	must(t, err)
	if posted.Adjusts != bin.AccountantsCount || !s.lies(t, "B1").Equal(lbs(636_395)) {
		t.Errorf("posted as %q: %s lie there", posted.Adjusts, s.lies(t, "B1"))
	}
	s.Verify()
}

// What cannot be is refused, and nothing of it is written.
func TestMovementsRefused(t *testing.T) {
	adds := transfer("B1", "B2", 10_000)
	adds.What, adds.Drying = bin.Dry, &bin.Run{MoistureIn: quantity.Of("15", quantity.Percent), MoistureOut: quantity.Of("17", quantity.Percent)}
	writeOff := bin.Movement{What: bin.WriteOff, Commodity: "corn", From: ofBin("B1", 10), Reason: "spoiled"}
	ahead := transfer("B1", "B2", 10)
	ahead.Day = quantity.MustDate("2026-10-02")
	early := transfer("B1", "B2", 10)
	early.Day = quantity.MustDate("2026-09-30")
	unknown := transfer("B1", "B2", 10)
	unknown.Commodity = "gravel"
	for name, c := range map[string]struct {
		who  string
		move bin.Movement
	}{
		"more than there is":      {housetest.Clerk, transfer("B1", "B2", 28_001)},
		"out of an empty bin":     {housetest.Clerk, transfer("B2", "B1", 1)},
		"a bin nobody knows":      {housetest.Clerk, transfer("B1", "B9", 1)},
		"into other grain":        {housetest.Clerk, transfer("B1", "B4", 1)},
		"a run that adds water":   {housetest.Clerk, adds},
		"a clerk's write-off":     {housetest.Clerk, writeOff},
		"a tester's transfer":     {housetest.Tester, transfer("B1", "B2", 1)},
		"of tomorrow":             {housetest.Clerk, ahead},
		"before it was received":  {housetest.Clerk, early},
		"of a grain nobody knows": {housetest.Clerk, unknown},
	} {
		s := withBins(t)
		s.Ticket()
		before, _, err := s.Store.Head(ctx)
		must(t, err)
		if _, err := scalehouse.MoveGrain(ctx, s.As(c.who).Desk, c.move); message.KindOf(err) == "" {
			t.Errorf("%s: %v", name, err)
		}
		if after, _, _ := s.Store.Head(ctx); after.Hash != before.Hash {
			t.Errorf("%s: something was written", name)
		}
	}
}

// A closed day has the bins as they were.
func TestNoMovementOnAClosedDay(t *testing.T) {
	s := withBins(t)
	s.Ticket()
	must(t, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, quantity.MustDate("2026-10-01"), ""))
	m := transfer("B1", "B2", 10)
	m.Day = quantity.MustDate("2026-10-01")
	if _, err := scalehouse.MoveGrain(ctx, s.As(housetest.Clerk).Desk, m); !errors.Is(err, message.Refused) {
		t.Errorf("moved on a closed day: %v", err)
	}
}

// What a load's sample measured is what its bin has.
func TestBinHasTheMoistureOfItsLoads(t *testing.T) {
	s := withBins(t)
	s.Ticket()
	rows, err := s.Store.BinsBefore(ctx, "9999")
	must(t, err)
	mean, known := rows[0].Close.Grain().Mean(grain.Moisture)
	if !known || mean.Sign() <= 0 || rows[0].Close.Layers[0].Oldest != s.Today() {
		t.Errorf("B1 has %s, %v: %+v", mean, known, rows[0].Close)
	}
}
