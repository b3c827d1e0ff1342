package money

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
	acts "tenthpoint/internal/scalehouse/money"
	"tenthpoint/internal/tariff"
)

// Sheet are the settlement sheets.
type Sheet struct {
	List sheetList `cmd:"" default:"withargs" help:"List the settlement sheets."`
	Left sheetLeft `cmd:"" help:"What of a grower's tickets is not settled yet."`
	Make sheetMake `cmd:"" help:"Settle tickets of a grower, or parts of them."`
	Show sheetShow `cmd:"" help:"A settlement sheet as a paper."`
	Void sheetVoid `cmd:"" help:"End a settlement sheet; its number stays with it."`
}

func (Sheet) Help() string {
	return `    tenth sheet left 102
    tenth sheet make 102 --ticket 12 --ticket 14=500 --price 4.05 --levy indiana-corn --who "Mae Orton"
    tenth sheet show 1 --out papers
    tenth sheet void 1 --why "wrong price" --who "Mae Orton"
    tenth sheet make 102 --ticket 12 --price 4.15 --corrects 1 --who "Mae Orton"`
}

type sheetList struct {
	terminal.BookFlags
	terminal.ListFlags
	Grower string `help:"Only this grower's, by code or name." placeholder:"GROWER"`
}

func (sheetList) Help() string { return `    tenth sheet list --grower 102` }

func (c sheetList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := money.Sheets(p, p.Desk)
		if err != nil {
			return err
		}
		grower, err := p.OnlyGrower(c.Grower)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, s := range all {
			if grower != "" && s.Grower != grower {
				continue
			}
			state := message.New("in force")
			if !s.InForce() {
				state = message.New("void")
			}
			rows = append(rows, []any{s.Number, s.Day, s.Grower, s.Name, p.GrainName(s.Commodity), s.Figures["quantity"], s.Figures["payable"], state})
		}
		return p.Table(c.ListFlags, "Sheet\tDay\tGrower\tName\tGrain\tQuantity\tPayable\tStanding", rows, "No settlement sheet is made yet.")
	})
}

type sheetLeft struct {
	terminal.BookFlags
	terminal.ListFlags
	Grower string `arg:"" help:"The grower, by code or name." placeholder:"GROWER"`
}

func (sheetLeft) Help() string { return `    tenth sheet left 102` }

func (c sheetLeft) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		grower, err := p.GrowerID(c.Grower)
		if err != nil {
			return err
		}
		left, err := money.UnsettledOf(p, p.Desk, grower)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, u := range left {
			price := message.Text{}
			if u.Price != nil {
				price = message.New("%s", *u.Price)
			}
			rows = append(rows, []any{u.Ticket, u.Day, p.GrainName(u.Commodity), u.Whole, u.Left, u.Under, price})
		}
		return p.Table(c.ListFlags, "Ticket\tDelivered\tGrain\tQuantity\tStill open\tHeld under\tPrice", rows, "Everything is settled.")
	})
}

type sheetMake struct {
	terminal.BookFlags
	terminal.WhoFlags
	Grower   string         `arg:"" help:"The grower, by code or name." placeholder:"GROWER"`
	Ticket   []string       `sep:"none" required:"" help:"A ticket, or a part of it; may be repeated." placeholder:"NUMBER or NUMBER=QUANTITY"`
	Price    string         `help:"Price of what has none yet." placeholder:"MONEY"`
	Contract string         `help:"Settle on this contract. Without it, on the one each ticket names." placeholder:"NUMBER"`
	Sale     bool           `help:"The owner sells now what was held for them until today."`
	Day      string         `help:"Day of the sheet, to which charges run. Without it, today." placeholder:"YYYY-MM-DD"`
	Tariff   string         `help:"The tariff, by id. Without it, the one in force for the grain that day." placeholder:"TARIFF"`
	Levy     []string       `sep:"none" help:"A levy to take, by id; may be repeated." placeholder:"LEVY"`
	Advance  []string       `sep:"none" help:"Money paid out before, with its day; may be repeated." placeholder:"MONEY@YYYY-MM-DD"`
	Payee    []string       `sep:"none" help:"Who is named beside the grower on the payment, such as a lender; may be repeated." placeholder:"NAME"`
	PayAfter string         `help:"Pay not before this day: a payment deferred to another year." placeholder:"YYYY-MM-DD"`
	Corrects int64          `help:"The void sheet whose place this one takes." placeholder:"NUMBER"`
	Width    terminal.Width `help:"Width of the printed working, in letters." default:"76"`
}

func (sheetMake) Help() string {
	return `A manager's act. Each ticket is settled by its own edition and engine; a price on the ticket or of its contract goes before --price. Storage and service run to the day. A part of a ticket takes its part of discounts and services, and the parts add up to the ticket to the cent.

    tenth sheet make 102 --ticket 12 --ticket 14=500 --price 4.05 --levy indiana-corn --who "Mae Orton"
    tenth sheet make 102 --ticket 15 --sale --price 4.05 --advance 2000@2026-10-15 --payee "First Bank" --who "Mae Orton"`
}

func (c sheetMake) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		order, err := c.order(p)
		if err != nil {
			return err
		}
		s, worked, err := acts.Settle(p, p.Desk, order)
		if err != nil {
			return err
		}
		fmt.Fprint(p.Stdout, worked.TextIn(int(c.Width), p.Printer))
		p.Say("Settlement sheet %d for %s: %s payable.", s.Number, s.Name, worked.Payable.Value())
		return nil
	})
}

// order reads what is typed.
func (c sheetMake) order(p *terminal.Session) (o money.Order, err error) {
	if o.Grower, err = p.GrowerID(c.Grower); err != nil {
		return o, err
	}
	if o.Day, err = p.DayOrToday(c.Day); err != nil {
		return o, err
	}
	if o.PayAfter, err = entry.ParseDay("PayAfter", c.PayAfter, p.Today()); err != nil {
		return o, err
	}
	if err := c.rules(p, &o); err != nil {
		return o, err
	}
	unit := o.Tariff.Settle
	for _, text := range c.Ticket {
		number, part, err := terminal.TicketPart(text, func(int64) (quantity.Unit, error) { return unit, nil })
		if err != nil {
			return o, err
		}
		o.Tickets = append(o.Tickets, money.Chosen{Number: number, Quantity: part})
	}
	if c.Price != "" {
		price, err := entry.ParsePrice(c.Price, unit)
		if err != nil {
			return o, err
		}
		o.Price, o.Source = &price, "price of the sheet"
	}
	for _, text := range c.Advance {
		advance, err := readAdvance(text, p.Today())
		if err != nil {
			return o, err
		}
		o.Advances = append(o.Advances, advance)
	}
	o.Contract, o.Sale, o.Payees, o.Corrects = strings.TrimSpace(c.Contract), c.Sale, c.Payee, c.Corrects
	return o, nil
}

// rules finds the tariff and the levies for the grain of the first ticket.
func (c sheetMake) rules(p *terminal.Session, o *money.Order) error {
	first, _, _ := strings.Cut(c.Ticket[0], "=")
	l, err := p.LoadNamed(first)
	if err != nil {
		return err
	}
	grain := l.Details.Commodity
	if c.Tariff != "" {
		o.Tariff, err = tariffNamed(c.BookFlags, c.Tariff)
	} else {
		o.Tariff, err = tariffInForce(c.BookFlags, p, grain, o.Day)
	}
	if err != nil {
		return err
	}
	known, err := ratefiles.ReadLevies(c.RatesFolder())
	if err != nil {
		return err
	}
	for _, id := range c.Levy {
		taken, err := levyFor(known, id, grain, o.Day)
		if err != nil {
			return err
		}
		o.Levies = append(o.Levies, taken)
	}
	return nil
}

// tariffInForce is the tariff of the schedule a grain is settled by; of the main schedule where
// that one has none.
func tariffInForce(f terminal.BookFlags, p *terminal.Session, grain string, day quantity.Date) (*tariff.Edition, error) {
	set, err := ratefiles.ReadTariffs(f.RatesFolder())
	if err != nil {
		return nil, err
	}
	schedule, _ := p.Profile().Schedule(grain)
	return tariff.InForce(set, schedule, grain, day)
}

// levyFor is a levy by its id, if it is taken of the grain on the day.
func levyFor(known *levy.Set, id, grain string, day quantity.Date) (*levy.Levy, error) {
	l, ok := known.ByID(id)
	if !ok {
		var ids []string
		for _, one := range known.All() {
			ids = append(ids, one.ID)
		}
		return nil, terminal.NotFound(terminal.Refusal("Look with \"tenth levy\"", "there is no levy %q here", id), id, ids)
	}
	if l.Commodity != grain {
		return nil, terminal.Refusal("Choose a levy of this grain", "levy %s is taken of %s, not of %s", id, l.Commodity, grain)
	}
	if !day.Between(l.From, l.Until) {
		return nil, terminal.Refusal("Choose the one of that day", "levy %s is taken %s, and the sheet is of %s", id, l.Days(), day)
	}
	return l, nil
}

// readAdvance reads "2000@2026-10-15".
func readAdvance(text string, today quantity.Date) (paysheet.Advance, error) {
	sum, day, ok := strings.Cut(text, "@")
	if !ok {
		return paysheet.Advance{}, terminal.Refusal("Write it with its day, like 2000@2026-10-15", "the advance %q has no day", text)
	}
	amount, err := (quantity.Field{Name: "Advance", Unit: quantity.Dollar, Places: 2, Min: quantity.Of("0.01", quantity.Dollar), Max: quantity.Int(mostLot, quantity.Dollar)}).Parse(sum)
	if err != nil {
		return paysheet.Advance{}, err
	}
	on, err := entry.ParseDay("Advance", day, today)
	return paysheet.Advance{Day: on, Amount: amount}, err
}

type sheetShow struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Number int64 `arg:"" help:"Number of the sheet." placeholder:"NUMBER"`
}

func (sheetShow) Help() string { return `    tenth sheet show 1 --out papers` }

func (c sheetShow) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		s, worked, rules, err := money.SheetNumbered(p, p.Desk, c.Number)
		if err != nil {
			return err
		}
		doc := money.SheetPaper(s, worked, rules, p.GrainName(s.Commodity), p.Profile(), p.Printer)
		return p.ShowDocument(c.DocumentFlags, doc, fmt.Sprintf("sheet-%d", s.Number), false)
	})
}

type sheetVoid struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number int64  `arg:"" help:"Number of the sheet." placeholder:"NUMBER"`
	Why    string `required:"" help:"Why." placeholder:"WORDS"`
}

func (sheetVoid) Help() string { return `    tenth sheet void 1 --why "wrong price" --who "Mae Orton"` }

func (c sheetVoid) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := acts.VoidSheet(p, p.Desk, c.Number, c.Why); err != nil {
			return err
		}
		p.Say("Settlement sheet %d is void. Its tickets can be settled again.", c.Number)
		return nil
	})
}
