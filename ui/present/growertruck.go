package present

import (
	"context"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// AddTruck asks for a truck of the chosen grower.
func (g *Growers) AddTruck() { g.askTruck(house.Truck{Grower: g.chosen}) }

// HasTruck reports whether the chosen grower has a truck to change.
func (g *Growers) HasTruck() bool { return len(g.trucksOf(g.chosen)) > 0 }

// ChangeTruck asks which of the grower's trucks, and then for what is to be
// otherwise.
func (g *Growers) ChangeTruck() {
	trucks := g.trucksOf(g.chosen)
	if len(trucks) == 1 {
		g.askTruck(trucks[0])
		return
	}
	options := make([]model.Option, len(trucks))
	for i, t := range trucks {
		options[i] = model.Option{Code: t.ID, Name: t.Plate, Detail: tareWords(t)}
	}
	g.frame.Put(model.Ask{
		Title: Say("Which truck?"), Fields: []model.AskField{{ID: "truck", Label: Say("Truck"), Options: options, Required: true}}, Yes: Say("Change it"),
		Then: func(values map[string]string) {
			if t, ok := g.frame.known().truck(values["truck"]); ok {
				g.askTruck(t)
			}
		},
	})
}

func tareWords(t house.Truck) string {
	if t.Tare == nil {
		return Say("no stored tare")
	}
	return Say("tare %s of %s", t.Tare, t.Taken)
}

// askTruck asks for a truck; one without a number is new.
func (g *Growers) askTruck(t house.Truck) {
	isNew := t.ID == ""
	tare := ""
	if t.Tare != nil {
		tare = t.Tare.Figure()
	}
	fields := []model.AskField{
		{ID: "plate", Label: Say("Plate"), Value: t.Plate, Chars: 12},
		{ID: "trailer", Label: Say("Trailer"), Value: t.Trailer, Chars: 12},
		{ID: "grower", Label: Say("Comes for"), Options: g.frame.known().growerOptions, Value: t.Grower, Chars: 24},
		{ID: "tare", Label: Say("Stored tare"), Unit: g.frame.Desk.Profile().WeightUnit().String(), Value: tare, Chars: 9, Figures: true, Hint: Say("empty: none")},
		{ID: "taken", Label: Say("Weighed on"), Value: t.Taken.String(), Chars: 12, Hint: Say("year-month-day; empty: today")},
	}
	title := Say("Change truck %s", t.ID)
	if isNew {
		title = Say("A new truck")
		fields = append([]model.AskField{{ID: "number", Label: Say("Number"), Chars: 8, Hint: Say("painted on the door, or the plate"), Required: true}}, fields...)
	}
	g.frame.Put(model.Ask{
		Draft: "truck", Of: "truck " + t.ID,
		Title: title, Fields: fields, Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string { _, faults := g.readTruck(t, values); return faults },
		Then: func(values map[string]string) {
			read, _ := g.readTruck(t, values)
			if err := g.frame.Desk.SetTruck(context.Background(), read); err != nil {
				g.frame.Fail(err)
				return
			}
			g.took(read.Grower, Say("truck %s is written down.", read.ID))
		},
	})
}

// readTruck reads the sheet; the faults are sentences by field.
func (g *Growers) readTruck(t house.Truck, values map[string]string) (house.Truck, map[string]string) {
	faults := map[string]string{}
	if number, asked := values["number"]; asked {
		t.ID = strings.TrimSpace(number)
		if other, taken := g.frame.known().truck(t.ID); taken {
			faults["number"] = Say("Truck %s is known already, %s. Change that one.", other.ID, other.Plate)
		}
	}
	t.Plate, t.Trailer, t.Grower = strings.TrimSpace(values["plate"]), strings.TrimSpace(values["trailer"]), values["grower"]
	t.Tare, t.Taken = nil, quantity.Date{}
	text := strings.TrimSpace(values["tare"])
	if text == "" {
		return t, faults
	}
	tare, err := ReadTare(g.frame, text)
	if err != nil {
		faults["tare"] = sentence(err)
		return t, faults
	}
	t.Tare, t.Taken = &tare, g.frame.Desk.Today()
	if day := strings.TrimSpace(values["taken"]); day != "" {
		if t.Taken, err = quantity.ParseDate(day); err != nil {
			faults["taken"] = sentence(err)
		} else if t.Taken.After(g.frame.Desk.Today()) {
			faults["taken"] = Say("%s is still to come. Say when it was weighed.", t.Taken)
		}
	}
	return t, faults
}
