package scalelink

import (
	"context"
	"errors"
	"io"
	"strings"
	"testing"
)

// weighed is what a wait gave.
type weighed struct {
	reading Reading
	err     error
}

// weighing waits for a weight in the background.
func weighing(ctx context.Context, line *Line) chan weighed {
	result := make(chan weighed, 1)
	go func() {
		reading, err := Weigh(ctx, line, west())
		result <- weighed{reading, err}
	}()
	return result
}

// keepSaying repeats text until the wait ends: only the wait knows when it has
// begun, and it takes nothing from before.
func keepSaying(t *testing.T, line *Line, end io.Writer, text string, result chan weighed) weighed {
	t.Helper()
	for {
		select {
		case w := <-result:
			return w
		default:
			say(t, line, end, text)
		}
	}
}

func TestWeighTakesTheFirstWeightAtRest(t *testing.T) {
	dialer := newWires()
	line := openLine(t, dialer, settings(newStepClock()))
	end := dialer.end(line)
	result := weighing(t.Context(), line)
	got := keepSaying(t, line, end, "[+   52300lb G M]\r\n[+   52320lb G S]\r\n", result)
	if got.err != nil || !got.reading.Weight.Equal(lb("52320")) {
		t.Errorf("weighed %s, %v; want 52,320 lb", got.reading.Weight, got.err)
	}
}

func TestWeighRefusesAndStillShows(t *testing.T) {
	dialer := newWires()
	line := openLine(t, dialer, settings(newStepClock()))
	end := dialer.end(line)
	got := keepSaying(t, line, end, "[+   52310lb N S]\r\n", weighing(t.Context(), line))
	var refused Refused
	if !errors.As(got.err, &refused) || len(refused) != 2 || !refused.Has(OffDivision) || !refused.Has(NotGross) {
		t.Errorf("weighed with %v, want it refused as net and off the division", got.err)
	}
	if !got.reading.Weight.Equal(lb("52310")) {
		t.Errorf("the refused reading shows %s, want 52,310 lb", got.reading.Weight)
	}
}

// A weight at rest from before the call may belong to the truck before.
func TestWaitStableTakesNothingFromBefore(t *testing.T) {
	dialer := newWires()
	line := openLine(t, dialer, settings(newStepClock()))
	say(t, line, dialer.end(line), "[+   52300lb G S]\r\n")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	reading, err := line.WaitStable(ctx)
	if !errors.Is(err, context.Canceled) || reading.Raw != "" || !strings.Contains(err.Error(), "came to rest just now: weigh again") {
		t.Errorf("WaitStable = %+v, %v; want no reading", reading, err)
	}
}

func TestWaitStableTellsWhatTheScaleWasDoing(t *testing.T) {
	dialer := newWires()
	line := openLine(t, dialer, settings(newStepClock()))
	end := dialer.end(line)
	ctx, cancel := context.WithCancel(t.Context())
	result := weighing(ctx, line)
	say(t, line, end, "[+   52300lb G M]\r\n")
	cancel()
	got := <-result
	if !errors.Is(got.err, context.Canceled) || !strings.Contains(got.err.Error(), "No steady weight came. West scale is still moving at 52,300 lb.") {
		t.Errorf("the wait ended with %v, want it to say the truck was moving", got.err)
	}
}

func TestWaitStableOutlivesALostLine(t *testing.T) {
	clock, dialer := newStepClock(), newWires()
	line := openLine(t, dialer, settings(clock))
	result := weighing(t.Context(), line)
	end := dialer.end(line)
	say(t, line, end, "[+   52300lb G M]\r\n")
	end.Close()
	clock.step()
	got := keepSaying(t, line, dialer.end(line), "[+   52320lb G S]\r\n", result)
	if got.err != nil || !got.reading.Weight.Equal(lb("52320")) {
		t.Errorf("weighed %s, %v; want 52,320 lb after the line came back", got.reading.Weight, got.err)
	}
}

func TestWaitStableEndsWithTheLink(t *testing.T) {
	dialer := newWires()
	line, err := New(dialer, settings(newStepClock()))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := line.WaitStable(t.Context()); !errors.Is(err, ErrNoReading) {
		t.Errorf("waiting on a link never opened gave %v", err)
	}
	if err := line.Open(t.Context()); err != nil {
		t.Fatal(err)
	}
	result := weighing(t.Context(), line)
	dialer.end(line)
	if err := line.Close(); err != nil {
		t.Fatal(err)
	}
	if got := <-result; !errors.Is(got.err, ErrNoReading) || !strings.Contains(got.err.Error(), "the link is not open") {
		t.Errorf("the wait ended with %v, want it to say the link is not open", got.err)
	}
}
