package lab

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/yard"
)

// Acts are everything a tester can do with a sample.
func (s *BenchScreen) Acts() []shell.Act {
	group := session.Say("Bench")
	return []shell.Act{
		{Everywhere: true, Command: widgets.Command{
			ID: "bench.open", Title: session.Say("Test this load"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyB)},
			Do: s.openFromYard,
		}},
		{Command: widgets.Command{
			ID: "bench.write", Title: session.Say("Write to the load"), Group: group, Keys: []widgets.Key{widgets.Bare(fyne.KeyF12)},
			Do: func() { s.try(s.Bench.Write()) },
		}},
		{Command: widgets.Command{
			ID: "bench.leave", Title: session.Say("Leave out"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyK)},
			EnabledWhen: s.Bench.CanLeaveOut,
			WhyNot:      func() string { return session.Say("No test has been made.") },
			Do:          func() { s.Bench.LeaveOut(s.chosenTest()) },
		}},
		{Command: widgets.Command{
			ID: "bench.through", Title: session.Say("Let through"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyO)},
			EnabledWhen: s.Bench.CanLetThrough,
			WhyNot:      func() string { return session.Say("No doubt stops the ticket that a manager could let through.") },
			Do:          s.Bench.LetThrough,
		}},
		{Command: widgets.Command{
			ID: "bench.working", Title: session.Say("Working"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyW)},
			Do: s.turnWorking,
		}},
		{Command: widgets.Command{
			ID: "bench.factor", Title: session.Say("Another result"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyJ)}, Break: true,
			EnabledWhen: s.Bench.CanAskFactor,
			WhyNot:      func() string { return session.Say("Choose a load first whose grain is known.") },
			Do:          func() { s.Bench.AskFactor(func(field string) { s.Form.Show(true); s.Form.Focus(field) }) },
		}},
		{Command: widgets.Command{
			ID: "bench.label", Title: session.Say("Print the label"), Group: group, Icon: apptheme.IconPrint, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyP)},
			EnabledWhen: s.Bench.CanPrintLabel,
			WhyNot: func() string {
				return session.Say("The sample has no number in the book yet. Write it to its load first.")
			},
			Do: s.Bench.PrintLabel,
		}},
		{Command: widgets.Command{
			ID: "bench.degrees", Title: session.Say("Fahrenheit or Celsius"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyU)},
			Do: s.Bench.TurnDegrees,
		}},
		{Command: widgets.Command{
			ID: "bench.over", Title: session.Say("Start over without a load"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyR)},
			Do: func() { s.try(s.Bench.StartOver()) },
		}},
	}
}

// openFromYard takes the load in hand on the yard to the bench.
func (s *BenchScreen) openFromYard() {
	s.Bench.TakeFromYard(s.window.Yard().(*yard.Screen).Form())
	s.window.Go("bench")
}

// chosenTest is the test marked in the list; the only one if there is one.
func (s *BenchScreen) chosenTest() string {
	if key := s.Tests.ChosenKey(); key != "" {
		return key
	}
	if rows := s.Bench.Rows(); len(rows) == 1 {
		return rows[0].Key
	}
	return ""
}

func (s *BenchScreen) try(err error) {
	if err != nil {
		s.window.Session.Fail(err)
	}
	s.Form.Show(true)
	s.Form.Focus(s.Bench.First())
}
