package view

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// menuHigh is what the row of menus takes off the height of a real window, in
// the letters in force: a line with its ground, as Fyne draws it. The window of
// a test has none.
func menuHigh() float32 {
	return fyne.MeasureText("M", theme.TextSize(), fyne.TextStyle{}).Height + theme.InnerPadding()
}

// resize gives the window the room that a real one of a size has under its menus.
func (s *scene) resize(size fyne.Size) {
	s.fyne.Resize(size.SubtractWidthHeight(0, menuHigh()))
}

// The form of every grain stands whole in the smallest window: a clerk never
// scrolls to a field.
func TestFormFitsTheSmallestWindow(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.fyne.Resize(fyne.NewSize(1280, 720-menuHigh()))
	for _, g := range s.desk.Profile().Grains {
		s.commands.Run("load.new")
		s.yard().load.ring.Focus("commodity")
		s.write(g.Commodity)
		s.yard().form().Type("moisture", "18.0")
		s.yard().load.show(true)
		screen := s.yard()
		if high, room := screen.load.sheet.content.MinSize().Height+2*slimGap, screen.fields.Size().Height; high > room {
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
	s.fyne.Resize(fyne.NewSize(1280, 720-menuHigh()))
	for _, row := range screens {
		s.Go(row.id)
		if row.id == "day" {
			s.commands.Run("day.before") // the morning's sheet is small
		}
		least := s.fyne.Content().MinSize()
		if least.Width > 1280 || least.Height > 720-menuHigh() {
			t.Errorf("the %s screen needs %v x %v, more than 1280 x %v", row.id, least.Width, least.Height, 720-menuHigh())
		}
	}
}

// The set-up is seen whole, in a new book and in one that is in use.
func TestSetUpFitsTheSmallestWindow(t *testing.T) {
	for _, loads := range []int{0, 40} {
		s := newScene(t, Look{}, loads)
		s.fyne.Resize(fyne.NewSize(1280, 720-menuHigh()))
		s.Go("setup")
		fields := s.screen("setup").(*setUpScreen).fields
		if high, room := fields.Content.MinSize().Height, fields.Size().Height; high > room {
			t.Errorf("with %d loads in the book the set-up is %v high and has room for %v", loads, high, room)
		}
	}
}
