package view

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// Acts are everything a person can do with a load.
func (s *yardScreen) Acts() []Act {
	acts := append(s.endings(), s.additions()...)
	return append(acts, s.places()...)
}

func (s *yardScreen) form() *present.LoadForm { return s.yard.Form() }

// endings take a load up and bring it to its end.
func (s *yardScreen) endings() []Act {
	group := present.Say("Load")
	return []Act{
		{Everywhere: true, Command: kit.Command{
			ID: "load.new", Title: present.Say("New truck"), Group: group, Icon: kit.IconTruck, Keys: []kit.Key{kit.Ctrl(fyne.KeyN)},
			Do: func() { s.toAnother(s.yard.TakeNew) },
		}},
		{Command: kit.Command{
			ID: "load.issue", Title: present.Say("Issue and print"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Bare(fyne.KeyF12)},
			EnabledWhen: func() bool { return s.form().CanIssue() },
			WhyNot:      func() string { return s.form().WhyNotIssue() },
			Do:          s.issueInHand,
		}},
		{Everywhere: true, Command: kit.Command{
			ID: "load.again", Title: present.Say("Print the last ticket again"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyP)},
			Do: s.yard.PrintAgain,
		}},
		{Command: kit.Command{
			ID: "load.refuse", Title: present.Say("Refuse"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyR)},
			EnabledWhen: func() bool { return s.form().ID() != "" },
			WhyNot:      func() string { return present.Say("There is no load in hand to refuse.") },
			Do:          s.yard.Refuse,
		}},
		{Command: kit.Command{
			ID: "load.accept", Title: present.Say("Accept beyond a limit"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyO)},
			EnabledWhen: func() bool { return s.form().CanAccept() },
			WhyNot:      func() string { return present.Say("No limit stands in the way that a manager could accept.") },
			Do:          func() { s.form().Accept() },
		}},
		{Command: kit.Command{
			ID: "load.working", Title: present.Say("Working"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyW)},
			Do: s.turnPaper,
		}},
	}
}

// additions add to the load what the form does not ask.
func (s *yardScreen) additions() []Act {
	group := present.Say("Load")
	return []Act{
		{Command: kit.Command{
			ID: "load.weigh", Title: present.Say("Take the weight from the scale"), Group: group, Break: true, Keys: []kit.Key{kit.Bare(fyne.KeyF10)},
			EnabledWhen: s.yard.CanWeigh,
			WhyNot: func() string {
				return present.Say("The scale is not linked: type the weight. Gear says how to link it.")
			},
			Do: func() { s.yard.Weigh(s.load.ring.Current()) },
		}},
		{Command: kit.Command{
			ID: "load.split", Title: present.Say("Weigh the trailer apart"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyW)},
			EnabledWhen: func() bool { return s.form().CanSplit() },
			WhyNot:      func() string { return present.Say("This load is weighed in two drafts already.") },
			Do:          func() { s.form().Split(); s.load.show(true); s.load.focus() },
		}},
		{Command: kit.Command{
			ID: "load.tare", Title: present.Say("Stored tare"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyT)},
			EnabledWhen: func() bool { return s.form().CanUseStoredTare() },
			WhyNot:      func() string { return present.Say("This truck has no stored tare, or it is used already.") },
			Do:          s.useStoredTare,
		}},
		{Command: kit.Command{
			ID: "load.store", Title: present.Say("Store this tare"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyT)},
			EnabledWhen: func() bool { return s.form().CanStoreTare() },
			WhyNot:      func() string { return present.Say("There is no tare from the scale to store.") },
			Do:          func() { s.try(s.form().StoreTare()) },
		}},
		{Command: kit.Command{
			ID: "load.leaves", Title: present.Say("The truck takes grain away"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyL)},
			Do: func() { s.try(s.form().TurnRound()); s.load.show(true); s.load.focus() },
		}},
		{Command: kit.Command{
			ID: "load.shares", Title: present.Say("Shares"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyH)},
			Do: func() { s.form().AskShares() },
		}},
		{Command: kit.Command{
			ID: "load.factor", Title: present.Say("Another result"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyJ)},
			EnabledWhen: func() bool { return s.form().CanAskFactor() },
			WhyNot:      func() string { return present.Say("Say first what grain it is.") },
			Do: func() {
				s.form().AskFactor(func(field string) { s.load.show(true); s.load.focusOn(field) })
			},
		}},
		{Command: kit.Command{
			ID: "load.details", Title: present.Say("More about the load"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyM)},
			Do: func() { s.form().AskDetails() },
		}},
		{Command: kit.Command{
			ID: "load.grower", Title: present.Say("New grower"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyG)},
			Do: func() { s.form().AskGrower() },
		}},
	}
}

// places are the keys of the trucks on the yard.
func (s *yardScreen) places() []Act {
	group := present.Say("Yard")
	acts := []Act{
		{Everywhere: true, Command: kit.Command{ID: "yard.next", Title: present.Say("Next truck"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyPageDown)}, Do: func() { s.toAnother(func() { s.yard.Step(+1) }) }}},
		{Everywhere: true, Command: kit.Command{ID: "yard.before", Title: present.Say("Truck before"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyPageUp)}, Do: func() { s.toAnother(func() { s.yard.Step(-1) }) }}},
	}
	keys := []fyne.KeyName{fyne.KeyF2, fyne.KeyF3, fyne.KeyF4, fyne.KeyF5, fyne.KeyF6, fyne.KeyF7, fyne.KeyF8, fyne.KeyF9}
	for place, key := range keys {
		acts = append(acts, Act{Everywhere: true, Command: kit.Command{
			ID: fmt.Sprintf("yard.%d", place+1), Title: present.Say("Truck at place %d", place+1), Group: group, Break: place == 0, Keys: []kit.Key{kit.Bare(key)},
			EnabledWhen: func() bool { return s.yard.IsTaken(place) },
			WhyNot:      func() string { return present.Say("No truck stands at place %d.", place+1) },
			Do:          func() { s.toAnother(func() { s.yard.TakePlace(place) }) },
		}})
	}
	return acts
}

func (s *yardScreen) issueInHand() {
	if s.yard.Issue() {
		s.inHand()
	}
}

// useStoredTare goes on with the next field: the tare is the last figure of many
// loads, but bin and price are still to be typed.
func (s *yardScreen) useStoredTare() {
	s.try(s.form().UseStoredTare())
	s.load.show(true)
	s.load.focusOn(s.form().AfterTare())
}

// try says what went wrong, if anything did.
func (s *yardScreen) try(err error) {
	if err != nil {
		s.window.frame.Fail(err)
	}
}
