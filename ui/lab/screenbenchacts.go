package lab

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/yard"
)

// Acts are everything a tester can do with a sample.
func (s *BenchScreen) Acts() []shell.Act {
	return shell.ActsOf(s.Bench.session.Language, s, s.Bench.session.Say("Bench"), benchActs)
}

var benchActs = []shell.ActRow[*BenchScreen]{
	{ID: "bench.open", Title: "Test this load", Key: widgets.Ctrl(fyne.KeyB), Everywhere: true, Do: (*BenchScreen).openFromYard},
	{ID: "bench.write", Title: "Save to the load", Key: widgets.Bare(fyne.KeyF12), Do: func(s *BenchScreen) { s.report(s.Bench.Write()) }},
	{ID: "bench.leave", Title: "Drop", Key: widgets.Ctrl(fyne.KeyK),
		When: func(s *BenchScreen) bool { return decisions{s.Bench}.canLeaveOut() }, Why: "No test has been made.",
		Do: func(s *BenchScreen) { decisions{s.Bench}.leaveOut(s.chosenTest()) }},
	{ID: "bench.through", Title: "Override", Key: widgets.Ctrl(fyne.KeyO),
		When: func(s *BenchScreen) bool { return decisions{s.Bench}.canLetThrough() }, Why: "No flag stops the ticket that a manager could override.",
		Do: func(s *BenchScreen) { decisions{s.Bench}.askManager() }},
	{ID: "bench.working", Title: "Working", Key: widgets.Ctrl(fyne.KeyW), Do: (*BenchScreen).turnWorking},

	{ID: "bench.factor", Title: "Another result", Key: widgets.Ctrl(fyne.KeyJ), Break: true,
		When: func(s *BenchScreen) bool { return s.Bench.CanAskFactor() }, Why: "Choose a load first whose grain is known.",
		Do: func(s *BenchScreen) { s.Bench.AskFactor(func(field string) { s.show(); s.Form.Focus(field) }) }},
	{ID: "bench.none", Title: "Looked for, not found", Key: widgets.CtrlShift(fyne.KeyN),
		When: func(s *BenchScreen) bool { return s.Bench.CanSeeNone() }, Why: "Choose a load first whose grain is known.",
		Do: func(s *BenchScreen) { s.Bench.SeeNone(); s.show() }},
	{ID: "bench.label", Title: "Print the label", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP),
		When: func(s *BenchScreen) bool { return s.Bench.CanPrintLabel() }, Why: "The sample has no number in the book yet. Write it to its load first.",
		Do: func(s *BenchScreen) { s.Bench.PrintLabel() }},
	{ID: "bench.keeps", Title: "Does it keep?", Key: widgets.CtrlShift(fyne.KeyU), MenuOnly: true,
		When: func(s *BenchScreen) bool { return canAskKeeping(s.Bench) }, Why: "Test the sample first: it has no moisture.",
		Do: func(s *BenchScreen) { askKeeping(s.Bench) }},
	{ID: "bench.degrees", Title: "Fahrenheit or Celsius", Key: widgets.Ctrl(fyne.KeyU), Do: func(s *BenchScreen) { s.Bench.TurnDegrees() }},
	{ID: "bench.over", Title: "Start over without a load", Key: widgets.Ctrl(fyne.KeyR), Do: func(s *BenchScreen) { s.report(s.Bench.StartOver()) }},
}

// openFromYard takes the current load of the yard to the bench.
func (s *BenchScreen) openFromYard() {
	s.Bench.TakeFromYard(s.window.Yard().(*yard.Screen).Form())
	s.window.Go("bench")
}

// chosenTest is the test marked in the list; the only one if there is one.
func (s *BenchScreen) chosenTest() string {
	if key := s.Tests.ChosenKey(); key != "" {
		return key
	}
	if rows := s.shown.now.Tests; len(rows) == 1 {
		return rows[0].Key
	}
	return ""
}

// report shows an error on the status line, and updates the acts.
func (s *BenchScreen) report(err error) {
	if err != nil {
		s.window.Session.Fail(err)
	}
	s.showFirst()
}
