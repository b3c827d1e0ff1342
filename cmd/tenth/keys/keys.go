// Package keys holds the commands about the keys that sign tickets and the end of the book: the key
// of this computer, and the key of the house that certifies it.
package keys

import (
	"os"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// Key is about the keys of computer and house.
type Key struct {
	Show    show    `cmd:"" default:"withargs" help:"Show the keys of this computer and of the house."`
	House   house   `cmd:"" help:"Make the key of the house, and certify this computer by it."`
	Certify certify `cmd:"" help:"Certify this computer, or another, by the key of the house."`
	Replace replace `cmd:"" help:"Give this computer a new key in place of the one it has."`
	Lost    lost    `cmd:"" help:"Write down that the key of a computer is lost."`
	Stolen  stolen  `cmd:"" help:"Write down that the key of a computer is in strange hands."`
}

// computerName is a name as typed, or what this computer calls itself.
func computerName(typed string) (string, error) {
	if typed = strings.TrimSpace(typed); typed != "" {
		return typed, nil
	}
	name, err := os.Hostname()
	if err != nil || name == "" {
		return "", terminal.Refusal("Name it with --name", "this computer has no name of its own")
	}
	return name, nil
}

// houseKey reads the key of the house from a file, or as it is typed from paper.
func houseKey(p *terminal.Session, file string) (signing.Key, error) {
	if file != "" {
		k, err := keyfile.Read(file)
		if err == nil && k.IsZero() {
			err = terminal.Refusal("Put the stick in, or leave --house-key out and type the key from its paper", "there is no key %v", file)
		}
		return k, err
	}
	text, err := p.Secret(message.New("The key of the house, 14 groups of 4 letters as on its paper: "))
	if err != nil {
		return signing.Key{}, err
	}
	return signing.ReadKey([]byte(text))
}

// certified enters the certificate of a computer's key.
func certified(p *terminal.Session, house signing.Key, name string, key signing.Public) error {
	c := house.Certify(name, key)
	if err := record(p, c); err != nil {
		return err
	}
	p.Say("%v is certified: key %v.", name, key.Fingerprint())
	return nil
}

// computerCalled finds a computer by its name or by the beginning of its key's fingerprint.
func computerCalled(p *terminal.Session, text string) (signing.Computer, error) {
	keys, err := keyring.Read(p, p.File)
	if err != nil {
		return signing.Computer{}, err
	}
	var found []signing.Computer
	for _, c := range keys.Computers() {
		if c.Key.IsCalled(text) || c.Computer == text && c.Ended == nil {
			found = append(found, c)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return signing.Computer{}, terminal.Refusal("\"tenth key\" lists them", "no computer of this house is called %q, and no key begins so", text)
	}
	return signing.Computer{}, terminal.Refusal("Name it by the first two groups of its key", "%d computers are called %q", len(found), text)
}
