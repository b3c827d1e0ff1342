package present

import (
	"context"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/ui/model"
)

// AskGrower asks for a grower who has not been here before, writes the grower
// down and puts the name on the load.
func (f *LoadForm) AskGrower() {
	f.frame.Put(model.Ask{
		Draft: "new grower",
		Title: Say("A new grower"),
		Text:  Say("The code is short; typing it finds the grower from now on."),
		Fields: []model.AskField{
			{ID: "code", Label: Say("Code"), Chars: 8, Required: true},
			{ID: "name", Label: Say("Name"), Chars: 30, Required: true},
			{ID: "address", Label: Say("Address"), Chars: 30},
			{ID: "phone", Label: Say("Phone"), Chars: 18},
		},
		Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if g, taken := f.frame.known().grower(strings.TrimSpace(values["code"])); taken {
				return map[string]string{"code": Say("The code belongs to %s. Choose another.", g.Name)}
			}
			return nil
		},
		Then: f.addGrower,
	})
}

func (f *LoadForm) addGrower(values map[string]string) {
	g := house.Grower{
		ID: strings.TrimSpace(values["code"]), Name: strings.TrimSpace(values["name"]),
		Address: values["address"], Phone: values["phone"],
	}
	if err := f.frame.Desk.SetGrower(context.Background(), g); err != nil {
		f.frame.Fail(err)
		return
	}
	f.frame.lists = nil
	f.Type("grower", g.ID)
	if err := f.Commit(); err != nil {
		f.frame.Fail(err)
		return
	}
	f.frame.Say(model.OK, Say("%s is written down as %s.", g.Name, g.ID))
	f.frame.Changed()
}
