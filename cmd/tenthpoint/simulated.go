package main

import (
	"context"
	"net"

	"tenthpoint/internal/scalelink"
)

// simulate runs the truck scale of an invented elevator on a port that only this computer can
// reach, and returns its dialer. The deck is there to roll trucks on to.
func (p *program) simulate(ctx context.Context, scale scalelink.Scale) (scalelink.Dialer, error) {
	simulator, err := scalelink.NewSimulator(scalelink.SimulatorSettings{Scale: scale})
	if err != nil {
		return nil, err
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	ctx, cancel := context.WithCancel(ctx)
	ended := make(chan error, 1)
	go func() { ended <- simulator.Serve(ctx, listener) }()
	p.deck = simulator
	p.linked = append(p.linked, func() error {
		cancel()
		p.deck = nil
		return <-ended
	})
	return scalelink.TCP{Address: listener.Addr().String()}, nil
}

// unlink stops listening to the scale, last opened first.
func (p *program) unlink() error {
	for i := len(p.linked) - 1; i >= 0; i-- {
		if err := p.linked[i](); err != nil {
			return err
		}
	}
	p.linked = nil
	return nil
}
