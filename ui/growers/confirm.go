package growers

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/confirmation"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/confirming"
	acts "tenthpoint/internal/scalehouse/confirming"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// The fields of the questions about letters to depositors.
const (
	sizeField, seedField, languageField, whoField = "size", "seed", "language", "manager"
	answerField, wordsField                       = "answer", "words"
)

// sampleSize is how many depositors are written to unless somebody says otherwise.
const sampleSize = 10

// askSample asks how many depositors confirm their balances, draws them and prints their letters.
func askSample(g *Growers) {
	f := g.session
	f.Put(model.Ask{
		Draft: "confirm balances", Title: f.Say("Letters to depositors"),
		Text: f.Say("A random sample of the depositors is asked to confirm its balances of today. The seed is kept, so that anybody can draw the same sample; without one it comes from the book."),
		Fields: []model.AskField{
			{ID: sizeField, Label: f.Say("How many"), Value: strconv.Itoa(sampleSize), Figures: true, Required: true},
			{ID: seedField, Label: f.Say("Seed"), Chars: 20},
			{ID: languageField, Label: f.Say("Language of the letters"), Options: languages(), Value: f.Desk.Profile().Language},
			{ID: whoField, Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24},
		},
		Yes:   f.Say("Draw and print"),
		Check: func(values map[string]string) map[string]string { return wrongSample(f, values) },
		Then:  func(values map[string]string) { drawSample(f, values) },
	})
}

// languages are the languages a letter may be in.
func languages() []model.Option {
	var out []model.Option
	for _, code := range i18n.Codes() {
		out = append(out, model.Option{Code: code, Name: i18n.Name(code)})
	}
	return out
}

func draftSample(f *session.Session, values map[string]string) (confirmation.Round, error) {
	size, err := strconv.Atoi(strings.TrimSpace(values[sizeField]))
	if err != nil {
		return confirmation.Round{}, message.Invalid.Errorf("%q is no number of depositors", values[sizeField])
	}
	return confirming.Draft(context.Background(), f.Desk, size, strings.TrimSpace(values[seedField]))
}

func wrongSample(f *session.Session, values map[string]string) map[string]string {
	if _, err := draftSample(f, values); err != nil {
		return map[string]string{sizeField: f.Sentence(err)}
	}
	return nil
}

func drawSample(f *session.Session, values map[string]string) {
	r, err := draftSample(f, values)
	if err == nil {
		err = f.As(values[whoField], func() (err error) {
			r, err = acts.Enter(context.Background(), f.Desk, r)
			return err
		})
	}
	if err != nil {
		f.Fail(err)
		return
	}
	for _, l := range r.Letters {
		doc := confirming.Letter(r, l, f.Desk.Profile(), values[languageField])
		session.PrintDocument(f, doc, fmt.Sprintf("letter-%d-%d", r.Number, l.Number), f.Say("letter %d to %s", l.Number, l.Name), false)
	}
	f.Changed()
	f.Notify(model.OK, f.Say("sample %d is drawn: %d of %d depositors with a balance, by the seed %s.", r.Number, len(r.Letters), r.Of, r.Seed))
}

// letterTo is the letter to a grower in the last sample; false where there is none.
func letterTo(f *session.Session, grower string) (confirmation.Round, confirmation.Letter, bool) {
	all, err := confirming.All(context.Background(), f.Desk)
	if err != nil || len(all) == 0 {
		return confirmation.Round{}, confirmation.Letter{}, false
	}
	last := all[len(all)-1]
	at := slices.IndexFunc(last.Letters, func(l confirmation.Letter) bool { return l.Grower == grower })
	if at < 0 {
		return last, confirmation.Letter{}, false
	}
	return last, last.Letters[at], true
}

// askAnswer asks what came back to the letter to the chosen grower.
func askAnswer(g *Growers) {
	f := g.session
	r, l, written := letterTo(f, g.chosen)
	if !written {
		f.Fail(message.NotFound.Errorf("the last sample has no letter to %v", g.chosen))
		return
	}
	var options []model.Option
	for _, how := range confirmation.Hows {
		options = append(options, model.Option{Code: string(how), Name: f.Text(how.Said())})
	}
	f.Put(model.Ask{
		Title: f.Say("What came back to letter %d of sample %d?", l.Number, r.Number), Text: l.Name,
		Fields: []model.AskField{
			{ID: answerField, Label: f.Say("Answer"), Options: options, Required: true},
			{ID: wordsField, Label: f.Say("What it says"), Chars: 30},
		},
		Yes: f.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			answer := confirmation.Answer{How: confirmation.How(values[answerField]), Day: f.Desk.Today(), Words: values[wordsField]}
			if _, err := r.Answered(l.Number, answer); err != nil {
				return map[string]string{wordsField: f.Sentence(err)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			r, err := acts.Note(context.Background(), f.Desk, r.Number, l.Number, confirmation.How(values[answerField]), values[wordsField])
			if err != nil {
				f.Fail(err)
				return
			}
			f.Changed()
			f.Notify(model.OK, f.Say("letter %d of sample %d is answered; %d of %d letters are not.", l.Number, r.Number, len(r.Unanswered()), len(r.Letters)))
		},
	})
}

// printSample prints the last sample: who was written to, what came back, what did not.
func printSample(g *Growers) {
	f := g.session
	r, err := confirming.Numbered(context.Background(), f.Desk, 0)
	if err != nil {
		f.Fail(err)
		return
	}
	session.PrintDocument(f, confirming.List(r, f.Desk.Profile()), fmt.Sprintf("confirmations-%d", r.Number), f.Say("what came back to the letters"), false)
}
