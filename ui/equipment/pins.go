package equipment

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// askPINActs asks which acts ask for a PIN beside those of managers.
func askPINActs(f *session.Session) {
	p := f.Desk.Profile()
	asking := map[elevator.PINAct]bool{}
	for _, act := range p.AskPIN {
		asking[act] = true
	}
	var fields []model.AskField
	for _, act := range elevator.PINActs() {
		field := model.AskField{ID: string(act), Label: f.Text(act.Message()), Checkbox: true}
		if asking[act] {
			field.Value = model.TickOn
		}
		fields = append(fields, field)
	}
	fields = append(fields, model.AskField{ID: "who", Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true})
	f.Put(model.Ask{
		Title: f.Say("What asks for a PIN"), Yes: f.Say("Write down"), Fields: fields,
		Text: f.Say("Managers' acts ask for one as soon as a manager has one. Whoever has no PIN cannot do what is ticked: give everybody one first."),
		Then: func(values map[string]string) { setPINActs(f, values) },
	})
}

func setPINActs(f *session.Session, values map[string]string) {
	p := f.Desk.Profile()
	p.AskPIN = nil
	for _, act := range elevator.PINActs() {
		if values[string(act)] == model.TickOn {
			p.AskPIN = append(p.AskPIN, act)
		}
	}
	if err := f.As(values["who"], func() error { return scalehouse.SetProfile(context.Background(), f.Desk, p) }); err != nil {
		f.Fail(err)
		return
	}
	f.Changed()
	f.Notify(model.OK, f.Say("what asks for a PIN is written down."))
}
