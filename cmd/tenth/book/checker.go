package book

import (
	"io"
	"os"
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/checker"
	"tenthpoint/internal/checker/page"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/posting"
	"tenthpoint/schedules"
)

// Checker writes the page by which a grower settles a ticket again.
type Checker struct {
	terminal.BookFlags
	Out     string `required:"" help:"The file to write; one that is there is written over." placeholder:"PATH"`
	Generic bool   `help:"The page for every house, with the example rates and without a book."`
}

func (Checker) Help() string {
	return `One file of HTML, which opens from a disk on a computer or an Android phone and from any plain web address. It reads the square on a slip from a picture, or figures that are typed; checks the signature; settles the ticket again by the engine of its time; and shows every line beside what the slip says. It keeps nothing and sends nothing.

The page of a house has its posted rates, its public keys, and the codes of the tickets in its book, and nothing of a grower. Put it where growers find it, and make it anew when rates are posted or a day is closed.

    tenth checker --out check.html
    tenth checker --generic --out check-any.html`
}

func (c Checker) Run(t *terminal.Terminal) error {
	if c.Generic {
		house, err := everyHouse()
		if err != nil {
			return err
		}
		return c.write(house, t.Say)
	}
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		house, err := posting.House(p, p.Desk)
		if err != nil {
			return err
		}
		return c.write(house, p.Say)
	})
}

// everyHouse is the page of no house: with the example rates, which say that they are.
func everyHouse() (h checker.House, err error) {
	set, err := schedules.Editions()
	if err != nil {
		return h, err
	}
	for _, e := range set.All() {
		h.Editions = append(h.Editions, checker.File{Name: e.ID + ".toml", Text: string(e.Text)})
	}
	return h, nil
}

func (c Checker) write(h checker.House, say func(string, ...any)) error {
	if err := atomicfile.Replace(c.Out, func(w io.Writer) error { return page.Write(w, h) }); err != nil {
		return message.Storage.Errorf("the page %v was not written: %w", c.Out, err)
	}
	if err := os.Chmod(c.Out, 0o644); err != nil { // everybody may read it
		return message.Storage.Errorf("the page %v was not written: %w", c.Out, err)
	}
	say("Written to %v, with %d editions of rates. SHA-256 of the engine: %v.", c.Out, len(h.Editions), page.EngineHash())
	return nil
}
