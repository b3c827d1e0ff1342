package yard

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Acts are everything a person can do with a load.
func (s *Screen) Acts() []shell.Act {
	acts := append(s.endings(), s.additions()...)
	return append(acts, s.places()...)
}

func (s *Screen) Form() *LoadForm { return s.Yard.Form() }

// endings take a load up and bring it to its end.
func (s *Screen) endings() []shell.Act {
	group := session.Say("Load")
	return []shell.Act{
		{Everywhere: true, Command: widgets.Command{
			ID: "load.new", Title: session.Say("New truck"), Group: group, Icon: apptheme.IconTruck, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyN)},
			Do: func() { s.toAnother(s.Yard.TakeNew) },
		}},
		{Command: widgets.Command{
			ID: "load.issue", Title: session.Say("Issue and print"), Group: group, Icon: apptheme.IconPrint, Keys: []widgets.Key{widgets.Bare(fyne.KeyF12)},
			EnabledWhen: func() bool { return s.Form().CanIssue() },
			WhyNot:      func() string { return s.Form().WhyNotIssue() },
			Do:          s.issueInHand,
		}},
		{Everywhere: true, Command: widgets.Command{
			ID: "load.again", Title: session.Say("Print the last ticket again"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyP)},
			Do: s.Yard.PrintAgain,
		}},
		{Command: widgets.Command{
			ID: "load.refuse", Title: session.Say("Refuse"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyR)},
			EnabledWhen: func() bool { return s.Form().ID() != "" },
			WhyNot:      func() string { return session.Say("There is no load in hand to refuse.") },
			Do:          s.Yard.Refuse,
		}},
		{Command: widgets.Command{
			ID: "load.accept", Title: session.Say("Accept beyond a limit"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyO)},
			EnabledWhen: func() bool { return s.Form().CanAccept() },
			WhyNot:      func() string { return session.Say("No limit stands in the way that a manager could accept.") },
			Do:          func() { s.Form().Accept() },
		}},
		{Command: widgets.Command{
			ID: "load.working", Title: session.Say("Working"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyW)},
			Do: s.turnPaper,
		}},
	}
}

// additions add to the load what the form does not ask.
func (s *Screen) additions() []shell.Act {
	group := session.Say("Load")
	return []shell.Act{
		{Command: widgets.Command{
			ID: "load.weigh", Title: session.Say("Take the weight from the scale"), Group: group, Break: true, Keys: []widgets.Key{widgets.Bare(fyne.KeyF10)},
			EnabledWhen: s.Yard.CanWeigh,
			WhyNot: func() string {
				return session.Say("The scale is not linked: type the weight. Gear says how to link it.")
			},
			Do: func() { s.Yard.Weigh(s.Load.Ring.Current()) },
		}},
		{Command: widgets.Command{
			ID: "load.split", Title: session.Say("Weigh the trailer apart"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyW)},
			EnabledWhen: func() bool { return s.Form().CanSplit() },
			WhyNot:      func() string { return session.Say("This load is weighed in two drafts already.") },
			Do:          func() { s.Form().Split(); s.Load.Show(true); s.Load.focus() },
		}},
		{Command: widgets.Command{
			ID: "load.tare", Title: session.Say("Stored tare"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyT)},
			EnabledWhen: func() bool { return s.Form().CanUseStoredTare() },
			WhyNot:      func() string { return session.Say("This truck has no stored tare, or it is used already.") },
			Do:          s.useStoredTare,
		}},
		{Command: widgets.Command{
			ID: "load.store", Title: session.Say("Store this tare"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyT)},
			EnabledWhen: func() bool { return s.Form().CanStoreTare() },
			WhyNot:      func() string { return session.Say("There is no tare from the scale to store.") },
			Do:          func() { s.try(s.Form().StoreTare()) },
		}},
		{Command: widgets.Command{
			ID: "load.leaves", Title: session.Say("The truck takes grain away"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyL)},
			Do: func() { s.try(s.Form().TurnRound()); s.Load.Show(true); s.Load.focus() },
		}},
		{Command: widgets.Command{
			ID: "load.shares", Title: session.Say("Shares"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyH)},
			Do: func() { s.Form().AskShares() },
		}},
		{Command: widgets.Command{
			ID: "load.factor", Title: session.Say("Another result"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyJ)},
			EnabledWhen: func() bool { return s.Form().CanAskFactor() },
			WhyNot:      func() string { return session.Say("Say first what grain it is.") },
			Do: func() {
				s.Form().AskFactor(func(field string) { s.Load.Show(true); s.Load.Focus(field) })
			},
		}},
		{Command: widgets.Command{
			ID: "load.details", Title: session.Say("More about the load"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyM)},
			Do: func() { s.Form().AskDetails() },
		}},
		{Command: widgets.Command{
			ID: "load.grower", Title: session.Say("New grower"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyG)},
			Do: func() { s.Form().AskGrower() },
		}},
	}
}

// places are the keys of the trucks on the yard.
func (s *Screen) places() []shell.Act {
	group := session.Say("Yard")
	acts := []shell.Act{
		{Everywhere: true, Command: widgets.Command{ID: "yard.next", Title: session.Say("Next truck"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyPageDown)}, Do: func() { s.toAnother(func() { s.Yard.Step(+1) }) }}},
		{Everywhere: true, Command: widgets.Command{ID: "yard.before", Title: session.Say("Truck before"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyPageUp)}, Do: func() { s.toAnother(func() { s.Yard.Step(-1) }) }}},
	}
	keys := []fyne.KeyName{fyne.KeyF2, fyne.KeyF3, fyne.KeyF4, fyne.KeyF5, fyne.KeyF6, fyne.KeyF7, fyne.KeyF8, fyne.KeyF9}
	for place, key := range keys {
		acts = append(acts, shell.Act{Everywhere: true, Command: widgets.Command{
			ID: fmt.Sprintf("yard.%d", place+1), Title: session.Say("Truck at place %d", place+1), Group: group, Break: place == 0, Keys: []widgets.Key{widgets.Bare(key)},
			EnabledWhen: func() bool { return s.Yard.IsTaken(place) },
			WhyNot:      func() string { return session.Say("No truck stands at place %d.", place+1) },
			Do:          func() { s.toAnother(func() { s.Yard.TakePlace(place) }) },
		}})
	}
	return acts
}

func (s *Screen) issueInHand() {
	if s.Yard.Issue() {
		s.inHand()
	}
}

// useStoredTare goes on with the next field: the tare is the last figure of many
// loads, but bin and price are still to be typed.
func (s *Screen) useStoredTare() {
	s.try(s.Form().UseStoredTare())
	s.Load.Show(true)
	s.Load.Focus(s.Form().AfterTare())
}

// try says what went wrong, if anything did.
func (s *Screen) try(err error) {
	if err != nil {
		s.window.Session.Fail(err)
	}
}
