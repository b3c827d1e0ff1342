package money

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/money"
	acts "tenthpoint/internal/scalehouse/money"
)

// levyOwed is what the funds are owed.
type levyOwed struct {
	terminal.BookFlags
	terminal.ListFlags
	Through string `help:"Sheets up to this day. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (levyOwed) Help() string { return `    tenth levy owed --through 2026-12-31` }

func (c levyOwed) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		through, err := p.DayOrToday(c.Through)
		if err != nil {
			return err
		}
		all, err := money.Owings(p, p.Desk, through)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, o := range all {
			until := message.New("never")
			if !o.Through.IsZero() {
				until = message.New("%s", o.Through)
			}
			rows = append(rows, []any{o.Levy, o.Taken, o.HandedOn, o.Left, until})
		}
		return p.Table(c.ListFlags, "Levy\tTaken\tHanded on\tLeft\tHanded on through", rows, "No levy was taken in these days.")
	})
}

// levyHandOn writes down what was handed on.
type levyHandOn struct {
	terminal.BookFlags
	terminal.WhoFlags
	Levy      string `arg:"" help:"The levy." placeholder:"LEVY"`
	Through   string `help:"Of sheets up to this day. Without it, today." placeholder:"YYYY-MM-DD"`
	Amount    string `help:"How much. Without it, all that is left of these sheets." placeholder:"MONEY"`
	Reference string `help:"Number of the check or the transfer." placeholder:"NUMBER"`
	Day       string `help:"Day it was paid. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (levyHandOn) Help() string {
	return `What was handed on is owed no more. A sheet that is void later is taken off the next handover.

    tenth levy hand-on indiana-corn --through 2026-12-31 --reference 40120 --who "Mae Orton"`
}

func (c levyHandOn) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		h, problems := settling.ReadHandover(map[string]string{"levy": c.Levy, "through": c.Through, "amount": c.Amount, "reference": c.Reference, "day": c.Day}, p.Today())
		if err := problems.Err(settling.HandoverFields()); err != nil {
			return err
		}
		made, err := acts.HandOn(p, p.Desk, h)
		if err != nil {
			return err
		}
		p.Say("Handover %d of the levy %v: %s, of sheets up to %s.", made.Number, made.Levy, made.Amount, made.Through)
		return nil
	})
}

// levyTakeBack ends a handover.
type levyTakeBack struct {
	terminal.BookFlags
	terminal.WhoFlags
	Levy   string `arg:"" help:"The levy." placeholder:"LEVY"`
	Number int64  `arg:"" help:"Number of the handover." placeholder:"NUMBER"`
	Why    string `required:"" help:"Why; it stands in the book." placeholder:"REASON"`
}

func (levyTakeBack) Help() string {
	return `    tenth levy take-back indiana-corn 2 --why "the check was stopped" --who "Mae Orton"`
}

func (c levyTakeBack) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := acts.VoidHandover(p, p.Desk, c.Levy, c.Number, c.Why); err != nil {
			return err
		}
		p.Say("Handover %d of the levy %v is void.", c.Number, c.Levy)
		return nil
	})
}
