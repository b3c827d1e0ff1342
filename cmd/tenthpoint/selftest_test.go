//go:build cgo && linux

package main

import (
	"strings"
	"testing"
)

// An installed program tries itself: it weighs a truck from a simulated scale in its own window,
// prints the ticket, verifies the book and ends by itself without a fault. Nothing of the person's own
// is touched.
func TestSelfTest(t *testing.T) {
	d := newDesktop(t, "--selftest")
	if err := d.program.Run(); err != nil {
		t.Fatalf("the self-test ended with %v:\n%s", err, d.log.String())
	}
	if got := strings.Count(d.log.String(), "ok    "); got != len(selfTestSteps) {
		t.Errorf("%d of %d steps are told:\n%s", got, len(selfTestSteps), d.log.String())
	}
}

// A step that fails is named and ends the test with a fault.
func TestSelfTestNamesTheStepThatFails(t *testing.T) {
	s := &selfTest{program: &program{}, folder: "/proc/no-such-folder"}
	err := s.run()
	if err == nil || !strings.HasPrefix(err.Error(), selfTestSteps[0].said) {
		t.Errorf("the self-test said %v", err)
	}
}
