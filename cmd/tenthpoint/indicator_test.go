//go:build cgo && linux

package main

import (
	"context"
	"net"
	"strconv"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalelink"
)

// A truck rolls on to a simulated scale, its weight is taken by one key while
// it still moves, and the slip says which scale it is from.
func TestWeightFromALinkedScale(t *testing.T) {
	simulator, address := simulate(t)
	d := newDesktop(t, "--who", "Owen Tarrant")
	d.fill(40)
	next := d.nextTicket()
	d.onDesk(func(at *scalehouse.Desk) {
		must(t, at.SignIn("Harriet Blume"))
		p := at.Profile()
		p.Scales[0].Link = "tcp://" + address
		must(t, scalehouse.SetProfile(context.Background(), at, p))
	})
	d.open()
	d.press("ctrl+n")
	d.come("123", "corn", "77")
	must(t, simulator.RollOn(quantity.Int(52300, quantity.Lb)))
	d.press("F10")
	d.settle()
	simulator.RollOff()
	d.write("17.2", "56", "", "", "", "") // the keyboard is past the gross, which the scale fills in
	must(t, roll(simulator, 24120))
	d.press("F10")
	d.settle()
	d.press("F12")
	slip := d.paper("ticket-" + strconv.FormatInt(next, 10) + ".pdf")
	d.quit()
	for _, words := range []string{"52,300 lb", "24,120 lb", "28,180 lb", "scale 1"} {
		if !strings.Contains(slip, words) {
			t.Errorf("the slip does not say %q:\n%s", words, slip)
		}
	}
	if strings.Contains(slip, "MANUAL WT") {
		t.Errorf("a weight from the scale is marked as typed:\n%s", slip)
	}
}

// simulate plays the truck scale of the invented elevator on a port of its own.
func simulate(t *testing.T) (*scalelink.Simulator, string) {
	t.Helper()
	simulator, err := scalelink.NewSimulator(scalelink.SimulatorSettings{
		Scale: scalelink.Scale{Name: "1", Capacity: quantity.Int(120000, quantity.Lb), Division: quantity.Int(20, quantity.Lb)},
		Every: 50 * time.Millisecond,
	})
	must(t, err)
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- simulator.Serve(ctx, listener) }()
	t.Cleanup(func() { cancel(); must(t, <-ended) })
	return simulator, listener.Addr().String()
}

// roll drives a truck on as soon as the deck is empty.
func roll(s *scalelink.Simulator, pounds int64) (err error) {
	for until := time.Now().Add(patience); time.Now().Before(until); time.Sleep(50 * time.Millisecond) {
		if err = s.RollOn(quantity.Int(pounds, quantity.Lb)); err == nil {
			return nil
		}
	}
	return err
}
