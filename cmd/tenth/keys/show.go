package keys

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"
)

type show struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (show) Help() string {
	return `Each computer has a key, in a file beside its settings that no backup takes along. The key of the house, on paper or on a stick, certifies it. Tickets and the head of the book are signed where this computer has a certified key; without one nothing stops, and slip and check say "unsigned".

A signature shows strangers that a slip or a copy came from this house. It proves nothing against somebody who works at the computer, for it signs for whoever sits there: against him there is the head of the book, noted where he cannot reach it.

    tenth key
    tenth key house --out /mnt/stick/house.key --who "Mae Orton"`
}

func (c show) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		keys, err := keyring.Read(p, p.File)
		if err != nil {
			return err
		}
		if !c.JSON {
			if err := sayThisComputer(p, keys); err != nil {
				return err
			}
		}
		rows := [][]any{}
		for _, one := range keys.Computers() {
			rows = append(rows, []any{one.Computer, one.Key.Fingerprint(), p.Local(one.At), ended(p, one)})
		}
		return p.Table(c.ListFlags, "Computer\tKey\tCertified\tEnded", rows, "No computer is certified.")
	})
}

// sayThisComputer says what key this computer and the house have.
func sayThisComputer(p *terminal.Session, keys *signing.Register) error {
	path, err := keyfile.Path()
	if err != nil {
		return err
	}
	switch own := scalehouse.KeyOf(p.Desk); {
	case own.IsZero():
		p.Say("This computer has no key; %v is not there.", path)
	case keys.Counts(own.Public()):
		p.Say("This computer's key, certified: %v.", own.Public().Fingerprint())
	default:
		p.Say("This computer's key, not certified: %v.", own.Public().Fingerprint())
	}
	if keys.IsEmpty() {
		p.Say("The house has no key, so nothing is signed.")
		return nil
	}
	p.Say("The house's key: %v.", keys.House().Fingerprint())
	return nil
}

func ended(p *terminal.Session, c signing.Computer) message.Text {
	if c.Ended == nil {
		return message.Text{}
	}
	return message.New("%s: %s, %v", p.Local(c.Gone), c.Ended.Cause, c.Ended.Reason)
}
