package headoffice

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/copies"
)

// setup makes an office.
type setup struct{ officeFlags }

func (setup) Help() string {
	return `The role that does it keeps the office: it must be allowed to make schemas and roles in the database. Others read after "GRANT head_office_reader TO ..." in PostgreSQL.

    tenth office setup --office postgres://keeper@office.example/grain`
}

func (c setup) Run(t *terminal.Terminal) error {
	o, err := central.SetUp(t, c.Office, c.Schema)
	if err != nil {
		return err
	}
	t.Say("The head office %v is ready. Add its sites with \"tenth office add\".", c.Schema)
	return o.Close()
}

// add enters a site.
type add struct {
	officeFlags
	Letters string `arg:"" help:"Its letters: a capital letter and up to seven more letters or digits."`
	Name    string `arg:"" help:"Its name."`
}

func (add) Help() string {
	return `The site signs in as a role of its own, which reads and sends nothing but its own chain. It has no password yet: who keeps the server gives it one, or a certificate.

    tenth office add KH "Kent Hill"`
}

func (c add) Run(t *terminal.Terminal) error {
	return c.with(t, func(o *central.Office) error {
		s, err := o.AddSite(t, c.Letters, c.Name)
		if err != nil {
			return err
		}
		t.Say("%v, %v, signs in as the role %v. Give it a password in PostgreSQL: \\password %v", s.Letters, s.Name, s.Role, s.Role)
		return nil
	})
}

// letters gives letters to a branch.
type letters struct {
	officeFlags
	Site    string `arg:"" help:"The site."`
	Branch  int    `arg:"" help:"The number of the branch, from 2 on."`
	Letters string `arg:"" help:"The letters it goes on under."`
}

func (letters) Help() string {
	return `A chain has a second branch where a book was restored from an older copy and worked on. Its tickets have numbers that the first branch has as well, so it goes on under letters of its own.

    tenth office letters KH 2 KHB`
}

func (c letters) Run(t *terminal.Terminal) error {
	return c.with(t, func(o *central.Office) error {
		if err := o.GiveLetters(t, c.Site, c.Branch, c.Letters); err != nil {
			return err
		}
		t.Say("Branch %d of %v goes on as %v.", c.Branch, c.Site, c.Letters)
		return nil
	})
}

// rebuild makes a book again.
type rebuild struct {
	officeFlags
	Name string `arg:"" help:"The letters of the site, or of a branch."`
	To   string `arg:"" help:"The book to make; one that is there already is never written over." placeholder:"PATH"`
}

func (rebuild) Help() string {
	return `Facts, rates, lists and numbers are as the site sent them; text that was typed and not yet entered is not among them. A site that lost its book goes on in this one, once all that it sent since is in it.

    tenth office rebuild KH house.book`
}

func (c rebuild) Run(t *terminal.Terminal) error {
	if err := mustBeNew(c.To); err != nil {
		return err
	}
	return c.with(t, func(o *central.Office) error {
		chain, err := chainNamed(t, o, c.Name)
		if err != nil {
			return err
		}
		made, err := copies.Make(t, o, chain, c.To)
		if err != nil {
			return err
		}
		t.Say("%s holds the book of %v up to fact %d.", c.To, c.Name, chain.Head.Seq)
		if said := made.Said(); !said.IsZero() {
			t.Say("%s", said)
		}
		return nil
	})
}
