package scalelink

import (
	"context"
	"net"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

// deck is a simulator on a loopback port, moved frame by frame.
type deck struct {
	*Simulator
	clock   *stepClock
	address string
}

func newDeck(t *testing.T) deck {
	t.Helper()
	clock := newStepClock()
	sim, err := NewSimulator(SimulatorSettings{Scale: west(), Clock: clock})
	if err != nil {
		t.Fatal(err)
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	served := make(chan error, 1)
	go func() { served <- sim.Serve(ctx, listener) }()
	t.Cleanup(func() {
		cancel()
		if err := <-served; err != nil {
			t.Error(err)
		}
	})
	return deck{sim, clock, listener.Addr().String()}
}

// listenTo opens a link to the deck and waits for its first frame.
func listenTo(t *testing.T, d deck) *Line {
	t.Helper()
	line, err := New(TCP{Address: d.address}, settings(newStepClock()))
	if err != nil {
		t.Fatal(err)
	}
	changes := line.Changed()
	if err := line.Open(t.Context()); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { line.Close() })
	for {
		<-changes
		changes = line.Changed()
		if _, err := line.Latest(); err == nil {
			return line
		}
	}
}

// next plays one frame and reads it at the other end.
func next(t *testing.T, d deck, line *Line) Reading {
	t.Helper()
	changed := line.Changed()
	d.clock.step()
	<-changed
	reading, err := line.Latest()
	if err != nil {
		t.Fatal(err)
	}
	return reading
}

// A truck over the wire: it moves, swings, comes to rest, is weighed, leaves.
func TestATruckIsWeighedOverTCP(t *testing.T) {
	d := newDeck(t)
	line := listenTo(t, d)
	for range 4 {
		next(t, d, line)
	}
	shows(t, line, "0", Stable)
	if err := d.RollOn(lb("52300")); err != nil {
		t.Fatal(err)
	}
	var seen []string
	result := weighTruck(t.Context(), line)
	for len(seen) == 0 || seen[len(seen)-1] != "52,300 lb stable" {
		r := next(t, d, line)
		seen = append(seen, r.Weight.String()+" "+r.State.String())
	}
	// 52,300 lb is 2,615 divisions: 11 % of it is 287 (5,740 lb), and so on; at
	// rest is three readings within one division, and two frames that say so.
	want := "5,740 lb motion; 6,260 lb motion; 24,580 lb motion; 25,620 lb motion; 43,400 lb motion; 50,720 lb motion; " +
		"52,420 lb motion; 52,220 lb motion; 52,360 lb motion; 52,260 lb motion; 52,320 lb motion; 52,300 lb motion; 52,300 lb motion; 52,300 lb stable"
	if got := strings.Join(seen, "; "); got != want {
		t.Errorf("the deck showed\n%s\nwant\n%s", got, want)
	}
	for done := false; !done; { // the wait may have begun late; the truck is at rest
		select {
		case w := <-result:
			if w.err != nil || !w.reading.Weight.Equal(lb("52300")) {
				t.Errorf("weighed %s, %v; want 52,300 lb", w.reading.Weight, w.err)
			}
			done = true
		default:
			next(t, d, line)
		}
	}
	d.RollOff()
	for range len(axles) + 2 + 2 {
		next(t, d, line)
	}
	shows(t, line, "0", Stable)
}

func TestAnOverloadedTruckIsRefused(t *testing.T) {
	d := newDeck(t)
	line := listenTo(t, d)
	if err := d.RollOn(lb("210020")); err != nil {
		t.Fatal(err)
	}
	var last Reading
	for range len(axles) + len(swing) + 1 {
		last = next(t, d, line)
	}
	if last.State != Over {
		t.Fatalf("the deck shows %+v, want over", last)
	}
	if err := west().Accept(last); !errortest.Refused().Met(err) {
		t.Errorf("Accept = %v, want it refused", err)
	}
}

func TestTwoDesksHearOneScale(t *testing.T) {
	d := newDeck(t)
	first, second := listenTo(t, d), listenTo(t, d)
	if err := d.RollOn(lb("20000")); err != nil {
		t.Fatal(err)
	}
	heard := second.Changed()
	a := next(t, d, first)
	<-heard
	b, err := second.Latest()
	if err != nil || !a.Weight.Equal(b.Weight) || !a.Weight.Equal(lb("2200")) {
		t.Errorf("one desk heard %s, the other %s (%v); want 2,200 lb", a.Weight, b.Weight, err)
	}
}

func TestWhatCannotRollOn(t *testing.T) {
	d := newDeck(t)
	for _, weight := range []quantity.Amount{lb("0"), lb("-20"), lb("52310"), kg("20"), quantity.Int(20, quantity.Plain)} {
		if err := d.RollOn(weight); err == nil {
			t.Errorf("%s rolled on", weight)
		}
	}
	if err := d.RollOn(lb("52300")); err != nil {
		t.Fatal(err)
	}
	if err := d.RollOn(lb("20")); !errortest.Device().Met(err) {
		t.Errorf("two trucks at once: %v, want a refusal", err)
	}
}

// However heavy the truck, every weight shown is whole divisions, the deck ends
// on the truck's weight, and after it has left on nothing.
func TestTheDeckShowsWholeDivisions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		divisions := rapid.Int64Range(1, 20_000).Draw(t, "divisions")
		sim, err := NewSimulator(SimulatorSettings{Scale: west()})
		if err != nil {
			t.Fatal(err)
		}
		weight := quantity.Int(20*divisions, quantity.Lb)
		if err := sim.RollOn(weight); err != nil {
			t.Fatal(err)
		}
		ends := []quantity.Amount{weight, lb("0")}
		for _, end := range ends {
			for len(sim.play) > 0 {
				if r := sim.step(); !west().isWhole(r.Weight) || r.Weight.Sign() < 0 {
					t.Fatalf("the deck shows %s", r.Weight)
				}
			}
			if got := west().ofDivisions(sim.deck); !got.Equal(end) {
				t.Fatalf("the deck ends at %s, want %s", got, end)
			}
			sim.RollOff()
		}
	})
}

func TestSimulatorSettingsAreChecked(t *testing.T) {
	_, err := NewSimulator(SimulatorSettings{Scale: Scale{Capacity: quantity.Int(60, quantity.Tonne), Division: quantity.Of("0.02", quantity.Tonne)}, Steady: Steady{1, 1}})
	for _, want := range []errortest.Want{errortest.Device(), errortest.Device(), errortest.Device("t")} {
		if !want.Met(err) {
			t.Errorf("error %v lacks %q", err, want)
		}
	}
}
