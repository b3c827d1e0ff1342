package main

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"tenthpoint/internal/book/place"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalelink"
	"tenthpoint/ui/session"
)

// indicator is the truck scale's display as the desk reads it.
type indicator struct {
	line  *scalelink.Line
	scale scalelink.Scale
}

var _ session.Indicator = indicator{}

// Latest returns the weight on the display.
func (i indicator) Latest() (session.Display, error) {
	reading, err := i.line.Latest()
	if err != nil {
		return session.Display{}, err
	}
	return session.Display{Weight: reading.Weight, Condition: conditionOf(i.scale.Accept(reading), reading)}, nil
}

// conditions are the messages about a reading that may not go on a ticket, the gravest first.
var conditions = []struct {
	why scalelink.Reason
	is  session.Condition
}{
	{scalelink.BrokenScale, session.Faulty}, {scalelink.WrongUnit, session.OtherUnit}, {scalelink.NotGross, session.Net},
	{scalelink.OverCapacity, session.Over}, {scalelink.InMotion, session.Moving}, {scalelink.NotAtRest, session.Moving},
	{scalelink.OffDivision, session.Undivided},
}

// conditionOf is the condition of a reading, from what keeps it from a ticket. An empty
// deck at rest is at rest.
func conditionOf(refused error, r scalelink.Reading) session.Condition {
	var why scalelink.Refused
	if !errors.As(refused, &why) {
		return session.AtRest
	}
	switch {
	case r.State == scalelink.Over:
		return session.Over
	case r.State == scalelink.Under:
		return session.Under
	case r.Weight.Sign() < 0:
		return session.BelowZero
	}
	for _, c := range conditions {
		if why.Has(c.why) {
			return c.is
		}
	}
	return session.AtRest
}

// Weigh waits for a weight at rest that may go on a ticket.
func (i indicator) Weigh(ctx context.Context) (quantity.Amount, error) {
	reading, err := scalelink.Weigh(ctx, i.line, i.scale)
	return reading.Weight, err
}

// profileName is the file beside the book that describes the frames of the
// indicator; without it the example frames are expected.
const profileName = "scale.toml"

// link connects to the indicator of a scale. It returns nil where weights are typed.
func (p *program) link(ctx context.Context, s elevator.Scale, book string) (session.Indicator, error) {
	if s.Link == "" {
		return nil, nil
	}
	scale := scalelink.Scale{Name: s.ID, Capacity: s.Capacity, Division: s.Division}
	dialer, profile, err := p.wire(ctx, s.Link, scale, book)
	if err != nil {
		return nil, err
	}
	line, err := scalelink.New(dialer, scalelink.Settings{
		Profile: profile, Scale: scale, Steady: scalelink.Steady{Divisions: 1, Readings: 3},
	})
	if err != nil {
		return nil, err
	}
	if err := line.Open(ctx); err != nil {
		return nil, err
	}
	p.linked = append(p.linked, line.Close)
	return indicator{line, scale}, nil
}

// wire returns the connection of a scale and the profile of its frames. A simulated one sends the
// example frames.
func (p *program) wire(ctx context.Context, link string, scale scalelink.Scale, book string) (scalelink.Dialer, scalelink.Profile, error) {
	if link == elevator.SimulatedLink {
		dialer, err := p.simulate(ctx, scale)
		return dialer, scalelink.ExampleColumns(), err
	}
	dialer, err := dialerOf(link)
	if err != nil {
		return nil, scalelink.Profile{}, err
	}
	profile, err := profileBeside(book)
	return dialer, profile, err
}

// dialerOf returns the dialer of a link's indicator.
func dialerOf(link string) (scalelink.Dialer, error) {
	w, err := elevator.ParseLink(link)
	if err != nil {
		return nil, err
	}
	if w.Host != "" {
		return scalelink.TCP{Address: w.Host}, nil
	}
	port := scalelink.Serial{Port: w.Port, Baud: w.Baud, DataBits: w.DataBits, Parity: w.Parity, StopBits: w.StopBits}
	return port, port.Check()
}

func profileBeside(book string) (scalelink.Profile, error) {
	path := filepath.Join(place.Beside(book), profileName)
	text, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return scalelink.ExampleColumns(), nil
	case err != nil:
		return scalelink.Profile{}, message.Storage.Errorf("the description of the indicator cannot be read: %w", err)
	}
	return scalelink.ParseProfile(path, text)
}
