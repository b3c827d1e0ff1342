package ask

import (
	"context"
	"fmt"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// ManagerFields ask for a manager and a reason.
func ManagerFields(f *session.Session) []model.AskField {
	return []model.AskField{
		{ID: "reason", Label: f.Say("Reason"), Chars: 40, Required: true},
		{ID: "who", Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true},
	}
}

// Void asks for the reason and cancels a ticket; then is called once it is void.
func Void(f *session.Session, number int64, then func()) {
	f.Put(model.Ask{
		Draft: "void", Of: fmt.Sprint("ticket ", number),
		Title: f.Say("Void ticket %d?", number),
		Text:  f.Say("The load counts nowhere. The number stays used, and every copy is kept. This cannot be taken back."),
		State: model.Stop, Fields: ManagerFields(f), Yes: f.Say("Void the ticket"), Danger: true,
		Then: func(values map[string]string) {
			err := f.As(values["who"], func() error {
				return scalehouse.Void(context.Background(), f.Desk, number, values["reason"])
			})
			if err != nil {
				f.Fail(err)
				return
			}
			f.Notify(model.OK, f.Say("ticket %d is void: %s", number, values["reason"]))
			f.Changed()
			then()
		},
	})
}
