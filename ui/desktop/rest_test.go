package desktop

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// At every frame a real window lays out each object with a new child or a child of another size. A
// widget that draws itself again when it is laid out would therefore be laid out for ever, and an
// idle desk would keep a processor busy. Each screen comes to rest after a few frames.
func TestScreensComeToRest(t *testing.T) {
	inEveryLook(t, 40, comesToRest)
}

func comesToRest(t *testing.T, s *scene) {
	for i, row := range Screens {
		s.Go(row.ID)
		for _, stop := range s.Screens[i].FocusOrder().IDs() {
			s.Screens[i].FocusOrder().Focus(stop)
			if moving := s.unrest(); len(moving) > 0 {
				t.Errorf("the %s screen with the keyboard on %s never rests:\n%s", row.ID, stop, strings.Join(moving, "\n"))
			}
		}
	}
	s.Go("yard")
	s.press(fyne.KeyF2)
	if moving := s.unrest(); len(moving) > 0 {
		t.Errorf("a truck on the yard never rests:\n%s", strings.Join(moving, "\n"))
	}
}

// framesToRest is the number of frames a screen may take to settle: one for each level at which a
// width decides a height.
const framesToRest = 6

// unrest draws frames and tells what still moves in the last of them.
func (s *scene) unrest() []string {
	w := &walker{}
	root := &walked{of: s.fyne.Content()}
	for range framesToRest {
		w.moving = nil
		w.walk(root, "")
	}
	return w.moving
}

// walked is a frame's record of an object.
type walked struct {
	of       fyne.CanvasObject
	least    fyne.Size
	children []*walked
}

// walker is one frame of a window.
type walker struct{ moving []string }

// walk visits what shows, children first, and lays out what holds a changed
// child. It reports whether the object itself needs another size than before.
func (w *walker) walk(n *walked, way string) bool {
	way += fmt.Sprintf("/%T", n.of)
	changed := false
	for i, child := range parts(n.of) {
		if i < len(n.children) && n.children[i].of != child {
			n.children = n.children[:i]
		}
		if i == len(n.children) {
			n.children = append(n.children, &walked{of: child})
		}
		if child.Visible() && w.walk(n.children[i], way) {
			changed = true
		}
	}
	if changed {
		w.moving = append(w.moving, way)
		layOut(n.of)
	}
	before := n.least
	n.least = n.of.MinSize()
	return n.least != before
}

// parts are the objects that an object is made of.
func parts(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case fyne.Widget:
		return test.WidgetRenderer(o).Objects()
	}
	return nil
}

func layOut(o fyne.CanvasObject) {
	switch o := o.(type) {
	case *fyne.Container:
		if o.Layout != nil {
			o.Layout.Layout(o.Objects, o.Size())
		}
	case fyne.Widget:
		test.WidgetRenderer(o).Layout(o.Size())
	}
}
