package desktop

import (
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/shell"
)

// labels calls a function with each label in the boxes of an object.
func labels(o fyne.CanvasObject, each func(*shell.Label)) {
	switch o := o.(type) {
	case *shell.Label:
		each(o)
	case *fyne.Container:
		for _, inside := range o.Objects {
			labels(inside, each)
		}
	}
}

// The clock at the foot is whole, also after the desk has changed its language.
func TestTheClockIsWhole(t *testing.T) {
	s := inFrench(t, shell.Look{Scale: apptheme.TextOrdinary}, 20)
	found := false
	labels(s.fyne.Content(), func(l *shell.Label) {
		if l.Text == s.Session.Clock() {
			found = true
			if l.Size().Width < l.MinSize().Width {
				t.Errorf("the clock is %v wide and needs %v", l.Size().Width, l.MinSize().Width)
			}
		}
	})
	if !found {
		t.Error("there is no clock")
	}
}
