package ask

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/contracting"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Contract asks for a new contract, with a grower filled in, and writes it down in a manager's name;
// then is called once it is there.
func Contract(f *session.Session, grower string, then func(elevator.ContractTerms)) {
	read := func(values map[string]string) (elevator.ContractTerms, map[string]string) {
		c, problems := contracting.ReadNew(values, office.NewEntering(context.Background(), f.Desk))
		return c, Sentences(f, problems)
	}
	f.Put(model.Ask{
		Draft: "contract", Of: "grower " + grower,
		Title: f.Say("A new contract"), Text: f.Say("Loads name it under Sold or stored, and take its price where it has one."), Yes: f.Say("Write down"),
		Fields: append(Fields(f, contracting.NewFields(), Filled{Values: map[string]string{"grower": grower, "form": elevator.Forward.Word()}}),
			model.AskField{ID: "who", Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true}),
		Check: func(values map[string]string) map[string]string {
			_, faults := read(values)
			return faults
		},
		Then: func(values map[string]string) {
			c, _ := read(values)
			if err := f.As(values["who"], func() error { return scalehouse.SetContract(context.Background(), f.Desk, c) }); err != nil {
				f.Fail(err)
				return
			}
			then(c)
		},
	})
}
