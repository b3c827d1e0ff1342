package session

import "testing"

// Quitting waits for the papers under way; asked again, it does not.
func TestQuittingWaitsForPaper(t *testing.T) {
	closed := 0
	closeWindow := func() { closed++ }
	p := &Prints{running: 2}
	p.Quit(closeWindow)
	p.done()
	if closed != 0 {
		t.Error("closed with a paper under way")
	}
	p.done()
	if closed != 1 {
		t.Errorf("closed %d times after the last paper", closed)
	}
	p = &Prints{running: 1}
	p.Quit(closeWindow)
	p.Quit(closeWindow)
	(&Prints{}).Quit(closeWindow)
	if closed != 3 {
		t.Errorf("closed %d times", closed)
	}
}
