package tickets

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry/shipping"
	"tenthpoint/internal/office/shipments"
	acts "tenthpoint/internal/scalehouse/shipments"
)

// Shipment is about loads that left.
type Shipment struct {
	List    shipmentList    `cmd:"" default:"withargs" help:"List the loads that left, with what their destinations found."`
	Arrived shipmentArrived `cmd:"" help:"Write down what the destination of a load found."`
	Lading  shipmentLading  `cmd:"" help:"The bill of lading of a load, as a paper."`
}

func (Shipment) Help() string {
	return `A load that leaves is written down with "tenth open --outbound". Carrier, destination, railcar or barge, seals and the number of its bill of lading are typed there. What the destination weighed and tested is written down when its ticket comes, and set against the origin's.

    tenth shipment lading 118 --out papers
    tenth shipment arrived 118 --weight 53820 --paper 77-1204 --found moisture=14.4 --found test-weight=56
    tenth shipment list --from 2026-10-01`
}

// shipmentDays is how many days back the list begins unless a day is given.
const shipmentDays = 30

type shipmentList struct {
	terminal.BookFlags
	terminal.DocumentFlags
	From string `help:"First day to tell of. Without it, 30 days back." placeholder:"YYYY-MM-DD"`
	To   string `help:"Last day to tell of. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (shipmentList) Help() string {
	return `    tenth shipment list --from 2026-10-01 --out papers --as xlsx`
}

func (c shipmentList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		from, to, err := p.SpanTo(c.From, c.To, shipmentDays)
		if err != nil {
			return err
		}
		all, err := shipments.All(p, p.Desk, from, to)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, shipments.Register(all, p.Profile(), from, to), "loaded-out-"+to.String(), true)
	})
}

type shipmentArrived struct {
	terminal.BookFlags
	terminal.WhoFlags
	Ticket int64    `arg:"" help:"Number of the ticket." placeholder:"NUMBER"`
	Weight string   `required:"" help:"Net weight at the destination." placeholder:"WEIGHT"`
	Day    string   `help:"Day it arrived. Without it, today." placeholder:"YYYY-MM-DD"`
	Paper  string   `help:"Number of the ticket or certificate there." placeholder:"NUMBER"`
	Scale  string   `help:"The scale there." placeholder:"NAME"`
	Grade  string   `help:"Grade there." placeholder:"WORDS"`
	Found  []string `sep:"none" help:"A result there; may be repeated." placeholder:"FACTOR=RESULT"`
	Remark string   `help:"A remark." placeholder:"WORDS"`
}

func (shipmentArrived) Help() string {
	return `    tenth shipment arrived 118 --weight 53820 --day 2026-12-02 --paper 77-1204 --grade "US No. 2" --found moisture=14.4`
}

func (c shipmentArrived) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		one, err := shipments.Numbered(p, p.Desk, c.Ticket)
		if err != nil {
			return err
		}
		left, err := shipments.Left(p.Desk, one)
		if err != nil {
			return err
		}
		arrived, problems := shipping.Read(map[string]string{
			"weight": c.Weight, "day": c.Day, "paper": c.Paper, "scale": c.Scale, "grade": c.Grade, "found": strings.Join(c.Found, "; "), "remark": c.Remark,
		}, left)
		if err := problems.Err(shipping.Fields()); err != nil {
			return err
		}
		if err := acts.Arrive(p, p.Desk, arrived); err != nil {
			return err
		}
		if one, err = shipments.Numbered(p, p.Desk, c.Ticket); err != nil {
			return err
		}
		p.Say("Ticket %d left with %s and arrived with %s: %s, %s.", c.Ticket, one.Origin.Weight, one.Arrived.Weight, one.Weight, one.Percent.FixedString(2))
		return nil
	})
}

type shipmentLading struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Ticket int64 `arg:"" help:"Number of the ticket." placeholder:"NUMBER"`
}

func (shipmentLading) Help() string { return `    tenth shipment lading 118 --out papers` }

func (c shipmentLading) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		one, err := shipments.Numbered(p, p.Desk, c.Ticket)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, shipments.Lading(one, p.Profile()), fmt.Sprintf("bill-of-lading-%d", c.Ticket), true)
	})
}
