package house

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/money"
)

// changeFlags name a contract and who changes it. Every change is a manager's act.
type changeFlags struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number string `arg:"" help:"Number of the contract." placeholder:"NUMBER"`
	Day    string `help:"Day it was agreed. Without it, today." placeholder:"YYYY-MM-DD"`
}

// change changes the contract, with the day and who acts.
func (f changeFlags) change(t *terminal.Terminal, how func(p *terminal.Session, c elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error), tell func(*terminal.Session, elevator.ContractTerms)) error {
	return f.WithBook(t, terminal.ReadWrite, f.Who, func(p *terminal.Session) error {
		day, err := p.DayOrToday(f.Day)
		if err != nil {
			return err
		}
		if day.After(p.Today()) {
			return terminal.Refusal("Give a day up to today", "nothing is agreed on %s yet", day)
		}
		next, err := money.ChangeContract(p, p.Desk, f.Number, func(c elevator.ContractTerms) (elevator.ContractTerms, error) {
			return how(p, c, day, p.Desk.Who().Name)
		})
		if err != nil {
			return err
		}
		tell(p, next)
		return nil
	})
}

type contractSign struct{ changeFlags }

func (contractSign) Help() string {
	return `    tenth contract sign D-7 --day 2026-10-20 --who "Mae Orton"`
}

func (c contractSign) Run(t *terminal.Terminal) error {
	return c.change(t, func(_ *terminal.Session, one elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error) {
		return contract.Sign(one, day, by)
	}, func(p *terminal.Session, one elevator.ContractTerms) { p.Say("Contract %s is signed.", one.Number) })
}

type contractPrice struct {
	changeFlags
	Quantity string `help:"How much is priced. Without it, all that has no price." placeholder:"FIGURE"`
	At       string `required:"" help:"The futures price of a basis contract, the basis of one hedged to arrive, else the price." placeholder:"MONEY"`
}

func (contractPrice) Help() string {
	return `    tenth contract price B-1 --quantity 2000 --at 4.45 --who "Mae Orton"
    tenth contract price D-7 --at 4.02 --who "Mae Orton"`
}

func (c contractPrice) Run(t *terminal.Terminal) error {
	return c.change(t, func(_ *terminal.Session, one elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error) {
		unit := one.Quantity.Unit()
		part := contract.Pricing{Quantity: contract.Unpriced(one), Day: day, By: by}
		var err error
		if c.Quantity != "" {
			if part.Quantity, err = (quantity.Field{Name: "Quantity", Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: one.Quantity}).Parse(c.Quantity); err != nil {
				return one, err
			}
		}
		if part.Money, err = entry.ParseBasis("At", c.At, unit); err != nil {
			return one, err
		}
		return contract.Price(one, part)
	}, func(p *terminal.Session, one elevator.ContractTerms) {
		part := one.Parts[len(one.Parts)-1]
		p.Say("Of contract %s %s is priced at %s; %s has no price yet.", one.Number, part.Quantity, part.Price, contract.Unpriced(one))
	})
}

type contractExtend struct {
	changeFlags
	Until string `required:"" help:"The new last day of delivery." placeholder:"YYYY-MM-DD"`
	Why   string `help:"Why." placeholder:"WORDS"`
}

func (contractExtend) Help() string {
	return `    tenth contract extend C-1 --until 2027-01-31 --why "rain" --who "Mae Orton"`
}

func (c contractExtend) Run(t *terminal.Terminal) error {
	return c.change(t, func(p *terminal.Session, one elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error) {
		until, err := entry.ParseDay("Until", c.Until, p.Today())
		if err != nil {
			return one, err
		}
		return contract.Extend(one, until, day, by, c.Why)
	}, func(p *terminal.Session, one elevator.ContractTerms) {
		p.Say("Contract %s runs until %s.", one.Number, one.Until)
	})
}

type contractRoll struct {
	changeFlags
	Month  string `required:"" help:"The new futures month." placeholder:"MONTH"`
	Spread string `required:"" help:"What goes onto the basis or the futures price fixed; may be below zero." placeholder:"MONEY"`
	Until  string `help:"The new last day of delivery. Without it, as before." placeholder:"YYYY-MM-DD"`
}

func (contractRoll) Help() string {
	return `    tenth contract roll B-1 --month 2027-05 --spread 0.04 --until 2027-04-30 --who "Mae Orton"`
}

func (c contractRoll) Run(t *terminal.Terminal) error {
	return c.change(t, func(p *terminal.Session, one elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error) {
		spread, err := entry.ParseBasis("Spread", c.Spread, one.Quantity.Unit())
		if err != nil {
			return one, err
		}
		until, err := entry.ParseDay("Until", c.Until, p.Today())
		if err != nil {
			return one, err
		}
		if until.IsZero() {
			until = one.Until
		}
		return contract.Roll(one, c.Month, spread, until, day, by)
	}, func(p *terminal.Session, one elevator.ContractTerms) {
		p.Say("Contract %s is rolled to %s: %s, until %s.", one.Number, one.Month, one.PriceText(), one.Until)
	})
}

type contractCancel struct {
	changeFlags
	Why string `required:"" help:"Why." placeholder:"WORDS"`
}

func (contractCancel) Help() string {
	return `    tenth contract cancel C-1 --why "written twice" --who "Mae Orton"`
}

func (c contractCancel) Run(t *terminal.Terminal) error {
	return c.change(t, func(p *terminal.Session, one elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error) {
		filled, err := office.ContractFill(p, p.Desk, one)
		if err != nil {
			return one, err
		}
		return contract.Cancel(one, filled.Delivered, day, by, c.Why)
	}, func(p *terminal.Session, one elevator.ContractTerms) { p.Say("Contract %s is cancelled.", one.Number) })
}
