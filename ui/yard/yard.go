package yard

import (
	"context"
	"slices"
	"strconv"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"time"
)

// yardPlaces is how many trucks on the yard have a key of their own.
const yardPlaces = 8

// firstYardKey is the number of the F-key of the first place.
const firstYardKey = 2

// Yard is the trucks that are here and have no ticket yet, and the form of the
// one in hand. A truck keeps its place, and with it its key, until it leaves.
type Yard struct {
	session *session.Session
	places  [yardPlaces]string // load ids
	forms   map[string]*LoadForm
	blank   *LoadForm
	hand    *LoadForm
	trucks  []*load.Load
	wait    *weighing // for the scale to come to rest; nil when nobody waits
}

// NewYard makes the yard as it stood before the program stopped: every truck in
// its place, with what was typed on its form. Without any, a blank form is in
// hand.
func NewYard(f *session.Session) *Yard {
	y := &Yard{session: f, forms: map[string]*LoadForm{}}
	f.OnTakeUp(func(id string) {
		y.Refresh()
		y.Take(id)
	})
	y.hand = y.newBlank()
	hand := y.takeBack()
	y.read()
	y.formsBack()
	if l := y.find(hand); l != nil {
		y.hand = y.form(l)
	}
	y.jot()
	return y
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

// Form is the form in hand.
func (y *Yard) Form() *LoadForm { return y.hand }

// Refresh reads from the book which trucks are here.
func (y *Yard) Refresh() {
	y.read()
	y.jot()
}

func (y *Yard) read() {
	trucks, err := office.Yard(context.Background(), y.session.Desk)
	if err != nil {
		y.session.Fail(err)
		return
	}
	y.trucks = trucks
	for i, id := range y.places {
		if y.find(id) == nil {
			y.places[i] = ""
		}
	}
	for _, l := range trucks {
		if slices.Contains(y.places[:], l.ID) {
			continue
		}
		if free := slices.Index(y.places[:], ""); free >= 0 {
			y.places[free] = l.ID
		}
	}
	y.keepForms()
}

// keepForms drops the forms of trucks that have left, and takes the blank form
// into the yard once it has been written down.
func (y *Yard) keepForms() {
	if y.blank.id != "" {
		y.forms[y.blank.id] = y.blank
		y.newBlank()
	}
	for id, form := range y.forms {
		l := y.find(id)
		if l == nil {
			delete(y.forms, id)
		} else {
			form.Rebase(l)
		}
	}
	if y.hand.id != "" && y.find(y.hand.id) == nil {
		y.inHand(y.blank)
	}
}

func (y *Yard) find(id string) *load.Load {
	l, _ := session.Find(y.trucks, func(l *load.Load) bool { return l.ID == id && id != "" })
	return l
}

// Rows are the trucks in the order of their places, those without one last.
func (y *Yard) Rows() []model.TruckRow {
	var rows []model.TruckRow
	for i, id := range y.places {
		if l := y.find(id); l != nil {
			rows = append(rows, y.row(l, "F"+strconv.Itoa(i+firstYardKey)))
		}
	}
	for _, l := range y.trucks {
		if !slices.Contains(y.places[:], l.ID) {
			rows = append(rows, y.row(l, ""))
		}
	}
	return rows
}

func (y *Yard) row(l *load.Load, key string) model.TruckRow {
	settles := false
	if form := y.forms[l.ID]; form != nil {
		l, settles = form.Now.Load, form.CanIssue()
	} else {
		s, _ := office.Preview(y.session.Desk, l)
		settles = s != nil
	}
	truck := session.TruckText(l.Details.Truck)
	if truck == "" {
		truck = session.Say("truck ?")
	}
	return model.TruckRow{
		ID: l.ID, Key: key, Truck: truck,
		Who:   session.Join(", ", l.Details.Grower.Name, session.GrainName(l.Details.Commodity)),
		Waits: waits(l.Opened.At, y.session.Desk.Now()),
		Next:  standOf(l, settles), InHand: y.hand.id == l.ID,
	}
}

// Here is how many trucks are on the yard, in words.
func (y *Yard) Here() string {
	switch n := len(y.trucks); n {
	case 0:
		return session.Say("On the yard")
	case 1:
		return session.Say("On the yard: 1 truck")
	default:
		return session.Say("On the yard: %d trucks", n)
	}
}

// Advice says what to do while no truck is here.
func (y *Yard) Advice() string {
	return session.Say("No truck is here. Type the next one in: it stands here until it has its ticket.")
}

// TakeNew puts a blank form in hand. What was typed on the one before is
// written down first; what cannot stand yet waits on its form.
func (y *Yard) TakeNew() {
	if !y.putDown() {
		return
	}
	y.inHand(y.blank)
	y.jot()
	y.session.Window.Redraw()
}

// Take puts the truck of a load in hand.
func (y *Yard) Take(id string) {
	l := y.find(id)
	if l == nil || y.hand.id == id || !y.putDown() {
		return
	}
	y.inHand(y.form(l))
	y.jot()
	y.session.Window.Redraw()
}

// inHand puts a form in hand. A weight that is waited for is the one before's.
func (y *Yard) inHand(form *LoadForm) {
	if form != y.hand {
		y.EndWait()
	}
	y.hand = form
}

// TakePlace puts the truck of a place in hand, counted from nought, and
// reports whether there is one.
func (y *Yard) TakePlace(place int) bool {
	if place < 0 || place >= yardPlaces || y.places[place] == "" {
		return false
	}
	y.Take(y.places[place])
	return true
}

// Step puts the next truck in hand, or going back the one before, round the
// yard.
func (y *Yard) Step(by int) {
	rows := y.Rows()
	if len(rows) == 0 {
		return
	}
	at := slices.IndexFunc(rows, func(r model.TruckRow) bool { return r.InHand })
	if at < 0 && by < 0 {
		at = 0
	}
	y.Take(rows[((at+by)%len(rows)+len(rows))%len(rows)].ID)
}

// IsTaken reports whether a truck stands at a place.
func (y *Yard) IsTaken(place int) bool {
	return place >= 0 && place < yardPlaces && y.places[place] != ""
}

// putDown writes down what is typed on the form in hand.
func (y *Yard) putDown() bool {
	if err := y.hand.Commit(); err != nil {
		y.session.Fail(err)
		return false
	}
	y.Refresh()
	return true
}

// Issue issues and prints the ticket of the load in hand, and takes up a blank
// form for the next truck.
func (y *Yard) Issue() bool {
	if _, err := y.hand.Issue(); err != nil {
		y.session.Fail(err)
		return false
	}
	y.left()
	return true
}

// PrintAgain prints the newest ticket once more, as a reprint.
func (y *Yard) PrintAgain() { session.PrintLastTicket(y.session) }

// left takes up a blank form after the truck in hand has left the yard.
func (y *Yard) left() {
	y.Refresh()
	y.inHand(y.blank)
	y.jot()
	y.session.Window.Redraw()
}

// Refuse asks why the load in hand is turned away, and turns it away.
func (y *Yard) Refuse() {
	form := y.hand
	if form.id == "" {
		return
	}
	if err := form.Commit(); err != nil {
		y.session.Fail(err)
		return
	}
	y.session.Put(model.Ask{
		Draft: "refuse", Of: form.id,
		Title:  session.Say("Refuse the load of truck %s?", session.TruckText(form.Now.Load.Details.Truck)),
		Text:   session.Say("The load stays in the book as refused, with your reason. Nothing of it is settled."),
		State:  model.Stop,
		Fields: []model.AskField{{ID: "reason", Label: session.Say("Reason"), Chars: 40, Required: true}},
		Yes:    session.Say("Refuse"), Danger: true,
		Then: func(values map[string]string) {
			if err := scalehouse.Refuse(context.Background(), y.session.Desk, form.id, values["reason"]); err != nil {
				y.session.Fail(err)
				return
			}
			y.session.Say(model.OK, session.Say("load %s is refused: %s", form.id, values["reason"]))
			y.left()
		},
	})
}

// standOf is the next act for a load, in a few words.
func standOf(l *load.Load, settles bool) model.Remark {
	missing := map[string]bool{}
	for _, m := range l.Missing() {
		missing[m.Field] = true
	}
	switch {
	case l.Phase == load.TurnedAway:
		return model.Remark{State: model.Stop, Text: session.Say("refused")}
	case l.Phase == load.Ticketed || l.Phase == load.Void || l.Phase == load.Corrected:
		return model.Remark{State: model.Locked, Text: session.Say("ticket %d", l.Number)}
	case missing["gross"]:
		return model.Remark{State: model.Missing, Text: session.Say("weigh it full")}
	case missing["moisture"]:
		return model.Remark{State: model.Missing, Text: session.Say("test the sample")}
	case missing["tare"]:
		return model.Remark{State: model.Missing, Text: session.Say("weigh it empty")}
	case len(missing) > 0:
		return model.Remark{State: model.Missing, Text: session.Say("say whose and what")}
	case !settles:
		return model.Remark{State: model.Stop, Text: session.Say("look at the form")}
	}
	return model.Remark{State: model.OK, Text: session.Say("issue the ticket")}
}

// waits is how long a truck has been here, in hours and minutes.
func waits(since, now string) string {
	from, err1 := time.Parse(journal.TimeLayout, since)
	to, err2 := time.Parse(journal.TimeLayout, now)
	if err1 != nil || err2 != nil || to.Before(from) {
		return ""
	}
	minutes := int(to.Sub(from).Minutes())
	switch {
	case minutes < 1:
		return session.Say("just came")
	case minutes < 60:
		return session.Say("%d min", minutes)
	case minutes < 24*60:
		return session.Say("%d h %02d min", minutes/60, minutes%60)
	}
	return session.Say("%d days", minutes/60/24)
}
