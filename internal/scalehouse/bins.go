package scalehouse

import (
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/guard/lookup"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/quantity"
)

// MoveGrain enters a movement of grain: it is signed by the person signed in, counts on its day or
// today, and gets the next number. A count is compared with what the book says at that moment.
// Whatever the bins do not have is refused, and nothing of it written.
func MoveGrain(ctx context.Context, at Actor, m bin.Movement) (bin.Movement, error) {
	return result(ctx, at, func(w *Batch) (bin.Movement, error) {
		m := m // an act may be run again
		if err := dateMovement(w, &m); err != nil {
			return m, err
		}
		houses, err := housesFrom(w, m.Day)
		if err != nil {
			return m, err
		}
		if m.Count != nil {
			c, err := againstBook(w, *m.Count, m.Commodity, houses[0])
			if err != nil {
				return m, err
			}
			m = m.Counting(c)
		}
		return enterMovement(w, m.Adjusted(m.Adjusts), houses)
	})
}

// UndoMovement takes a movement back on today's business day, by the same weights the other way. What
// the house was opened with is taken back with its opening.
func UndoMovement(ctx context.Context, at Actor, number int64, reason string) (bin.Movement, error) {
	return undoMovement(ctx, at, number, reason, false)
}

// UndoOpened takes a movement back that an opening put in.
func UndoOpened(ctx context.Context, at Actor, number int64, reason string) (bin.Movement, error) {
	return undoMovement(ctx, at, number, reason, true)
}

func undoMovement(ctx context.Context, at Actor, number int64, reason string, opened bool) (bin.Movement, error) {
	return result(ctx, at, func(w *Batch) (bin.Movement, error) {
		was, id, err := movement(w, number)
		if err != nil {
			return was, err
		}
		switch {
		case was.What == bin.Open && !opened:
			return was, message.Refused.Errorf("movement %d is of the opening of the books, which is taken back as a whole", number)
		case was.UndoneBy != 0:
			return was, message.Refused.Errorf("movement %d was undone by movement %d. What was undone is entered anew", number, was.UndoneBy)
		case was.What == bin.Undo:
			return was, message.Refused.Errorf("movement %d undid movement %d. Enter that one anew", number, was.Undoes)
		}
		day, err := w.BusinessDay()
		if err != nil {
			return was, err
		}
		houses, err := housesFrom(w, day)
		if err != nil {
			return was, err
		}
		back, err := enterMovement(w, was.Reversed(0, day, w.desk.who.Name, reason), houses)
		if err != nil {
			return was, err
		}
		was.UndoneBy = back.Number
		return back, w.putRecord(was.Kind()+" "+id, id, was)
	})
}

// dateMovement signs a movement and gives it its day.
func dateMovement(w *Batch, m *bin.Movement) error {
	m.By = w.desk.who.Name
	today, err := w.BusinessDay()
	if err != nil {
		return err
	}
	if m.Day.IsZero() {
		m.Day = today
	}
	open, err := w.openDay(m.Day)
	switch {
	case err != nil:
		return err
	case open != m.Day:
		return message.Refused.Errorf("%s is closed; its sheet has the bins as they were. Date the movement %s or later, and name the right day in the reason", m.Day, open)
	case m.Day.After(today):
		return message.Refused.Errorf("the movement is of %s, and today is %s. Write the day the grain was moved", m.Day, today)
	}
	return nil
}

// housesFrom is the content of the bins in the evening of a day, and now: a movement of an earlier
// day must leave enough for both.
func housesFrom(w *Batch, day quantity.Date) ([]bin.House, error) {
	if err := w.renewRows(""); err != nil {
		return nil, err
	}
	var out []bin.House
	for _, before := range []string{day.AddDays(1).String(), lastOfDays} {
		rows, err := w.tx.BinsBefore(before)
		if err != nil {
			return nil, err
		}
		house := bin.House{}
		for _, r := range rows {
			house[r.Place] = r.Close
		}
		out = append(out, house)
	}
	return out, nil
}

// lastOfDays is after every day.
const lastOfDays = "9999-99-99"

// againstBook is a count beside what the book says lies in its bin. What a tape measured is worked
// out by the shape that the bin has.
func againstBook(w *Batch, c bin.Count, commodity string, house bin.House) (bin.Count, error) {
	if c.Measure != nil {
		bins, err := binsOf(w)
		if err != nil {
			return c, err
		}
		shape := bins[c.Bin].Shape
		worked, err := shape.Work(*c.Measure, commodity)
		if err != nil {
			return c, err
		}
		c.Shape, c.Counted = &shape, wholeUnits.Apply(worked.Packed)
	}
	c.Book = house.At(bin.Place{Bin: c.Bin, Commodity: commodity, Unit: c.Counted.Unit()}).Balance()
	return c, nil
}

// wholeUnits rounds a weight that a tape measured: it is no better than that.
var wholeUnits = quantity.To("1", quantity.HalfUp)

// mayMove returns why a movement may not be, or nil.
func mayMove(w *Batch, m bin.Movement, houses []bin.House) error {
	if err := w.desk.MayWeigh("move grain"); err != nil {
		return err
	}
	if m.NeedsManager() {
		if err := w.desk.MayManage("Changing what the book says lies in a bin"); err != nil {
			return err
		}
	}
	if _, err := grain.ByID(m.Commodity); err != nil {
		return err
	}
	if err := m.Check(); err != nil {
		return err
	}
	bins, err := binsOf(w)
	if err != nil {
		return err
	}
	for _, name := range m.Bins() {
		if _, known := bins[name]; !known {
			return message.NotFound.Errorf("there is no pit or bin %v at this elevator. Name one that is set up, or add it to the list", name)
		}
	}
	for _, house := range houses {
		if err := m.Fits(house); err != nil {
			return err
		}
	}
	return nil
}

// enterMovement enters a movement that may be, with the lot it moves and what the house asks about it.
func enterMovement(w *Batch, m bin.Movement, houses []bin.House) (bin.Movement, error) {
	if err := mayMove(w, m, houses); err != nil {
		return m, err
	}
	from, err := held(w, m, m.From, houses[0])
	if err != nil {
		return m, err
	}
	into, err := held(w, m, m.Into, houses[0])
	if err != nil {
		return m, err
	}
	if m.Asked = nil; m.What != bin.Undo { // what is taken back is of the lot that was moved
		m.Lot = guard.LotOf(from)
	}
	for _, f := range guard.CheckMove(m, w.desk.profile, from, into) {
		if err := mayGoOn(w.desk, m, f); err != nil {
			return m, err
		}
		m.Asked = append(m.Asked, message.Kept{Text: f.Said})
	}
	return putMovement(w, m)
}

// held are bins of a movement with what lies in them.
func held(w *Batch, m bin.Movement, of []bin.Weighed, house bin.House) ([]guard.Held, error) {
	bins, err := binsOf(w)
	if err != nil {
		return nil, err
	}
	var out []guard.Held
	for _, weighed := range of {
		h := guard.Held{Bin: bins[weighed.Bin]}
		for p, heap := range house {
			if p.Bin == weighed.Bin {
				h.Stock = append(h.Stock, lookup.StockOf(p, heap)...)
			}
		}
		p := bin.Place{Bin: weighed.Bin, Commodity: m.Commodity, Unit: m.Unit()}
		if h.Top, err = lookup.Lot(w.tx, p, house.At(p), ""); err != nil {
			return nil, err
		}
		out = append(out, h)
	}
	return out, nil
}

// mayGoOn returns why a movement that the house asks about may not go on, or nil: a question is
// answered by the movement's reason, a manager's act by who signs it.
func mayGoOn(d *Desk, m bin.Movement, f guard.Finding) error {
	switch {
	case f.Act == elevator.GuardManager && d.who.Role != elevator.Manager:
		return message.Refused.Errorf("%s. Choose another bin, or let a manager do it", f.Said)
	case f.Act == elevator.GuardQuestion && m.Reason == "":
		return message.Refused.Errorf("%s. Look again, or give the reason", f.Said)
	}
	return nil
}

// putMovement enters a movement under the next number.
func putMovement(w *Batch, m bin.Movement) (bin.Movement, error) {
	number, err := w.tx.NextNumber(numbering.Movement)
	if err != nil {
		return m, err
	}
	m.Number = number
	id := MovementID(m)
	if err := w.putRecord(m.Kind()+" "+id, id, m); err != nil {
		return m, err
	}
	return m, w.tx.MoveGrain(m)
}

// MovementID is the id of a movement's record: by day, then by number.
func MovementID(m bin.Movement) string { return fmt.Sprintf("%s/%08d", m.Day, m.Number) }

// movement finds a movement by its number.
func movement(w *Batch, number int64) (bin.Movement, string, error) {
	rows, err := w.tx.Records(bin.Movement{}.Kind())
	if err != nil {
		return bin.Movement{}, "", err
	}
	suffix := fmt.Sprintf("/%08d", number)
	for _, r := range rows {
		if strings.HasSuffix(r.ID, suffix) {
			m, err := journal.ReadBody[bin.Movement](r.Body)
			return m, r.ID, err
		}
	}
	return bin.Movement{}, "", message.NotFound.Errorf("there is no movement %d in this book. Look its number up on the card of the bin", number)
}

// binsOf are all pits and bins by their short names, as the work has left them so far.
func binsOf(w *Batch) (map[string]elevator.Bin, error) {
	if w.pits != nil {
		return w.pits, nil
	}
	all, err := RecordsIn[elevator.Bin](w)
	if err != nil {
		return nil, err
	}
	w.pits = map[string]elevator.Bin{}
	for _, b := range all {
		w.pits[b.ID] = b
	}
	return w.pits, nil
}

// onward is the bin that the grain of a load goes on to from its pit, by the usual path of the house.
func onward(w *Batch, l *load.Load) (string, error) {
	if l.Details.Direction == load.Outbound || l.Details.Bin == "" {
		return "", nil
	}
	bins, err := binsOf(w)
	return bins[l.Details.Bin].Onward(l.Details.Commodity), err
}
