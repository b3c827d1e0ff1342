package keys

import (
	"crypto/rand"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"
)

type house struct {
	terminal.BookFlags
	terminal.WhoFlags
	Out    string `help:"Write the key into this new file, on a stick; without it the key is printed once, to be copied onto paper." placeholder:"FILE"`
	Name   string `help:"What this computer is called; without it, what it calls itself." placeholder:"NAME"`
	Before string `help:"The file of the house's key so far, which signs the new one." placeholder:"FILE"`
	Lost   string `help:"Why the house's key so far cannot sign the new one." placeholder:"WHY"`
}

func (house) Help() string {
	return `A manager's act. The key of the house certifies the keys of its computers and does nothing else, so it belongs into a safe, never onto a computer: on a stick, or on paper as 14 groups of 4 letters. Its fingerprint is no secret: print it on your price list, and everybody can check what you signed.

    tenth key house --out /mnt/stick/house.key --who "Mae Orton"
    tenth key house --lost "the safe burned" --who "Mae Orton"`
}

func (c house) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		name, err := computerName(c.Name)
		if err != nil {
			return err
		}
		_, own, err := keyfile.MakeOwn()
		if err != nil {
			return err
		}
		next, err := signing.NewKey(rand.Reader)
		if err != nil {
			return err
		}
		f, err := c.fact(p, next.Public())
		if err != nil {
			return err
		}
		if err := p.MayManage("Changing the keys of the house"); err != nil {
			return err
		}
		if err := c.handOut(p, next); err != nil {
			return err
		}
		if err := record(p, f); err != nil {
			return err
		}
		p.Say("The house's key: %v.", next.Public().Fingerprint())
		keys, err := keyring.Read(p, p.File)
		if err != nil {
			return err
		}
		if _, known := keys.Find(own.Public()); known { // certified, or ended: "tenth key replace" makes another
			return nil
		}
		return certified(p, next, name, own.Public())
	})
}

// fact is the house's key as the book records it, after the one so far.
func (c house) fact(p *terminal.Session, next signing.Public) (signing.HouseKey, error) {
	keys, err := keyring.Read(p, p.File)
	if err != nil || keys.IsEmpty() {
		return signing.HouseKey{Key: next}, err
	}
	was := keys.House()
	if c.Before != "" {
		before, err := houseKey(p, c.Before)
		if err == nil && before.Public() != was {
			err = terminal.Refusal("\"tenth key\" shows the fingerprint of the right one", "%v is not the key of this house", c.Before)
		}
		return signing.NextHouse(before, next, strings.TrimSpace(c.Lost)), err
	}
	if strings.TrimSpace(c.Lost) == "" {
		return signing.HouseKey{}, terminal.Refusal("Name its file by --before, or say by --lost why it cannot sign", "the house has a key, %v, which signs the next one", was.Fingerprint())
	}
	return signing.HouseKey{Key: next, Before: &was, Reason: c.Lost}, nil
}

// handOut writes the key onto the stick, or prints it once.
func (c house) handOut(p *terminal.Session, k signing.Key) error {
	if c.Out != "" {
		if err := keyfile.Write(c.Out, k); err != nil {
			return err
		}
		p.Say("Written: %s", c.Out)
		return nil
	}
	p.Say("Copy this onto paper and lock it away; it is not shown again:")
	p.Say("    %v", k.Paper())
	return nil
}

// record enters a fact about keys.
func record(p *terminal.Session, f journal.Kinded) error { return scalehouse.RecordKey(p, p.Desk, f) }
