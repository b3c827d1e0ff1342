package day

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/quantity"
)

// Undecided lists grain of which nobody has said what becomes of it.
type Undecided struct {
	terminal.BookFlags
	terminal.ListFlags
	Day string `arg:"" optional:"" help:"Day it is told of. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (Undecided) Help() string {
	return `Grain that was neither sold nor stored nor put under a receipt or contract counts as the depositor's. The list has its age and, where the law of the elevator's place was read, the day by which it is to be decided and what becomes of it then.

    tenth undecided
    tenth setup --place north-dakota --who "Mae Orton"`
}

func (c Undecided) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		tickets, err := p.Desk.Reader().Loads(p, terms.Open(day))
		if err != nil {
			return err
		}
		all, err := terms.UndecidedIn(tickets, p.Desk.Laws(), day)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, u := range all {
			rows = append(rows, []any{u.Ticket, u.Delivered, u.Owner, p.GrainName(u.Commodity), u.Quantity, quantity.Int(int64(u.Age), quantity.Plain), dueCell(u, day)})
		}
		if err := p.Table(c.ListFlags, "Ticket\tDelivered\tOwner\tGrain\tQuantity\tDays\tTo be decided by", rows, "No grain is undecided."); err != nil || c.JSON || len(all) == 0 {
			return err
		}
		if rules := all[0].Rules; rules.Undecided != "" {
			p.Say("")
			p.Say("%s", rules.Said())
		}
		return nil
	})
}

// dueCell is the day by which a part is to be decided, and whether it has passed.
func dueCell(u terms.Undecided, day quantity.Date) any {
	switch {
	case u.Due.IsZero():
		return message.New("no day was read")
	case u.IsOverdue(day):
		return message.New("%s, passed", u.Due)
	}
	return u.Due
}
