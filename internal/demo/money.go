package demo

import (
	"context"
	"fmt"
	"slices"
	"time"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/levy"
	house "tenthpoint/internal/office"
	office "tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/money"
	"tenthpoint/internal/tariff"
)

// Money is the tariffs and levies that the season is settled by. Without them no ticket is settled.
type Money struct {
	Tariffs *tariff.Set
	Levies  *levy.Set
}

// What comes of some sheets and payments, counted as they are made.
const (
	correctedSheet = 2  // void at once, and made again with a lender beside the grower
	deferredSheet  = 3  // paid in the next year
	halfPaidOf     = 4  // every so many payments pays half
	restsDays      = 2  // a ticket is not settled before it could be corrected
	mostOnSheet    = 12 // tickets
	firstCheck     = 40117
)

// cashier settles the tickets of a season, pays, and trades.
type cashier struct {
	*season
	turn, sheets, checks int // mornings on which a grower was settled, sheets and checks written
}

// settleUp settles one grower on the morning of a day and pays the sheet that is open longest.
func (s *cashier) settleUp(ctx context.Context, day quantity.Date, at time.Time) error {
	if s.Money == nil {
		return nil
	}
	if err := s.as(Manager, at); err != nil {
		return err
	}
	if err := s.payOldest(ctx, day); err != nil {
		return err
	}
	grower := growers[s.turn%len(growers)].ID
	s.turn++
	order, err := s.order(ctx, grower, day)
	if err != nil || len(order.Tickets) == 0 {
		return err
	}
	if s.sheets == deferredSheet {
		order.PayAfter, _ = quantity.NewDate(day.Year()+1, 1, 4)
	}
	made, _, err := money.Settle(ctx, s.desk, order)
	if err != nil {
		return err
	}
	if s.sheets++; s.sheets-1 != correctedSheet {
		return nil
	}
	if err := money.VoidSheet(ctx, s.desk, made.Number, "the lender was left out"); err != nil {
		return err
	}
	order.Payees, order.Corrects = []string{"Farmers Bank of Ottermill (invented)"}, made.Number
	_, _, err = money.Settle(ctx, s.desk, order)
	return err
}

// order settles what a grower sold of one grain some days ago.
func (s *cashier) order(ctx context.Context, grower string, day quantity.Date) (o paysheet.Order, err error) {
	left, err := office.UnsettledOf(ctx, s.desk, grower)
	if err != nil {
		return o, err
	}
	if s.turn%2 == 0 { // every other time another grain comes first
		slices.Reverse(left)
	}
	for _, u := range left {
		if u.Price == nil || u.Day.DaysUntil(day) < restsDays || len(o.Tickets) == mostOnSheet {
			continue
		}
		if o.Tariff == nil {
			if o.Tariff, err = house.TariffInForce(s.desk, s.Money.Tariffs, u.Commodity, day); err != nil {
				continue // nothing is settled of a grain without a tariff
			}
		}
		if u.Commodity == o.Tariff.Commodity.ID {
			o.Tickets = append(o.Tickets, paysheet.Chosen{Number: u.Ticket})
		}
	}
	o.Grower, o.Day = grower, day
	if l, known := s.Money.Levies.ByID("us-soybeans"); known && o.Tariff != nil && o.Tariff.Commodity.ID == l.Commodity {
		o.Levies = []*levy.Levy{l}
	}
	return o, nil
}

// payOldest pays by check the sheet that is open longest with nothing paid on it, once it has lain for
// some days.
func (s *cashier) payOldest(ctx context.Context, day quantity.Date) error {
	open, err := office.OpenSheets(ctx, s.desk)
	at := slices.IndexFunc(open, func(o paysheet.Open) bool { return o.Paid.IsZero() })
	if err != nil || at < 0 || open[at].Due.DaysUntil(day) < restsDays {
		return err
	}
	amount := open[at].Left
	if s.checks%halfPaidOf == halfPaidOf-1 {
		amount = paysheet.Cents.Apply(amount.Div(quantity.Int(2, quantity.Plain)))
	}
	s.checks++
	_, err = money.Pay(ctx, s.desk, paysheet.Payment{
		Sheet: open[at].Number, Day: day, Amount: amount, How: paysheet.Check, Reference: fmt.Sprint(firstCheck + s.checks),
	})
	return err
}

// trade posts the prices of today and writes down contracts of the forms that deliveries of the season
// name none of.
func (s *cashier) trade(ctx context.Context) error {
	if s.Money == nil {
		return nil
	}
	for _, k := range s.crops {
		if err := scalehouse.PostPrice(ctx, s.desk, elevator.PostedPrice{Commodity: k.commodity, Day: s.today, Price: k.prices[s.days]}); err != nil {
			return err
		}
	}
	for _, c := range s.otherForms() {
		if err := scalehouse.SetContract(ctx, s.desk, c); err != nil {
			return err
		}
	}
	return s.changeContracts(ctx)
}

// otherForms are contracts that leave something open, with growers who have none.
func (s *cashier) otherForms() []elevator.ContractTerms {
	k := s.crops[0]
	unit, per := k.edition.Units.Settle, quantity.Dollar.Per(k.edition.Units.Settle)
	basis, futures, tolerance := quantity.Of("-0.30", per), quantity.Of("4.41", per), quantity.Int(2, quantity.Percent)
	of := func(number string, grower int, form elevator.ContractForm) elevator.ContractTerms {
		return elevator.ContractTerms{
			Number: number, Grower: growers[grower].ID, Commodity: k.commodity, Form: form, Quantity: quantity.Int(5000, unit),
			From: s.today, Until: s.today.AddDays(90),
		}
	}
	fixedBasis, fixedFutures, floor, open := of("B3001", 1, elevator.Basis), of("H3002", 2, elevator.HedgeToArrive), of("M3003", 4, elevator.MinimumPrice), of("D3004", 5, elevator.DelayedPrice)
	fixedBasis.Basis, fixedBasis.Month, fixedBasis.Tolerance = &basis, "March", &tolerance
	fixedFutures.Futures, fixedFutures.Month = &futures, "March"
	floor.Price = k.prices[0]
	return []elevator.ContractTerms{fixedBasis, fixedFutures, floor, open}
}

// changeContracts signs one, prices a part of it, and cancels another.
func (s *cashier) changeContracts(ctx context.Context) error {
	k := s.crops[0]
	part := contract.Pricing{Quantity: quantity.Int(2000, k.edition.Units.Settle), Money: quantity.Of("4.45", quantity.Dollar.Per(k.edition.Units.Settle)), Day: s.today, By: Manager}
	for _, one := range []struct {
		number string
		change func(elevator.ContractTerms) (elevator.ContractTerms, error)
	}{
		{"B3001", func(c elevator.ContractTerms) (elevator.ContractTerms, error) {
			return contract.Sign(c, s.today, Manager)
		}},
		{"B3001", func(c elevator.ContractTerms) (elevator.ContractTerms, error) { return contract.Price(c, part) }},
		{"M3003", func(c elevator.ContractTerms) (elevator.ContractTerms, error) {
			return contract.Cancel(c, quantity.Zero(c.Quantity.Unit()), s.today, Manager, "written twice")
		}},
	} {
		if _, err := money.ChangeContract(ctx, s.desk, one.number, one.change); err != nil {
			return err
		}
	}
	return nil
}
