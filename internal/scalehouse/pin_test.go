package scalehouse_test

import (
	"errors"
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/pin"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/signing"
)

const (
	managersPIN = "2222"
	clerksPIN   = "clerk 1"
)

// locked is a scene whose manager and clerk have PINs, with the key of its house.
func locked(t *testing.T) (*scene, signing.Key) {
	t.Helper()
	s := housetest.New(t)
	house, _ := certified(t, s)
	s.As(housetest.Manager)
	must(t, scalehouse.SetPIN(ctx, s.Desk, housetest.Manager, managersPIN, pin.Salt{1}))
	must(t, scalehouse.SetPIN(ctx, s.Desk, housetest.Clerk, clerksPIN, pin.Salt{2}))
	scalehouse.Unprove(s.Desk, housetest.Manager)
	return s, house
}

// wantAsked requires that an act asks for a PIN and writes nothing.
func wantAsked(t *testing.T, s *scene, who string, act func() error) {
	t.Helper()
	before := s.Contents()
	var asked pin.Asked
	if err := act(); !errors.As(err, &asked) || asked.Who != who || message.KindOf(err) != message.Refused {
		t.Errorf("the act of %s: %v", who, err)
	}
	if s.Contents() != before {
		t.Error("something was written")
	}
}

func TestManagersActsAskForAPIN(t *testing.T) {
	s, _ := locked(t)
	s.As(housetest.Clerk)
	_, number := s.Ticket() // a clerk's acts ask for nothing in this house
	s.As(housetest.Manager)
	void := func() error { return scalehouse.Void(ctx, s.Desk, number, "wrong truck") }
	wantAsked(t, s, housetest.Manager, void)
	must(t, scalehouse.Prove(ctx, s.Desk, housetest.Manager, managersPIN))
	must(t, void())

	// It holds while the manager goes on acting, and no longer.
	for range 3 {
		s.Time = s.Time.Add(4 * time.Minute)
		s.House(func(p *elevator.Profile) { p.Phone += "1" })
	}
	s.As(housetest.Manager)
	s.Time = s.Time.Add(6 * time.Minute)
	change := func() error { return scalehouse.SetProfile(ctx, s.Desk, s.Profile()) }
	wantAsked(t, s, housetest.Manager, change)
	must(t, scalehouse.Prove(ctx, s.Desk, housetest.Manager, managersPIN))
	scalehouse.Unprove(s.Desk, housetest.Manager)
	wantAsked(t, s, housetest.Manager, change)
	s.Verify()
}

// The manager beside who has no PIN is no way around: the act is refused until a manager gives one.
func TestManagerWithoutPINIsNoWayAround(t *testing.T) {
	s, _ := locked(t)
	must(t, scalehouse.Prove(ctx, s.Desk, housetest.Manager, managersPIN))
	must(t, scalehouse.SetPerson(ctx, s.Desk, elevator.Person{Name: "Second Manager", Role: elevator.Manager}))
	s.As("Second Manager")
	change := func() error { return scalehouse.SetProfile(ctx, s.Desk, s.Profile()) }
	if err := change(); !errors.Is(err, message.Refused) || errors.As(err, new(pin.Asked)) {
		t.Errorf("a manager without PIN: %v", err)
	}
	if err := scalehouse.SetPIN(ctx, s.Desk, "Second Manager", "9999", pin.Salt{3}); !errors.Is(err, message.Refused) {
		t.Errorf("gives themselves one: %v", err)
	}
	s.As(housetest.Manager)
	must(t, scalehouse.SetPIN(ctx, s.Desk, "Second Manager", "9999", pin.Salt{3}))
	s.As("Second Manager")
	must(t, scalehouse.Prove(ctx, s.Desk, "Second Manager", "9999"))
	must(t, change())
}

func TestHouseChoosesWhatAsksForAPIN(t *testing.T) {
	s, _ := locked(t)
	must(t, scalehouse.Prove(ctx, s.Desk, housetest.Manager, managersPIN))
	id := s.As(housetest.Clerk).Whole()
	acts := map[elevator.PINAct]func() error{
		elevator.TicketActs: func() error { _, err := scalehouse.Issue(ctx, s.Desk, id); return err },
		elevator.WeightActs: func() error { _, err := scalehouse.OpenLoad(ctx, s.Desk, housetest.Details()); return err },
		elevator.SampleActs: func() error {
			return scalehouse.RecordSample(ctx, s.Desk, id, housetest.SampleOf("18.0"))
		},
		elevator.ListActs: func() error { return scalehouse.SetTruck(ctx, s.Desk, elevator.Truck{ID: "77"}) },
	}
	if len(acts) != len(elevator.PINActs()) {
		t.Fatal("an act is not tried")
	}
	for _, chosen := range elevator.PINActs() {
		s.As(housetest.Manager)
		must(t, scalehouse.Prove(ctx, s.Desk, housetest.Manager, managersPIN))
		s.House(func(p *elevator.Profile) { p.AskPIN = []elevator.PINAct{chosen} })
		s.As(housetest.Clerk)
		scalehouse.Unprove(s.Desk, housetest.Clerk)
		wantAsked(t, s, housetest.Clerk, acts[chosen])
		for other, act := range acts {
			if other != chosen && other != elevator.TicketActs {
				if err := act(); err != nil {
					t.Errorf("%s is chosen, and %s: %v", chosen, other, err)
				}
			}
		}
		must(t, scalehouse.Prove(ctx, s.Desk, housetest.Clerk, clerksPIN))
		if chosen != elevator.TicketActs {
			must(t, acts[chosen]())
		}
	}
	s.As(housetest.Tester)
	s.Time = s.Time.Add(time.Second)
	if err := acts[elevator.ListActs](); !errors.Is(err, message.Refused) {
		t.Errorf("a person without a PIN changes a list that asks for one: %v", err)
	}
	s.As(housetest.Manager)
	if err := scalehouse.SetProfile(ctx, s.Desk, func() elevator.Profile { p := s.Profile(); p.AskPIN = []elevator.PINAct{"coffee"}; return p }()); !errors.Is(err, message.Incomplete) && !errors.Is(err, message.Invalid) {
		t.Errorf("a PIN for coffee: %v", err)
	}
}

// Wrong PINs are facts, and each after the third is taken only after a wait, by whichever desk and
// after a restart.
func TestGuessingAPINSlowsDown(t *testing.T) {
	s, _ := locked(t)
	wrong := func() error { return scalehouse.Prove(ctx, s.Desk, housetest.Manager, "0000") }
	for range 3 {
		if err := wrong(); !errors.Is(err, message.Refused) {
			t.Fatal(err)
		}
	}
	again, err := scalehouse.Open(ctx, s.Store, scalehouse.Options{Rates: housetest.Rates(t), Place: time.UTC, Clock: s.Clock(), Who: housetest.Manager})
	must(t, err)
	before := s.Contents()
	if err := scalehouse.Prove(ctx, again, housetest.Manager, managersPIN); !errors.Is(err, message.Refused) {
		t.Errorf("the right PIN too soon: %v", err)
	}
	if s.Contents() != before {
		t.Error("a PIN that was not taken was written down")
	}
	if err := scalehouse.SetProfile(ctx, again, s.Profile()); !errors.As(err, new(pin.Asked)) {
		t.Errorf("acts without a PIN: %v", err)
	}
	s.Time = s.Time.Add(16 * time.Second)
	if err := wrong(); !errors.Is(err, message.Refused) {
		t.Error(err)
	}
	s.Time = s.Time.Add(16 * time.Second)
	if err := scalehouse.Prove(ctx, again, housetest.Manager, managersPIN); !errors.Is(err, message.Refused) {
		t.Errorf("after the fourth the wait is twice as long: %v", err)
	}
	s.Time = s.Time.Add(16 * time.Second)
	must(t, scalehouse.Prove(ctx, again, housetest.Manager, managersPIN))
	pins, err := office.RecordsOf[elevator.PIN](ctx, s.Store)
	must(t, err)
	for _, p := range pins {
		if p.Wrong != 0 || p.Tried != "" {
			t.Errorf("after the right PIN %d wrong ones are left for %s", p.Wrong, p.Name)
		}
	}
	s.Verify()
}

func TestForgottenPINIsTakenAway(t *testing.T) {
	s, house := locked(t)
	s.As(housetest.Clerk)
	for what, key := range map[string]signing.Key{"a clerk": {}, "a stranger's key": keyOf(t, "x")} {
		if err := scalehouse.ForgetPIN(ctx, s.Desk, housetest.Manager, "forgotten", key); !errors.Is(err, message.Refused) {
			t.Errorf("%s takes a PIN away: %v", what, err)
		}
	}
	s.As(housetest.Manager)
	wantAsked(t, s, housetest.Manager, func() error { return scalehouse.ForgetPIN(ctx, s.Desk, housetest.Clerk, "forgotten", signing.Key{}) })
	if err := scalehouse.ForgetPIN(ctx, s.Desk, housetest.Manager, " ", house); !errors.Is(err, message.Incomplete) {
		t.Errorf("without a reason: %v", err)
	}
	must(t, scalehouse.ForgetPIN(ctx, s.Desk, housetest.Manager, "forgotten over the winter", house))
	must(t, scalehouse.SetProfile(ctx, s.Desk, s.Profile())) // no manager has a PIN any more
	if err := scalehouse.Prove(ctx, s.Desk, housetest.Manager, managersPIN); !errors.Is(err, message.NotFound) {
		t.Errorf("the forgotten PIN: %v", err)
	}
	s.Verify()
}

func TestFirstPINIsAManagersInAHouseWithAKey(t *testing.T) {
	s := housetest.New(t)
	s.As(housetest.Manager)
	set := func(name, typed string) error { return scalehouse.SetPIN(ctx, s.Desk, name, typed, pin.Salt{}) }
	if err := set(housetest.Manager, managersPIN); !errors.Is(err, message.Refused) {
		t.Errorf("in a house without a key: %v", err)
	}
	certified(t, s)
	if err := set(housetest.Clerk, clerksPIN); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk's own PIN before a manager's: %v", err)
	}
	s.As(housetest.Manager)
	for typed, kind := range map[string]message.Kind{"123": message.Invalid} {
		if err := set(housetest.Manager, typed); !errors.Is(err, kind) {
			t.Errorf("%q: %v", typed, err)
		}
	}
	if err := set(housetest.Clerk, clerksPIN); !errors.Is(err, message.Refused) {
		t.Errorf("the clerk's before the manager's: %v", err)
	}
	if err := set("Nobody Known", clerksPIN); !errors.Is(err, message.NotFound) {
		t.Errorf("of nobody: %v", err)
	}
	must(t, set(housetest.Manager, managersPIN))
	must(t, set(housetest.Clerk, clerksPIN))
	// Whoever has a PIN changes it by it.
	s.As(housetest.Clerk)
	wantAsked(t, s, housetest.Clerk, func() error { return set(housetest.Clerk, "5555") })
	must(t, scalehouse.Prove(ctx, s.Desk, housetest.Clerk, clerksPIN))
	must(t, set(housetest.Clerk, "5555"))
	if err := set(housetest.Manager, "5555"); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk gives the manager a PIN: %v", err)
	}
	must(t, scalehouse.Prove(ctx, s.Desk, housetest.Clerk, "5555"))
}

// A desk that was open before a PIN was given asks for it at its next act.
func TestOpenDeskLearnsOfAPIN(t *testing.T) {
	s := housetest.New(t)
	certified(t, s)
	other, err := scalehouse.Open(ctx, s.Store, scalehouse.Options{Rates: housetest.Rates(t), Place: time.UTC, Clock: s.Clock(), Who: housetest.Manager})
	must(t, err)
	s.As(housetest.Manager)
	must(t, scalehouse.SetPIN(ctx, s.Desk, housetest.Manager, managersPIN, pin.Salt{1}))
	if err := scalehouse.SetProfile(ctx, other, s.Profile()); !errors.As(err, new(pin.Asked)) {
		t.Errorf("at the other desk: %v", err)
	}
}

func TestFactsNameAccountAndComputer(t *testing.T) {
	s := housetest.New(t)
	d, err := scalehouse.Open(ctx, s.Store, scalehouse.Options{Name: "desk", Computer: "mae@scale1", Rates: housetest.Rates(t), Clock: s.Clock(), Who: housetest.Manager})
	must(t, err)
	must(t, scalehouse.SetTruck(ctx, d, elevator.Truck{ID: "77"}))
	last, _, err := s.Store.Head(ctx)
	must(t, err)
	if last.Desk != "desk, mae@scale1" {
		t.Errorf("the fact was written at %q", last.Desk)
	}
}
