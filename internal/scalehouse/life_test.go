package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// 52,300 - 24,300 = 28,000 lb at 18.0 %: water 28,000 x 3 / 85 = 988.235... lb,
// handling 0.5 % of 28,000 = 140 lb, dry 28,000 - 988 - 140 = 26,872 lb,
// 26,872 / 56 = 479.857... bu; drying 28,000 / 56 = 500 bu x 3 pt x $0.04 = $60.
var settledByHand = map[string]string{
	"net": "28000 lb", "shrink.water": "988 lb", "handling": "140 lb", "dry": "26872 lb",
	"quantity": "479.86 bu", "drying": "60 $", "services": "60 $", "adjustments": "-60 $",
}

// Whatever order a load's facts come in, its ticket is the same.
func TestYardKeepsNoOrder(t *testing.T) {
	gross, tare := housetest.ScaleWeight(load.Gross, 52300), housetest.ScaleWeight(load.Tare, 24300)
	stored := load.Weighing{Which: load.Tare, Weight: quantity.Int(24300, quantity.Lb), Source: load.StoredTare, Taken: quantity.MustDate("2026-09-20")}
	for name, acts := range map[string][]any{
		"sample before tare":        {gross, housetest.SampleOf("18.0"), tare},
		"sample after tare":         {gross, tare, housetest.SampleOf("18.0")},
		"stored tare, then gross":   {stored, gross, housetest.SampleOf("18.0")},
		"tare first, as at leaving": {tare, housetest.SampleOf("18.0"), gross},
		"weighed and tested again":  {housetest.ScaleWeight(load.Gross, 50000), housetest.SampleOf("25.0"), tare, gross, housetest.SampleOf("18.0")},
	} {
		t.Run(name, func(t *testing.T) {
			s := housetest.New(t)
			id, err := scalehouse.OpenLoad(ctx, s.Desk, housetest.Details())
			must(t, err)
			for _, act := range acts {
				switch act := act.(type) {
				case load.Weighing:
					must(t, scalehouse.Weigh(ctx, s.Desk, id, act))
				case load.Sample:
					must(t, scalehouse.RecordSample(ctx, s.Desk, id, act))
				}
			}
			_, err = scalehouse.Issue(ctx, s.Desk, id)
			must(t, err)
			wantFigures(t, s.Load(id), settledByHand)
			s.Verify()
		})
	}
}

func wantFigures(t *testing.T, l *load.Load, want map[string]string) {
	t.Helper()
	for name, text := range want {
		var wanted quantity.Amount
		must(t, wanted.UnmarshalText([]byte(text)))
		if got := l.Settled.Figures[name]; !got.Equal(wanted) {
			t.Errorf("%s is %s, want %s", name, got, wanted)
		}
	}
}

func TestTwoTrucksAtOnce(t *testing.T) {
	s := housetest.New(t)
	first, second := s.Arrive(52300), s.Arrive(60000)
	s.Sample(second, "15.0")
	s.Sample(first, "18.0")
	s.Weigh(second, load.Tare, 26000)
	yard, err := office.Yard(ctx, s.Desk)
	must(t, err)
	if len(yard) != 2 || yard[0].ID != first || yard[1].ID != second {
		t.Errorf("the yard is not the two trucks in the order they came: %v", yard)
	}
	number, err := scalehouse.Issue(ctx, s.Desk, second)
	must(t, err)
	s.Weigh(first, load.Tare, 24300)
	later, err := scalehouse.Issue(ctx, s.Desk, first)
	must(t, err)
	if number != 1 || later != 2 {
		t.Errorf("tickets %d and %d, want 1 and 2 in the order of issue", number, later)
	}
	wantFigures(t, s.Load(first), settledByHand)
	wantFigures(t, s.Load(second), map[string]string{"net": "34000 lb", "shrink.water": "0 lb", "dry": "34000 lb", "drying": "0 $"})
}

func TestSplitWeighed(t *testing.T) {
	s := housetest.New(t)
	id, err := scalehouse.OpenLoad(ctx, s.Desk, housetest.Details())
	must(t, err)
	for _, w := range []load.Weighing{
		{Which: load.Gross, Draft: "truck", Weight: quantity.Int(30300, quantity.Lb), Source: load.FromScale},
		{Which: load.Gross, Draft: "trailer", Weight: quantity.Int(22000, quantity.Lb), Source: load.FromScale},
		{Which: load.Tare, Draft: "trailer", Weight: quantity.Int(8300, quantity.Lb), Source: load.FromScale},
	} {
		must(t, scalehouse.Weigh(ctx, s.Desk, id, w))
	}
	s.Sample(id, "18.0")
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, errortest.Invalid("truck"))
	must(t, scalehouse.Weigh(ctx, s.Desk, id, load.Weighing{Which: load.Tare, Draft: "truck", Weight: quantity.Int(16000, quantity.Lb), Source: load.FromScale}))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	wantFigures(t, s.Load(id), settledByHand)
	s.Verify()
}

// A ticket refused by its settlement uses no number up.
func TestNumbersRunUnbroken(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	bad := s.Arrive(52300)
	s.Sample(bad, "18.0", housetest.Found(grain.BrokenCorn, "9.0", quantity.Percent))
	s.Weigh(bad, load.Tare, 24300)
	_, err := scalehouse.Issue(ctx, s.Desk, bad)
	refused(t, err, errortest.Invalid("5.0 %"))
	_, number := s.Ticket()
	if number != 2 {
		t.Errorf("the next ticket is %d, want 2", number)
	}
	must(t, scalehouse.Accept(ctx, s.As(housetest.Manager).Desk, bad, "bcfm", "fed to cattle at once"))
	number, err = scalehouse.Issue(ctx, s.Desk, bad)
	must(t, err)
	if number != 3 || len(s.Load(bad).Accepted) != 1 {
		t.Errorf("ticket %d with %d accepted limits, want ticket 3 with 1", number, len(s.Load(bad).Accepted))
	}
	if sound := s.Verify(); sound.Tickets != 3 || sound.Loads != 3 {
		t.Errorf("%d loads, %d tickets, want 3 and 3", sound.Loads, sound.Tickets)
	}
}

func TestVoidKeepsTheNumber(t *testing.T) {
	s := housetest.New(t)
	id, number := s.Ticket()
	_, err := scalehouse.RecordPrint(ctx, s.Desk, number)
	must(t, err)
	must(t, scalehouse.Void(ctx, s.As(housetest.Manager).Desk, number, "wrong grower's truck"))
	l := s.Load(id)
	if l.Phase != load.Void || l.Number != number || l.Ended.Reason != "wrong grower's truck" || l.Ended.Who != housetest.Manager {
		t.Errorf("after the void: %s, number %d, %+v", l.Phase, l.Number, l.Ended)
	}
	copyNo, err := scalehouse.RecordPrint(ctx, s.Desk, number)
	must(t, err)
	if copyNo != 1 {
		t.Errorf("the void ticket prints as copy %d, want reprint 1", copyNo)
	}
	if _, next := s.Ticket(); next != number+1 {
		t.Errorf("the number after a void is %d, want %d", next, number+1)
	}
	s.Verify()
}

func TestCopiesAreCounted(t *testing.T) {
	s := housetest.New(t)
	_, number := s.Ticket()
	for want := range int64(4) {
		got, err := scalehouse.RecordPrint(ctx, s.Desk, number)
		must(t, err)
		if got != want {
			t.Errorf("copy %d, want %d", got, want)
		}
	}
}

// A correction starts with all the ticket's load had, each weight and result
// with its own time and person, and a correction can be corrected.
func TestCorrectionOfACorrection(t *testing.T) {
	s := housetest.New(t)
	firstID, first := s.Ticket()
	old := s.Load(firstID)
	s.At("2026-10-02 09:00")
	secondID, err := scalehouse.Correct(ctx, s.As(housetest.Manager).Desk, first, "tare read wrong")
	must(t, err)
	opened := s.Load(secondID)
	if len(opened.Weighings) != 2 || opened.Weighings[0].Stamp != old.Weighings[0].Stamp || opened.Sampled != old.Sampled {
		t.Errorf("carried weights %+v and sample of %+v, want those of %+v, %+v", opened.Weighings, opened.Sampled, old.Weighings, old.Sampled)
	}
	s.Weigh(secondID, load.Tare, 24500)
	second, err := scalehouse.Issue(ctx, s.Desk, secondID)
	must(t, err)
	thirdID, err := scalehouse.Correct(ctx, s.Desk, second, "moisture typed wrong")
	must(t, err)
	s.Sample(thirdID, "17.0")
	third, err := scalehouse.Issue(ctx, s.Desk, thirdID)
	must(t, err)
	for _, want := range []struct {
		number, by, corrects int64
		phase                load.Phase
	}{{first, second, 0, load.Corrected}, {second, third, first, load.Corrected}, {third, 0, second, load.Ticketed}} {
		l, err := office.Ticket(ctx, s.Desk, want.number)
		must(t, err)
		if l.Ended.By != want.by || l.Corrects != want.corrects || l.Phase != want.phase {
			t.Errorf("ticket %d: corrected by %d, corrects %d, %s; want %+v", want.number, l.Ended.By, l.Corrects, l.Phase, want)
		}
	}
	wantFigures(t, s.Load(thirdID), map[string]string{"net": "27800 lb", "moisture": "17.0 %"})
	s.Verify()
}

func TestCloseDayMovesLaterTicketsOn(t *testing.T) {
	s := housetest.New(t)
	before, _ := s.Ticket()
	today := s.Today()
	must(t, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, today, "all accounted for"))
	after, number := s.Ticket()
	if got := s.Load(before).IssuedDay; got != today {
		t.Errorf("the ticket before closing counts in %s, want %s", got, today)
	}
	if got := s.Load(after).IssuedDay; got != today.AddDays(1) {
		t.Errorf("the ticket after closing counts in %s, want %s", got, today.AddDays(1))
	}
	must(t, scalehouse.Void(ctx, s.Desk, number, "a trial"))
	if got := s.Load(after).Ended.Day; got != today.AddDays(1) {
		t.Errorf("the void counts in %s, want %s", got, today.AddDays(1))
	}
	by, closed, isClosed, err := office.ClosingOf(ctx, s.Desk, today)
	must(t, err)
	if !isClosed || by.Who != housetest.Manager || closed.Remark != "all accounted for" {
		t.Errorf("closed %v by %s: %+v", isClosed, by.Who, closed)
	}
	s.Verify()
}

// Acts done together are all kept or none.
func TestTogetherIsAllOrNothing(t *testing.T) {
	s := housetest.New(t)
	before := s.Contents()
	err := s.Batch(ctx, func(w *scalehouse.Batch) error {
		for range 3 {
			id, err := scalehouse.OpenLoad(ctx, w, housetest.Details())
			if err != nil {
				return err
			}
			if err := scalehouse.Weigh(ctx, w, id, housetest.ScaleWeight(load.Gross, 52300)); err != nil {
				return err
			}
		}
		return scalehouse.Weigh(ctx, w, "L99", housetest.ScaleWeight(load.Gross, 52300))
	})
	refused(t, err, errortest.NotFound("L99"))
	if s.Contents() != before {
		t.Error("something of it was kept")
	}
}

// One batch and single acts make the same book, to the byte.
func TestTogetherIsAsOneByOne(t *testing.T) {
	apart, together := housetest.New(t), housetest.New(t)
	id, number := apart.Ticket()
	_, err := scalehouse.RecordPrint(ctx, apart.Desk, number)
	must(t, err)
	must(t, scalehouse.Void(ctx, apart.As(housetest.Manager).Desk, number, "a trial"))
	must(t, together.Batch(ctx, func(w *scalehouse.Batch) error {
		opened, err := scalehouse.OpenLoad(ctx, w, housetest.Details())
		must(t, err)
		must(t, scalehouse.Weigh(ctx, w, opened, housetest.ScaleWeight(load.Gross, 52300)))
		must(t, scalehouse.RecordSample(ctx, w, opened, housetest.SampleOf("18.0")))
		must(t, scalehouse.Weigh(ctx, w, opened, housetest.ScaleWeight(load.Tare, 24300)))
		n, err := scalehouse.Issue(ctx, w, opened)
		must(t, err)
		_, err = scalehouse.RecordPrint(ctx, w, n)
		must(t, err)
		must(t, together.SignIn(housetest.Manager))
		return scalehouse.Void(ctx, w, n, "a trial")
	}))
	if a, b := apart.Contents(), together.Contents(); a != b {
		t.Errorf("apart:\n%s\ntogether:\n%s", a, b)
	}
	if l := together.Load(id); l.Phase != load.Void {
		t.Errorf("the load is %s", l.Phase)
	}
}

func TestStandingThingsAreReadBack(t *testing.T) {
	s := housetest.New(t)
	tare := quantity.Int(24300, quantity.Lb)
	must(t, scalehouse.SetTruck(ctx, s.Desk, elevator.Truck{ID: "T1", Plate: "ABC 1", Grower: "G1", Tare: &tare, Taken: quantity.MustDate("2026-09-20")}))
	must(t, scalehouse.SetTruck(ctx, s.Desk, elevator.Truck{ID: "T1", Plate: "ABC 2", Grower: "G1"}))
	trucks, err := office.Trucks(ctx, s.Desk)
	must(t, err)
	if len(trucks) != 1 || trucks[0].Plate != "ABC 2" || trucks[0].Tare != nil {
		t.Errorf("trucks: %+v", trucks)
	}
	s.Verify()
}
