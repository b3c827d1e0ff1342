package book

import (
	"maps"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/restoring"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/slipcode"
)

// restoreTicket enters a ticket from its slip.
type restoreTicket struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number  terminal.TicketNumber `arg:"" help:"Number of the ticket." placeholder:"NUMBER"`
	At      string                `required:"" help:"When it was issued, by the slip." placeholder:"\"2026-10-01 18:00\""`
	Code    string                `required:"" help:"The code at its foot, or all that its square says." placeholder:"CODE"`
	Net     string                `help:"The net weight on the slip." placeholder:"WEIGHT"`
	Payable string                `help:"What is payable by the slip." placeholder:"MONEY"`
	Unlike  string                `help:"Why what is worked out differs from the slip; a manager says it." placeholder:"WHY"`
	terminal.DetailFlags
	terminal.WeightFlags
	terminal.SampleFlags
}

func (restoreTicket) Help() string {
	return `The load is typed from its slip, settled again under the rates of its day, and held against the slip; the ticket keeps its own number. With all that the square says, only names are still to be typed: whose grain it is and the truck. Without it, type weights, results and price, and the net weight and what was payable once more, as they stand on the slip. Where anything differs, nothing is written.

    tenth restore ticket 4121 --at "2026-10-01 14:20" --code "$(zbarimg -q --raw slip.png)" \
        --grower 101 --truck 7
    tenth restore ticket 4122 --at "2026-10-01 14:45" --code 3fa9c01d22e4 --grower 102 \
        --truck 9 --commodity corn --gross 52300 --tare 24300 --moisture 18.0 \
        --factor test-weight=54.2 --price 4.12 --net 28000 --payable 1836.31`
}

func (c restoreTicket) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		paper, err := c.paper(p)
		if err != nil {
			return err
		}
		form, err := c.form(p, paper)
		if err != nil {
			return err
		}
		if err := restoring.Enter(p, p.Desk, paper, form.Opening()); err != nil {
			return err
		}
		missing, err := office.MissingTickets(p, p.Desk)
		if err != nil {
			return err
		}
		p.Say("Ticket %d is in the book again. Still on paper only: %d.", c.Number, len(missing))
		return nil
	})
}

// paper is the slip as the flags say it.
func (c restoreTicket) paper(p *terminal.Session) (paper restoring.Paper, err error) {
	paper = restoring.Paper{Number: int64(c.Number), Slip: load.Slip{Code: strings.ToLower(strings.TrimSpace(c.Code)), Unlike: c.Unlike}}
	if slipcode.Is(c.Code) || strings.Contains(strings.TrimSpace(c.Code), " ") {
		if paper.Square, err = scaleticket.ReadSquare(c.Code); err != nil {
			return paper, err
		}
		paper.Code = paper.Square.Payload.Code
	}
	if paper.At, err = p.Moment(c.At); err != nil {
		return paper, err
	}
	if c.Net != "" {
		net, err := entry.ParseWeight("net", c.Net, p.Profile().WeightUnit())
		if err != nil {
			return paper, err
		}
		paper.Net = &net
	}
	if c.Payable != "" {
		payable, err := (quantity.Field{Name: "Payable", Unit: quantity.Dollar, Places: 2, Min: quantity.Int(-mostOnASlip, quantity.Dollar), Max: quantity.Int(mostOnASlip, quantity.Dollar)}).Parse(c.Payable)
		if err != nil {
			return paper, err
		}
		paper.Payable = &payable
	}
	return paper, nil
}

// mostOnASlip is more than any load is worth.
const mostOnASlip = 10_000_000

// form is the load by its square and by what is typed, which goes before.
func (c restoreTicket) form(p *terminal.Session, paper restoring.Paper) (*entry.Form, error) {
	sample, err := c.SampleFlags.Texts()
	if err != nil {
		return nil, err
	}
	texts := terminal.Texts{"day": p.Local(paper.At)[:len("2006-01-02")]}
	maps.Copy(texts, paper.Texts())
	for _, typed := range []terminal.Texts{c.DetailFlags.Texts(), c.WeightFlags.Texts(), sample} {
		maps.Copy(texts, typed)
	}
	slip := p.Printer.Text(message.New("slip of ticket %d", paper.Number))
	form := entry.New(office.NewEntering(p, p.Desk), entry.Start{
		Past: true, Direction: load.Inbound,
		Origin: entry.Origin{Moisture: slip, Price: slip},
		Reason: func(string) string { return slip },
	})
	return p.Entered(form, texts)
}
