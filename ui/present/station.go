package present

import "tenthpoint/internal/quantity"

// Station is what belongs to this computer and not to the book: where papers
// go, which scale is listened to, what was last remembered.
type Station interface {
	// Recall gives what was remembered under a name, or nothing.
	Recall(name string) string
	// Remember keeps a text under a name, also for the next time the program
	// runs.
	Remember(name, text string)
	// SendPapers makes papers go one of the ways there are; the queue is the
	// print queue's name, empty for the computer's own choice.
	SendPapers(way, queue string) error
	// MakeFolder makes a folder with all it lies in.
	MakeFolder(path string) error
	// Relink listens to the scale anew after its link has been changed.
	Relink() error
}

// The ways papers may go.
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

// recall gives what the station remembers of this book.
func (f *Frame) recall(name string) string {
	if f.Station == nil {
		return ""
	}
	return f.Station.Recall(name + " " + f.Desk.Book().Path())
}

// remember keeps a text about this book.
func (f *Frame) remember(name, text string) {
	if f.Station != nil {
		f.Station.Remember(name+" "+f.Desk.Book().Path(), text)
	}
}
