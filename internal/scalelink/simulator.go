package scalelink

import (
	"context"
	"errors"
	"fmt"
	"net"
	"sync"
	"time"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Simulator is an indicator without a scale. It sends the frames of
// ExampleColumns to everyone who connects, one each Every, and calls a weight
// at rest by its Steady rule. It is an example and never for trade.
type Simulator struct {
	settings SimulatorSettings

	mu      sync.Mutex
	play    []int64 // divisions still to be shown, one each frame
	deck    int64   // divisions shown now
	rest    *rest
	last    []byte // the frame sent last, for the next client
	callers map[chan []byte]bool
}

// SimulatorSettings define the simulated scale. Zero values of Steady, Every and Clock mean 3
// readings within 1 division, 200 ms, and the wall clock.
type SimulatorSettings struct {
	Scale  Scale
	Steady Steady
	Every  time.Duration
	Clock  Clock
}

// NewSimulator makes an indicator over an empty deck. The error holds every
// fault of the settings.
func NewSimulator(s SimulatorSettings) (*Simulator, error) {
	if s.Steady == (Steady{}) {
		s.Steady = Steady{Divisions: 1, Readings: 3}
	}
	if s.Every <= 0 {
		s.Every = 200 * time.Millisecond
	}
	if s.Clock == nil {
		s.Clock = WallClock{}
	}
	if err := errors.Join(s.Scale.Check(), s.Steady.check(), playable(s.Scale)); err != nil {
		return nil, err
	}
	return &Simulator{
		settings: s,
		rest:     newRest(s.Steady, s.Scale.Division),
		last:     exampleFrame(Reading{Weight: s.Scale.ofDivisions(0), State: Motion, Mode: Gross}),
		callers:  map[chan []byte]bool{},
	}, nil
}

// playable refuses a unit the example frames have no letters for.
func playable(s Scale) error {
	if unit := s.Division.Unit(); unit != quantity.Lb && unit != quantity.Kg {
		return message.Device.Errorf("Scale %s: the simulator shows lb or kg, not %s.", s.Name, unit)
	}
	return nil
}

// RollOn drives a truck of that weight on to the deck. The weight must be
// whole divisions, above zero; more than the scale may show is allowed, so that
// an overload can be tried. A deck that is not empty is refused.
func (s *Simulator) RollOn(weight quantity.Amount) error {
	scale := s.settings.Scale
	if weight.Unit() != scale.Division.Unit() || weight.Sign() <= 0 || !scale.isWhole(weight) {
		return message.Device.Errorf("%s cannot roll on: it must be above zero and whole divisions of %s.", weight, scale.Division)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.deck != 0 || len(s.play) > 0 {
		return message.Device.Errorf("%s cannot roll on: the deck is not empty. Let the truck on it roll off.", weight)
	}
	s.play = rollOn(scale.divisions(weight))
	return nil
}

// RollOff clears the deck.
func (s *Simulator) RollOff() {
	s.mu.Lock()
	defer s.mu.Unlock()
	whole := s.deck
	if len(s.play) > 0 {
		whole = s.play[len(s.play)-1]
	}
	s.play = rollOff(whole)
}

// Serve answers callers on the listener until ctx ends, and closes it.
func (s *Simulator) Serve(ctx context.Context, listener net.Listener) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	defer context.AfterFunc(ctx, func() { listener.Close() })()
	var everyone sync.WaitGroup
	defer everyone.Wait()
	everyone.Go(func() { s.tick(ctx) })
	for {
		conn, err := listener.Accept()
		if ctx.Err() != nil {
			return nil
		}
		if err != nil {
			cancel()
			return message.Errorf("The simulated scale stopped answering on %s: %w. Start it again.", listener.Addr(), err)
		}
		frames := s.welcome()
		everyone.Go(func() { s.talk(ctx, conn, frames) })
	}
}

// waiting is the number of frames a slow caller may be behind; it then misses some, as it would on
// a wire.
const waiting = 8

func (s *Simulator) welcome() chan []byte {
	s.mu.Lock()
	defer s.mu.Unlock()
	frames := make(chan []byte, waiting)
	frames <- s.last
	s.callers[frames] = true
	return frames
}

func (s *Simulator) talk(ctx context.Context, conn net.Conn, frames chan []byte) {
	defer func() {
		s.mu.Lock()
		defer s.mu.Unlock()
		delete(s.callers, frames)
		conn.Close()
	}()
	defer context.AfterFunc(ctx, func() { conn.Close() })()
	for {
		select {
		case <-ctx.Done():
			return
		case frame := <-frames:
			if _, err := conn.Write(frame); err != nil {
				return
			}
		}
	}
}

// tick plays the deck, one frame each Every.
func (s *Simulator) tick(ctx context.Context) {
	for s.settings.Clock.Sleep(ctx, s.settings.Every) == nil {
		s.mu.Lock()
		s.last = exampleFrame(s.step())
		for frames := range s.callers {
			select {
			case frames <- s.last:
			default:
			}
		}
		s.mu.Unlock()
	}
}

// step moves the truck by one frame and reads the deck.
func (s *Simulator) step() Reading {
	if len(s.play) > 0 {
		s.deck, s.play = s.play[0], s.play[1:]
	}
	scale := s.settings.Scale
	reading := Reading{Weight: scale.ofDivisions(s.deck), Mode: Gross}
	if reading.Weight.More(scale.Most()) {
		reading.State = Over
	}
	return s.rest.byRule(reading)
}

// exampleFrame is a reading as a frame of ExampleColumns. Digits are dashes
// when they would mean nothing.
func exampleFrame(r Reading) []byte {
	sign, digits := "+", "--------"
	if r.hasWeight() {
		figure, _ := r.Weight.Decimal()
		digits = figure.Abs().String()
		if figure.Sign() < 0 {
			sign = "-"
		}
	}
	letter := map[State]string{Stable: "S", Motion: "M", Under: "U", Over: "O", Fault: "F"}[r.State]
	mode := map[Mode]string{Gross: "G", Net: "N"}[r.Mode]
	return fmt.Appendf(nil, "[%s%8s%s %s %s]\r\n", sign, digits, r.Weight.Unit(), mode, letter)
}
