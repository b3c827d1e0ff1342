package desktop

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/internal/i18n"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/lab"
	"tenthpoint/ui/setup"
	"tenthpoint/ui/shell"
)

// smallest is the smallest window.
var smallest = fyne.NewSize(1280, 720)

// menuHigh returns the height of a real window's menu bar, in the current text size: a line with
// padding, as Fyne draws it. The window of a test has none.
func menuHigh() float32 {
	return fyne.MeasureText("M", theme.TextSize(), fyne.TextStyle{}).Height + theme.InnerPadding()
}

// resize gives the window the room that a real one of a size has under its menus.
func (s *scene) resize(size fyne.Size) {
	s.fyne.Resize(size.SubtractWidthHeight(0, menuHigh()))
}

// inEveryLook runs a test in the smallest window, in every size of letters and every language; one that
// has no handbook yet in the largest letters alone.
func inEveryLook(t *testing.T, loads int, check func(t *testing.T, s *scene)) {
	scales := apptheme.TextScales()
	for _, code := range i18n.Codes() {
		for _, scale := range scales {
			if !slices.Contains(languages, code) && scale != slices.Max(scales) {
				continue
			}
			t.Run(fmt.Sprintf("%s-%v", code, scale), func(t *testing.T) {
				s := newScene(t, shell.Look{Scale: scale}, loads)
				s.speak(code)
				s.resize(smallest)
				check(t, s)
			})
		}
	}
}

// Every screen fits the smallest window: nothing is pushed over its edge.
func TestScreensFitTheSmallestWindow(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		for _, row := range Screens {
			s.Go(row.ID)
			if row.ID == "day" {
				s.Commands.Run("day.before") // the morning's sheet is small
			}
			if why := s.tooLarge(smallest); why != "" {
				t.Errorf("the %s screen %s", row.ID, why)
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

// The form of every grain fits: a clerk never scrolls to a field, no name is cut and no field
// overlaps another.
func TestLoadFormStandsWhole(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		for _, g := range s.desk.Profile().Grains {
			s.Commands.Run("load.new")
			yardOf(s.Window).Load.FocusOrder.Focus("commodity")
			s.write(g.Commodity)
			yardOf(s.Window).Form().Type("moisture", "18.0")
			yardOf(s.Window).Load.Show(true)
			s.complain(t, g.Commodity, yardOf(s.Window).Load.Sheet)
		}
		s.letCornBeTyped()
		yardOf(s.Window).Load.FocusOrder.Focus("tare")
		s.letters("54300")
		s.complain(t, "corn with a wrong tare", yardOf(s.Window).Load.Sheet)
		s.Commands.Run("load.new")
		s.Commands.Run("load.leaves")
		s.complain(t, "grain that leaves", yardOf(s.Window).Load.Sheet)
	})
}

// The bench's form fits for every method.
func TestBenchFormStandsWhole(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		s.Go("bench")
		b := s.screen("bench").(*lab.BenchScreen)
		for _, f := range b.Bench.Result().Fields {
			if f.ID != "method" {
				continue
			}
			for _, o := range f.Options {
				b.Form.Typed("method", o.Code)
				s.complain(t, o.Code, b.Form.Sheet)
			}
		}
	})
}

// The set-up is seen whole, in a new book and in one that is in use.
func TestSetUpStandsWhole(t *testing.T) {
	for _, loads := range []int{0, 40} {
		inEveryLook(t, loads, func(t *testing.T, s *scene) {
			s.Go("setup")
			s.complain(t, fmt.Sprintf("the set-up of %d loads", loads), s.screen("setup").(*setup.Screen).Form.Sheet)
		})
	}
}

// complain reports everything wrong with a form.
func (s *scene) complain(t *testing.T, of string, form *shell.FieldSheet) {
	t.Helper()
	for _, why := range faultsOf(form) {
		t.Errorf("%s, set %d: %s", of, form.Setting, why)
	}
}

// faultsOf returns the fields of a form that are outside it, cut or overlapping.
func faultsOf(form *shell.FieldSheet) (out []string) {
	size := form.Content.Size()
	if least := form.Height(form.Setting); least > size.Height+0.5 {
		out = append(out, fmt.Sprintf("the rows need %v and have %v", least, size.Height))
	}
	var taken []place
	for _, row := range form.Rows() {
		at := row.Position()
		if at.Y+row.Height(form.Setting) > size.Height+0.5 || at.X+row.Size().Width > size.Width+0.5 {
			out = append(out, fmt.Sprintf("%s ends at %v, the form at %v", row.Field.ID, at.Add(row.Size()), size))
		}
		for _, l := range []*shell.Label{row.Label, row.Unit} {
			if l.MinSize().Width > l.Size().Width+0.5 {
				out = append(out, fmt.Sprintf("%q of %s needs %v and has %v", l.Text, row.Field.ID, l.MinSize().Width, l.Size().Width))
			}
		}
		entry := row.Entry.(fyne.CanvasObject)
		taken = append(taken,
			place{row.Field.ID, at.Add(entry.Position()), entry.Size()},
			place{"the name of " + row.Field.ID, at, row.Label.Size()})
	}
	return append(out, overlaps(taken)...)
}

// place is the area of something.
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

// In the sidebar nothing lies over anything else, however many trucks there are, and
// the one that is open is in sight.
func TestRailPartsStandApart(t *testing.T) {
	inEveryLook(t, 40, func(t *testing.T, s *scene) {
		for n := range 14 {
			r := s.Sidebar
			for _, why := range overlaps(partsOf(r)) {
				t.Errorf("with %d new trucks, set %d: %s", n, r.Setting, why)
			}
			for i := range r.Trucks.Objects {
				c := r.Card(i)
				if c.Row.Current && (c.Position().Y < r.Scroll.Offset.Y-1 || c.Position().Y+c.Size().Height > r.Scroll.Offset.Y+r.Scroll.Size().Height+shell.CardGap) {
					t.Errorf("with %d new trucks, %s in hand is out of sight", n, c.Row.Truck)
				}
			}
			s.Commands.Run("load.new")
			s.come("123", "corn", fmt.Sprintf("T%d", n))
			s.write("52300")
		}
		if s.Sidebar.Setting != shell.FullSidebar {
			t.Errorf("with many trucks the sidebar is set %d", s.Sidebar.Setting)
		}
	})
}

// partsOf are the visible parts of the sidebar, and those that overflow its foot.
func partsOf(r *shell.Sidebar) (out []place) {
	for i, o := range r.Inside.Objects {
		if o.Visible() && o.Size().Height > 0 {
			out = append(out, place{fmt.Sprintf("part %d", i), o.Position(), o.Size()})
		}
	}
	bottom := fyne.NewPos(0, r.Inside.Size().Height)
	return append(out, place{"the status line", bottom, fyne.NewSize(r.Inside.Size().Width, 100)})
}

// In ordinary and large text form and slip are side by side; in the largest one key turns form,
// slip and working.
func TestFormAndSlipTakeTurns(t *testing.T) {
	for _, scale := range apptheme.TextScales() {
		s := newScene(t, shell.Look{Scale: scale}, 40)
		s.resize(smallest)
		s.letCornBeTyped()
		y := yardOf(s.Window)
		if narrow := scale == apptheme.TextLargest; y.Pane.Narrow != narrow {
			t.Fatalf("at %v one at a time is %v", scale, y.Pane.Narrow)
		}
		if !y.Pane.Narrow {
			if !y.Pane.Form.Visible() || !y.Pane.Paper.Visible() {
				t.Errorf("at %v form and slip are not both in sight", scale)
			}
			continue
		}
		for _, want := range []struct {
			button      string
			form, paper bool
			at          string
		}{
			{s.Session.Say("Working"), false, true, "slip"},
			{s.Session.Say("Form"), false, true, "slip"},
			{s.Session.Say("Slip"), true, false, "damage"},
		} {
			s.Commands.Run("load.working")
			if y.Pane.Form.Visible() != want.form || y.Pane.Paper.Visible() != want.paper || y.Toggle.Text != want.button {
				t.Errorf("form %v, paper %v, the button says %q; want %+v", y.Pane.Form.Visible(), y.Pane.Paper.Visible(), y.Toggle.Text, want)
			}
			if at := y.FocusOrder().Current(); want.paper && at != want.at {
				t.Errorf("with %s next the keyboard is on %q, want %q", want.button, at, want.at)
			}
			if !y.Figures.Each[0].Visible() {
				t.Error("the large figures are gone")
			}
		}
		s.Commands.Run("load.working")
		s.press(fyne.KeyEscape)
		if !y.Pane.Form.Visible() || Screens[s.Current].ID != "yard" {
			t.Error("Escape does not come back to the form")
		}
		s.Commands.Run("load.working")
		s.press(fyne.KeyF2)
		if !y.Pane.Form.Visible() {
			t.Error("the truck taken by its key shows no form")
		}
	}
}

// The checks of this file find what they are there to find.
func TestFitChecksCanFail(t *testing.T) {
	s := newScene(t, shell.Look{Scale: apptheme.TextLargest}, 40)
	s.resize(smallest)
	s.letCornBeTyped()
	if why := s.tooLarge(fyne.NewSize(1280, 300)); why == "" {
		t.Error("a window of 300 is high enough for everything")
	}
	form := yardOf(s.Window).Load.Sheet
	if why := faultsOf(form); len(why) > 0 {
		t.Fatalf("the form has faults to begin with: %v", why)
	}
	form.Content.Resize(fyne.NewSize(form.Content.Size().Width, 200))
	if len(faultsOf(form)) == 0 {
		t.Error("rows in a room of 200 stand whole")
	}
	form.Content.Resize(fyne.NewSize(300, 900))
	if len(faultsOf(form)) == 0 {
		t.Error("two columns in 300 stand whole")
	}
	apart := []place{{"a", fyne.NewPos(0, 0), fyne.NewSize(10, 10)}, {"b", fyne.NewPos(10, 0), fyne.NewSize(10, 10)}}
	over := []place{{"a", fyne.NewPos(0, 0), fyne.NewSize(10, 10)}, {"b", fyne.NewPos(9, 9), fyne.NewSize(10, 10)}}
	if len(overlaps(apart)) != 0 || len(overlaps(over)) != 1 {
		t.Errorf("apart: %v; over: %v", overlaps(apart), overlaps(over))
	}
}
