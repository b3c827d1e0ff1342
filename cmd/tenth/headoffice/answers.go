package headoffice

import (
	"errors"
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/cmd/tenth/tickets"
	"tenthpoint/internal/audit"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/across"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/copies"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// sheets shows day sheets.
type sheets struct {
	copiesFlags
	terminal.DocumentFlags
	Day string `arg:"" optional:"" help:"The business day, also today or yesterday. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (sheets) Help() string {
	return `Each sheet is the one that the site has, figure by figure.

    tenth office sheets yesterday
    tenth office sheets 2026-10-03 --out papers --as pdf`
}

func (c sheets) Run(t *terminal.Terminal) error {
	return c.eachBook(t, func(site copies.Copy, p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		doc, err := office.DayPaper(p, p.Desk, day)
		if err != nil {
			return err
		}
		if c.Out == "" && !c.JSON {
			p.Say("%v", site.Name())
		}
		return p.ShowDocument(c.DocumentFlags, doc, site.Name()+"-day-"+day.String(), true)
	})
}

// position shows what lies at all sites.
type position struct {
	copiesFlags
	terminal.ListFlags
	Day string `arg:"" optional:"" help:"The day whose evening is shown. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (position) Help() string {
	return `The position of each site is the site's own, its bins added up; the last lines are the sums. A site whose chain has two branches is in no sum: both hold the grain that was there before they parted.

    tenth office position
    tenth office position 2026-10-31`
}

func (c position) Run(t *terminal.Terminal) error {
	var all, summed across.Position
	var forked []string
	err := c.with(t, func(o *central.Office) error {
		parted, err := branches(t, o)
		if err != nil {
			return err
		}
		return c.eachBookOf(t, o, func(site copies.Copy, p *terminal.Session) error {
			day, err := p.DayOrToday(c.Day)
			if err != nil {
				return err
			}
			own, err := office.PositionOn(p, p.Desk, day)
			if err != nil {
				return err
			}
			all.Add(site.Name(), own)
			if parted[site.Site] > 1 {
				forked = append(forked, site.Name())
			} else {
				summed.Add(site.Name(), own)
			}
			return nil
		})
	})
	if err != nil {
		return err
	}
	p := &terminal.Session{Terminal: t}
	var rows [][]any
	for _, r := range all.Rows() {
		rows = append(rows, []any{r.Site, message.Words(r.Name), r.Weight})
	}
	for _, r := range summed.Totals() {
		rows = append(rows, []any{message.Words("All sites"), message.Words(r.Name), r.Weight})
	}
	if err := p.Table(c.ListFlags, "Site\tGrain\tWeight", rows, "No grain lies at any site."); err != nil {
		return err
	}
	warnForked(t, forked)
	return nil
}

// find finds tickets.
type find struct {
	copiesFlags
	terminal.ListFlags
	Text []string `arg:"" optional:"" help:"Words of a search: part of a name, truck or grain, a number, a day or month, today, yesterday, void, corrected, refused."`
	Most int      `help:"List at most so many of each site, the newest." default:"50"`
}

func (find) Help() string {
	return `    tenth office find holloway
    tenth office find void 2026-10`
}

func (c find) Run(t *terminal.Terminal) error {
	rows := [][]any{}
	err := c.eachBook(t, func(site copies.Copy, p *terminal.Session) error {
		search := office.ReadSearch(strings.Join(c.Text, " "), p.Today(), p.Printer.Word).Search
		search.Limit = c.Most
		found, _, err := office.FindTickets(p, p.Desk, search)
		if err != nil {
			return err
		}
		for _, r := range found {
			row, err := tickets.FoundRow(r)
			if err != nil {
				return err
			}
			rows = append(rows, append([]any{site.Name()}, row...))
		}
		return nil
	})
	if err != nil {
		return err
	}
	return (&terminal.Session{Terminal: t}).Table(c.ListFlags, "Site\t"+tickets.FoundColumns, rows, "No ticket is found.")
}

// check checks every site.
type check struct{ copiesFlags }

func (check) Help() string {
	return `Every chain is read from the server and every fact hashed again; then the site's book is made from it as at the site and checked whole, as "tenth verify" does: each load replayed and settled again under the rates kept with it, each closed day made again. The exit status is 0 only where all is sound.

    tenth office audit`
}

func (c check) Run(t *terminal.Terminal) error {
	var unsound []error
	found := func(name string, problems []message.Text) {
		for _, problem := range problems {
			unsound = append(unsound, terminal.Problem(message.New("%v: %s", name, problem)))
		}
	}
	err := c.with(t, func(o *central.Office) error {
		said, err := saidHeads(t, o)
		if err != nil {
			return err
		}
		return c.eachCopy(t, o, func(site copies.Copy) error {
			chain, err := headoffice.Check(o.Facts(t, site.Chain, 1), site.Head, said[site.Site])
			if err != nil {
				return err
			}
			found(site.Name(), chain.Problems)
			return terminal.BookFlags{Book: site.Path}.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
				whole, err := audit.Verify(p, p.Desk, p.File, nil)
				if err != nil {
					return err
				}
				found(site.Name(), whole.Problems)
				t.Say("%v: %d facts up to %v, signed up to fact %d; %d tickets; %d problems.", site.Name(), chain.Facts, site.Head.OnPaper(), chain.Signed.Seq, whole.Tickets, len(chain.Problems)+len(whole.Problems))
				return nil
			})
		})
	})
	if err != nil {
		return err
	}
	return errors.Join(unsound...)
}

// saidHeads are the heads that sites last said their books have; none of a site whose chain has
// branches, for it may have meant any.
func saidHeads(t *terminal.Terminal, o *central.Office) (map[string]journal.Head, error) {
	all, err := o.Sites(t)
	if err != nil {
		return nil, err
	}
	parted, err := branches(t, o)
	said := map[string]journal.Head{}
	for _, s := range all {
		if parted[s.Letters] == 1 {
			said[s.Letters] = s.Said
		}
	}
	return said, err
}

// bookOf says where a copy lies.
type bookOf struct {
	copiesFlags
	Name string `arg:"" help:"The letters of the site, or of a branch." placeholder:"LETTERS"`
}

func (bookOf) Help() string {
	return `The copy is brought up to date, and any command that reads a book reads it: accounts, contracts, tickets with every line worked out. Write nothing in it: a copy that was written in is thrown away.

    tenth show 1042 --book "$(tenth office book KH)"`
}

func (c bookOf) Run(t *terminal.Terminal) error {
	return c.with(t, func(o *central.Office) error {
		chain, err := chainNamed(t, o, c.Name)
		if err != nil {
			return err
		}
		folder, err := c.folder()
		if err != nil {
			return err
		}
		kept, err := refreshed(t, o, folder, chain)
		if err != nil {
			return err
		}
		fmt.Fprintln(t.Stdout, kept.Path)
		return nil
	})
}
