package session

import (
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// SignIn asks who works at the desk now. With one person in the book there is
// nothing to ask.
func (f *Session) SignIn() {
	people := f.Desk.People()
	switch len(people) {
	case 0:
		return
	case 1:
		f.signIn(people[0].Name)
		return
	}
	options := make([]model.Option, len(people))
	for i, p := range people {
		options[i] = model.Option{Code: p.Name, Detail: f.RoleWord(p.Role)}
	}
	f.Put(model.Ask{
		Title:  f.Say("Who is at the desk?"),
		Text:   f.Say("Your full name stands on every ticket you issue."),
		Fields: []model.AskField{{ID: "who", Label: f.Say("Name"), Options: options, Required: true}},
		Yes:    f.Say("Sign in"),
		Then:   func(values map[string]string) { f.signIn(values["who"]) },
	})
}

// SignInIfAlone signs the only person of the book in, or asks.
func (f *Session) SignInIfAlone() {
	if f.Desk.Who().Name == "" {
		f.SignIn()
	}
}

func (f *Session) signIn(name string) {
	before := f.Desk.Who().Name
	if err := f.Desk.SignIn(name); err != nil {
		f.Fail(err)
		return
	}
	scalehouse.Unprove(f.Desk, before)
	state, back := f.Drafts().backWords()
	if state == model.Plain {
		state = model.OK
	}
	f.Notify(state, Join(" ", f.Say("%s is signed in.", signedIn(f)), back))
	f.Window.Redraw()
}
