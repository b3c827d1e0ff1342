package session

import (
	"context"
	"strings"

	"tenthpoint/internal/office/examiner"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// Station has the settings of this computer, which are not in the book: printer, scale, remembered
// values.
type Station interface {
	// Recall returns the value remembered under a name, or nothing.
	Recall(name string) string
	// Remember keeps a text under a name, also for the next time the program
	// runs.
	Remember(name, text string)
	// SendPapers makes papers go one of the ways there are; the queue is the
	// print queue's name, empty for the computer's own choice.
	SendPapers(way, queue string) error
	// MakeFolder makes a folder with its parents.
	MakeFolder(path string) error
	// Relink listens to the scale again after its link has been changed.
	Relink() error
}

// The destinations of papers.
const (
	ToFolder = "folder" // a file beside the book
	ToScreen = "screen" // that, and opened on the screen
	ToQueue  = "queue"  // a print queue of the computer
)

// Deck is the deck of a simulated scale.
type Deck interface {
	// RollOn drives a truck of a weight on to the deck.
	RollOn(weight quantity.Amount) error
	// RollOff drives it away again.
	RollOff()
}

// Recall returns the value the station remembers about this book.
func (f *Session) Recall(name string) string {
	if f.Station == nil {
		return ""
	}
	return f.Station.Recall(name + " " + f.Desk.Book().Path())
}

// Remember keeps a text about this book.
func (f *Session) Remember(name, text string) {
	if f.Station != nil {
		f.Station.Remember(name+" "+f.Desk.Book().Path(), text)
	}
}

// Files takes a finished file that is no paper: a workbook, figures for another
// program. It answers where the file went.
type Files interface {
	Save(ctx context.Context, name string, data []byte) (where string, err error)
	// SaveSet writes files into a folder of their own and answers where that is.
	SaveSet(ctx context.Context, folder string, files []examiner.File) (where string, err error)
}

// Save exports a file and shows its path.
func (f *Session) Save(name, what string, data []byte) {
	if f.Files == nil {
		f.Notify(model.Warn, f.Say("no folder is set up for files. Choose one under Equipment."))
		return
	}
	where := ""
	f.Run(model.Job{
		Topic: "save " + name, Title: f.Say("Writing %s", what),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			where, err = f.Files.Save(ctx, name, data)
			return err
		},
		Done: func(err error) {
			if err != nil {
				f.Notify(model.Warn, f.Say("%s was not written: %s", what, f.Sentence(err)))
				return
			}
			f.Notify(model.OK, f.Say("%s is written: %s", what, where))
		},
	})
}

// manualMemory is the name under which the station remembers why weights are typed.
const manualMemory = "manual weights"

// ManualReason is why the person at the desk types weights today, as said once; empty
// while it was not asked. Only where no scale is linked does one answer hold for a day.
func ManualReason(f *Session) string {
	kept := f.manual
	if kept == "" {
		kept = f.Recall(manualMemory)
	}
	reason, _ := strings.CutPrefix(kept, manualToday(f))
	if reason == kept {
		return ""
	}
	return reason
}

// SetManualReason keeps why the person at the desk types weights, until the day ends.
func SetManualReason(f *Session, reason string) {
	f.manual = manualToday(f) + reason
	f.Remember(manualMemory, f.manual)
}

// manualToday names the person and the day that an answer holds for.
func manualToday(f *Session) string {
	return f.Desk.Today().String() + "\n" + f.Desk.Who().Name + "\n"
}
