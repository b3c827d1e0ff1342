package growers

import (
	"context"
	"strings"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AddTruck asks for a truck of the chosen grower.
func (g *Growers) AddTruck() { g.askTruck(elevator.Truck{Grower: g.chosen}) }

// HasTruck reports whether the chosen grower has a truck to change.
func (g *Growers) HasTruck() bool { return len(trucksOf(g.session, g.chosen)) > 0 }

// ChangeTruck asks for one of the grower's trucks, and then for its changes.
func (g *Growers) ChangeTruck() { askWhichTruck(g, g.session.Say("Change it"), g.askTruck) }

// printTruckLabel prints the label for the windshield of one of the grower's trucks, whose barcode opens
// the truck's load.
func printTruckLabel(g *Growers) {
	askWhichTruck(g, g.session.Say("Print"), func(t elevator.Truck) { printLabelOf(g.session, t) })
}

func printLabelOf(f *session.Session, t elevator.Truck) {
	now, err := time.Parse(journal.TimeLayout, f.Desk.Now())
	if err != nil {
		f.Fail(err)
		return
	}
	owner, _ := f.Known().Grower(t.Grower)
	label, err := scaleticket.TruckLabel(f.Desk.Profile(), t, owner.Name, now)
	if err != nil {
		f.Fail(err)
		return
	}
	session.PrintLabel(f, label, "truck-"+label.Number, f.Say("the label of truck %s", label.Number))
}

// askWhichTruck does something with the grower's truck, and where there are several asks with which.
func askWhichTruck(g *Growers, yes string, do func(elevator.Truck)) {
	trucks := trucksOf(g.session, g.chosen)
	if len(trucks) == 1 {
		do(trucks[0])
		return
	}
	options := make([]model.Option, len(trucks))
	for i, t := range trucks {
		options[i] = model.Option{Code: t.ID, Name: t.Plate, Detail: tareWords(g.session.Language, t)}
	}
	g.session.Put(model.Ask{
		Title: g.session.Say("Which truck?"), Fields: []model.AskField{{ID: "truck", Label: g.session.Say("Truck"), Options: options, Required: true}}, Yes: yes,
		Then: func(values map[string]string) {
			if t, ok := g.session.Known().Truck(values["truck"]); ok {
				do(t)
			}
		},
	})
}

func tareWords(in session.Language, t elevator.Truck) string {
	if t.Tare == nil {
		return in.Say("no stored tare")
	}
	return in.Say("tare %s of %s", t.Tare, t.Taken)
}

// askTruck asks for a truck; one without a number is new.
func (g *Growers) askTruck(t elevator.Truck) {
	isNew := t.ID == ""
	tare := ""
	if t.Tare != nil {
		tare = t.Tare.Figure()
	}
	fields := []model.AskField{
		{ID: "plate", Label: g.session.Say("Plate"), Value: t.Plate, Chars: 12},
		{ID: "trailer", Label: g.session.Say("Trailer"), Value: t.Trailer, Chars: 12},
		{ID: "grower", Label: g.session.Say("Comes for"), Options: g.session.Known().GrowerOptions, Value: t.Grower, Chars: 24},
		{ID: "tare", Label: g.session.Say("Stored tare"), Unit: g.session.Desk.Profile().WeightUnit().String(), Value: tare, Chars: 9, Figures: true, Hint: g.session.Say("empty: none")},
		{ID: "taken", Label: g.session.Say("Weighed on"), Value: t.Taken.String(), Chars: 12, Hint: g.session.Say("year-month-day; empty: today")},
	}
	title := g.session.Say("Change truck %s", t.ID)
	if isNew {
		title = g.session.Say("A new truck")
		fields = append([]model.AskField{{ID: "number", Label: g.session.Say("Number"), Chars: 8, Hint: g.session.Say("painted on the door, or the plate"), Required: true}}, fields...)
	}
	g.session.Put(model.Ask{
		Draft: "truck", Of: "truck " + t.ID,
		Title: title, Fields: fields, Yes: g.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, faults := readTruck(g.session, t, values)
			return faults
		},
		Then: func(values map[string]string) {
			read, _ := readTruck(g.session, t, values)
			if err := scalehouse.SetTruck(context.Background(), g.session.Desk, read); err != nil {
				g.session.Fail(err)
				return
			}
			g.took(read.Grower, g.session.Say("truck %s is written down.", read.ID))
		},
	})
}

// readTruck reads the sheet; the faults are sentences by field.
func readTruck(f *session.Session, t elevator.Truck, values map[string]string) (elevator.Truck, map[string]string) {
	faults := map[string]string{}
	if number, asked := values["number"]; asked {
		t.ID = strings.TrimSpace(number)
		if other, taken := f.Known().Truck(t.ID); taken {
			faults["number"] = f.Say("Truck %s is known already, %s. Change that one.", other.ID, other.Plate)
		}
	}
	t.Plate, t.Trailer, t.Grower = strings.TrimSpace(values["plate"]), strings.TrimSpace(values["trailer"]), values["grower"]
	t.Tare, t.Taken = nil, quantity.Date{}
	text := strings.TrimSpace(values["tare"])
	if text == "" {
		return t, faults
	}
	tare, err := session.ReadTare(f, text)
	if err != nil {
		faults["tare"] = f.Sentence(err)
		return t, faults
	}
	t.Tare, t.Taken = &tare, f.Desk.Today()
	if day := strings.TrimSpace(values["taken"]); day != "" {
		if t.Taken, err = quantity.ParseDate(day); err != nil {
			faults["taken"] = f.Sentence(err)
		} else if t.Taken.After(f.Desk.Today()) {
			faults["taken"] = f.Say("%s is still to come. Say when it was weighed.", t.Taken)
		}
	}
	return t, faults
}
