package house

import (
	"crypto/rand"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/message"
	"tenthpoint/internal/pin"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"
)

type personPIN struct {
	terminal.BookFlags
	terminal.WhoFlags
	Name string `arg:"" help:"Full name, as it stands on tickets."`
}

func (personPIN) Help() string {
	return `The new PIN is asked for twice and not shown; a script gives it as a line of the input. Whoever has a PIN changes it, after typing the old one; a manager gives anybody one. As soon as a manager has a PIN, managers' acts ask for it; "tenth setup --ask-pin" chooses what else does. The first PIN is a manager's, in a house with a key ("tenth key house"): whoever has that key can take a forgotten PIN away.

A PIN keeps a colleague from acting in your name at an unwatched desk. It keeps nobody out who has the file of the book and time.

    tenth person pin "Mae Orton" --who "Mae Orton"
    tenth setup --ask-pin tickets --who "Mae Orton"`
}

func (c personPIN) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		typed, err := newPIN(t)
		if err != nil {
			return err
		}
		var salt pin.Salt
		if _, err := rand.Read(salt[:]); err != nil {
			return err
		}
		if err := scalehouse.SetPIN(p, p.Desk, c.Name, typed, salt); err != nil {
			return err
		}
		p.Say("%v has a new PIN.", c.Name)
		return nil
	})
}

// newPIN asks for a PIN, twice where a person types it unseen.
func newPIN(t *terminal.Terminal) (string, error) {
	typed, err := t.Secret(message.New("New PIN: "))
	if err != nil || !t.Typing {
		return typed, err
	}
	again, err := t.Secret(message.New("The same again: "))
	if err == nil && again != typed {
		err = terminal.Refusal("Type it again", "the two PINs differ")
	}
	return typed, err
}

type personForgot struct {
	terminal.BookFlags
	terminal.WhoFlags
	Name     string `arg:"" help:"Full name, as it stands on tickets."`
	Reason   string `arg:"" help:"Why the PIN is taken away."`
	HouseKey string `help:"The file of the house's key, where no manager can do it." placeholder:"FILE"`
}

func (personForgot) Help() string {
	return `A manager's act, or that of whoever has the house's key.

    tenth person forgot "Cal Reyes" "forgotten over the winter" --who "Mae Orton"
    tenth person forgot "Mae Orton" "forgotten" --house-key /mnt/stick/house.key --who "Mae Orton"`
}

func (c personForgot) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		var house signing.Key
		if c.HouseKey != "" {
			var err error
			if house, err = keyfile.Read(c.HouseKey); err != nil {
				return err
			}
			if house.IsZero() {
				return terminal.Refusal("Put the stick in", "there is no key %v", c.HouseKey)
			}
		}
		if err := scalehouse.ForgetPIN(p, p.Desk, c.Name, c.Reason, house); err != nil {
			return err
		}
		p.Say("%v has no PIN any more.", c.Name)
		return nil
	})
}
