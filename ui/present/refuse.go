package present

import (
	"context"
	"tenthpoint/ui/model"
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
	y.frame.Put(model.Ask{
		Draft: "refuse", Of: form.id,
		Title:  Say("Refuse the load of truck %s?", truckText(form.now.load.Details.Truck)),
		Text:   Say("The load stays in the book as refused, with your reason. Nothing of it is settled."),
		State:  model.Stop,
		Fields: []model.AskField{{ID: "reason", Label: Say("Reason"), Chars: 40, Required: true}},
		Yes:    Say("Refuse"), Danger: true,
		Then: func(values map[string]string) {
			if err := y.frame.Desk.Refuse(context.Background(), form.id, values["reason"]); err != nil {
				y.frame.Fail(err)
				return
			}
			y.frame.Say(model.OK, Say("load %s is refused: %s", form.id, values["reason"]))
			y.left()
		},
	})
}
