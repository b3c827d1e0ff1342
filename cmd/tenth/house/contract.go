package house

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Contract keeps the contracts of growers.
type Contract struct {
	List contractList `cmd:"" default:"withargs" help:"List contracts and how far they are delivered."`
	Show contractShow `cmd:"" help:"Show a contract."`
	Add  contractAdd  `cmd:"" help:"Write a contract down."`
	End  contractEnd  `cmd:"" help:"End a contract on a day."`

	Sign   contractSign   `cmd:"" help:"Write down that both parties have signed."`
	Price  contractPrice  `cmd:"" help:"Price a part of a contract whose price is open."`
	Extend contractExtend `cmd:"" help:"Move the last day of delivery."`
	Roll   contractRoll   `cmd:"" help:"Roll a contract to another futures month."`
	BuyOut contractBuyOut `cmd:"" name:"buy-out" help:"End a contract whose rest will not come, for money."`
	Cancel contractCancel `cmd:"" help:"Cancel a contract on which nothing was delivered."`
	Fill   contractFill   `cmd:"" help:"Which loads of a grower fill which contracts."`
	Print  contractPrint  `cmd:"" help:"A contract as a paper to sign."`
}

type contractList struct {
	terminal.BookFlags
	terminal.ListFlags
	Grower string `help:"Only this grower's, by code or name." placeholder:"GROWER"`
}

func (contractList) Help() string {
	return `    tenth contract list
    tenth contract list --grower Holloway`
}

func (c contractList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.Contracts(p, p.Desk)
		if err != nil {
			return err
		}
		grower, err := p.OnlyGrower(c.Grower)
		if err != nil {
			return err
		}
		var listed []elevator.ContractTerms
		for _, one := range all {
			if grower != "" && one.Grower != grower {
				continue
			}
			listed = append(listed, one)
		}
		return contractTable(p, c.ListFlags, listed)
	})
}

// contractTable lists contracts with the quantity delivered on each.
func contractTable(p *terminal.Session, f terminal.ListFlags, contracts []elevator.ContractTerms) error {
	filled, err := office.ContractFills(p, p.Desk, contracts...)
	if err != nil {
		return err
	}
	rows := [][]any{}
	for _, c := range filled {
		rows = append(rows, []any{c.Number, c.Grower, p.GrainName(c.Commodity), c.Quantity.String(), c.Delivered.String(), c.Left.String(), c.PriceText(), c.Until.String()})
	}
	return p.Table(f, "Contract\tGrower\tGrain\tAgreed\tDelivered\tStill to come\tPrice\tUntil", rows, "No contract is written down yet.")
}

type contractShow struct {
	terminal.BookFlags
	terminal.ListFlags
	Number string `arg:"" help:"Number of the contract." placeholder:"NUMBER"`
}

func (c contractShow) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		one, err := entry.Contract(office.NewEntering(p, p.Desk), c.Number)
		if err != nil {
			return err
		}
		return contractTable(p, c.ListFlags, []elevator.ContractTerms{one})
	})
}

type contractAdd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number    string   `arg:"" help:"Number of the contract." placeholder:"NUMBER"`
	Grower    string   `required:"" help:"Grower, by code or name." placeholder:"GROWER"`
	Commodity string   `required:"" help:"The grain, by id or name." placeholder:"GRAIN"`
	Quantity  string   `required:"" help:"What is agreed, in the unit its rates settle by: bu, cwt or t." placeholder:"FIGURE"`
	Price     string   `help:"Price per that unit; of a minimum price, the least. Left out where the form leaves it open." placeholder:"MONEY"`
	Form      string   `help:"What sort of contract it is." enum:"forward,cash,basis,hedge-to-arrive,minimum-price,delayed-price,deferred-payment,grain-bank" default:"forward"`
	Basis     string   `help:"What a basis contract fixes, above or below the futures price." placeholder:"MONEY"`
	Futures   string   `help:"What hedge-to-arrive fixes." placeholder:"MONEY"`
	Month     string   `help:"Futures month, as the market writes it." placeholder:"MONTH"`
	From      string   `help:"First day of delivery." placeholder:"YYYY-MM-DD"`
	Tolerance string   `help:"What may come more or stay away, in percent of the quantity." placeholder:"PERCENT"`
	Quality   string   `help:"The quality it is priced on." placeholder:"WORDS"`
	Seller    []string `sep:"none" help:"Who sells on it with which share; may be repeated. Without any, the grower alone." placeholder:"CODE=2/3"`
	Until     string   `required:"" help:"Last day of delivery." placeholder:"YYYY-MM-DD"`
}

func (contractAdd) Help() string {
	return `A manager's act. Loads name the contract with --contract and take its price, where it has one.

    tenth contract add C-1 --grower 102 --commodity corn --quantity 5000 --price 4.12 --until 2026-12-31 --who "Mae Orton"
    tenth contract add B-1 --form basis --basis=-0.30 --month 2027-03 --tolerance 2 --grower 102 --commodity corn \
        --quantity 5000 --from 2026-10-01 --until 2027-02-28 --who "Mae Orton"`
}

func (c contractAdd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		one, err := entry.ReadContract(office.NewEntering(p, p.Desk), entry.ContractTexts{
			Number: c.Number, Grower: c.Grower, Commodity: c.Commodity, Quantity: c.Quantity, Price: c.Price, Until: c.Until,
			Form: c.Form, Basis: c.Basis, Futures: c.Futures, Month: c.Month, From: c.From, Tolerance: c.Tolerance, Quality: c.Quality, Sellers: c.Seller,
		})
		if err != nil {
			return err
		}
		if err := scalehouse.SetContract(p, p.Desk, one); err != nil {
			return err
		}
		p.Say("Contract %s is written down: %s at %s.", one.Number, one.Quantity, one.PriceText())
		return nil
	})
}

type contractEnd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number string `arg:"" help:"Number of the contract." placeholder:"NUMBER"`
	Day    string `help:"Its last day. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (contractEnd) Help() string {
	return `A manager's act. The contract keeps what was delivered on it; its last day becomes an earlier one.

    tenth contract end C-1 --day yesterday --who "Mae Orton"`
}

func (c contractEnd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		one, err := entry.Contract(office.NewEntering(p, p.Desk), c.Number)
		if err != nil {
			return err
		}
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		if !one.Until.IsZero() && one.Until.Before(day) {
			return terminal.Refusal("Give a day up to its last", "contract %s has ended already, on %s", one.Number, one.Until)
		}
		one.Until = day
		if err := scalehouse.SetContract(p, p.Desk, one); err != nil {
			return err
		}
		p.Say("Contract %s ends on %s.", one.Number, one.Until)
		return nil
	})
}
