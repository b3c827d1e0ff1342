package session

import (
	"context"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/ui/model"
)

// headSeen is what this computer remembers of a book: the last head it saw.
const headSeen = "head"

// CheckHead says when the book no longer holds the head that this computer last saw
// of it. Who knows why, because a backup was put back, goes on with the book as it
// is; until then the head is remembered and the question comes at every start.
func CheckHead(f *Session) {
	gone := headGone(f)
	if gone == nil {
		NoteHead(f)
		return
	}
	f.Say(model.Stop, Sentence(gone))
	f.Put(model.Ask{
		Title: Say("This is not the book that this computer last saw"),
		Text:  Sentence(gone),
		State: model.Stop, Danger: true,
		Yes:  Say("Go on with this book"),
		Then: func(map[string]string) { remember(f) },
	})
}

// NoteHead remembers the head of the book, where it still holds the one before.
func NoteHead(f *Session) {
	if f.Station != nil && headGone(f) == nil {
		remember(f)
	}
}

// headGone is what is wrong with the book as seen from the head remembered.
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
