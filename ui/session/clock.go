package session

import (
	"context"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// CheckClock asks about a clock that cannot follow the last fact of the book,
// before anybody begins to enter a load.
func CheckClock(f *Session) {
	if err := scalehouse.CheckClock(context.Background(), f.Desk); err != nil {
		f.Fail(err)
	}
}

// askClock asks why the clock stands as it does. With an answer in the book the
// act can be done again.
func askClock(f *Session, stepped error) {
	f.Put(model.Ask{
		Title:  Say("Is the clock right?"),
		Text:   Sentence(stepped),
		Fields: []model.AskField{{ID: "reason", Label: Say("Why it stands so"), Required: true, Chars: 40}},
		Yes:    Say("The clock is right"),
		Then: func(values map[string]string) {
			if err := scalehouse.AnswerClock(context.Background(), f.Desk, values["reason"]); err != nil {
				f.Say(model.Stop, Sentence(err))
				return
			}
			f.Say(model.OK, Say("The answer is in the book. Do again what you were about to do."))
		},
	})
}
