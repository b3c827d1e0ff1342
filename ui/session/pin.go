package session

import (
	"context"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// askPIN asks somebody for the PIN and goes on; given up, what was begun is left to be done otherwise,
// which may be nil.
func askPIN(f *Session, who string, then, givenUp func()) {
	f.Put(model.Ask{
		Title:   f.Say("PIN of %s", who),
		Text:    f.Say("It holds for some minutes from your last act."),
		Fields:  []model.AskField{{ID: "pin", Label: f.Say("PIN"), Secret: true, Required: true, Chars: 16}},
		Yes:     f.Say("Go on"),
		GivenUp: givenUp,
		Then: func(values map[string]string) {
			if err := scalehouse.Prove(context.Background(), f.Desk, who, values["pin"]); err != nil {
				f.Fail(err)
				return
			}
			then()
			f.failed = nil // what was asked for has its own question
		},
	})
}
