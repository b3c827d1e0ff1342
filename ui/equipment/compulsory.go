package equipment

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AskCompulsory asks what no ticket may lack, and for the reasons to choose from where
// a weight is typed.
func AskCompulsory(f *session.Session) {
	p := f.Desk.Profile()
	isAsked := map[elevator.Compulsory]bool{}
	for _, c := range p.Compulsory {
		isAsked[c] = true
	}
	var fields []model.AskField
	for _, c := range elevator.Compulsories() {
		field := model.AskField{ID: string(c), Label: f.Text(guard.Required(c)), Checkbox: true}
		if isAsked[c] {
			field.Value = model.TickOn
		}
		fields = append(fields, field)
	}
	fields = append(fields,
		model.AskField{ID: "reasons", Label: f.Say("Reasons for a typed weight"), Value: strings.Join(p.WhyManual(), "; "), Chars: 44, Hint: f.Say("parted by semicolons"), Required: true},
		model.AskField{ID: "who", Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true})
	f.Put(model.Ask{
		Title: f.Say("What no ticket may lack"), Text: f.Say("What is ticked keeps a ticket back until it is there. Tickets already issued stay as they are."),
		Fields: fields, Yes: f.Say("Write down"),
		Then: func(values map[string]string) { setCompulsory(f, values) },
	})
}

func setCompulsory(f *session.Session, values map[string]string) {
	p := f.Desk.Profile()
	p.Compulsory, p.ManualReasons = nil, nil
	for _, c := range elevator.Compulsories() {
		if values[string(c)] == model.TickOn {
			p.Compulsory = append(p.Compulsory, c)
		}
	}
	for _, reason := range strings.Split(values["reasons"], ";") {
		if reason = strings.TrimSpace(reason); reason != "" {
			p.ManualReasons = append(p.ManualReasons, reason)
		}
	}
	err := f.As(values["who"], func() error { return scalehouse.SetProfile(context.Background(), f.Desk, p) })
	if err != nil {
		f.Fail(err)
		return
	}
	f.Changed()
	f.Notify(model.OK, f.Say("what no ticket may lack is written down."))
}
