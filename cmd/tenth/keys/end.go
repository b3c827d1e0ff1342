package keys

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/signing"
)

type lost struct {
	terminal.BookFlags
	terminal.WhoFlags
	Key    string `arg:"" help:"The computer's name, or the first two groups of its key."`
	Reason string `arg:"" help:"What became of the key."`
}

func (lost) Help() string {
	return `A manager's act. The key counts no more; what it signed stays signed.

    tenth key lost "scale desk" "the disk broke" --who "Mae Orton"`
}

func (c lost) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		return end(p, c.Key, signing.Ended{Cause: signing.Lost, Reason: c.Reason})
	})
}

type stolen struct {
	terminal.BookFlags
	terminal.WhoFlags
	Key    string `arg:"" help:"The computer's name, or the first two groups of its key."`
	Reason string `arg:"" help:"What became of the key."`
	Since  string `help:"When it was taken; what it signed from then on proves nothing." placeholder:"\"2026-10-01 18:00\""`
}

func (stolen) Help() string {
	return `A manager's act. The key counts no more. With --since the check of the book counts what it signed from that time on.

    tenth key stolen "scale desk" "burglary" --since "2026-10-01 18:00" --who "Mae Orton"`
}

func (c stolen) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		since, err := t.Moment(c.Since)
		if err != nil {
			return err
		}
		return end(p, c.Key, signing.Ended{Cause: signing.Stolen, Reason: c.Reason, Since: since})
	})
}

// end records the end of a computer's key.
func end(p *terminal.Session, called string, f signing.Ended) error {
	c, err := computerCalled(p, called)
	if err != nil {
		return err
	}
	f.Key = c.Key
	if err := record(p, f); err != nil {
		return err
	}
	p.Say("The key of %v (%v) counts no more.", c.Computer, c.Key.Fingerprint())
	return nil
}
