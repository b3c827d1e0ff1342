package view

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/ui/present"
)

// One sample by the keyboard alone: three tests on the dial meter, near the
// trigger, written to the load.
func TestSampleByKeyboard(t *testing.T) {
	s := newScene(t, Look{}, 120)
	s.Go("bench")
	b := s.screen("bench").(*benchScreen)
	if got := b.Ring().Current(); got != "mass" {
		t.Fatalf("the keyboard begins on %q, want the first figure of the test", got)
	}
	b.form.focus("method")
	s.write("dial")
	s.write("", "", "250", "65", "68", "")
	if got := b.Ring().Current(); got != "dial" {
		t.Fatalf("the keyboard is on %q, want the dial", got)
	}
	s.write("58")
	if rows := b.bench.Rows(); len(rows) != 1 {
		t.Fatalf("%d tests are listed, want 1; the status line says %q", len(rows), s.status.Text())
	}
	if got := b.Ring().Current(); got != "dial" {
		t.Errorf("after the first of three tests the keyboard is on %q, want the dial", got)
	}
	s.write("59", "57")
	if got := b.Ring().Current(); got == "dial" {
		t.Error("after the last test the keyboard is still on the dial")
	}
	id := b.bench.Fields()[0].Value
	s.press(fyne.KeyF12)
	l, err := s.desk.Load(t.Context(), id)
	must(t, err)
	if l.Sample.Moisture == nil || l.Sample.Moisture.Bench == nil {
		t.Fatalf("the load has no moisture from the bench; the status line says %q", s.status.Text())
	}
	if got := l.Sample.Moisture.Bench.Tests.Readings; len(got) != 3 || got[0].Method != meter.ByDial {
		t.Errorf("the load has the tests %+v", got)
	}
	if !strings.Contains(s.status.Text(), id) {
		t.Errorf("the status line says %q and not which load", s.status.Text())
	}
}

// screen finds a screen by its id.
func (s *scene) screen(id string) Screen {
	s.t.Helper()
	for i, row := range screens {
		if row.id == id {
			return s.screens[i]
		}
	}
	s.t.Fatalf("there is no screen %s", id)
	return nil
}

// shootBench draws the bench as its work goes.
func (s *scene) shootBench(look string, l Look) {
	s.Go("bench")
	b := s.screen("bench").(*benchScreen)
	b.form.focus("method")
	s.write(present.Say("dial and chart"))
	s.write("", "", "250", "36", "68", "")
	s.letters("56")
	s.shoot(look, "bench-typing", l)
	s.write("", "57", "66")
	s.shoot(look, "bench-doubts", l)
	s.commands.Run("bench.working")
	s.shoot(look, "bench-working", l)
	s.commands.Run("bench.working")
	b.tests.SetChosen("3")
	s.commands.Run("bench.leave")
	s.shoot(look, "bench-leave", l)
	s.write(present.Say("the test was spoiled"), "grain spilled on the bench")
	s.shoot(look, "bench-left-out", l)
	b.form.focus("load")
	s.write(present.Say("no load, only convert"))
	s.shoot(look, "bench-no-load", l)
}

// shootDay draws the parts of the day sheet, yesterday closed, and a dispute on
// its way.
func (s *scene) shootDay(look string, l Look) {
	s.Go("day")
	s.commands.Run("day.before")
	for _, part := range dayParts {
		s.commands.Run("day." + part.id)
		s.shoot(look, "day-"+part.id, l)
	}
	s.commands.Run("day.before")
	s.commands.Run("day.before")
	s.shoot(look, "day-told-much", l)
	for range 3 {
		s.commands.Run("day.after")
	}
	s.commands.Run("day.close")
	s.shoot(look, "day-close", l)
	s.press(fyne.KeyEscape)
	s.Go("disputes")
	s.commands.Run("disputes.raise")
	s.write("5", "Nils Farrow", present.Say("moisture"), "our own meter says 16.1")
	s.commands.Run("disputes.sent")
	s.write("", "state laboratory", "", "Nils Farrow")
	s.press(fyne.KeySpace)
	s.shoot(look, "disputes-sent", l)
	s.press(fyne.KeyEnter)
	s.shoot(look, "disputes-one", l)
}

// shootMeters draws the meters with the log of each, and a check being asked.
func (s *scene) shootMeters(look string, l Look) {
	s.Go("meters")
	s.press(fyne.KeyDown)
	s.shoot(look, "meters-digital", l)
	s.commands.Run("meters.check")
	s.shoot(look, "meters-check", l)
	s.press(fyne.KeyEscape)
	s.commands.Run("meters.change")
	s.shoot(look, "meters-change", l)
	s.press(fyne.KeyEscape)
}
