package desktop

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/ui/day"
	"tenthpoint/ui/lab"
	"tenthpoint/ui/shell"
)

// One sample by the keyboard alone: three tests on the dial meter, near the
// trigger, written to the load.
func TestSampleByKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{}, 120)
	s.Go("bench")
	b := s.screen("bench").(*lab.BenchScreen)
	if got := b.FocusOrder().Current(); got != "mass" {
		t.Fatalf("the keyboard begins on %q, want the first figure of the test", got)
	}
	b.Form.Focus("method")
	s.write("dial")
	s.write("", "", "250", "65", "68", "")
	if got := b.FocusOrder().Current(); got != "dial" {
		t.Fatalf("the keyboard is on %q, want the dial", got)
	}
	s.write("58")
	if rows := b.Bench.Result().Tests; len(rows) != 1 {
		t.Fatalf("%d tests are listed, want 1; the status line says %q", len(rows), s.Status.Text())
	}
	if got := b.FocusOrder().Current(); got != "dial" {
		t.Errorf("after the first of three tests the keyboard is on %q, want the dial", got)
	}
	s.write("59", "57")
	if got := b.FocusOrder().Current(); got == "dial" {
		t.Error("after the last test the keyboard is still on the dial")
	}
	id := b.Bench.Result().Fields[0].Value
	s.press(fyne.KeyF12)
	l, err := office.Load(t.Context(), s.desk, id)
	must(t, err)
	if l.Sample.Moisture == nil || l.Sample.Moisture.Bench == nil {
		t.Fatalf("the load has no moisture from the bench; the status line says %q", s.Status.Text())
	}
	if got := l.Sample.Moisture.Bench.Tests.Readings; len(got) != 3 || got[0].Method != meter.ByDial {
		t.Errorf("the load has the tests %+v", got)
	}
	if !strings.Contains(s.Status.Text(), id) {
		t.Errorf("the status line says %q and not which load", s.Status.Text())
	}
}

// screen finds a screen by its id.
func (s *scene) screen(id string) shell.Screen {
	s.t.Helper()
	for i, row := range Screens {
		if row.ID == id {
			return s.Screens[i]
		}
	}
	s.t.Fatalf("there is no screen %s", id)
	return nil
}

// shootBench draws the bench as its work goes.
func (s *scene) shootBench(look string, l shell.Look) {
	s.Go("bench")
	b := s.screen("bench").(*lab.BenchScreen)
	b.Form.Focus("method")
	s.write(s.Session.Say("dial and chart"))
	s.write("", "", "250", "36", "68", "")
	s.letters("56")
	s.shoot(look, "bench-typing", l)
	s.write("", "57", "66")
	s.shoot(look, "bench-doubts", l)
	s.Commands.Run("bench.working")
	s.shoot(look, "bench-working", l)
	s.Commands.Run("bench.working")
	b.Tests.SetChosen("3")
	s.Commands.Run("bench.leave")
	s.shoot(look, "bench-leave", l)
	s.answer(s.Session.Say("the test was spoiled"), "grain spilled on the bench")
	s.shoot(look, "bench-left-out", l)
	b.Form.Focus("load")
	s.write(s.Session.Say("no load, only convert"))
	s.shoot(look, "bench-no-load", l)
}

// shootDay draws the parts of the day sheet, yesterday closed, and a dispute on
// its way.
func (s *scene) shootDay(look string, l shell.Look) {
	s.Go("day")
	s.Commands.Run("day.before")
	for _, part := range day.DayParts {
		s.Commands.Run("day." + part.ID)
		s.shoot(look, "day-"+part.ID, l)
	}
	s.Commands.Run("day.before")
	s.Commands.Run("day.before")
	s.shoot(look, "day-told-much", l)
	for range 3 {
		s.Commands.Run("day.after")
	}
	s.Commands.Run("day.close")
	s.shoot(look, "day-close", l)
	s.press(fyne.KeyEscape)
	s.Go("disputes")
	s.Commands.Run("disputes.raise")
	s.answer("5", "Nils Farrow", s.Session.Say("moisture"), "our own meter says 16.1")
	s.Commands.Run("disputes.sent")
	s.write("", "state laboratory", "", "Nils Farrow")
	s.press(fyne.KeySpace)
	s.shoot(look, "disputes-sent", l)
	s.press(fyne.KeyEnter, fyne.KeyEnter)
	s.shoot(look, "disputes-one", l)
}

// shootMeters draws the meters with the log of each, and a check being asked.
func (s *scene) shootMeters(look string, l shell.Look) {
	s.Go("meters")
	s.press(fyne.KeyDown)
	s.shoot(look, "meters-digital", l)
	s.Commands.Run("meters.check")
	s.shoot(look, "meters-check", l)
	s.press(fyne.KeyEscape)
	s.Commands.Run("meters.change")
	s.shoot(look, "meters-change", l)
	s.press(fyne.KeyEscape)
}
