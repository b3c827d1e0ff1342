package tickets

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/book"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
)

// Find finds tickets.
type Find struct {
	terminal.BookFlags
	Text      string `arg:"" optional:"" help:"Part of a grower's name, a truck or a grain; or a ticket's number."`
	Grower    string `help:"Grower, by code; also where the grower only shares." placeholder:"CODE"`
	Truck     string `help:"Truck." placeholder:"TRUCK"`
	Commodity string `help:"Grain." placeholder:"GRAIN"`
	Bin       string `help:"Pit or bin." placeholder:"BIN"`
	From      string `help:"First day of issue." placeholder:"YYYY-MM-DD"`
	To        string `help:"Last day of issue." placeholder:"YYYY-MM-DD"`
	Most      int    `help:"List at most so many, the newest." default:"50"`
	JSON      bool   `help:"Print for programs: every figure as text."`
}

func (Find) Help() string {
	return `    tenth find holloway
    tenth find --grower 102 --commodity corn --from 2026-10-01
    tenth find --truck 7 --json`
}

// foundTicket is one ticket in a list.
type foundTicket struct {
	Ticket    string `json:"ticket"`
	Status    string `json:"status"`
	Day       string `json:"day"`
	Grower    string `json:"grower"`
	Commodity string `json:"commodity"`
	Truck     string `json:"truck"`
	Net       string `json:"net"`
	Moisture  string `json:"moisture"`
	Quantity  string `json:"quantity"`
	Payable   string `json:"payable"`
}

func (c Find) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		filter, err := c.filter()
		if err != nil {
			return err
		}
		rows, err := p.File.Loads(p, filter)
		if err != nil {
			return err
		}
		all := []foundTicket{}
		for _, r := range rows {
			found, err := foundIn(r)
			if err != nil {
				return err
			}
			all = append(all, found)
		}
		if c.JSON {
			return p.PrintJSON(all)
		}
		return listFound(p, all, len(all) == c.Most)
	})
}

func (c Find) filter() (book.LoadFilter, error) {
	f := book.LoadFilter{
		Text: c.Text, Grower: c.Grower, Truck: c.Truck, Bin: c.Bin, FromDay: c.From, ToDay: c.To,
		FromTicket: 1, Newest: true, Limit: c.Most,
	}
	for name, day := range map[string]string{"From": c.From, "To": c.To} {
		if _, err := entry.ParseDay(name, day); err != nil {
			return f, err
		}
	}
	if c.Commodity == "" {
		return f, nil
	}
	grain, err := entry.Commodity(c.Commodity)
	f.Commodity = grain.ID
	return f, err
}

func foundIn(r book.LoadRow) (foundTicket, error) {
	f := foundTicket{
		Ticket: fmt.Sprint(r.Ticket), Status: r.Phase, Day: r.IssuedDay, Grower: r.GrowerName,
		Commodity: r.Commodity, Truck: r.Truck, Payable: load.Disposition(r.Disposition).Unpriced(),
	}
	s, err := r.Recorded().Summary()
	if err != nil {
		return f, fmt.Errorf("ticket %d: %w", r.Ticket, err)
	}
	f.Net = s.ScaleNet.FixedString(0)
	if s.Moisture != nil {
		f.Moisture, f.Quantity = s.Moisture.FixedString(1), s.Quantity.FixedString(2)
	}
	if s.Priced() {
		f.Payable = s.Payable.FixedString(2)
	}
	return f, nil
}

// listFound prints tickets in columns.
func listFound(p *terminal.Session, all []foundTicket, more bool) error {
	rows := [][]string{}
	for _, f := range all {
		rows = append(rows, []string{f.Ticket, f.Status, f.Day, f.Grower, f.Commodity, f.Truck, f.Net, f.Moisture, f.Quantity, f.Payable})
	}
	heads := []string{"Ticket", "Status", "Day", "Grower", "Grain", "Truck", "Net", "Moisture", "Quantity", "Payable"}
	if err := p.Table(terminal.ListFlags{}, heads, rows, "No ticket is like that."); err != nil {
		return err
	}
	if more {
		p.Say("There may be more: ask for them with --most.")
	}
	return nil
}
