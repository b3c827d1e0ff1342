package main

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// receiveCommand brings one load from the scale to its ticket.
type receiveCommand struct {
	bookFlags
	whoFlags
	detailFlags
	weightFlags
	sampleFlags
	paperFlags
	Ask  bool `help:"Ask for what is missing also when nobody sits at the terminal."`
	JSON bool `help:"Print for programs: every figure as text."`
}

func (receiveCommand) Help() string {
	return `Everything may be given by flags. At a terminal, what is missing is asked for. The load is written down, settled and ticketed in one act: when any of it cannot be, nothing is written.

    tenth receive --grower 101 --commodity corn --truck 7 --gross 52300 --tare 24300 \
        --moisture 18.0 --factor test-weight=54.2 --bin P1 --out slips
    tenth receive --grower Holloway --commodity corn --truck 7 --gross 52300 \
        --stored-tare --moisture 18.0 --price 4.12
    tenth receive

Weights are typed, so the ticket marks them MANUAL WT with the reason given by --manual. To print only, and write no files, leave --out out.`
}

func (c receiveCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		if t.typing || c.Ask {
			if err := c.ask(p); err != nil {
				return err
			}
		}
		l, err := c.receive(p)
		if err != nil {
			return err
		}
		return p.hand(l, 0, c.paperFlags, c.JSON)
	})
}

// receive writes the load down and gives it back with its ticket.
func (c receiveCommand) receive(p *post) (*load.Load, error) {
	form, err := c.form(p)
	if err != nil {
		return nil, err
	}
	tried := form.Tried()
	var number int64
	err = p.Batch(p, func(w *scalehouse.Batch) error {
		id, err := scalehouse.Enter(p, w, "", form.Opening())
		if err != nil {
			return err
		}
		number, err = issued(p, w, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	warn(p, form, tried)
	return office.Ticket(p, p.Desk, number)
}

// form is the load as the flags say it.
func (c receiveCommand) form(p *post) (*entry.Form, error) {
	sample, err := c.sampleFlags.texts()
	if err != nil {
		return nil, err
	}
	return entered(p.form(nil, load.Inbound, c.weightFlags), c.detailFlags.texts(), c.weightFlags.texts(), sample)
}
