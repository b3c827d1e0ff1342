package scalelink

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"testing"
)

// settling waits for the next reading at rest in the background.
func settling(ctx context.Context, line *Line) chan weighed {
	result := make(chan weighed, 1)
	go func() {
		reading, err := line.WaitStable(ctx)
		result <- weighed{reading, err}
	}()
	return result
}

// weighed is the result of a wait.
type weighed struct {
	reading Reading
	err     error
}

// weighTruck waits for a weight in the background.
func weighTruck(ctx context.Context, line *Line) chan weighed {
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
	result := weighTruck(t.Context(), line)
	got := keepSaying(t, line, end, "[+   52300lb G M]\r\n[+   52320lb G S]\r\n[+   52320lb G S]\r\n", result)
	if got.err != nil || !got.reading.Weight.Equal(lb("52320")) {
		t.Errorf("weighed %s, %v; want 52,320 lb", got.reading.Weight, got.err)
	}
}

func TestWeighRefusesAndStillShows(t *testing.T) {
	dialer := newWires()
	line := openLine(t, dialer, settings(newStepClock()))
	end := dialer.end(line)
	got := keepSaying(t, line, end, "[+   52310lb N S]\r\n", weighTruck(t.Context(), line))
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
	end := dialer.end(line)
	say(t, line, end, "[+   52300lb G S]\r\n")
	say(t, line, end, "[+   52300lb G S]\r\n")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	reading, err := line.WaitStable(ctx)
	if !errors.Is(err, context.Canceled) || reading.Raw != "" || !errortest.Device().Met(err) {
		t.Errorf("WaitStable = %+v, %v; want no reading", reading, err)
	}
}

func TestWaitStableTellsWhatTheScaleWasDoing(t *testing.T) {
	dialer := newWires()
	line := openLine(t, dialer, settings(newStepClock()))
	end := dialer.end(line)
	ctx, cancel := context.WithCancel(t.Context())
	result := settling(ctx, line)
	say(t, line, end, "[+   52300lb G M]\r\n")
	cancel()
	got := <-result
	if !errors.Is(got.err, context.Canceled) || !strings.Contains(got.err.Error(), "52,300 lb") {
		t.Errorf("the wait ended with %v, want it to say the truck was moving", got.err)
	}
}

func TestWaitStableOutlivesALostLine(t *testing.T) {
	clock, dialer := newStepClock(), newWires()
	line := openLine(t, dialer, settings(clock))
	result := settling(t.Context(), line)
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
	result := settling(t.Context(), line)
	dialer.end(line)
	if err := line.Close(); err != nil {
		t.Fatal(err)
	}
	if got := <-result; !errors.Is(got.err, ErrNoReading) || !errortest.Device().Met(got.err) {
		t.Errorf("the wait ended with %v, want it to say the link is not open", got.err)
	}
}

// told is a link that tells one thing after another, each as soon as it is asked.
type told struct {
	Link
	next []moment
}

func (l *told) Changed() <-chan struct{} {
	changed := make(chan struct{})
	close(changed)
	return changed
}

func (l *told) Latest() (Reading, error) {
	now := l.next[0]
	if len(l.next) > 1 {
		l.next = l.next[1:]
	}
	return now.reading, now.fault
}

func shown(weight string, state State) moment {
	return moment{reading: Reading{Weight: lb(weight), State: state, Mode: Gross}}
}

// A wait for the truck on the deck takes no weight of the truck behind it.
func TestWeighEndsWithItsTruck(t *testing.T) {
	moving, next, silent := shown("14000", Motion), shown("26000", Stable), moment{fault: fmt.Errorf("%w: nothing is heard", ErrNoReading)}
	tests := []struct {
		name string
		told []moment
		why  error // why the wait ended; nil where the weight at rest is taken
	}{
		{"at rest", []moment{moving, moving, next}, nil},
		{"nothing heard yet", []moment{silent, moving, next}, nil},
		{"deck empty at the start", []moment{shown("0", Motion), moving, next}, nil},
		{"line lost", []moment{moving, silent, next}, ErrNoReading},
		{"over", []moment{moving, shown("0", Over), next}, message.Refused},
		{"under", []moment{moving, shown("0", Under), next}, message.Refused},
		{"fault", []moment{moving, shown("0", Fault), next}, message.Refused},
		{"truck gone", []moment{moving, shown("0", Motion), next}, ErrDeckEmpty},
		{"truck gone, at rest", []moment{moving, shown("0", Stable), next}, message.Refused},
	}
	for _, tt := range tests {
		got, err := Weigh(t.Context(), &told{next: tt.told}, west())
		switch {
		case !errors.Is(err, tt.why):
			t.Errorf("%s: weighed %s, %v; want it to end: %v", tt.name, got.Weight, err, tt.why)
		case err == nil && !got.Weight.Equal(lb("26000")):
			t.Errorf("%s: weighed %s", tt.name, got.Weight)
		}
	}
}
