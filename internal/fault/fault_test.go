package fault

import (
	"errors"
	"testing"
)

func TestUnlessAddsWhatDoesNotHold(t *testing.T) {
	var l List
	l.Unless(true, "this is right")
	l.Unless(false, "test %d has no crop", 2)
	l.Add("the day is missing")
	if got := errors.Join(l...).Error(); got != "test 2 has no crop\nthe day is missing" {
		t.Errorf("the faults are %q", got)
	}
}

func TestNoFaults(t *testing.T) {
	var l List
	if l.Unless(true, "nothing"); l != nil {
		t.Errorf("%v", l)
	}
}
