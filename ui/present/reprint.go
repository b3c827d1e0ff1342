package present

import (
	"context"
	"tenthpoint/ui/model"
)

// PrintAgain prints the newest ticket once more, as a reprint.
func (f *Frame) PrintAgain() {
	number, found, err := f.Desk.LastTicket(context.Background())
	switch {
	case err != nil:
		f.Fail(err)
	case !found:
		f.Say(model.Stop, Say("No ticket has been issued yet."))
	default:
		f.Print(number)
	}
}
