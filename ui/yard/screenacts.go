package yard

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/yard/board"
)

// Acts are everything a person can do with a load.
func (s *Screen) Acts() []shell.Act {
	acts := shell.ActsOf(s.Yard.session.Language, s, s.Yard.session.Say("Load"), loadActs)
	acts = append(acts, shell.ActsOf(s.Yard.session.Language, s, s.Yard.session.Say("Yard"), yardActs)...)
	return append(acts, s.placeActs()...)
}

// loadActs begin and end a load, and add to it what has no field on the form.
var loadActs = []shell.ActRow[*Screen]{
	{ID: "load.new", Title: "New truck", Icon: apptheme.IconTruck, Key: widgets.Ctrl(fyne.KeyN), Everywhere: true,
		Do: func(s *Screen) { s.turnTo(s.Yard.TakeNew) }},
	{ID: "load.repeat", Title: "As the load before", Key: widgets.Ctrl(fyne.KeyE),
		When: func(s *Screen) bool { return s.Form().ID() == "" }, Why: "The truck in hand is on the yard already. Ctrl+N begins another.",
		Do: func(s *Screen) { s.report(loadBefore{s.Form()}.repeat()); s.Load.showAll() }},
	{ID: "load.issue", Title: "Issue and print", Icon: apptheme.IconPrint, Key: widgets.Bare(fyne.KeyF12),
		When:   func(s *Screen) bool { return s.Form().Now.CanIssue() },
		WhyNot: func(s *Screen) string { return s.Form().Now.WhyNotIssue() },
		Do:     (*Screen).issue},
	{ID: "load.answer", Title: "Answer what is asked", Key: widgets.CtrlShift(fyne.KeyA),
		When: func(s *Screen) bool { return questions{s.Form()}.waiting() }, Why: "Nothing is asked about this load.",
		Do: func(s *Screen) { questions{s.Form()}.ask() }},
	{ID: "load.again", Title: "Print the last ticket again", Key: widgets.CtrlShift(fyne.KeyP), Everywhere: true,
		Do: func(s *Screen) { s.Yard.PrintAgain() }},
	{ID: "load.void", Title: "Void the ticket just issued", Destroys: true, Key: widgets.CtrlShift(fyne.KeyV),
		When: func(s *Screen) bool { return s.Yard.CanVoidLast() }, Why: "Only a ticket issued here within the last minute is voided by this key. The screen Tickets voids any.",
		Do: func(s *Screen) { s.Yard.VoidLast() }},
	{ID: "load.refuse", Title: "Refuse", Destroys: true, Key: widgets.Ctrl(fyne.KeyR),
		When: func(s *Screen) bool { return s.Form().ID() != "" }, Why: "There is no load to refuse.",
		Do: func(s *Screen) { s.Yard.Refuse() }},
	{ID: "load.withdraw", Title: "Withdraw", Key: widgets.CtrlShift(fyne.KeyR),
		When: func(s *Screen) bool { return s.Form().CanWithdraw() }, Why: "Only a load that was never weighed is withdrawn.",
		Do: func(s *Screen) { s.Yard.Withdraw() }},
	{ID: "load.accept", Title: "Accept beyond a limit", Key: widgets.Ctrl(fyne.KeyO),
		When: func(s *Screen) bool { return limits{s.Form()}.canAccept() }, Why: "No limit stands in the way that a manager could accept.",
		Do: func(s *Screen) { limits{s.Form()}.ask() }},
	{ID: "load.working", Title: "Working", Key: widgets.Ctrl(fyne.KeyW), Do: (*Screen).turnPaper},
	{ID: "load.read", Title: "The slip in large letters", Key: widgets.CtrlShift(fyne.KeyB), Do: (*Screen).readSlip},

	{ID: "load.weigh", Title: "Take the weight from the scale", Key: widgets.Bare(fyne.KeyF10), Break: true,
		When: func(s *Screen) bool { return s.Yard.Scale.CanRead() }, Why: "The scale is not linked: type the weight. Equipment says how to link it.",
		Do: (*Screen).weigh},
	{ID: "load.split", Title: "Weigh the trailer apart", Key: widgets.CtrlShift(fyne.KeyW),
		When: func(s *Screen) bool { return s.Form().Now.CanSplit() }, Why: "This load is weighed in two drafts already.",
		Do: func(s *Screen) { s.Form().Split(); s.Load.showAll() }},
	{ID: "load.tare", Title: "Stored tare", Key: widgets.Ctrl(fyne.KeyT),
		When: func(s *Screen) bool { return storedTare{s.Form()}.canUse() }, Why: "This truck has no stored tare, or it is used already.",
		Do: (*Screen).useStoredTare},
	{ID: "load.store", Title: "Store this tare", Key: widgets.CtrlShift(fyne.KeyT),
		When: func(s *Screen) bool { return storedTare{s.Form()}.canStore() }, Why: "There is no tare from the scale to store.",
		Do: func(s *Screen) { s.report(storedTare{s.Form()}.store()) }},
	{ID: "load.leaves", Title: "The truck takes grain away", Key: widgets.CtrlShift(fyne.KeyL),
		Do: func(s *Screen) { s.report(s.Form().TurnRound()); s.Load.showAll() }},
	{ID: "load.shares", Title: "Shares", Key: widgets.Ctrl(fyne.KeyH), Do: func(s *Screen) { sharesSheet{s.Form()}.ask() }},
	{ID: "load.factor", Title: "Another result", Key: widgets.Ctrl(fyne.KeyJ),
		When: func(s *Screen) bool { return ResultsOf(s.Form()).CanAskMore() }, Why: "Say first what grain it is.",
		Do: func(s *Screen) {
			ResultsOf(s.Form()).AskMore(func(field string) { s.Load.Show(true); s.Load.Focus(field) })
		}},
	{ID: "load.none", Title: "Looked for, not found", Key: widgets.CtrlShift(fyne.KeyN),
		When: func(s *Screen) bool { return ResultsOf(s.Form()).CanSeeNone() }, Why: "Say first what grain it is.",
		Do: func(s *Screen) { ResultsOf(s.Form()).SeeNone(); s.Load.showAll() }},
	{ID: "load.details", Title: "More about the load", Key: widgets.Ctrl(fyne.KeyM), Do: func(s *Screen) { detailsSheet{s.Form()}.ask() }},
	{ID: "load.papers", Title: "Where it grew, and its papers", Key: widgets.CtrlShift(fyne.KeyG), Do: func(s *Screen) { papersSheet{detailsSheet{s.Form()}}.ask() }},
	{ID: "load.grower", Title: "New grower", Key: widgets.Ctrl(fyne.KeyG), Do: func(s *Screen) { s.Form().AskGrower() }},
}

// yardActs go from truck to truck.
var yardActs = []shell.ActRow[*Screen]{
	{ID: "yard.next", Title: "Next truck", Key: widgets.Ctrl(fyne.KeyPageDown), Everywhere: true,
		Do: func(s *Screen) { s.turnTo(func() { s.Yard.Step(+1) }) }},
	{ID: "yard.before", Title: "Truck before", Key: widgets.Ctrl(fyne.KeyPageUp), Everywhere: true,
		Do: func(s *Screen) { s.turnTo(func() { s.Yard.Step(-1) }) }},
	{ID: "yard.up", Title: "Move the truck up", Key: widgets.CtrlShift(fyne.KeyPageUp), Everywhere: true,
		When: func(s *Screen) bool { return s.Form().ID() != "" }, Why: "The truck in hand is not on the yard yet.",
		Do: func(s *Screen) { arranging{s.Yard}.move(-1) }},
	{ID: "yard.down", Title: "Move the truck down", Key: widgets.CtrlShift(fyne.KeyPageDown), Everywhere: true,
		When: func(s *Screen) bool { return s.Form().ID() != "" }, Why: "The truck in hand is not on the yard yet.",
		Do: func(s *Screen) { arranging{s.Yard}.move(+1) }},
	{ID: "yard.sort", Title: "Sort by wait, or by next step", Key: widgets.CtrlShift(fyne.KeyJ), Everywhere: true,
		Do: func(s *Screen) { arranging{s.Yard}.sort() }},
}

// placeKeys are the keys of the places on the yard; with Ctrl they reach as many again.
var placeKeys = []fyne.KeyName{fyne.KeyF2, fyne.KeyF3, fyne.KeyF4, fyne.KeyF5, fyne.KeyF6, fyne.KeyF7, fyne.KeyF8, fyne.KeyF9}

// placeKey is the key of a place.
func placeKey(place int) widgets.Key {
	if place < len(placeKeys) {
		return widgets.Bare(placeKeys[place])
	}
	return widgets.Ctrl(placeKeys[place-len(placeKeys)])
}

// placeActs go to the truck at a place.
func (s *Screen) placeActs() []shell.Act {
	acts := make([]shell.Act, board.PlaceCount)
	for place := range acts {
		acts[place] = shell.Act{Everywhere: true, Command: widgets.Command{
			ID: fmt.Sprintf("yard.%d", place+1), Title: s.Yard.session.Say("Truck at place %d", place+1), Group: s.Yard.session.Say("Yard"),
			Break: place == 0, Keys: []widgets.Key{placeKey(place)},
			EnabledWhen: func() bool { return s.Yard.IsTaken(place) },
			WhyNot:      func() string { return s.Yard.session.Say("No truck stands at place %d.", place+1) },
			Do:          func() { s.turnTo(func() { s.Yard.TakePlace(place) }) },
		}}
	}
	return acts
}

// issue shows the blank form for the next truck once the ticket is issued.
func (s *Screen) issue() {
	if s.Yard.Issue() {
		s.showCurrent()
	}
}

// useStoredTare takes the stored tare and moves to the next field: the tare is the last figure of
// many loads, but bin and price are still to be typed.
func (s *Screen) useStoredTare() {
	s.report(storedTare{s.Form()}.use())
	s.Load.Show(true)
	s.Load.Focus(s.Form().AfterTare())
}

// weigh takes the weight and goes on to the next work, which may be done while the scale comes to
// rest. Letters that find a grower or a truck are a choice by then, as when their field is left.
func (s *Screen) weigh() {
	at := s.Load.FocusOrder.Current()
	s.window.UI.Leave()
	side := s.Yard.Weigh(at)
	if s.window.UI.FrontDialog() == nil {
		s.Load.Focus(s.Form().workBeside(side))
	}
}

// report shows an error on the status line.
func (s *Screen) report(err error) {
	if err != nil {
		s.window.Session.Fail(err)
	}
}
