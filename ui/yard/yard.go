package yard

import (
	"context"
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard/board"
)

// Yard is the trucks that are here and have no ticket yet, with the form of the
// current one.
type Yard struct {
	session *session.Session
	places  board.Places
	forms   map[string]*LoadForm // by load
	blank   *LoadForm
	current *LoadForm
	trucks  []*load.Load
	last    *lastTicket // issued here; nil before the first
	Scale   *ScaleReader
}

// NewYard restores the yard from before the program stopped: every truck at its place, with what
// was typed on its form. Without any, the blank form is the current one.
func NewYard(f *session.Session) *Yard {
	y := &Yard{session: f, forms: map[string]*LoadForm{}, Scale: &ScaleReader{session: f}}
	f.OnTakeUp(func(id string) {
		y.Refresh()
		y.Take(id)
	})
	f.Scans[scaleticket.TruckMark] = scans{y}.openTruck
	y.current = y.newBlank()
	texts := f.Drafts().TypedBefore(yardDraft)
	y.places.Restore(texts)
	y.read()
	y.restoreForms()
	if l := y.find(texts[CurrentText]); l != nil {
		y.current = y.form(l)
	}
	y.saveDraft()
	return y
}

// CurrentText is the name, in the draft of a screen, of the load that is current.
const CurrentText = "load"

// yardDraft is the key of the yard's places and current load.
var yardDraft = session.DraftAt{Place: session.Current, ID: "yard"}

// restoreForms makes the forms on which something was typed before the program
// stopped.
func (y *Yard) restoreForms() {
	for _, id := range y.session.Drafts().TypedBeforeAt(scalehouse.DraftOfLoad) {
		if l := y.find(id); l != nil {
			y.form(l)
		}
	}
}

// saveDraft keeps the places of the trucks, and which one is current.
func (y *Yard) saveDraft() {
	texts := y.places.Texts()
	if y.current.id != "" {
		texts[CurrentText] = y.current.id
	}
	y.session.Drafts().Save(yardDraft, texts)
}

func (y *Yard) newBlank() *LoadForm {
	y.blank = newKeptForm(y.session, nil)
	return y.blank
}

// form is the form of a truck here.
func (y *Yard) form(l *load.Load) *LoadForm {
	if y.forms[l.ID] == nil {
		y.forms[l.ID] = newKeptForm(y.session, l)
	}
	return y.forms[l.ID]
}

// Form is the current form.
func (y *Yard) Form() *LoadForm { return y.current }

// Refresh reads from the book which trucks are here.
func (y *Yard) Refresh() {
	y.read()
	y.saveDraft()
}

func (y *Yard) read() {
	trucks, err := office.Yard(context.Background(), y.session.Desk)
	if err != nil {
		y.session.Fail(err)
		return
	}
	moved := !slices.EqualFunc(y.trucks, trucks, sameTruck)
	y.trucks = trucks
	y.places.Clear(func(id string) bool { return y.find(id) != nil })
	for _, l := range trucks {
		y.places.Give(l.ID)
	}
	y.keepForms()
	if moved {
		y.readForms()
	}
}

// sameTruck reports whether two loads are one, with the same truck.
func sameTruck(a, b *load.Load) bool { return a.ID == b.ID && a.Details.Truck == b.Details.Truck }

// readForms reads what is typed on every form again, where trucks have come, gone or changed: a form
// tells that its truck stands on the yard with another load.
func (y *Yard) readForms() {
	for _, form := range y.forms {
		form.read()
	}
	y.blank.read()
}

// keepForms drops the forms of trucks that have left, and moves the blank form to the yard once it
// has been recorded.
func (y *Yard) keepForms() {
	if y.blank.id != "" {
		y.forms[y.blank.id] = y.blank
		y.newBlank()
	}
	for id, form := range y.forms {
		l := y.find(id)
		if l == nil {
			sayFinished(y, form)
			delete(y.forms, id)
		} else {
			sayWritten(y, form, l)
			form.Rebase(l)
		}
	}
	if y.current.id != "" && y.find(y.current.id) == nil {
		y.turnTo(y.blank)
	}
}

func (y *Yard) find(id string) *load.Load {
	l, _ := session.Find(y.trucks, func(l *load.Load) bool { return l.ID == id && id != "" })
	return l
}

// Weigh takes the weight of the current truck from the scale; see
// [ScaleReader.Weigh].
func (y *Yard) Weigh(field string) (side string) { return y.Scale.Weigh(y.current, field) }

// Rows are the trucks in the order of their places, those without one last.
func (y *Yard) Rows() []model.TruckRow {
	var rows []model.TruckRow
	for i, id := range y.places {
		if l := y.find(id); l != nil {
			rows = append(rows, y.row(l, board.KeyOf(i)))
		}
	}
	for _, l := range y.trucks {
		if !y.places.Has(l.ID) {
			rows = append(rows, y.row(l, ""))
		}
	}
	return rows
}

func (y *Yard) row(l *load.Load, key string) model.TruckRow {
	settles := false
	if form := y.forms[l.ID]; form != nil {
		l, settles = form.Now.Load, form.Now.CanIssue()
	} else {
		s, _ := office.Preview(y.session.Desk, l)
		settles = s != nil
	}
	row := board.RowOf(y.session.Language, l, settles, y.session.Desk.Now(), y.session.Desk.Profile().WaitLimit())
	row.Key, row.Current = key, y.current.id == l.ID
	return row
}

// Here returns the number of trucks on the yard, in words.
func (y *Yard) Here() string {
	switch n := len(y.trucks); n {
	case 0:
		return y.session.Say("On the yard")
	case 1:
		return y.session.Say("On the yard: 1 truck")
	default:
		return y.session.Say("On the yard: %d trucks", n)
	}
}

// Advice returns what to do while no truck is here.
func (y *Yard) Advice() string {
	return y.session.Say("No truck is here. Type the next one in: it stands here until it has its ticket.")
}

// TakeNew makes the blank form current. What was typed on the one before is recorded first; invalid
// texts wait on its form.
func (y *Yard) TakeNew() {
	if !y.putDown() {
		return
	}
	y.turnTo(y.blank)
	y.saveDraft()
	y.session.Window.Redraw()
}

// Take makes the truck of a load current.
func (y *Yard) Take(id string) {
	l := y.find(id)
	if l == nil || y.current.id == id || !y.putDown() {
		return
	}
	y.turnTo(y.form(l))
	y.saveDraft()
	y.session.Window.Redraw()
}

// turnTo makes a form current. A weight that is waited for belongs to the one
// before.
func (y *Yard) turnTo(form *LoadForm) {
	if form != y.current {
		y.Scale.End()
	}
	y.current = form
}

// TakePlace makes the truck of a place current, counted from 0, and reports
// whether there is one.
func (y *Yard) TakePlace(place int) bool {
	if !y.IsTaken(place) {
		return false
	}
	y.Take(y.places.At(place))
	return true
}

// Step makes the next truck current, or going back the one before, round the
// yard.
func (y *Yard) Step(by int) {
	rows := y.Rows()
	if len(rows) == 0 {
		return
	}
	at := slices.IndexFunc(rows, func(r model.TruckRow) bool { return r.Current })
	if at < 0 && by < 0 {
		at = 0
	}
	y.Take(rows[((at+by)%len(rows)+len(rows))%len(rows)].ID)
}

// IsTaken reports whether there is a truck at a place.
func (y *Yard) IsTaken(place int) bool { return y.places.At(place) != "" }

// putDown records what is typed on the current form.
func (y *Yard) putDown() bool {
	if err := y.current.Commit(); err != nil {
		y.session.Fail(err)
		return false
	}
	y.Refresh()
	return true
}

// Issue issues and prints the ticket of the current load, and turns to a blank form
// for the next truck.
func (y *Yard) Issue() bool {
	last := lastTicketOf(y.current)
	number, err := y.current.Issue()
	if err != nil {
		y.session.Fail(err)
		return false
	}
	last.number, last.issued = number, y.session.Desk.Now()
	y.left()
	y.last, y.blank.last = last, last
	return true
}

// PrintAgain prints the newest ticket again, as a reprint.
func (y *Yard) PrintAgain() { session.PrintLastTicket(y.session) }

// left turns to a blank form after the current truck has left the yard.
func (y *Yard) left() {
	y.Refresh()
	y.turnTo(y.blank)
	y.saveDraft()
	y.session.Window.Redraw()
}

// Refuse asks why the current load is turned away, and turns it away.
func (y *Yard) Refuse() {
	form := y.current
	if form.id == "" {
		return
	}
	if err := form.Commit(); err != nil {
		y.session.Fail(err)
		return
	}
	y.session.Put(model.Ask{
		Draft: "refuse", Of: form.id,
		Title:  y.session.Say("Refuse the load of truck %s?", session.TruckText(form.Now.Load.Details.Truck)),
		Text:   y.session.Say("The load stays in the book as refused, with your reason. Nothing of it is settled."),
		State:  model.Stop,
		Fields: []model.AskField{{ID: "reason", Label: y.session.Say("Reason"), Chars: 40, Required: true}},
		Yes:    y.session.Say("Refuse"), Danger: true,
		Then: func(values map[string]string) {
			if err := scalehouse.Refuse(context.Background(), y.session.Desk, form.id, values["reason"]); err != nil {
				y.session.Fail(err)
				return
			}
			y.session.Notify(model.OK, y.session.Say("load %s is refused: %s", form.id, values["reason"]))
			y.left()
		},
	})
}

// Withdraw takes the current load back: a truck that was typed by mistake.
func (y *Yard) Withdraw() {
	form := y.current
	if !form.CanWithdraw() {
		return
	}
	y.session.Put(model.Ask{
		Title: y.session.Say("Withdraw the load of truck %s?", session.TruckText(form.Now.Load.Details.Truck)),
		Text:  y.session.Say("It was never weighed. It leaves the yard as if it had not come, and is not counted as rejected."),
		State: model.Warn,
		Yes:   y.session.Say("Withdraw"),
		Then: func(map[string]string) {
			if err := scalehouse.Withdraw(context.Background(), y.session.Desk, form.id); err != nil {
				y.session.Fail(err)
				return
			}
			y.session.Notify(model.OK, y.session.Say("load %s is withdrawn", form.id))
			y.left()
		},
	})
}

// CanWithdraw reports whether the load is in the book and was never weighed.
func (f *LoadForm) CanWithdraw() bool {
	return f.id != "" && f.Now.Load != nil && f.Now.Load.CanWithdraw()
}
