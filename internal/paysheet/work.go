package paysheet

import (
	"fmt"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
	"tenthpoint/internal/worksheet"
)

// Part is the grower's whole part of a ticket, settled at the price of the line by the ticket's own
// edition and engine.
type Part struct {
	Value, Discounts, Premiums, Services quantity.Amount
}

// Rules are the tariff and levies that a sheet is worked by.
type Rules struct {
	Tariff *tariff.Edition
	Levies []*levy.Levy
}

// Worked is a sheet with its working.
type Worked struct {
	*worksheet.Sheet
	Quantity, Gross, Quality, Net         *worksheet.Step
	Services, Keeping, Levies             *worksheet.Step
	Advances, Interest, Payable, Deducted *worksheet.Step
}

// Cents is the place money of a sheet is rounded to.
var Cents = quantity.To("0.01", quantity.HalfUp)

// Work works a sheet out. Parts are those of its lines, in their order.
func Work(s Sheet, parts []Part, by Rules) (Worked, error) {
	w := working{s: &worksheet.Sheet{}, sheet: s, by: by}
	for i, line := range s.Lines {
		w.s.Section(message.New("Ticket %d", line.Ticket))
		if err := w.line(LineID(i), line, parts[i]); err != nil {
			return Worked{}, err
		}
	}
	w.s.Section(message.New("Settlement"))
	return w.totals()
}

// LineID and LevyID begin the ids of the steps of a line, or name that of a levy, counted from 0.
func LineID(i int) string { return fmt.Sprintf("line%d", i+1) }
func LevyID(i int) string { return fmt.Sprintf("levy%d", i+1) }

type working struct {
	s     *worksheet.Sheet
	sheet Sheet
	by    Rules

	quantities, values, qualities, services, keeping []worksheet.Operand
}

// line writes one ticket.
func (w *working) line(id string, l Line, p Part) error {
	ticket := message.New("ticket %d", l.Ticket)
	q := w.s.Given(id+".quantity", message.New("Quantity"), l.Quantity, quantity.Unrounded, ticket)
	price := w.s.Given(id+".price", message.New("Price"), l.Price, quantity.Unrounded, message.Name(l.Source))
	w.quantities = append(w.quantities, q)
	w.values = append(w.values, w.value(id+".value", l, p, q, price))
	quality := w.s.Given(id+".quality.whole", message.New("Premiums less discounts of the ticket"), p.Premiums.Sub(p.Discounts), quantity.Unrounded, ticket)
	services := w.s.Given(id+".services.whole", message.New("Services of the ticket"), p.Services, quantity.Unrounded, ticket)
	w.qualities = append(w.qualities, w.share(id+".quality", message.New("Premiums less discounts"), quality, l, q))
	w.services = append(w.services, w.share(id+".services", message.New("Services"), services, l, q))
	kept, err := w.by.Tariff.Keep(w.s, id+".keeping", tariff.Lot{Quantity: q, Under: l.Under, Delivered: l.Delivered, To: w.sheet.ChargedTo()})
	w.keeping = append(w.keeping, kept)
	return err
}

// value is the money of a line. All of a ticket that one owner has is its quantity at the price; of
// one that is shared, or settled in parts, the ticket says what the owner's part is worth to the cent.
func (w *working) value(id string, l Line, p Part, q, price *worksheet.Step) *worksheet.Step {
	label := message.New("Value")
	if l.Owner == 0 && l.Quantity.Equal(l.Whole) {
		return w.s.Work(id, label, worksheet.Times(q, price), Cents, worksheet.Unsourced)
	}
	whole := w.s.Given(id+".whole", message.New("Value of the ticket at this price"), p.Value, quantity.Unrounded, message.New("ticket %d", l.Ticket))
	return w.share(id, label, whole, l, q)
}

// share is a part's share of an amount of the whole: what lies between its two marks.
func (w *working) share(id string, label message.Text, whole *worksheet.Step, l Line, q *worksheet.Step) *worksheet.Step {
	if l.Quantity.Equal(l.Whole) {
		return w.s.Work(id, label, worksheet.Same(whole), Cents, worksheet.Unsourced)
	}
	all := worksheet.Const(l.Whole)
	upTo := w.s.Work(id+".upto", message.New("%s up to the end of this part", label), worksheet.Over(worksheet.Times(whole, worksheet.Sum(worksheet.Const(l.From), q)), all), Cents, worksheet.Unsourced)
	before := w.s.Work(id+".before", message.New("%s of earlier sheets", label), worksheet.Over(worksheet.Times(whole, worksheet.Const(l.From)), all), Cents, worksheet.Unsourced)
	return w.s.Work(id, label, worksheet.Less(upTo, before), Cents, worksheet.Unsourced)
}

func (w *working) sum(id string, label message.Text, of []worksheet.Operand, place quantity.Rounding) *worksheet.Step {
	if len(of) == 0 {
		return w.s.Skip(id, label, quantity.Dollar, Cents, message.New("there is none"), worksheet.Unsourced)
	}
	return w.s.Work(id, label, worksheet.Sum(of[0], of[1:]...), place, worksheet.Unsourced)
}

// totals writes the settlement below the tickets.
func (w *working) totals() (out Worked, err error) {
	out.Sheet = w.s
	out.Quantity = w.sum("quantity", message.New("Quantity"), w.quantities, quantity.Unrounded)
	out.Gross = w.sum("gross", message.New("Gross value"), w.values, Cents)
	out.Quality = w.sum("quality", message.New("Premiums less discounts"), w.qualities, Cents)
	out.Net = w.s.Work("net", message.New("Net market value"), worksheet.Sum(out.Gross, out.Quality), Cents, worksheet.Unsourced)
	out.Services = w.sum("services", message.New("Services"), w.services, Cents)
	out.Keeping = w.sum("keeping", message.New("Storage and service charges"), w.keeping, Cents)
	var levies []worksheet.Operand
	for i, l := range w.by.Levies {
		taken, err := l.Take(w.s, LevyID(i), levy.Bases{Quantity: out.Quantity, Gross: out.Gross, Net: out.Net})
		switch {
		case err != nil:
			return out, err
		case l.Buyer:
			w.s.Note(taken, message.New("paid by the elevator, not deducted"))
		default:
			levies = append(levies, taken)
		}
	}
	out.Levies = w.sum("levies", message.New("Levies"), levies, Cents)
	var advances, interest []worksheet.Operand
	for i, a := range w.sheet.Advances {
		id := fmt.Sprintf("advance%d", i+1)
		if a.Sheet > 0 {
			advances = append(advances, w.s.Given(id, message.New("Paid too much on settlement sheet %d", a.Sheet), a.Amount, quantity.Unrounded, worksheet.Unsourced))
			continue
		}
		paid := w.s.Given(id, message.New("Advance of %s", a.Day), a.Amount, quantity.Unrounded, worksheet.Unsourced)
		advances = append(advances, paid)
		interest = append(interest, w.by.Tariff.Interest.Charge(w.by.Tariff, w.s, id+".interest", paid, a.Day, w.sheet.ChargedTo()))
	}
	out.Advances = w.sum("advances", message.New("Advances"), advances, Cents)
	out.Interest = w.sum("interest", message.New("Interest"), interest, Cents)
	out.Deducted = w.s.Work("deducted", message.New("Deducted"), worksheet.Sum(out.Services, out.Keeping, out.Levies, out.Advances, out.Interest), Cents, worksheet.Unsourced)
	out.Payable = w.s.Work("payable", message.New("Payable"), worksheet.Less(out.Net, out.Deducted), Cents, worksheet.Unsourced)
	return out, nil
}

// Figures are the lines of the settlement by name, as the fact keeps them.
func (w Worked) Figures() map[string]quantity.Amount {
	out := map[string]quantity.Amount{}
	for name, step := range map[string]*worksheet.Step{
		"quantity": w.Quantity, "gross": w.Gross, "quality": w.Quality, "net": w.Net, "services": w.Services, "keeping": w.Keeping,
		"levies": w.Levies, "advances": w.Advances, "interest": w.Interest, "deducted": w.Deducted, "payable": w.Payable,
	} {
		out[name] = step.Value()
	}
	return out
}

// Hash is the SHA-256 of every figure of the working.
func (w Worked) Hash() string {
	return digest.Of(w.Digest())
}
