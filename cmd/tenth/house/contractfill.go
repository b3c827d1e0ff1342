package house

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

type contractBuyOut struct {
	changeFlags
	Market string `required:"" help:"The market price of the day." placeholder:"MONEY"`
	Why    string `help:"Why." placeholder:"WORDS"`
}

func (contractBuyOut) Help() string {
	return `The market less the contract's price, on the quantity that did not come. Above zero the grower owes it, below zero the house does.

    tenth contract buy-out C-1 --market 4.32 --why "hail" --who "Mae Orton"`
}

func (c contractBuyOut) Run(t *terminal.Terminal) error {
	var working *worksheet.Sheet
	return c.change(t, func(p *terminal.Session, one elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error) {
		market, err := entry.ParsePrice(c.Market, one.Quantity.Unit())
		if err != nil {
			return one, err
		}
		filled, err := office.ContractFill(p, p.Desk, one)
		if err != nil {
			return one, err
		}
		s, owed, err := contract.BuyOutWorking(filled, market)
		if err != nil {
			return one, err
		}
		working = s
		return contract.BuyOut(one, owed.Value(), day, by, c.Why)
	}, func(p *terminal.Session, one elevator.ContractTerms) {
		fmt.Fprint(p.Stdout, working.TextIn(76, p.Printer))
		p.Say("Contract %s is bought out.", one.Number)
	})
}

type contractFill struct {
	terminal.BookFlags
	terminal.ListFlags
	Grower    string `arg:"" help:"The grower, by code or name." placeholder:"GROWER"`
	Commodity string `required:"" help:"The grain, by id or name." placeholder:"GRAIN"`
}

func (contractFill) Help() string {
	return `Loads fill contracts in the order of their tickets. What one has no room for goes to the next of the same seller and grain that takes deliveries that day: the one that ends first, or as the set-up says with --fills. What no contract takes is spot. A landlord's part never fills a tenant's contract.

    tenth contract fill 102 --commodity corn`
}

func (c contractFill) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		grower, err := p.GrowerID(c.Grower)
		if err != nil {
			return err
		}
		grain, err := entry.Commodity(c.Commodity)
		if err != nil {
			return err
		}
		filling, err := office.Fills(p, p.Desk, grain.ID, grower)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, one := range filling.Contracts {
			for _, a := range one.Applied {
				rows = append(rows, []any{a.Ticket, a.Owner, a.Day, a.Quantity, a.Contract, a.Why})
			}
		}
		for _, a := range filling.Spot {
			rows = append(rows, []any{a.Ticket, a.Owner, a.Day, a.Quantity, message.New("spot"), a.Why})
		}
		return p.Table(c.ListFlags, "Ticket\tOwner\tDay\tQuantity\tGoes to\tNote", rows, "No load names a contract.")
	})
}

type contractPrint struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Number string `arg:"" help:"Number of the contract." placeholder:"NUMBER"`
}

func (contractPrint) Help() string { return `    tenth contract print B-1 --out papers` }

func (c contractPrint) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		one, err := office.ContractNumbered(p, p.Desk, c.Number)
		if err != nil {
			return err
		}
		filled, err := office.ContractFill(p, p.Desk, one)
		if err != nil {
			return err
		}
		doc := money.ContractPaper(filled, p.GrainName(one.Commodity), p.Profile(), p.Today())
		return p.ShowDocument(c.DocumentFlags, doc, "contract-"+terminal.FileName(one.Number), false)
	})
}
