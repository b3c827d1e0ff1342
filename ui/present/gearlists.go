package present

import (
	"context"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/ui/model"
)

// roleOptions are the roles with what each may do.
func roleOptions() []model.Option {
	return []model.Option{
		{Code: string(house.Clerk), Name: Say("clerk"), Detail: Say("weighs, tests, issues, refuses")},
		{Code: string(house.Tester), Name: Say("tester"), Detail: Say("works the bench")},
		{Code: string(house.Manager), Name: Say("manager"), Detail: Say("also voids, corrects, accepts, closes")},
	}
}

// AskPerson asks for a person; a name that is not known adds one.
func (g *Gear) AskPerson(name string) {
	p, known := find(g.frame.Desk.People(), func(p house.Person) bool { return p.Name == name })
	fields := []model.AskField{
		{ID: "role", Label: Say("Role"), Options: roleOptions(), Value: string(p.Role), Chars: 24, Required: true},
		{ID: "who", Label: Say("Manager"), Options: g.frame.managers(), Value: g.frame.managerHere(), Chars: 24, Required: true},
	}
	title := Say("Somebody new at the desk")
	if known {
		title = name
		fields = append(fields[:1:1], model.AskField{ID: "gone", Label: Say("No longer works here"), Tick: true}, fields[1])
	} else {
		fields = append([]model.AskField{{ID: "name", Label: Say("Full name"), Chars: 28, Hint: Say("as it prints on tickets"), Required: true}}, fields...)
	}
	g.frame.Put(model.Ask{
		Draft: "person", Of: "person " + p.Name,
		Title: title, Text: Say("Old tickets keep the name they print."), Fields: fields, Yes: Say("Write down"),
		Then: func(values map[string]string) {
			if !known {
				p.Name = strings.TrimSpace(values["name"])
			}
			p.Role, p.Gone = house.Role(values["role"]), values["gone"] == model.TickOn
			err := g.frame.as(values["who"], func() error { return g.frame.Desk.SetPerson(context.Background(), p) })
			if err != nil {
				g.frame.Fail(err)
				return
			}
			g.frame.Changed()
			if p.Gone {
				g.frame.Say(model.OK, Say("%s no longer works here.", p.Name))
				return
			}
			g.frame.Say(model.OK, Say("%s is %s.", p.Name, RoleWord(p.Role)))
		},
	})
}

// AskBin asks for a pit or bin; a code that is not known adds one.
func (g *Gear) AskBin(code string) {
	b, known := find(g.frame.known().bins, func(b house.Bin) bool { return b.ID == code && code != "" })
	fields := []model.AskField{
		{ID: "name", Label: Say("Name"), Value: b.Name, Chars: 24, Required: true},
		{ID: "grain", Label: Say("Grain"), Options: g.frame.known().commodityOptions, Value: b.Commodity, Chars: 24, Hint: Say("empty: any")},
	}
	title := Say("A new pit or bin")
	if known {
		title = Say("Pit or bin %s", code)
	} else {
		fields = append([]model.AskField{{ID: "code", Label: Say("Code"), Chars: 8, Hint: Say("short; clerks type it"), Required: true}}, fields...)
	}
	g.frame.Put(model.Ask{
		Draft: "bin", Of: "bin " + code,
		Title: title, Fields: fields, Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			other, taken := find(g.frame.known().bins, func(b house.Bin) bool { return b.ID == strings.TrimSpace(values["code"]) })
			if !known && taken {
				return map[string]string{"code": Say("The code belongs to %s. Choose another.", other.Name)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			if !known {
				b.ID = strings.TrimSpace(values["code"])
			}
			b.Name, b.Commodity = strings.TrimSpace(values["name"]), values["grain"]
			if err := g.frame.Desk.SetBin(context.Background(), b); err != nil {
				g.frame.Fail(err)
				return
			}
			g.frame.Changed()
			g.frame.Say(model.OK, Say("%s is written down.", join(", ", b.ID, b.Name)))
		},
	})
}
