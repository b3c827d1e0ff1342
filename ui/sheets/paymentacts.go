package sheets

import (
	"context"
	"fmt"

	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	acts "tenthpoint/internal/scalehouse/money"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// CanPay reports whether money is open on the chosen sheet.
func (p *Payments) CanPay() bool {
	one, there := p.sheet()
	return there && one.isOpen()
}

// CanVoid reports whether the chosen sheet is in force.
func (p *Payments) CanVoid() bool {
	one, there := p.sheet()
	return there && one.InForce()
}

// CanSettleAgain reports whether the chosen sheet is void, so that another may take its place.
func (p *Payments) CanSettleAgain() bool {
	one, there := p.sheet()
	return there && !one.InForce()
}

// HasPayment reports whether a payment in force is on the chosen sheet.
func (p *Payments) HasPayment() bool { return len(p.paymentsInForce()) > 0 }

func (p *Payments) paymentsInForce() []paysheet.Payment {
	var out []paysheet.Payment
	one, _ := p.sheet()
	for _, paid := range one.payments {
		if paid.InForce() {
			out = append(out, paid)
		}
	}
	return out
}

// Pay asks for a payment on the chosen sheet and records it, in a manager's name.
func (p *Payments) Pay() {
	one, there := p.sheet()
	if !there {
		return
	}
	f := p.session
	on := settling.OpenOn{Sheet: one.Number, Left: one.Left, Today: f.Desk.Today()}
	filled := ask.Filled{Values: map[string]string{"how": string(paysheet.Check)}}
	f.Put(model.Ask{
		Draft: "payment", Of: "sheet " + one.ID(),
		Title: f.Say("A payment on settlement sheet %d", one.Number),
		Text:  f.Say("%s, %s is open. It is recorded here; no bank is told.", one.Name, f.Signs().Write(one.Left.FixedString(cents))),
		Fields: append(ask.Fields(f, settling.PaymentFields(), filled),
			model.AskField{ID: managerField, Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true}),
		Yes: f.Say("Record"),
		Check: func(values map[string]string) map[string]string {
			_, problems := settling.ReadPayment(values, on)
			return ask.Sentences(f, problems)
		},
		Then: func(values map[string]string) {
			payment, _ := settling.ReadPayment(values, on)
			p.record(values[managerField], payment)
		},
	})
}

// record records a payment and prints what goes with it.
func (p *Payments) record(manager string, payment paysheet.Payment) {
	f := p.session
	var made paysheet.Payment
	err := f.As(manager, func() (err error) {
		made, err = acts.Pay(context.Background(), f.Desk, payment)
		return err
	})
	if err != nil {
		f.Fail(err)
		return
	}
	p.took(f.Say("payment %d: %s on settlement sheet %d.", made.Number, made.Amount, made.Sheet))
	p.printStub(made.Number)
}

// took shows the list after an act.
func (p *Payments) took(done string) {
	p.session.Changed()
	p.Reload()
	p.session.Notify(model.OK, done)
	p.session.Window.Redraw()
}

// PrintSheet prints the chosen sheet.
func (p *Payments) PrintSheet() { printSheet(p.session, p.number()) }

// PrintStub prints what goes with the newest payment on the chosen sheet.
func (p *Payments) PrintStub() {
	if all := p.paymentsInForce(); len(all) > 0 {
		p.printStub(all[len(all)-1].Number)
	}
}

func (p *Payments) printStub(number int64) {
	f := p.session
	payment, sheet, err := money.PaymentNumbered(context.Background(), f.Desk, number)
	if err != nil {
		f.Fail(err)
		return
	}
	session.PrintDocument(f, money.Stub(payment, sheet, f.Desk.Profile()), fmt.Sprintf("payment-%d", number), f.Say("payment %d", number), false)
}

// Void asks why the chosen sheet is void.
func (p *Payments) Void() {
	f, number := p.session, p.number()
	f.Put(model.Ask{
		Draft: "void sheet", Of: "sheet " + p.chosen,
		Title: f.Say("Void settlement sheet %d?", number),
		Text:  f.Say("Its tickets can be settled again. The number stays with it. This cannot be taken back."),
		State: model.Stop, Fields: ask.ManagerFields(f), Yes: f.Say("Void the sheet"), Danger: true,
		Then: func(values map[string]string) {
			err := f.As(values["who"], func() error { return acts.VoidSheet(context.Background(), f.Desk, number, values["reason"]) })
			if err != nil {
				f.Fail(err)
				return
			}
			p.took(f.Say("settlement sheet %d is void: %s", number, values["reason"]))
		},
	})
}

// VoidPayment asks which payment on the chosen sheet is void, and why.
func (p *Payments) VoidPayment() {
	f, all := p.session, p.paymentsInForce()
	if len(all) == 0 {
		return
	}
	var options []model.Option
	for _, one := range all {
		options = append(options, model.Option{Code: one.ID(), Name: one.Amount.FixedString(cents), Detail: session.Join(" ", f.Text(one.How.Said()), one.Reference)})
	}
	fields := []model.AskField{{ID: "payment", Label: f.Say("Payment"), Options: options, Value: all[len(all)-1].ID(), Chars: 24, Required: true}}
	f.Put(model.Ask{
		Title: f.Say("Void a payment?"), Text: f.Say("What it paid is open on the sheet again. The number stays with it."),
		State: model.Stop, Fields: append(fields, ask.ManagerFields(f)...), Yes: f.Say("Void the payment"), Danger: true,
		Then: func(values map[string]string) {
			number, _ := session.Number(values["payment"])
			err := f.As(values["who"], func() error { return acts.VoidPayment(context.Background(), f.Desk, number, values["reason"]) })
			if err != nil {
				f.Fail(err)
				return
			}
			p.took(f.Say("payment %d is void: %s", number, values["reason"]))
		},
	})
}

// SettleAgain settles the tickets of the chosen sheet, which is void, anew in its place.
func (p *Payments) SettleAgain() { p.session.Open("settle", againText+p.chosen) }
