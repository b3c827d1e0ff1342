package present

import (
	"context"
	"tenthpoint/internal/scalehouse"
)

// Refuse asks why the load in hand is turned away, and turns it away.
func (y *Yard) Refuse() {
	form := y.hand
	if form.id == "" {
		return
	}
	if err := form.Commit(); err != nil {
		y.frame.Fail(err)
		return
	}
	y.frame.Put(Ask{
		Draft: "refuse", Of: form.id,
		Title:  Say("Refuse the load of truck %s?", truckText(form.now.load.Details.Truck)),
		Text:   Say("The load stays in the book as refused, with your reason. Nothing of it is settled."),
		State:  Stop,
		Fields: []AskField{{ID: "reason", Label: Say("Reason"), Chars: 40, Required: true}},
		Yes:    Say("Refuse"), Danger: true,
		Then: func(values map[string]string) {
			if err := scalehouse.Refuse(context.Background(), y.frame.Desk, form.id, values["reason"]); err != nil {
				y.frame.Fail(err)
				return
			}
			y.frame.Say(OK, Say("load %s is refused: %s", form.id, values["reason"]))
			y.left()
		},
	})
}
