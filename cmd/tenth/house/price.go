package house

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry/contracting"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/scalehouse"
)

// Price keeps the prices posted for a day.
type Price struct {
	List priceList `cmd:"" default:"withargs" help:"List the prices posted for a day, with hour and person."`
	Post pricePost `cmd:"" help:"Post the price of a grain, for all desks."`
}

type pricePost struct {
	terminal.BookFlags
	terminal.WhoFlags
	Commodity string `arg:"" help:"The grain, by id or name." placeholder:"GRAIN"`
	Price     string `arg:"" help:"Price per bushel, hundredweight or tonne, as its rates settle." placeholder:"MONEY"`
	Day       string `help:"Day it is posted for. Without it, today." placeholder:"YYYY-MM-DD"`
	Place     string `help:"Where it is delivered. Without it, here." placeholder:"NAME"`
	Delivery  string `help:"Month of delivery. Without it, now." placeholder:"YYYY-MM"`
}

func (pricePost) Help() string {
	return `A price is typed once, and every desk of the house has it: "posted" in place of a price takes it, another price is asked about, and the ticket remembers which posted price it was typed at. A price posted again takes the place of the one before; both stay in the book. A bid for another place or a month still to come stands beside it.

    tenth price post corn 4.12 --who "Mae Orton"
    tenth price post corn 4.31 --delivery 2027-03 --who "Mae Orton"
    tenth price`
}

func (c pricePost) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		one, problems := contracting.ReadBid(map[string]string{"grain": c.Commodity, "price": c.Price, "day": c.Day, "place": c.Place, "delivery": c.Delivery}, office.NewEntering(p, p.Desk))
		if err := problems.Err(contracting.BidFields()); err != nil {
			return err
		}
		if err := scalehouse.PostPrice(p, p.Desk, one); err != nil {
			return err
		}
		p.Say("%v is posted at %s for %s.", p.GrainName(one.Commodity), one.Price, one.Day)
		return nil
	})
}

type priceList struct {
	terminal.BookFlags
	terminal.ListFlags
	Day string `arg:"" optional:"" help:"Day they are posted for. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (c priceList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		all, err := terms.PostedOn(p.Desk.Reader().Facts(p, terms.Posted()), day)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for i, one := range all {
			state := message.Words("price|replaced")
			if terms.InForce(all, i) {
				state = message.Words("in force")
			}
			rows = append(rows, []any{p.GrainName(one.Commodity), one.Place, one.Delivery, one.Price.String(), state, p.Desk.Local(one.At), one.Who})
		}
		return p.Table(c.ListFlags, "Grain\tPlace\tDelivery\tPrice\tState\tPosted\tBy", rows, "No price is posted for this day.")
	})
}
