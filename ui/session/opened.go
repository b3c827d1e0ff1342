package session

import (
	"context"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// headSeen is the key of the last head of a book seen by this computer.
const headSeen = "head"

// CheckHead warns when the book no longer holds the head that this computer last saw of it. A
// person who knows why, because a backup was restored, accepts the book; until then the head is
// remembered and the question comes at every start.
func CheckHead(f *Session) {
	gone := headGone(f)
	if gone == nil {
		NoteHead(f)
		return
	}
	f.Notify(model.Stop, f.Sentence(gone))
	f.Put(model.Ask{
		Title: f.Say("This is not the book that this computer last saw"),
		Text:  f.Sentence(gone),
		State: model.Stop, Danger: true,
		Yes:  f.Say("Go on with this book"),
		Then: func(map[string]string) { remember(f) },
	})
}

// NoteHead remembers the head of the book, where it still holds the one before.
func NoteHead(f *Session) {
	if f.Station != nil && headGone(f) == nil {
		remember(f)
	}
}

// headGone returns the error of a book that lacks the head remembered.
func headGone(f *Session) error {
	noted := journal.FindHeads(f.Recall(headSeen))
	if len(noted) == 0 {
		return nil
	}
	return audit.HoldsHead(context.Background(), f.Desk.Book(), noted[0])
}

func remember(f *Session) {
	last, some, err := f.Desk.Book().Head(context.Background())
	if err == nil && some {
		f.Remember(headSeen, journal.HeadOf(last).String())
	}
}

// Trouble says why nothing that is entered now would be kept; empty where all is well.
func Trouble(f *Session) string {
	if err := f.Desk.Book().Trouble(); err != nil {
		return f.Sentence(err)
	}
	return ""
}

// CheckClock asks about a clock that cannot follow the last fact of the book,
// before anybody begins to enter a load.
func CheckClock(f *Session) {
	if err := scalehouse.CheckClock(context.Background(), f.Desk); err != nil {
		f.Fail(err)
	}
}

// askClock asks why the clock is as it is. With an answer in the book the act can be repeated.
func askClock(f *Session, stepped error) {
	f.Put(model.Ask{
		Title:  f.Say("Is the clock right?"),
		Text:   f.Sentence(stepped),
		Fields: []model.AskField{{ID: "reason", Label: f.Say("Why it stands so"), Required: true, Chars: 40}},
		Yes:    f.Say("The clock is right"),
		Then: func(values map[string]string) {
			if err := scalehouse.AnswerClock(context.Background(), f.Desk, values["reason"]); err != nil {
				f.Notify(model.Stop, f.Sentence(err))
				return
			}
			f.Notify(model.OK, f.Say("The answer is in the book. Do again what you were about to do."))
		},
	})
}
