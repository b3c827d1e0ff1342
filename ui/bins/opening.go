package bins

import (
	"context"
	"path/filepath"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/office/openings"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/scalehouse/intake"
	acts "tenthpoint/internal/scalehouse/openings"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// The fields of the question for the list that the books are opened from.
const (
	listField, dayField, reasonField = "list", "day", "reason"
)

// openingActs are the acts by which the books of a house begin in mid-season.
type openingActs struct {
	session *session.Session
	reload  func()
	opened  *opening.Opening // with whose balances the books begin; nil for an empty house
}

// Open asks for the list of what lies in the bins and whose it is, by which the books begin in
// mid-season, and shows what it comes to before anything is written.
func (a *openingActs) Open() {
	say := a.session.Say
	a.session.Put(model.Ask{
		Draft: "opening", Title: say("Open the books?"),
		Text: say("A house that comes from other books says once what lies in its bins and whose it is. Nothing is written before you have seen what the list comes to; tenth opening enter --example prints one to begin from."),
		Fields: []model.AskField{
			{ID: listField, Label: say("List, as a file"), Chars: wordsWidth, Most: 400, Required: true},
			{ID: dayField, Label: say("Evening of"), Value: a.session.Desk.Today().String(), Required: true},
			{ID: reasonField, Label: say("Reason"), Chars: wordsWidth, Required: true},
			managers(a.session),
		},
		Yes:   say("Look at it"),
		Check: a.wrong,
		Then: func(values map[string]string) {
			o, _ := a.draft(values)
			a.confirm(o, values[managerField])
		},
	})
}

// draft reads the list; the error has every problem of its rows, a line each.
func (a *openingActs) draft(values map[string]string) (opening.Opening, error) {
	path := strings.TrimSpace(values[listField])
	text, err := intake.ReadFile(path)
	if err != nil {
		return opening.Opening{}, err
	}
	day, err := entry.ParseDay(a.session.Say("Evening of"), values[dayField], a.session.Desk.Today())
	if err != nil {
		return opening.Opening{}, err
	}
	o, problems, err := openings.Draft(context.Background(), a.session.Desk, openings.Order{
		Name: filepath.Base(path), Text: text, Day: day, Reason: strings.TrimSpace(values[reasonField]),
	})
	if err == nil && len(problems) > 0 {
		err = intake.Problems(problems)
	}
	return o, err
}

func (a *openingActs) wrong(values map[string]string) map[string]string {
	if _, err := a.draft(values); err != nil {
		return map[string]string{listField: a.session.Sentence(err)}
	}
	return nil
}

// confirm shows what an opening comes to, grain by grain, and enters it.
func (a *openingActs) confirm(o opening.Opening, who string) {
	say := a.session.Say
	lines := []string{say("%d layers in the bins, %d opening balances of depositors.", len(o.Lying), len(o.Lots))}
	for _, one := range o.Balances() {
		lines = append(lines, say("%s: %s in the bins = %s of depositors + %s company-owned + %s shrink not yet posted.",
			a.session.GrainName(one.Commodity), one.Lying, one.Owed, one.Company, one.Between))
	}
	a.session.Put(model.Ask{
		Title: say("Open the books with these balances?"), Text: strings.Join(lines, "\n"), Danger: true, Yes: say("Open the books"),
		Then: func(map[string]string) {
			a.finish(a.session.As(who, func() (err error) {
				o, err = acts.Enter(context.Background(), a.session.Desk, o)
				return err
			}), func() string { return say("the books are opened with the balances of %s.", o.Day) })
		},
	})
}

func (a *openingActs) finish(err error, said func() string) {
	if err != nil {
		a.session.Fail(err)
		return
	}
	a.session.Changed()
	a.reload()
	a.session.Notify(model.OK, said())
	a.session.Window.Redraw()
}

// IsOpened reports whether the books were opened with balances that count.
func (a *openingActs) IsOpened() bool { return a.opened != nil }

// read reads the opening that counts.
func (a *openingActs) read() error {
	a.opened = nil
	all, err := openings.All(context.Background(), a.session.Desk)
	if o, open := opening.InForce(all); open {
		a.opened = &o
	}
	return err
}

// TakeBack asks why the opening is taken back as a whole.
func (a *openingActs) TakeBack() {
	say := a.session.Say
	a.session.Put(model.Ask{
		Title: say("Take the opening back?"), Danger: true, Yes: say("Take back"),
		Text:   say("Its grain leaves the bins and its receipts are cancelled. Nothing else may rest on its balances. Then another may be entered."),
		Fields: []model.AskField{{ID: reasonField, Label: say("Reason"), Chars: wordsWidth, Required: true}, managers(a.session)},
		Then: func(values map[string]string) {
			var o opening.Opening
			a.finish(a.session.As(values[managerField], func() (err error) {
				o, err = acts.TakeBack(context.Background(), a.session.Desk, values[reasonField])
				return err
			}), func() string { return say("the opening of %s is taken back.", o.Day) })
		},
	})
}

// Print prints the paper of the opening in force.
func (a *openingActs) Print() {
	if a.opened != nil {
		session.PrintDocument(a.session, openings.Paper(*a.opened, a.session.Desk.Profile()), "opening", a.session.Say("the paper of the opening"), true)
	}
}
