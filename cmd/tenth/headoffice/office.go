// Package headoffice has the commands between a site and its head office, and those at the office.
package headoffice

import (
	"errors"
	"os"
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/copies"
	"tenthpoint/internal/version"
)

// Office are the commands of a head office, and of a site that has one.
type Office struct {
	Send     send     `cmd:"" help:"At a site: send what the head office lacks of this book."`
	Pack     pack     `cmd:"" help:"At a site: the same into a file, for a stick."`
	Follow   follow   `cmd:"" help:"At a site: take over what the head office publishes, by the key that was compared."`
	Fetch    fetch    `cmd:"" help:"At a site: take over what is new of it."`
	Received received `cmd:"" help:"At a site: list what was taken over."`
	Rebuild  rebuild  `cmd:"" help:"Make a site's book again from what the head office has."`

	Sites    sites      `cmd:"" default:"withargs" help:"At the office: the sites, how far their chains came, and what is wrong."`
	Sheets   sheets     `cmd:"" help:"At the office: the day sheets of all sites."`
	Position position   `cmd:"" help:"At the office: what lies at all sites, and in all."`
	Owners   owners     `cmd:"" help:"At the office: whose grain lies at all sites, and in all."`
	Account  account    `cmd:"" help:"At the office: a grower's account at all sites, and in all."`
	Due      due        `cmd:"" help:"At the office: what falls due at all sites."`
	Find     find       `cmd:"" help:"At the office: find tickets at all sites."`
	Contract contractOf `cmd:"" help:"At the office: a contract that several sites fill, in all."`
	Audit    check      `cmd:"" help:"At the office: check the chain and the book of every site."`
	Book     bookOf     `cmd:"" help:"At the office: where the copy of a site's book lies, for any other command."`

	Publish   publish   `cmd:"" help:"In the office's own book: lay growers' cards and rates down for all sites."`
	Publisher publisher `cmd:"" help:"Say which book publishes."`

	Setup   setup   `cmd:"" help:"Make a head office in a PostgreSQL database, or bring one up to date."`
	Add     add     `cmd:"" help:"Add a site."`
	Letters letters `cmd:"" help:"Say under which letters a branch of a site's chain goes on."`
	Take    take    `cmd:"" help:"Take a file from a stick."`
}

// officeFlags say which head office.
type officeFlags struct {
	Office string `required:"" help:"The server of the head office: postgres://ROLE@HOST/DATABASE. Passwords and certificates come from where PostgreSQL's own programs have them." env:"TENTHPOINT_OFFICE" placeholder:"ADDRESS"`
	Schema string `help:"The schema the office lies in." default:"head_office"`
}

// with opens the office for one command.
func (f officeFlags) with(t *terminal.Terminal, act func(*central.Office) error) error {
	o, err := central.Open(t, f.Office, f.Schema)
	if err != nil {
		return err
	}
	return errors.Join(act(o), o.Close())
}

// copiesFlags say where the office keeps the copies of its sites' books.
type copiesFlags struct {
	officeFlags
	Copies string `help:"The folder of the copies of the sites' books. Without it, one in your data folder." env:"TENTHPOINT_COPIES" placeholder:"DIR"`
}

func (f copiesFlags) folder() (copies.Folder, error) {
	path := f.Copies
	if path == "" {
		data, err := os.UserConfigDir()
		if err != nil {
			return copies.Folder{}, terminal.Refusal("Name one with --copies", "there is no data folder for the copies of sites: %v", err)
		}
		path = filepath.Join(data, "tenthpoint", f.Schema)
	}
	return copies.Folder{Path: path, Program: version.Number + " " + version.Commit()}, nil
}

// eachCopy brings the copies of all chains that hold anything up to date and hands them over, one
// after the other.
func (f copiesFlags) eachCopy(t *terminal.Terminal, o *central.Office, act func(copies.Copy) error) error {
	folder, err := f.folder()
	if err != nil {
		return err
	}
	chains, err := o.Chains(t, "")
	if err != nil {
		return err
	}
	for _, c := range chains {
		if c.Head.Seq == 0 {
			continue
		}
		kept, err := refreshed(t, o, folder, c)
		if err != nil {
			return err
		}
		if err := act(kept); err != nil {
			return err
		}
	}
	return nil
}

// refreshed is the copy of a chain brought up to date, with a warning of what it does not show.
func refreshed(t *terminal.Terminal, o *central.Office, folder copies.Folder, c headoffice.Chain) (copies.Copy, error) {
	kept, err := folder.Refresh(t, o, c)
	if err != nil {
		return kept, err
	}
	if said := kept.Said(); !said.IsZero() {
		terminal.Warn(t, terminal.Problem(said))
	}
	return kept, nil
}

// eachBook opens the copy of every site, as a desk reads it.
func (f copiesFlags) eachBook(t *terminal.Terminal, act func(copies.Copy, *terminal.Session) error) error {
	return f.with(t, func(o *central.Office) error { return f.eachBookOf(t, o, act) })
}

// eachBookOf is the same of an office that is open.
func (f copiesFlags) eachBookOf(t *terminal.Terminal, o *central.Office, act func(copies.Copy, *terminal.Session) error) error {
	return f.eachCopy(t, o, func(c copies.Copy) error {
		return terminal.BookFlags{Book: c.Path}.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
			return act(c, p)
		})
	})
}

// branches are how many branches the chain of each site has.
func branches(t *terminal.Terminal, o *central.Office) (map[string]int, error) {
	chains, err := o.Chains(t, "")
	count := map[string]int{}
	for _, c := range chains {
		count[c.Site]++
	}
	return count, err
}

// chainNamed is the chain that people call by a name: letters, or a site's with a number of a branch.
func chainNamed(t *terminal.Terminal, o *central.Office, name string) (headoffice.Chain, error) {
	chains, err := o.Chains(t, "")
	if err != nil {
		return headoffice.Chain{}, err
	}
	for _, c := range chains {
		if copies.NameOf(c) == name {
			return c, nil
		}
	}
	return headoffice.Chain{}, terminal.Refusal("Look with \"tenth office sites\"", "the head office has no site %v", name)
}
