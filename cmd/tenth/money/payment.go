package money

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	acts "tenthpoint/internal/scalehouse/money"
)

// Payment are the payments on settlement sheets.
type Payment struct {
	Unpaid paymentUnpaid `cmd:"" default:"withargs" help:"List what is still to be paid, the longest due first."`
	List   paymentList   `cmd:"" help:"List the payments."`
	Record paymentRecord `cmd:"" help:"Write down what was paid on a settlement sheet."`
	Show   paymentShow   `cmd:"" help:"The paper that goes with a payment."`
	Totals paymentTotals `cmd:"" help:"What growers sold and were paid in a year, by grower and grain."`
	Void   paymentVoid   `cmd:"" help:"End a payment that was stopped; its number stays with it."`
}

func (Payment) Help() string {
	return `Payments are written down; no bank is told, and no bank details are kept.

    tenth payment
    tenth payment record 2 --amount 1500 --reference 40117 --who "Mae Orton"
    tenth payment show 1 --out papers
    tenth payment void 1 --why "check lost" --who "Mae Orton"`
}

type paymentUnpaid struct {
	terminal.BookFlags
	terminal.ListFlags
	By string `help:"Only what is due up to this day." placeholder:"YYYY-MM-DD"`
}

func (paymentUnpaid) Help() string { return `    tenth payment unpaid --by today` }

func (c paymentUnpaid) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		open, err := money.OpenSheets(p, p.Desk)
		if err != nil {
			return err
		}
		by := quantity.Date{}
		if c.By != "" {
			if by, err = p.DayOrToday(c.By); err != nil {
				return err
			}
		}
		rows := [][]any{}
		for _, o := range open {
			if by.IsZero() || !o.Due.After(by) {
				rows = append(rows, []any{o.Number, o.Due, max(0, o.Due.DaysUntil(p.Today())), o.Grower, o.Name, o.Figures["payable"], o.Paid, o.Left})
			}
		}
		return p.Table(c.ListFlags, "Sheet\tDue from\tAge in days\tGrower\tName\tPayable\tPaid\tStill open", rows, "Nothing is to be paid.")
	})
}

type paymentList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (paymentList) Help() string { return `    tenth payment list --json` }

func (c paymentList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := money.Payments(p, p.Desk)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, one := range all {
			state := message.New("in force")
			if !one.InForce() {
				state = message.New("void")
			}
			rows = append(rows, []any{one.Number, one.Day, one.Sheet, one.Amount, one.How.Said(), one.Reference, state})
		}
		return p.Table(c.ListFlags, "Payment\tDay\tSheet\tAmount\tHow\tReference\tStanding", rows, "No payment is written down yet.")
	})
}

type paymentRecord struct {
	terminal.BookFlags
	terminal.WhoFlags
	Sheet     int64  `arg:"" help:"Number of the settlement sheet." placeholder:"SHEET"`
	Amount    string `help:"How much. Without it, all that is open on the sheet." placeholder:"MONEY"`
	How       string `help:"How it was paid." enum:"check,transfer,cash" default:"check"`
	Reference string `help:"Number of the check or the transfer." placeholder:"NUMBER"`
	Day       string `help:"Day it was paid. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (paymentRecord) Help() string {
	return `    tenth payment record 2 --reference 40117 --who "Mae Orton"
    tenth payment record 2 --amount 1500 --how transfer --reference W-7 --who "Mae Orton"`
}

func (c paymentRecord) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		on, err := c.openOn(p)
		if err != nil {
			return err
		}
		payment, problems := settling.ReadPayment(map[string]string{"amount": c.Amount, "how": c.How, "reference": c.Reference, "day": c.Day}, on)
		if err := problems.Err(settling.PaymentFields()); err != nil {
			return err
		}
		made, err := acts.Pay(p, p.Desk, payment)
		if err != nil {
			return err
		}
		p.Say("Payment %d: %s on settlement sheet %d.", made.Number, made.Amount, made.Sheet)
		return nil
	})
}

// openOn is the sheet with what is open on it.
func (c paymentRecord) openOn(p *terminal.Session) (settling.OpenOn, error) {
	on := settling.OpenOn{Sheet: c.Sheet, Left: quantity.Zero(quantity.Dollar), Today: p.Today()}
	open, err := money.OpenSheets(p, p.Desk)
	for _, o := range open {
		if o.Number == c.Sheet {
			on.Left = o.Left
		}
	}
	return on, err
}

type paymentShow struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Number int64 `arg:"" help:"Number of the payment." placeholder:"NUMBER"`
}

func (paymentShow) Help() string { return `    tenth payment show 1 --out papers` }

func (c paymentShow) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		one, sheet, err := money.PaymentNumbered(p, p.Desk, c.Number)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, money.Stub(one, sheet, p.Profile()), fmt.Sprintf("payment-%d", one.Number), false)
	})
}

type paymentVoid struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number int64  `arg:"" help:"Number of the payment." placeholder:"NUMBER"`
	Why    string `required:"" help:"Why." placeholder:"WORDS"`
}

func (paymentVoid) Help() string {
	return `    tenth payment void 1 --why "check lost" --who "Mae Orton"`
}

func (c paymentVoid) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := acts.VoidPayment(p, p.Desk, c.Number, c.Why); err != nil {
			return err
		}
		p.Say("Payment %d is void.", c.Number)
		return nil
	})
}
