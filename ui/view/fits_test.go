package view

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// smallest is the smallest window.
var smallest = fyne.NewSize(1280, 720)

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

// inEveryLook runs a test in the smallest window, in every size of letters and
// every language.
func inEveryLook(t *testing.T, loads int, check func(t *testing.T, s *scene)) {
	for _, code := range languages {
		for _, scale := range kit.TextScales() {
			t.Run(fmt.Sprintf("%s-%v", code, scale), func(t *testing.T) {
				speak(t, code)
				s := newScene(t, Look{Scale: scale}, loads)
				s.resize(smallest)
				check(t, s)
			})
		}
	}
}

// Every screen fits the smallest window: nothing is pushed over its edge.
func TestScreensFitTheSmallestWindow(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		for _, row := range screens {
			s.Go(row.id)
			if row.id == "day" {
				s.commands.Run("day.before") // the morning's sheet is small
			}
			if why := s.tooLarge(smallest); why != "" {
				t.Errorf("the %s screen %s", row.id, why)
			}
		}
	})
}

// tooLarge says why the window's content does not fit a window of a size.
func (s *scene) tooLarge(window fyne.Size) string {
	least := s.fyne.Content().MinSize()
	if high := window.Height - menuHigh(); least.Width > window.Width || least.Height > high {
		return fmt.Sprintf("needs %v x %v, more than %v x %v", least.Width, least.Height, window.Width, high)
	}
	return ""
}

// The form of every grain stands whole: a clerk never scrolls to a field, no name
// is cut and no field lies over another.
func TestLoadFormStandsWhole(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		for _, g := range s.desk.Profile().Grains {
			s.commands.Run("load.new")
			yardOf(s.Window).load.ring.Focus("commodity")
			s.write(g.Commodity)
			yardOf(s.Window).form().Type("moisture", "18.0")
			yardOf(s.Window).load.show(true)
			s.complain(t, g.Commodity, yardOf(s.Window).load.sheet)
		}
		s.letCornBeTyped()
		yardOf(s.Window).load.ring.Focus("tare")
		s.letters("54300")
		s.complain(t, "corn with a wrong tare", yardOf(s.Window).load.sheet)
		s.commands.Run("load.new")
		s.commands.Run("load.leaves")
		s.complain(t, "grain that leaves", yardOf(s.Window).load.sheet)
	})
}

// The bench's form stands whole by every method.
func TestBenchFormStandsWhole(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		s.Go("bench")
		b := s.screen("bench").(*benchScreen)
		for _, f := range b.bench.Fields() {
			if f.ID != "method" {
				continue
			}
			for _, o := range f.Options {
				b.form.typed("method", o.Code)
				s.complain(t, o.Code, b.form.sheet)
			}
		}
	})
}

// The set-up is seen whole, in a new book and in one that is in use.
func TestSetUpStandsWhole(t *testing.T) {
	for _, loads := range []int{0, 40} {
		inEveryLook(t, loads, func(t *testing.T, s *scene) {
			s.Go("setup")
			s.complain(t, fmt.Sprintf("the set-up of %d loads", loads), s.screen("setup").(*setUpScreen).columns)
		})
	}
}

// complain reports whatever is wrong with a form.
func (s *scene) complain(t *testing.T, of string, form *fieldSheet) {
	t.Helper()
	for _, why := range faultsOf(form) {
		t.Errorf("%s, set %d: %s", of, form.setting, why)
	}
}

// faultsOf are the fields of a form that stand out of its room, are cut or lie over
// one another.
func faultsOf(form *fieldSheet) (out []string) {
	size := form.content.Size()
	if least := form.height(form.setting); least > size.Height+0.5 {
		out = append(out, fmt.Sprintf("the rows need %v and have %v", least, size.Height))
	}
	var taken []place
	for _, row := range form.rows() {
		at := row.Position()
		if at.Y+row.height(form.setting) > size.Height+0.5 || at.X+row.Size().Width > size.Width+0.5 {
			out = append(out, fmt.Sprintf("%s ends at %v, the form at %v", row.field.ID, at.Add(row.Size()), size))
		}
		for _, l := range []*label{row.label, row.unit} {
			if l.MinSize().Width > l.Size().Width+0.5 {
				out = append(out, fmt.Sprintf("%q of %s needs %v and has %v", l.text, row.field.ID, l.MinSize().Width, l.Size().Width))
			}
		}
		entry := row.entry.(fyne.CanvasObject)
		taken = append(taken,
			place{row.field.ID, at.Add(entry.Position()), entry.Size()},
			place{"the name of " + row.field.ID, at, row.label.Size()})
	}
	return append(out, overlaps(taken)...)
}

// place is where something stands.
type place struct {
	what string
	at   fyne.Position
	size fyne.Size
}

// overlaps are the pairs that lie over one another.
func overlaps(all []place) (out []string) {
	for i, a := range all {
		for _, b := range all[i+1:] {
			across := min(a.at.X+a.size.Width, b.at.X+b.size.Width) - max(a.at.X, b.at.X)
			down := min(a.at.Y+a.size.Height, b.at.Y+b.size.Height) - max(a.at.Y, b.at.Y)
			if across > 0.5 && down > 0.5 {
				out = append(out, fmt.Sprintf("%s lies over %s by %v x %v", a.what, b.what, across, down))
			}
		}
	}
	return out
}

// In the rail nothing lies over anything else, however many trucks there are, and
// the one in hand is in sight.
func TestRailPartsStandApart(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		for n := range 14 {
			r := s.rail
			for _, why := range overlaps(partsOf(r)) {
				t.Errorf("with %d new trucks, set %d: %s", n, r.setting, why)
			}
			for i := range r.trucks.Objects {
				c := r.card(i)
				if c.row.InHand && (c.Position().Y < r.scroll.Offset.Y-1 || c.Position().Y+c.Size().Height > r.scroll.Offset.Y+r.scroll.Size().Height+cardGap) {
					t.Errorf("with %d new trucks, %s in hand is out of sight", n, c.row.Truck)
				}
			}
			s.commands.Run("load.new")
			s.write("123", "corn", fmt.Sprintf("T%d", n), "52300")
		}
		if s.rail.setting != fullRail {
			t.Errorf("with many trucks the rail is set %d", s.rail.setting)
		}
	})
}

// partsOf are the visible parts of the rail, and those that overflow its foot.
func partsOf(r *rail) (out []place) {
	for i, o := range r.inside.Objects {
		if o.Visible() && o.Size().Height > 0 {
			out = append(out, place{fmt.Sprintf("part %d", i), o.Position(), o.Size()})
		}
	}
	bottom := fyne.NewPos(0, r.inside.Size().Height)
	return append(out, place{"the status line", bottom, fyne.NewSize(r.inside.Size().Width, 100)})
}

// In ordinary and large letters form and slip stand side by side; in the largest
// one key turns form, slip and working.
func TestFormAndSlipTakeTurns(t *testing.T) {
	for _, scale := range kit.TextScales() {
		s := newScene(t, Look{Scale: scale}, 40)
		s.resize(smallest)
		s.letCornBeTyped()
		y := yardOf(s.Window)
		if narrow := scale == kit.TextLargest; y.pane.narrow != narrow {
			t.Fatalf("at %v one at a time is %v", scale, y.pane.narrow)
		}
		if !y.pane.narrow {
			if !y.pane.form.Visible() || !y.pane.paper.Visible() {
				t.Errorf("at %v form and slip are not both in sight", scale)
			}
			continue
		}
		for _, want := range []struct {
			button      string
			form, paper bool
			at          string
		}{
			{present.Say("Working"), false, true, "slip"},
			{present.Say("Form"), false, true, "slip"},
			{present.Say("Slip"), true, false, "damage"},
		} {
			s.commands.Run("load.working")
			if y.pane.form.Visible() != want.form || y.pane.paper.Visible() != want.paper || y.toggle.Text != want.button {
				t.Errorf("form %v, paper %v, the button says %q; want %+v", y.pane.form.Visible(), y.pane.paper.Visible(), y.toggle.Text, want)
			}
			if at := y.Ring().Current(); want.paper && at != want.at {
				t.Errorf("with %s next the keyboard is on %q, want %q", want.button, at, want.at)
			}
			if !y.figures[0].Visible() {
				t.Error("the large figures are gone")
			}
		}
		s.commands.Run("load.working")
		s.press(fyne.KeyEscape)
		if !y.pane.form.Visible() || screens[s.current].id != "yard" {
			t.Error("Escape does not come back to the form")
		}
		s.commands.Run("load.working")
		s.press(fyne.KeyF2)
		if !y.pane.form.Visible() {
			t.Error("the truck taken by its key shows no form")
		}
	}
}

// The checks of this file find what they are there to find.
func TestFitChecksCanFail(t *testing.T) {
	s := newScene(t, Look{Scale: kit.TextLargest}, 40)
	s.resize(smallest)
	s.letCornBeTyped()
	if why := s.tooLarge(fyne.NewSize(1280, 300)); why == "" {
		t.Error("a window of 300 is high enough for everything")
	}
	form := yardOf(s.Window).load.sheet
	if why := faultsOf(form); len(why) > 0 {
		t.Fatalf("the form has faults to begin with: %v", why)
	}
	form.content.Resize(fyne.NewSize(form.content.Size().Width, 200))
	if len(faultsOf(form)) == 0 {
		t.Error("rows in a room of 200 stand whole")
	}
	form.content.Resize(fyne.NewSize(300, 900))
	if len(faultsOf(form)) == 0 {
		t.Error("two columns in 300 stand whole")
	}
	apart := []place{{"a", fyne.NewPos(0, 0), fyne.NewSize(10, 10)}, {"b", fyne.NewPos(10, 0), fyne.NewSize(10, 10)}}
	over := []place{{"a", fyne.NewPos(0, 0), fyne.NewSize(10, 10)}, {"b", fyne.NewPos(9, 9), fyne.NewSize(10, 10)}}
	if len(overlaps(apart)) != 0 || len(overlaps(over)) != 1 {
		t.Errorf("apart: %v; over: %v", overlaps(apart), overlaps(over))
	}
}
