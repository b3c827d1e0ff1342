package bins

import (
	"slices"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keeping/blend"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// hundredth is the place to which means of a mix are shown and tried.
var hundredth = quantity.To("0.01", quantity.HalfUp)

// mix works a blend of bins out.
type mix struct {
	terminal.BookFlags
	Bin        []string `sep:"none" required:"" help:"A bin to take grain from; may be repeated." placeholder:"BIN"`
	Whole      []string `sep:"none" help:"A bin to empty, with the least of the others; may be repeated." placeholder:"BIN"`
	Moisture   string   `required:"" help:"Highest moisture of the mix." placeholder:"PERCENT"`
	TestWeight string   `help:"Lowest test weight of the mix, in lb/bu." placeholder:"WEIGHT"`
	Edition    string   `help:"Also what the mix is worth under these rates, against its parts alone. Takes --price." placeholder:"ID"`
	Price      string   `help:"Price, as the rates settle." placeholder:"MONEY"`
}

func (mix) Help() string {
	return `The most grain that lies in these bins and meets the moisture and test weight asked for, by the mean of each bin; nothing is moved. With --edition the mix and each part alone are settled by those rates, as the one who takes it would.

    tenth bin mix --bin B1 --bin B2 --moisture 15 --test-weight 54
    tenth bin mix --bin B1 --bin B2 --whole B1 --moisture 15 --edition corn-main-2026 --price 4.10`
}

func (c mix) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		lots, commodity, err := binlog.LotsOf(p, p.Desk, c.Bin)
		if err != nil {
			return err
		}
		target, err := c.target(lots)
		if err != nil {
			return err
		}
		made, err := blend.Best(lots, target)
		if err != nil {
			return err
		}
		for i, l := range lots {
			p.Say("Take %s of %v, of %s there at %s.", made.Take[i], l.Name, l.Weight, l.Moisture)
		}
		p.Say("The mix weighs %s and has a moisture of %s.", made.Weight, hundredth.Apply(made.Moisture))
		if quantity.Recorded(made.TestWeight) {
			p.Say("Its test weight is %s, taken by volume; test the mix.", hundredth.Apply(made.TestWeight))
		}
		if c.Edition != "" {
			if err := c.sayWorth(p, commodity, lots, made); err != nil {
				return err
			}
		}
		p.Say("This is advice, not a promise: look at the grain, and measure its temperature and moisture again.")
		return nil
	})
}

// target is what the mix must meet; it marks the lots that are to be used up.
func (c mix) target(lots []blend.Lot) (target blend.Target, err error) {
	for _, name := range c.Whole {
		at := slices.IndexFunc(lots, func(l blend.Lot) bool { return l.Name == name })
		if at < 0 {
			return target, terminal.Refusal("Name a bin as --bin does", "there is no lot %q to use up", name)
		}
		lots[at].Whole = true
	}
	if target.Moisture, err = terminal.ParsePercent("Moisture", c.Moisture); err != nil || c.TestWeight == "" {
		return target, err
	}
	target.TestWeight, err = quantity.Field{Name: "Test weight", Unit: quantity.LbPerBushel, Places: 2, Min: quantity.Of("1", quantity.LbPerBushel), Max: quantity.Of("90", quantity.LbPerBushel)}.Parse(c.TestWeight)
	return target, err
}

// sayWorth settles the mix and its parts under an edition.
func (c mix) sayWorth(p *terminal.Session, commodity string, lots []blend.Lot, made blend.Mix) error {
	e, known := p.Rates().ByID(c.Edition)
	switch {
	case c.Price == "":
		return terminal.Refusal("Give --price", "what grain is worth takes a price")
	case !known:
		return terminal.Refusal("Look with \"tenth rates list\"", "there is no edition %s", c.Edition)
	case e.Commodity.ID != commodity:
		return terminal.Refusal("Name rates of the grain that lies there", "edition %s is not of %s", c.Edition, message.Words(p.GrainName(commodity)))
	}
	tables, err := p.TablesOn(p.Today())
	if err != nil {
		return err
	}
	e = e.By(tables)
	var worth binlog.Worth
	if worth.Mixed, err = c.payable(e, made.Weight, made.Moisture, made.TestWeight); err != nil {
		return err
	}
	for i, l := range lots {
		if made.Take[i].Sign() == 0 {
			continue
		}
		alone, err := c.payable(e, made.Take[i], l.Moisture, l.TestWeight)
		if err != nil {
			return err
		}
		worth.Alone = append(worth.Alone, alone)
		p.Say("Alone, %v brings %s.", l.Name, alone)
	}
	p.Say("The mix brings %s under %v, its parts alone %s: a difference of %s.", worth.Mixed, e.ID, worth.Mixed.Sub(worth.Gain()), worth.Gain())
	return nil
}

// payable is what grain brings under the edition, at the price given.
func (c mix) payable(e *rates.Edition, weight, moisture, testWeight quantity.Amount) (none quantity.Amount, err error) {
	cells := terminal.Texts{"net": weight.Figure()}
	cells.Put("price", c.Price)
	cells.Put("moisture", hundredth.Apply(moisture).Figure())
	if quantity.Recorded(testWeight) {
		if err := cells.PutResults([]string{"test-weight=" + hundredth.Apply(testWeight).Figure()}); err != nil {
			return none, err
		}
	}
	facts, err := terminal.TrialFacts(e, cells)
	if err != nil {
		return none, err
	}
	s, err := settle.Settle(facts, e)
	if err != nil {
		return none, err
	}
	return s.Payable.Value(), nil
}
