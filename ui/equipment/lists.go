package equipment

import (
	"context"
	"crypto/rand"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/pin"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// roleOptions are the roles with their permissions.
func roleOptions(in session.Language) []model.Option {
	return []model.Option{
		{Code: string(elevator.Clerk), Name: in.Say("clerk"), Detail: in.Say("weighs, tests, issues, refuses")},
		{Code: string(elevator.Tester), Name: in.Say("tester"), Detail: in.Say("works the bench")},
		{Code: string(elevator.Manager), Name: in.Say("manager"), Detail: in.Say("also voids, corrects, accepts, closes")},
	}
}

// AskPerson asks for a person; an unknown name adds one.
func (g *Equipment) AskPerson(name string) {
	p, known := session.Find(g.session.Desk.People(), func(p elevator.Person) bool { return p.Name == name })
	fields := []model.AskField{
		{ID: "role", Label: g.session.Say("Role"), Options: roleOptions(g.session.Language), Value: string(p.Role), Chars: 24, Required: true},
		{ID: "who", Label: g.session.Say("Manager"), Options: g.session.Managers(), Value: g.session.ManagerHere(), Chars: 24, Required: true},
	}
	title := g.session.Say("Somebody new at the desk")
	if known {
		title = name
		fields = append(fields, model.AskField{ID: "pin", Label: g.session.Say("New PIN"), Secret: true, Chars: 16, Hint: g.session.Say("empty: as it is")})
		if scalehouse.HasPIN(g.session.Desk, name) {
			fields = append(fields, model.AskField{ID: "forgotten", Label: g.session.Say("Take the PIN away because"), Chars: 28, Hint: g.session.Say("such as forgotten; empty: it stays")})
		}
		gone := model.AskField{ID: "gone", Label: g.session.Say("No longer works here"), Checkbox: true}
		fields = slices.Insert(fields, 1, gone)
	} else {
		fields = append([]model.AskField{{ID: "name", Label: g.session.Say("Full name"), Chars: 28, Hint: g.session.Say("as it prints on tickets"), Required: true}}, fields...)
	}
	g.session.Put(model.Ask{
		Draft: "person", Of: "person " + p.Name,
		Title: title, Text: g.session.Say("Old tickets keep the name they print."), Fields: fields, Yes: g.session.Say("Write down"),
		Then: func(values map[string]string) {
			if !known {
				p.Name = strings.TrimSpace(values["name"])
			}
			p.Role, p.Gone = elevator.Role(values["role"]), values["gone"] == model.TickOn
			err := g.session.As(values["who"], func() error { return setPerson(g.session.Desk, p, values["pin"], values["forgotten"]) })
			if err != nil {
				g.session.Fail(err)
				return
			}
			g.session.Changed()
			if p.Gone {
				g.session.Notify(model.OK, g.session.Say("%s no longer works here.", p.Name))
				return
			}
			g.session.Notify(model.OK, g.session.Say("%s is %s.", p.Name, g.session.RoleWord(p.Role)))
		},
	})
}

// setPerson writes a person down, takes a PIN away where a reason was typed, and gives a new one where one
// was typed.
func setPerson(d *scalehouse.Desk, p elevator.Person, typed, forgotten string) error {
	ctx := context.Background()
	if err := scalehouse.SetPerson(ctx, d, p); err != nil {
		return err
	}
	if forgotten != "" {
		if err := scalehouse.ForgetPIN(ctx, d, p.Name, forgotten, signing.Key{}); err != nil {
			return err
		}
	}
	if typed == "" {
		return nil
	}
	var salt pin.Salt
	if _, err := rand.Read(salt[:]); err != nil {
		return err
	}
	return scalehouse.SetPIN(ctx, d, p.Name, typed, salt)
}

// AskBin asks for a pit or bin; an unknown code adds one.
func (g *Equipment) AskBin(code string) {
	b, known := session.Find(g.session.Known().Bins, func(b elevator.Bin) bool { return b.ID == code && code != "" })
	fields := []model.AskField{
		{ID: "name", Label: g.session.Say("Name"), Value: b.Name, Chars: 24, Required: true},
		{ID: "grain", Label: g.session.Say("Grain"), Options: g.session.Known().CommodityOptions, Value: b.Commodity, Chars: 24, Hint: g.session.Say("empty: any")},
		{ID: "lot", Label: g.session.Say("Lot"), Value: b.Lot, Chars: 16, Hint: g.session.Say("kept apart in it; empty: none")},
	}
	title := g.session.Say("A new pit or bin")
	if known {
		title = g.session.Say("Pit or bin %s", code)
	} else {
		fields = append([]model.AskField{{ID: "code", Label: g.session.Say("Code"), Chars: 8, Hint: g.session.Say("short; clerks type it"), Required: true}}, fields...)
	}
	g.session.Put(model.Ask{
		Draft: "bin", Of: "bin " + code,
		Title: title, Fields: fields, Yes: g.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			other, taken := session.Find(g.session.Known().Bins, func(b elevator.Bin) bool { return b.ID == strings.TrimSpace(values["code"]) })
			if !known && taken {
				return map[string]string{"code": g.session.Say("The code belongs to %s. Choose another.", other.Name)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			if !known {
				b.ID = strings.TrimSpace(values["code"])
			}
			b.Name, b.Commodity = strings.TrimSpace(values["name"]), values["grain"]
			b.Lot = strings.TrimSpace(values["lot"])
			if err := scalehouse.SetBin(context.Background(), g.session.Desk, b); err != nil {
				g.session.Fail(err)
				return
			}
			g.session.Changed()
			g.session.Notify(model.OK, g.session.Say("%s is written down.", session.Join(", ", b.ID, b.Name)))
		},
	})
}
