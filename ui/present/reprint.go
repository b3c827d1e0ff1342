package present

import (
	"context"
	"tenthpoint/internal/office"
)

// PrintAgain prints the newest ticket once more, as a reprint.
func (f *Frame) PrintAgain() {
	number, found, err := office.LastTicket(context.Background(), f.Desk)
	switch {
	case err != nil:
		f.Fail(err)
	case !found:
		f.Say(Stop, Say("No ticket has been issued yet."))
	default:
		f.Print(number)
	}
}
