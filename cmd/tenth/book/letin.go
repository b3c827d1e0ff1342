package book

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/book/engines"
)

// LetIn lets a user of a server into a book.
type LetIn struct {
	terminal.BookFlags
	User string `arg:"" help:"The user, as the server knows it."`
	Read bool   `help:"Only to read: for an examiner or a spreadsheet."`
}

func (LetIn) Help() string {
	return `Of a book on a server. Whoever set it up owns it and does this once for each user; what a user may do is then decided by the server, and nobody can change or remove what was entered.

    tenth let-in clerk --book postgres://owner@office/elevator
    tenth let-in examiner --read --book postgres://owner@office/elevator`
}

func (c LetIn) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, "", func(p *terminal.Session) error {
		if err := engines.LetIn(p, p.File, c.User, !c.Read); err != nil {
			return err
		}
		if c.Read {
			p.Say("%s may read the book.", c.User)
		} else {
			p.Say("%s may work in the book.", c.User)
		}
		return nil
	})
}
