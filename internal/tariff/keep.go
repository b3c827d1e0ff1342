package tariff

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// Lot is grain that came on one day and is kept under one title.
type Lot struct {
	Quantity  *worksheet.Step // in the unit the tariff settles by
	Under     title.Under
	Delivered quantity.Date
	// FieldDone is the day of the last load of the field, where that is known.
	FieldDone quantity.Date
	// To is the day the charge is reckoned to: priced, loaded out, or today.
	To quantity.Date
}

// Keep writes the charge for keeping a lot on a sheet, under ids that begin with id, and
// returns the step of the whole.
func (e *Edition) Keep(s *worksheet.Sheet, id string, lot Lot) (*worksheet.Step, error) {
	c, found := e.For(lot.Under)
	switch unit := lot.Quantity.Value().Unit(); {
	case unit != e.Settle:
		return nil, message.Invalid.Errorf("tariff %s charges by %s, and the grain is counted in %s", e.ID, e.Settle, unit)
	case lot.To.Before(lot.Delivered):
		return nil, message.Invalid.Errorf("the charge is reckoned to %s, before the grain came on %s", lot.To, lot.Delivered)
	case !found:
		none := message.New("nothing is charged for keeping grain that is: %s", lot.Under.Name())
		return s.Skip(id, message.New("Keeping"), quantity.Dollar, e.Money, none, message.New("%v", e.ID)), nil
	}
	w := working{e: e, c: c, s: s, id: id, lot: lot}
	return w.work(), nil
}

// working is one charge being written.
type working struct {
	e   *Edition
	c   Charge
	s   *worksheet.Sheet
	id  string
	lot Lot
}

// first is day 1.
func (w *working) first() quantity.Date {
	day := w.lot.Delivered
	if w.c.ByField && w.lot.FieldDone.After(day) {
		day = w.lot.FieldDone
	}
	if !w.c.FromDelivery {
		day = day.AddDays(1)
	}
	return day
}

// last is the last day that counts.
func (w *working) last() quantity.Date {
	if w.c.LastCounts {
		return w.lot.To
	}
	return w.lot.To.AddDays(-1)
}

func (w *working) work() *worksheet.Step {
	first, last := w.first(), w.last()
	label := w.c.Label
	kept := max(0, first.DaysUntil(last)+1)
	w.s.Given(w.id+".days", message.New("%s, days from %s to %s", label, first, last), quantity.Int(int64(kept), quantity.Plain), quantity.Unrounded, w.c.Source)
	from := first
	if w.c.Free.Given() {
		free := w.c.Free.last(first)
		w.s.Given(w.id+".free", message.New("%s, free %s", label, w.c.Free.said()), quantity.Int(int64(min(kept, max(0, first.DaysUntil(free)+1))), quantity.Plain), quantity.Unrounded, w.c.Free.source)
		if !free.Before(first) {
			from = free.AddDays(1)
		}
	}
	if kept == 0 || last.Before(from) {
		return w.s.Skip(w.id, label, quantity.Dollar, w.e.Money, message.New("no day is charged up to %s", last), w.c.Source)
	}
	return w.total(w.bands(stretch{first: from, last: last}, first), stretch{first: from, last: last})
}

// bands writes each band that has days in the stretch charged.
func (w *working) bands(charged stretch, first quantity.Date) []worksheet.Operand {
	var lines []worksheet.Operand
	begin := charged.first
	for i, b := range w.c.Bands {
		end := charged.last
		if b.End.Given() {
			end = b.End.last(first)
		}
		part := stretch{begin, end}.until(charged.last)
		id := w.id + "." + rowName(i)
		if part.days() == 0 {
			if b.End.Given() {
				w.s.Skip(id, b.Label, quantity.Dollar, w.e.Money, message.New("no day lies in it"), b.Source)
			}
		} else {
			lines = append(lines, w.band(id, b, part))
		}
		if b.End.Given() && !end.Before(begin) {
			begin = end.AddDays(1)
		}
		if begin.After(charged.last) {
			break
		}
	}
	return lines
}

// band writes one band.
func (w *working) band(id string, b Band, part stretch) *worksheet.Step {
	q, s := w.lot.Quantity, w.s
	when := message.New("%s, from %s to %s", b.Label, part.first, part.last)
	switch b.How {
	case Daily:
		rate := s.Rate(id+".rate", message.New("%s, rate", b.Label), b.Posted.Amount, b.Posted.Source)
		days := s.Given(id+".count", message.New("%s, days", b.Label), quantity.Int(int64(part.days()), quantity.Plain), quantity.Unrounded, worksheet.Unsourced)
		return s.Work(id, when, over(worksheet.Times(q, rate, days), b.Posted.Days), w.e.Money, b.Source)
	case Monthly:
		rate := s.Rate(id+".rate", message.New("%s, rate", b.Label), b.Rate.Amount, b.Rate.Source)
		if b.Part == ByDay {
			days := s.Given(id+".count", message.New("%s, days", b.Label), quantity.Int(int64(part.days()), quantity.Plain), quantity.Unrounded, worksheet.Unsourced)
			return s.Work(id, when, over(worksheet.Times(q, rate, days), daysOfMonth), w.e.Money, b.Source)
		}
		count := s.Given(id+".count", message.New("%s, months", b.Label), quantity.Int(int64(months(part.first, part.last, b.Part)), quantity.Plain), quantity.Unrounded, partWords[b.Part])
		return s.Work(id, when, worksheet.Times(q, rate, count), w.e.Money, b.Source)
	}
	rate := s.Rate(id+".rate", message.New("%s, rate", b.Label), b.Rate.Amount, b.Rate.Source)
	return s.Work(id, when, worksheet.Times(q, rate), w.e.Money, b.Source)
}

// daysOfMonth are the days of a month of which one is charged as a part.
const daysOfMonth = 30

// over divides by the days a charge is posted for.
func over(all worksheet.Expr, days int) worksheet.Expr {
	if days == 1 {
		return all
	}
	return worksheet.Over(all, worksheet.Const(quantity.Int(int64(days), quantity.Plain)))
}

// total writes the sum of the bands, at least what the tariff says.
func (w *working) total(lines []worksheet.Operand, charged stretch) *worksheet.Step {
	source := w.c.Source
	if len(lines) == 0 {
		return w.s.Skip(w.id, w.c.Label, quantity.Dollar, w.e.Money, message.New("no band has a day of it"), source)
	}
	sum := worksheet.Sum(lines[0], lines[1:]...)
	if !w.c.Least.Given() {
		return w.s.Work(w.id, w.c.Label, sum, w.e.Money, source)
	}
	all := w.s.Work(w.id+".sum", message.New("%s before the least charge", w.c.Label), sum, w.e.Money, source)
	least := w.s.Rate(w.id+".least", message.New("%s, least charge", w.c.Label), w.c.Least.Amount, w.c.Least.Source)
	if w.c.LeastPerMonth {
		count := w.s.Given(w.id+".least.count", message.New("%s, months begun", w.c.Label), quantity.Int(int64(months(charged.first, charged.last, Begun)), quantity.Plain), quantity.Unrounded, worksheet.Unsourced)
		least = w.s.Work(w.id+".least.all", message.New("%s, least charge of these months", w.c.Label), worksheet.Times(least, count), w.e.Money, source)
	}
	return w.s.Work(w.id, w.c.Label, worksheet.Higher(all, least), w.e.Money, source)
}

// FreeUntil is the last day on which grain delivered on a day is kept free of charge; false where
// nothing is charged for it, or from the first day.
func (e *Edition) FreeUntil(under title.Under, delivered quantity.Date) (quantity.Date, bool) {
	c, found := e.For(under)
	if !found || !c.Free.Given() {
		return quantity.Date{}, false
	}
	w := working{c: c, lot: Lot{Delivered: delivered}}
	return c.Free.last(w.first()), true
}
