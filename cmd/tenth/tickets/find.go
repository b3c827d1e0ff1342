package tickets

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/book"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/title"
)

// Find is the command that searches tickets.
type Find struct {
	terminal.BookFlags
	Text      []string `arg:"" optional:"" help:"Words of a search, as the window understands them: part of a name, truck or grain, a number, a day or month, today, yesterday, void, corrected, refused."`
	Grower    string   `help:"Grower, by code or name; also where the grower only shares." placeholder:"GROWER"`
	Truck     string   `help:"Truck, by number or plate." placeholder:"TRUCK"`
	Commodity string   `help:"The grain, by id or name." placeholder:"GRAIN"`
	Bin       string   `help:"Pit or bin." placeholder:"BIN"`
	From      string   `help:"First day of issue." placeholder:"YYYY-MM-DD"`
	To        string   `help:"Last day of issue." placeholder:"YYYY-MM-DD"`
	Most      int      `help:"List at most so many, the newest." default:"50"`
	JSON      bool     `help:"Print for programs: every figure as text."`
}

func (Find) Help() string {
	return `    tenth find holloway
    tenth find void 2026-10
    tenth find yesterday truck 7
    tenth find grain corn moisture 18..20
    tenth find 2026-10-03 hour 14
    tenth find with premiums
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
		search, err := c.search(p)
		if err != nil {
			return err
		}
		rows, count, err := office.FindTickets(p, p.Desk, search)
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
		return listFound(p, all, count)
	})
}

// search is the line of words, narrowed by the flags.
func (c Find) search(p *terminal.Session) (s office.Search, err error) {
	if c.Most < 1 || c.Most > mostFound {
		return s, terminal.Refusal("Narrow the search instead", "--most is 1 to %d", mostFound)
	}
	s = office.ReadSearch(strings.Join(c.Text, " "), p.Today(), p.Printer.Word).Search
	s.Limit = c.Most
	h := office.NewEntering(p, p.Desk)
	if c.Grower != "" {
		if s.Grower, err = p.GrowerID(c.Grower); err != nil {
			return s, err
		}
	}
	if c.Truck != "" {
		if s.Truck, err = truckID(h, c.Truck); err != nil {
			return s, err
		}
	}
	if c.Commodity != "" {
		grain, err := entry.CommodityHere(p.Profile(), c.Commodity)
		if err != nil {
			return s, err
		}
		s.Commodity = grain.ID
	}
	if c.Bin != "" {
		if s.Bin, err = entry.Bin(h, c.Bin); err != nil {
			return s, err
		}
	}
	return s, c.days(p, &s)
}

// mostFound is the number of tickets in one list.
const mostFound = 100_000

// truckID finds a truck by number or plate; an unknown one may be on tickets.
func truckID(in entry.Lists, text string) (string, error) {
	truck, known, err := entry.Truck(in, text)
	if err != nil || !known {
		return strings.TrimSpace(text), err
	}
	return truck.ID, nil
}

// days narrows a search to the days of the flags.
func (c Find) days(p *terminal.Session, s *office.Search) error {
	for _, end := range []struct {
		name, typed string
		at          *string
	}{{"From", c.From, &s.FromDay}, {"To", c.To, &s.ToDay}} {
		day, err := entry.ParseDay(end.name, end.typed, p.Today())
		if err != nil {
			return err
		}
		if !day.IsZero() {
			*end.at = day.String()
		}
	}
	return nil
}

func foundIn(r book.LoadRow) (foundTicket, error) {
	f := foundTicket{
		Ticket: fmt.Sprint(r.Ticket), Status: r.Phase, Day: r.IssuedDay, Grower: r.GrowerName,
		Commodity: r.Commodity, Truck: r.Truck, Payable: title.Under(r.Disposition).Unpriced().String(),
	}
	if r.Ticket == 0 { // turned away: it is known by its load, and nothing was settled
		f.Ticket, f.Day, f.Payable = r.ID, r.EndedDay, ""
		return f, nil
	}
	s, err := r.Recorded().Summary()
	if err != nil {
		return f, message.Errorf("ticket %d: %w", r.Ticket, err)
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

// FoundColumns are the headings of a list of tickets found.
const FoundColumns = "Ticket\tStatus\tDay\tGrower\tGrain\tTruck\tNet\tMoisture\tQuantity\tPayable"

// FoundRow is a ticket under FoundColumns.
func FoundRow(r book.LoadRow) ([]any, error) {
	f, err := foundIn(r)
	return f.row(), err
}

func (f foundTicket) row() []any {
	return []any{f.Ticket, message.Words(f.Status), f.Day, f.Grower, message.Words(f.Commodity), f.Truck, f.Net, f.Moisture, f.Quantity, message.Words(f.Payable)}
}

// listFound prints tickets in columns.
func listFound(p *terminal.Session, all []foundTicket, count int64) error {
	rows := [][]any{}
	for _, f := range all {
		rows = append(rows, f.row())
	}
	if err := p.Table(terminal.ListFlags{}, FoundColumns, rows, "No ticket is found."); err != nil {
		return err
	}
	if more := count - int64(len(all)); more > 0 {
		p.Say("%d more are not listed: ask for them with --most.", more)
	}
	return nil
}
