package headoffice

import (
	"errors"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/headoffice/across"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/copies"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/office/duelist"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
)

// owners shows whose grain lies at all sites.
type owners struct {
	copiesFlags
	terminal.ListFlags
	Day string `arg:"" optional:"" help:"The day whose evening is shown. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (owners) Help() string {
	return `The daily position record of each site is the site's own; the last lines are the sums. What the company owns is below zero where depositors' grain is gone. A site whose chain has two branches is in no sum.

    tenth office owners
    tenth office owners 2026-10-31`
}

func (c owners) Run(t *terminal.Terminal) error {
	var all, summed across.Owners
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
			records, err := binlog.Position(p, p.Desk, day)
			if err != nil {
				return err
			}
			all.Add(site.Name(), records)
			if parted[site.Site] > 1 {
				forked = append(forked, site.Name())
			} else {
				summed.Add(site.Name(), records)
			}
			return nil
		})
	})
	if err != nil {
		return err
	}
	var rows [][]any
	for _, r := range all.Rows() {
		rows = append(rows, standingRow(r.Site, r))
	}
	for _, r := range summed.Totals() {
		rows = append(rows, standingRow(message.Words("All sites"), r))
	}
	p := &terminal.Session{Terminal: t}
	if err := p.Table(c.ListFlags, "Site\tGrain\tIn the house\tDepositors' grain\tCompany-owned\tShrink not yet posted\tOff by", rows, "No grain lies at any site."); err != nil {
		return err
	}
	warnForked(t, forked)
	return nil
}

func standingRow(site any, r across.Standing) []any {
	return []any{site, message.Words(grain.NameOf(r.Commodity)), r.InHouse, r.Owed, r.Company, r.Between, r.Off}
}

// warnForked names the branches that are in no sum.
func warnForked(t *terminal.Terminal, forked []string) {
	if len(forked) > 0 {
		terminal.Warn(t, terminal.Problem(message.New("%s are branches of one chain and in no sum.", message.Names(", ", forked))))
	}
}

// account shows a grower's account at all sites.
type account struct {
	copiesFlags
	terminal.ListFlags
	Grower string `arg:"" help:"The grower, by code." placeholder:"CODE"`
	From   string `help:"First day of the season." placeholder:"YYYY-MM-DD"`
	To     string `help:"Last day of the season." placeholder:"YYYY-MM-DD"`
}

func (account) Help() string {
	return `What each site has of the grower is the site's own account; the last lines are the sums. Growers that the office publishes have one code at all sites.

    tenth office account 102 --from 2026-08-01 --to 2027-07-31`
}

func (c account) Run(t *terminal.Terminal) error {
	var all across.Account
	err := c.eachBook(t, func(site copies.Copy, p *terminal.Session) error {
		from, to, err := p.Span(c.From, c.To)
		if err != nil {
			return err
		}
		own, err := office.Account(p, p.Desk, c.Grower, from, to)
		if errors.Is(err, message.NotFound) {
			return nil
		}
		all.Add(site.Name(), own)
		return err
	})
	if err != nil {
		return err
	}
	var rows [][]any
	for _, d := range all.Parts {
		rows = append(rows, deliveredRow(d.Site, d))
	}
	for _, d := range all.Totals() {
		rows = append(rows, deliveredRow(message.Words("All sites"), d))
	}
	return (&terminal.Session{Terminal: t}).Table(c.ListFlags, "Site\tGrain\tLoads\tQuantity\tPayable\tWithout price", rows, "No site has a ticket of this grower.")
}

func deliveredRow(site any, d across.Delivered) []any {
	return []any{site, message.Words(d.Name), d.Loads, d.Quantity, d.Payable, d.Later}
}

// due lists what falls due at all sites.
type due struct {
	copiesFlags
	terminal.ListFlags
	Day  string `arg:"" optional:"" help:"Day it is told of. Without it, today." placeholder:"YYYY-MM-DD"`
	Days int    `default:"14" help:"How many days ahead." placeholder:"N"`
}

func (due) Help() string {
	return `The list of each site is the site's own, what has passed first. Storage that is free until a day is told at the site alone, which has the tariff.

    tenth office due
    tenth office due 2026-12-24 --days 30`
}

func (c due) Run(t *terminal.Terminal) error {
	none, _ := tariff.NewSet() // a site's tariffs are files there and not in its chain
	var rows [][]any
	err := c.eachBook(t, func(site copies.Copy, p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		all, err := duelist.Until(office.ReadNow(p, p.Desk), office.DueHouse(p.Desk, none), day, day.AddDays(c.Days))
		for _, one := range all {
			rows = append(rows, []any{site.Name(), one.Day, quantity.Int(int64(day.DaysUntil(one.Day)), quantity.Plain), one.Grower, one.What})
		}
		return err
	})
	if err != nil {
		return err
	}
	return (&terminal.Session{Terminal: t}).Table(c.ListFlags, "Site\tDay\tDays left\tGrower\tWhat", rows, "Nothing falls due in these days.")
}
