package keys

import (
	"crypto/rand"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"
)

type certify struct {
	terminal.BookFlags
	terminal.WhoFlags
	HouseKey string `help:"The file of the house's key; without it, the key is typed from its paper." placeholder:"FILE"`
	Name     string `help:"What this computer is called; without it, what it calls itself." placeholder:"NAME"`
	Key      string `help:"The public key of another computer, 43 letters." placeholder:"KEY"`
}

func (certify) Help() string {
	return `A manager's act. A key of this computer is made where it has none.

    tenth key certify --house-key /mnt/stick/house.key --who "Mae Orton"
    tenth key certify --name "office" --who "Mae Orton"`
}

func (c certify) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		key, err := c.public()
		if err != nil {
			return err
		}
		name, err := computerName(c.Name)
		if err != nil {
			return err
		}
		house, err := houseKey(p, c.HouseKey)
		if err != nil {
			return err
		}
		return certified(p, house, name, key)
	})
}

// public is the key to certify.
func (c certify) public() (signing.Public, error) {
	if c.Key != "" {
		return signing.ParsePublic(c.Key)
	}
	_, own, err := keyfile.MakeOwn()
	if err != nil {
		return signing.Public{}, err
	}
	return own.Public(), nil
}

type replace struct {
	terminal.BookFlags
	terminal.WhoFlags
	HouseKey string `help:"The file of the house's key; without it, the key is typed from its paper." placeholder:"FILE"`
	Reason   string `help:"Why the key is replaced." required:"" placeholder:"WHY"`
}

func (replace) Help() string {
	return `A manager's act. The new key is certified under the computer's name, also after the one before was lost or stolen. That one counts no more; what it signed stays signed.

    tenth key replace --reason "the computer was sold" --house-key /mnt/stick/house.key --who "Mae Orton"`
}

func (c replace) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		path, own, err := keyfile.MakeOwn()
		if err != nil {
			return err
		}
		keys, err := keyring.Read(p, p.File)
		if err != nil {
			return err
		}
		was, known := keys.Find(own.Public())
		if !known {
			return terminal.Refusal("Certify it with \"tenth key certify\"", "this computer's key was never certified, so there is nothing to replace")
		}
		house, err := houseKey(p, c.HouseKey)
		if err != nil {
			return err
		}
		next, err := signing.NewKey(rand.Reader)
		if err != nil {
			return err
		}
		err = p.Desk.Batch(p, func(w *scalehouse.Batch) error {
			if was.Ended == nil {
				if err := scalehouse.RecordKey(p, w, signing.Ended{Key: was.Key, Cause: signing.Replaced, Reason: c.Reason}); err != nil {
					return err
				}
			}
			return scalehouse.RecordKey(p, w, house.Certify(was.Computer, next.Public()))
		})
		if err != nil {
			return err
		}
		if err := keyfile.Replace(path, next); err != nil {
			return err
		}
		p.Say("%v has a new key: %v.", was.Computer, next.Public().Fingerprint())
		return nil
	})
}
