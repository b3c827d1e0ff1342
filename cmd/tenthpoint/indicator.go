package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strconv"

	"tenthpoint/internal/house"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalelink"
	"tenthpoint/ui/present"
)

// indicator is the truck scale's display as the desk reads it.
type indicator struct {
	line  *scalelink.Line
	scale scalelink.Scale
}

var _ present.Indicator = indicator{}

// Latest is what the display shows now.
func (i indicator) Latest() (weight quantity.Amount, atRest bool, err error) {
	reading, err := i.line.Latest()
	return reading.Weight, reading.IsStable(), err
}

// Weigh waits for a weight at rest that may go on a ticket.
func (i indicator) Weigh(ctx context.Context) (quantity.Amount, error) {
	reading, err := scalelink.Weigh(ctx, i.line, i.scale)
	return reading.Weight, err
}

// profileName is the file beside the book that describes the frames of the
// indicator; without it the example frames are expected.
const profileName = "scale.toml"

// link begins to listen to the indicator of the first scale that has a link.
// It gives nil where weights are typed.
func (p *program) link(ctx context.Context, scales []house.Scale, book string) (present.Indicator, error) {
	if len(scales) == 0 || scales[0].Link == "" {
		return nil, nil
	}
	scale := scalelink.Scale{Name: scales[0].ID, Capacity: scales[0].Capacity, Division: scales[0].Division}
	dialer, profile, err := p.wire(ctx, scales[0].Link, scale, book)
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

// wire is how a scale is reached and how its frames are read. A simulated one
// speaks the example frames.
func (p *program) wire(ctx context.Context, link string, scale scalelink.Scale, book string) (scalelink.Dialer, scalelink.Profile, error) {
	if link == present.SimulatedLink {
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

// dialerOf reads "tcp://192.0.2.10:4001" or "serial:///dev/ttyUSB0?baud=1200".
// A serial line without a speed is taken at 9600 bits per second; 8 data bits,
// no parity and 1 stop bit always.
func dialerOf(link string) (scalelink.Dialer, error) {
	u, err := url.Parse(link)
	switch {
	case err == nil && u.Scheme == "tcp":
		return scalelink.TCP{Address: u.Host}, nil
	case err == nil && u.Scheme == "serial":
		port := scalelink.Serial{Port: u.Host + u.Path, Baud: 9600, DataBits: 8, Parity: "none", StopBits: 1}
		if speed := u.Query().Get("baud"); speed != "" {
			port.Baud, _ = strconv.Atoi(speed) // what is no figure is no speed
		}
		return port, port.Check()
	}
	return nil, fmt.Errorf("the link of the scale, %q, is neither tcp://host:port nor serial:///dev/name. Change it in the set-up", link)
}

func profileBeside(book string) (scalelink.Profile, error) {
	path := filepath.Join(filepath.Dir(book), profileName)
	text, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return scalelink.ExampleColumns(), nil
	case err != nil:
		return scalelink.Profile{}, fmt.Errorf("the description of the indicator cannot be read: %w", err)
	}
	return scalelink.ParseProfile(path, text)
}
