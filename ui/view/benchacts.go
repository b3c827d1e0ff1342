package view

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// Acts are everything a tester can do with a sample.
func (s *benchScreen) Acts() []Act {
	group := present.Say("Bench")
	return []Act{
		{Everywhere: true, Command: kit.Command{
			ID: "bench.open", Title: present.Say("Test this load"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyB)},
			Do: s.openFromYard,
		}},
		{Command: kit.Command{
			ID: "bench.write", Title: present.Say("Write to the load"), Group: group, Keys: []kit.Key{kit.Bare(fyne.KeyF12)},
			Do: func() { s.try(s.bench.Write()) },
		}},
		{Command: kit.Command{
			ID: "bench.leave", Title: present.Say("Leave out"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyK)},
			EnabledWhen: s.bench.CanLeaveOut,
			WhyNot:      func() string { return present.Say("No test has been made.") },
			Do:          func() { s.bench.LeaveOut(s.chosenTest()) },
		}},
		{Command: kit.Command{
			ID: "bench.through", Title: present.Say("Let through"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyO)},
			EnabledWhen: s.bench.CanLetThrough,
			WhyNot:      func() string { return present.Say("No doubt stops the ticket that a manager could let through.") },
			Do:          s.bench.LetThrough,
		}},
		{Command: kit.Command{
			ID: "bench.working", Title: present.Say("Working"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyW)},
			Do: s.turnWorking,
		}},
		{Command: kit.Command{
			ID: "bench.factor", Title: present.Say("Another result"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyJ)}, Break: true,
			EnabledWhen: s.bench.CanAskFactor,
			WhyNot:      func() string { return present.Say("Choose a load first whose grain is known.") },
			Do:          func() { s.bench.AskFactor(func(field string) { s.form.show(true); s.form.focus(field) }) },
		}},
		{Command: kit.Command{
			ID: "bench.label", Title: present.Say("Print the label"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyP)},
			EnabledWhen: s.bench.CanPrintLabel,
			WhyNot: func() string {
				return present.Say("The sample has no number in the book yet. Write it to its load first.")
			},
			Do: s.bench.PrintLabel,
		}},
		{Command: kit.Command{
			ID: "bench.degrees", Title: present.Say("Fahrenheit or Celsius"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyU)},
			Do: s.bench.TurnDegrees,
		}},
		{Command: kit.Command{
			ID: "bench.over", Title: present.Say("Start over without a load"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyR)},
			Do: func() { s.try(s.bench.StartOver()) },
		}},
	}
}

// openFromYard takes the load in hand on the yard to the bench.
func (s *benchScreen) openFromYard() {
	s.bench.TakeFromYard(s.window.yard().(*yardScreen).form())
	s.window.Go("bench")
}

// chosenTest is the test marked in the list; the only one if there is one.
func (s *benchScreen) chosenTest() string {
	if key := s.tests.ChosenKey(); key != "" {
		return key
	}
	if rows := s.bench.Rows(); len(rows) == 1 {
		return rows[0].Key
	}
	return ""
}

func (s *benchScreen) try(err error) {
	if err != nil {
		s.window.frame.Fail(err)
	}
	s.form.show(true)
	s.form.focus(s.bench.First())
}
