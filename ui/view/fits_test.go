package view

import (
	"testing"

	"fyne.io/fyne/v2"
)

// menuHigh is what the menu takes off the window's height; the test's window
// has none.
const menuHigh = 27

// The form of every grain stands whole in the smallest window: a clerk never
// scrolls to a field.
func TestFormFitsTheSmallestWindow(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.fyne.Resize(fyne.NewSize(1280, 720-menuHigh))
	for _, g := range s.desk.Profile().Grains {
		s.commands.Run("load.new")
		s.yard().load.ring.Focus("commodity")
		s.write(g.Commodity)
		s.yard().form().Type("moisture", "18.0")
		s.yard().load.show(true)
		screen := s.yard()
		if high, room := screen.load.content.MinSize().Height+2*slimGap, screen.fields.Size().Height; high > room {
			t.Errorf("the form of %s is %v high and has room for %v", g.Commodity, high, room)
		}
		if wide, room := s.fyne.Content().MinSize().Width, float32(1280); wide > room {
			t.Errorf("with %s the window needs %v, more than %v", g.Commodity, wide, room)
		}
	}
}

// Every screen fits the smallest window: nothing is pushed over its edge.
func TestScreensFitTheSmallestWindow(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.fyne.Resize(fyne.NewSize(1280, 720-menuHigh))
	for _, row := range screens {
		s.Go(row.id)
		if row.id == "day" {
			s.commands.Run("day.before") // the morning's sheet is small
		}
		least := s.fyne.Content().MinSize()
		if least.Width > 1280 || least.Height > 720-menuHigh {
			t.Errorf("the %s screen needs %v x %v, more than 1280 x %v", row.id, least.Width, least.Height, 720-menuHigh)
		}
	}
}

// The set-up is seen whole, in a new book and in one that is in use.
func TestSetUpFitsTheSmallestWindow(t *testing.T) {
	for _, loads := range []int{0, 40} {
		s := newScene(t, Look{}, loads)
		s.fyne.Resize(fyne.NewSize(1280, 720-menuHigh))
		s.Go("setup")
		fields := s.screen("setup").(*setUpScreen).fields
		if high, room := fields.Content.MinSize().Height, fields.Size().Height; high > room {
			t.Errorf("with %d loads in the book the set-up is %v high and has room for %v", loads, high, room)
		}
	}
}
