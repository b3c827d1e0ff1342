package money

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	acts "tenthpoint/internal/scalehouse/money"
)

// Lien is the register of notices of lien.
type Lien struct {
	Add  lienAdd  `cmd:"" help:"Write down a notice of lien that was received."`
	End  lienEnd  `cmd:"" help:"End a notice that was released or mistyped."`
	List lienList `cmd:"" default:"withargs" help:"List the notices of lien."`
}

func (Lien) Help() string {
	return `A lender's notice that grain of a grower is its security. While one is in force a settlement sheet names the lender on the payment, or says why not. The register judges nothing: confirm locally what a notice binds you to.

    tenth lien add 102 "First Bank" --commodity corn --until 2027-06-30 --who "Mae Orton"
    tenth lien list
    tenth lien end 1 --why "released by letter" --who "Mae Orton"`
}

type lienAdd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Grower    string `arg:"" help:"The grower, by code or name." placeholder:"GROWER"`
	Lender    string `arg:"" help:"The lender, as payments are to name it." placeholder:"LENDER"`
	Until     string `required:"" help:"Last day of the notice." placeholder:"YYYY-MM-DD"`
	Received  string `help:"Day it was received. Without it, today." placeholder:"YYYY-MM-DD"`
	Commodity string `help:"Only this grain, by id or name." placeholder:"GRAIN"`
	CropYear  string `help:"Only this crop year." placeholder:"YEAR"`
	County    string `help:"The county it names." placeholder:"COUNTY"`
	Reference string `help:"Number of the filing." placeholder:"NUMBER"`
}

func (c lienAdd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		l, problems := settling.ReadLien(map[string]string{
			settling.Grower: c.Grower, "holder": c.Lender, "commodity": c.Commodity, "crop-year": c.CropYear, "county": c.County,
			"filed": c.Received, "until": c.Until, "reference": c.Reference,
		}, office.NewEntering(p, p.Desk))
		if err := problems.Err(settling.LienFields()); err != nil {
			return err
		}
		made, err := acts.AddLien(p, p.Desk, l)
		if err != nil {
			return err
		}
		p.Say("Notice of lien %d of %v is written down until %s.", made.Number, made.Holder, made.Until)
		return nil
	})
}

type lienEnd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number int64  `arg:"" help:"Number of the notice." placeholder:"NUMBER"`
	Why    string `required:"" help:"Why; it stands in the book." placeholder:"REASON"`
}

func (c lienEnd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := acts.EndLien(p, p.Desk, c.Number, c.Why); err != nil {
			return err
		}
		p.Say("Notice of lien %d has ended.", c.Number)
		return nil
	})
}

type lienList struct {
	terminal.BookFlags
	terminal.ListFlags
	Grower string `help:"Only this grower's, by code or name." placeholder:"GROWER"`
}

func (lienList) Help() string { return `    tenth lien list --grower 102` }

func (c lienList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		grower, err := p.OnlyGrower(c.Grower)
		if err != nil {
			return err
		}
		all, err := money.Liens(p, p.Desk)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, l := range all {
			if grower != "" && l.Grower != grower {
				continue
			}
			state := message.New("in force")
			switch {
			case l.Ended != nil:
				state = message.New("ended on %s: %v", l.Ended.Day, l.Ended.Reason)
			case !l.InForce(p.Today()):
				state = message.New("past its last day")
			}
			grain := message.New("every grain")
			if l.Commodity != "" {
				grain = message.Words(p.GrainName(l.Commodity))
			}
			rows = append(rows, []any{l.Number, l.Grower, l.Holder, grain, l.CropYear, l.County, l.Filed, l.Until, l.Reference, state})
		}
		return p.Table(c.ListFlags, "Notice\tGrower\tLender\tGrain\tCrop year\tCounty\tReceived\tLast day\tFiling\tStanding", rows, "No notice of lien is written down.")
	})
}
