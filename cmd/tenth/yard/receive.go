// Package yard holds the commands for trucks that have no ticket yet: from the
// scale to the ticket in one line, or act by act as they come and go.
package yard

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/book"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Receive takes one load from the scale to its ticket.
type Receive struct {
	terminal.BookFlags
	terminal.WhoFlags
	terminal.DetailFlags
	terminal.WeightFlags
	terminal.SampleFlags
	terminal.ConfirmFlags
	terminal.PaperFlags
	Repeat string `help:"Take grower, grain, place and terms from the last ticket, or from the last one of a truck; flags given as well go before." placeholder:"last|TRUCK"`
	Ask    bool   `help:"Ask for what is missing also when nobody sits at the terminal."`
	terminal.AnswerFlags
}

func (Receive) Help() string {
	return `Everything may be given by flags. At a terminal, what is missing is asked for. The load is written down, settled and ticketed in one act: when any of it cannot be, nothing is written.

    tenth receive --grower 101 --commodity corn --truck 7 --gross 52300 --tare 24300 \
        --manual "read from the indicator" --moisture 18.0 --factor test-weight=54.2 \
        --bin P1 --out slips
    tenth receive --grower Holloway --commodity corn --truck 7 --gross 52300 \
        --stored-tare --manual "read from the indicator" --moisture 18.0 --price 4.12
    tenth receive --repeat last --gross 52480 --stored-tare --manual "read from the indicator" --moisture 17.8
    tenth receive

Weights are typed, so the ticket marks them MANUAL WT with the reason given by --manual. What the house asks about a load is refused until --confirm answers it. To print only, and write no files, leave --out out.`
}

func (c Receive) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if t.Typing || c.Ask {
			if err := c.ask(p); err != nil {
				return err
			}
		}
		l, err := c.Enter(p)
		if err != nil {
			return err
		}
		return p.HandOut(l, c.PaperFlags, c.AnswerFlags)
	})
}

// Enter records the load and returns it with its ticket.
func (c Receive) Enter(p *terminal.Session) (*load.Load, error) {
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
		number, err = scalehouse.Issue(p, w, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	warn(p, form, tried)
	return office.Ticket(p, p.Desk, number)
}

// form is the load as the flags say it.
func (c Receive) form(p *terminal.Session) (*entry.Form, error) {
	sample, err := c.SampleFlags.Texts()
	if err != nil {
		return nil, err
	}
	answers, err := c.ConfirmFlags.Texts()
	if err != nil {
		return nil, err
	}
	before, err := c.repeated(p)
	if err != nil {
		return nil, err
	}
	return p.Entered(p.Form(nil, load.Inbound, c.WeightFlags), before, c.DetailFlags.Texts(), c.WeightFlags.Texts(), sample, answers)
}

// repeated are the texts taken from the ticket before, those of the flags apart.
func (c Receive) repeated(p *terminal.Session) (terminal.Texts, error) {
	if c.Repeat == "" {
		return nil, nil
	}
	if c.Grower != "" {
		return nil, terminal.Refusal("Leave one of them out", "--repeat takes the grower of the ticket before, and --grower names one")
	}
	last, err := lastReceived(p, c.Repeat)
	if err != nil {
		return nil, err
	}
	texts := terminal.Texts(entry.Repeated(office.NewEntering(p, p.Desk), last))
	for field := range c.DetailFlags.Texts() {
		delete(texts, field)
	}
	return texts, nil
}

// lastReceived is the last ticket for grain that came, of all or of a truck.
func lastReceived(p *terminal.Session, which string) (*load.Load, error) {
	filter := book.LoadFilter{FromTicket: 1}
	if !strings.EqualFold(which, "last") {
		filter.Truck = which
	}
	last, found, err := office.LastReceived(p, p.Desk, filter)
	if err == nil && !found {
		err = terminal.Refusal("Give the load in full", "there is no ticket to repeat")
	}
	return last, err
}
