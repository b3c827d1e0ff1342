package money

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
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
	Release  string         `help:"Why a lender with a notice of lien is not named." placeholder:"REASON"`
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
func (c sheetMake) order(p *terminal.Session) (paysheet.Order, error) {
	house, err := c.house(p)
	if err != nil {
		return paysheet.Order{}, err
	}
	texts := map[string]string{
		settling.Grower: c.Grower, settling.Day: c.Day, settling.Tariff: c.Tariff, settling.Price: c.Price, settling.Contract: strings.TrimSpace(c.Contract),
		settling.Levies: strings.Join(c.Levy, "; "), settling.Advances: strings.Join(c.Advance, "; "), settling.Payees: strings.Join(c.Payee, "; "),
		settling.Release: c.Release, settling.PayAfter: c.PayAfter,
	}
	if c.Sale {
		texts[settling.Sale] = "yes"
	}
	if c.Corrects > 0 {
		texts[settling.Corrects] = fmt.Sprint(c.Corrects)
	}
	o, problems := settling.ReadSheet(texts, house)
	if err := problems.Err(settling.SheetFields()); err != nil {
		return o, err
	}
	for _, text := range c.Ticket {
		number, part, err := terminal.TicketPart(text, func(int64) (quantity.Unit, error) { return o.Tariff.Settle, nil })
		if err != nil {
			return o, err
		}
		o.Tickets = append(o.Tickets, paysheet.Chosen{Number: number, Quantity: part})
	}
	return o, nil
}

// house is what texts are looked up in: the grain is that of the first ticket.
func (c sheetMake) house(p *terminal.Session) (h settling.House, err error) {
	text, _, _ := strings.Cut(c.Ticket[0], "=")
	first, _, err := terminal.TicketPart(text, nil)
	if err != nil {
		return h, err
	}
	l, err := office.Delivered(p, p.Desk, first)
	if err != nil {
		return h, err
	}
	h = settling.House{House: office.NewEntering(p, p.Desk), Grain: l.Details.Commodity}
	h.Tariff = func(id, grain string, day quantity.Date) (*tariff.Edition, error) {
		if id != "" {
			return tariffNamed(c.BookFlags, id)
		}
		return tariffInForce(c.BookFlags, p, grain, day)
	}
	h.Levies, err = ratefiles.ReadLevies(c.RatesFolder())
	return h, err
}

// tariffInForce is the tariff a grain is settled by here, of those in the folder.
func tariffInForce(f terminal.BookFlags, p *terminal.Session, grain string, day quantity.Date) (*tariff.Edition, error) {
	set, err := ratefiles.ReadTariffs(f.RatesFolder())
	if err != nil {
		return nil, err
	}
	return office.TariffInForce(p.Desk, set, grain, day)
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
		doc := money.SheetPaper(s, worked, rules, p.GrainName(s.Commodity), p.Desk, p.Printer)
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
