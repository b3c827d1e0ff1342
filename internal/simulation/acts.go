package simulation

import (
	"fmt"
	"path/filepath"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/intake"
)

// An act is something that people at a desk do. Each draws what it is about from what the book
// has, so that an honest program refuses none of them.
type act struct {
	name   string
	weight int
	do     func(*world, *desk) error
	closes bool // it closes a day, and asks about the clock sooner
}

var acts = []act{
	{name: "a truck comes", weight: 20, do: comes},
	{name: "a truck goes on", weight: 60, do: goesOn},
	{name: "a load is rejected", weight: 2, do: turnedAway},
	{name: "a ticket is printed", weight: 6, do: printed},
	{name: "a ticket is voided", weight: 3, do: voided},
	{name: "a ticket is corrected", weight: 4, do: corrected},
	{name: "a void ticket is reissued", weight: 3, do: reissued},
	{name: "a ticket is disputed", weight: 2, do: disputed},
	{name: "a card is written", weight: 3, do: cardWritten},
	{name: "past loads are taken over", weight: 2, do: takenOver},
	{name: "the book is copied", weight: 2, do: copied},
	{name: "the day is closed", weight: 2, do: dayClosed, closes: true},
}

// evening is the hour from which on the day is mostly closed.
const evening = 18

// choose draws what happens next.
func (w *world) choose() act {
	if w.now.Hour() >= evening && w.draw.IntN(5) > 0 {
		return acts[len(acts)-1]
	}
	all := 0
	for _, a := range acts {
		all += a.weight
	}
	n := w.draw.IntN(all)
	for _, a := range acts {
		if n -= a.weight; n < 0 {
			return a
		}
	}
	return acts[0]
}

func comes(w *world, d *desk) error {
	id, err := scalehouse.OpenLoad(ctx, d.Desk, housetest.Details())
	if err != nil {
		return err
	}
	return w.weighs(d, id, load.Gross, int64(40000+20*w.draw.IntN(1500)))
}

func (w *world) weighs(d *desk, id string, which load.Which, pounds int64) error {
	err := scalehouse.Weigh(ctx, d.Desk, id, housetest.ScaleWeight(which, pounds))
	if err == nil {
		w.typed[side{id, which}] = pounds
	}
	return err
}

// goesOn does what one of the trucks on the yard lacks.
func goesOn(w *world, d *desk) error {
	l, err := w.fromYard(d)
	if err != nil || l == nil {
		return err
	}
	_, gross := l.Weight(load.Gross, "")
	_, tare := l.Weight(load.Tare, "")
	switch {
	case !gross:
		return w.weighs(d, l.ID, load.Gross, int64(40000+20*w.draw.IntN(1500)))
	case l.Sample.Moisture == nil:
		return scalehouse.RecordSample(ctx, d.Desk, l.ID, housetest.SampleOf(fmt.Sprintf("%d.%d", 13+w.draw.IntN(8), w.draw.IntN(10))))
	case !tare:
		return w.weighs(d, l.ID, load.Tare, int64(22000+20*w.draw.IntN(200)))
	}
	number, err := scalehouse.Issue(ctx, d.Desk, l.ID)
	if err != nil {
		return err
	}
	if _, twice := w.nets[number]; twice {
		w.found("ticket number %d was given twice", number)
	}
	full, knownFull := w.typed[side{l.ID, load.Gross}]
	empty, knownEmpty := w.typed[side{l.ID, load.Tare}]
	if knownFull && knownEmpty { // else nobody was told of the weight, when the program ended
		w.nets[number] = full - empty
	}
	return nil
}

// fromYard draws one of the trucks on the yard; nil where there is none.
func (w *world) fromYard(d *desk) (*load.Load, error) {
	yard, err := office.Yard(ctx, d.Desk)
	if err != nil || len(yard) == 0 {
		return nil, err
	}
	return yard[w.draw.IntN(len(yard))], nil
}

func turnedAway(w *world, d *desk) error {
	l, err := w.fromYard(d)
	if err != nil || l == nil {
		return err
	}
	return scalehouse.Refuse(ctx, d.Desk, l.ID, "smells musty")
}

// ticketIn draws a ticket of a phase among the last ones; nil where it hits none.
func (w *world) ticketIn(d *desk, phase load.Phase) (*load.Load, error) {
	last, some, err := office.LastTicket(ctx, d.Desk)
	if err != nil || !some {
		return nil, err
	}
	l, err := office.Ticket(ctx, d.Desk, 1+max(0, last-1-w.draw.Int64N(min(last, 30))))
	if err != nil || l.Phase != phase {
		return nil, err
	}
	return l, nil
}

func printed(w *world, d *desk) error {
	l, err := w.ticketIn(d, load.Ticketed)
	if err != nil || l == nil {
		return err
	}
	_, err = scalehouse.RecordPrint(ctx, d.Desk, l.Number)
	return err
}

func voided(w *world, d *desk) error {
	l, err := w.free(d, load.Ticketed)
	if err != nil || l == nil {
		return err
	}
	return scalehouse.Void(ctx, d.Desk, l.Number, "a trial")
}

func corrected(w *world, d *desk) error {
	l, err := w.free(d, load.Ticketed)
	if err != nil || l == nil {
		return err
	}
	id, err := scalehouse.Correct(ctx, d.Desk, l.Number, "a trial")
	if err == nil {
		w.carries(l.ID, id)
	}
	return err
}

func reissued(w *world, d *desk) error {
	l, err := w.free(d, load.Void)
	if err != nil || l == nil || l.Reissue.By > 0 {
		return err
	}
	id, err := scalehouse.Reissue(ctx, d.Desk, l.Number, "torn")
	if err == nil {
		w.carries(l.ID, id)
	}
	return err
}

// carries notes that a load begins with the weights of the one it follows.
func (w *world) carries(from, to string) {
	for _, which := range []load.Which{load.Gross, load.Tare} {
		if pounds, known := w.typed[side{from, which}]; known {
			w.typed[side{to, which}] = pounds
		}
	}
}

// free is a ticket in whose place no load stands on the yard already.
func (w *world) free(d *desk, phase load.Phase) (*load.Load, error) {
	l, err := w.ticketIn(d, phase)
	if err != nil || l == nil {
		return nil, err
	}
	yard, err := office.Yard(ctx, d.Desk)
	for _, other := range yard {
		if other.InPlaceOf() == l.Number {
			return nil, err
		}
	}
	return l, err
}

func disputed(w *world, d *desk) error {
	l, err := w.ticketIn(d, load.Ticketed)
	if err != nil || l == nil {
		return err
	}
	_, err = disputes.Raise(ctx, d.Desk, dispute.Raised{Ticket: l.Number, By: "Ada Field", About: "moisture", Claim: "drier at home"})
	return err
}

func cardWritten(w *world, d *desk) error {
	n := w.draw.IntN(9)
	if n%2 == 0 {
		return scalehouse.SetGrower(ctx, d.Desk, elevator.Grower{ID: fmt.Sprint("G", n+10), Name: fmt.Sprintf("Grower %d", w.out.Acts)})
	}
	return scalehouse.SetTruck(ctx, d.Desk, elevator.Truck{ID: fmt.Sprint("T", n), Plate: fmt.Sprintf("ABC %d", w.out.Acts)})
}

// takenOver takes past loads over, of days that may be closed long since.
func takenOver(w *world, d *desk) error {
	var text strings.Builder
	text.WriteString("day,commodity,grower,truck,gross,tare,moisture\n")
	for range 1 + w.draw.IntN(4) {
		day := d.Today().AddDays(-w.draw.IntN(30))
		if text := day.String(); text < "2026-08-01" { // before the rates
			continue
		}
		fmt.Fprintf(&text, "%s,corn,G1,T1,%d,24300,1%d.4\n", day, 50000+20*w.draw.IntN(200), w.draw.IntN(9))
	}
	w.lists++
	list, problems, err := intake.Preview(ctx, d.Desk, imports.Loads, fmt.Sprintf("loads-%d.csv", w.lists), []byte(text.String()))
	if err != nil || len(problems) > 0 || len(list.Rows) == 0 {
		return err
	}
	_, _, err = intake.Take(ctx, d.Desk, list, false, nil)
	return err
}

// copied copies the book, and wants the copy to hold all that was acknowledged.
func copied(w *world, d *desk) error {
	w.copies++
	path := filepath.Join(filepath.Dir(w.path), fmt.Sprintf("copy-%d.book", w.copies))
	if err := d.kept.Backup(ctx, path, d.HeadText); err != nil {
		return err
	}
	kept, err := sqlite.Open(path, book.Options{ReadOnly: true})
	if err != nil {
		return err
	}
	defer kept.Close()
	head, _, err := kept.Head(ctx)
	if last := w.acknowledged[len(w.acknowledged)-1]; err == nil && head.Hash != last.Hash {
		w.found("the copy ends with fact %d, and fact %d was acknowledged", head.Seq, last.Seq)
	}
	return err
}

// dayClosed closes the day that the clock shows, once.
func dayClosed(w *world, d *desk) error {
	_, _, closed, err := office.ClosingOf(ctx, d.Desk, d.Today())
	if err != nil || closed {
		return err
	}
	return scalehouse.CloseDay(ctx, d.Desk, d.Today(), "drawn")
}
