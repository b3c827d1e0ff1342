package older

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"tenthpoint/internal/transcript"
)

// measure is the number of papers of each kind to ask for: all of few, a spread of many. Each
// answer costs the test some milliseconds.
type measure struct{ plain, odd, accounts, days, forms int }

var (
	full  = measure{plain: 6, odd: 5, accounts: 3, days: 4, forms: 2}
	short = measure{plain: 3, odd: 2, accounts: 2, days: 2, forms: 1} // for the books of single steps
)

// An asker asks a program for everything it has to say of a book.
type asker struct {
	program transcript.Program
	measure measure
	now     string
	said    []transcript.Entry
}

// ask runs a command and keeps its output.
func (a *asker) ask(args ...string) (transcript.Entry, error) {
	said, err := a.program.Say(context.Background(), a.now, args...)
	a.said = append(a.said, said)
	return said, err
}

// askAll asks several things; it stops at the first error.
func (a *asker) askAll(lines ...[]string) error {
	for _, line := range lines {
		if _, err := a.ask(line...); err != nil {
			return err
		}
	}
	return nil
}

// found is one ticket of a list.
type found struct {
	Ticket string `json:"ticket"`
	Status string `json:"status"`
	Day    string `json:"day"`
}

func (a *asker) all() error {
	sound, err := a.ask("verify")
	if err != nil {
		return err
	}
	if sound.Status != 0 {
		return fmt.Errorf("the book is not sound: %s%s", sound.Out, sound.Err)
	}
	list, err := a.ask("find", "--most", "500", "--json")
	if err != nil {
		return err
	}
	var tickets []found
	if err := json.Unmarshal([]byte(list.Out), &tickets); err != nil {
		return err
	}
	for _, part := range []func([]found) error{a.house, a.accounts, a.disputes, a.days, a.papers} {
		if err := part(tickets); err != nil {
			return err
		}
	}
	return nil
}

func (a *asker) house([]found) error {
	return a.askAll([]string{"setup"}, []string{"truck", "list"}, []string{"yard", "--json"}, []string{"position"},
		[]string{"bench", "meters"}, []string{"bench", "samples", "list"}, []string{"bench", "due"})
}

func (a *asker) accounts([]found) error {
	list, err := a.ask("grower", "list", "--json")
	if err != nil {
		return err
	}
	var growers []struct {
		Code string `json:"code"`
	}
	if err := json.Unmarshal([]byte(list.Out), &growers); err != nil {
		return err
	}
	for _, g := range spread(growers, a.measure.accounts) {
		if err := a.askAll([]string{"account", g.Code}); err != nil {
			return err
		}
	}
	return nil
}

func (a *asker) disputes([]found) error {
	list, err := a.ask("dispute", "list", "--all", "--json")
	if err != nil || list.Out == "" {
		return err
	}
	var disputes []struct {
		ID string `json:"dispute"`
	}
	if err := json.Unmarshal([]byte(list.Out), &disputes); err != nil {
		return err
	}
	for _, d := range disputes {
		if err := a.askAll([]string{"dispute", "show", d.ID}); err != nil {
			return err
		}
	}
	return nil
}

func (a *asker) days(tickets []found) error {
	var days []string
	for _, t := range tickets {
		if !slices.Contains(days, t.Day) {
			days = append(days, t.Day)
		}
	}
	slices.Sort(days)
	for _, day := range spread(days, a.measure.days) {
		if err := a.askAll([]string{"day", day}); err != nil {
			return err
		}
	}
	return nil
}

// papers asks for the slip and the working of tickets.
func (a *asker) papers(tickets []found) error {
	var odd, plain []found
	for _, t := range tickets {
		if t.Status == "issued" {
			plain = append(plain, t)
		} else {
			odd = append(odd, t)
		}
	}
	chosen := slices.Concat(spread(odd, a.measure.odd), spread(plain, a.measure.plain))
	for _, t := range chosen {
		if err := a.askAll([]string{"show", t.Ticket}, []string{"explain", t.Ticket, "--json"}); err != nil {
			return err
		}
	}
	for _, t := range spread(chosen, a.measure.forms) {
		if err := a.askAll([]string{"show", t.Ticket, "--json"}, []string{"show", t.Ticket, "--roll"},
			[]string{"show", t.Ticket, "--owner", "1"}, []string{"explain", t.Ticket}, []string{"proof", t.Ticket}); err != nil {
			return err
		}
	}
	return nil
}

// spread takes at most so many of a list, evenly, its ends among them.
func spread[T any](all []T, most int) []T {
	if len(all) <= most {
		return all
	}
	var out []T
	for i := range most {
		out = append(out, all[i*(len(all)-1)/max(most-1, 1)])
	}
	return out
}
