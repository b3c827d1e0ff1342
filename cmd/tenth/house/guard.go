package house

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// Guard sets the limits beyond which the elevator asks before a ticket.
type Guard struct {
	Set     guardSet     `cmd:"" help:"Decide what a guard does, and at which limits."`
	Require guardRequire `cmd:"" help:"Decide what no ticket may lack, and the reasons for a typed weight."`
	List    guardList    `cmd:"" help:"List the guards and what each does here."`
}

type guardSet struct {
	terminal.BookFlags
	terminal.WhoFlags
	Guard     string   `arg:"" help:"The guard, such as moisture."`
	Act       string   `arg:"" optional:"" help:"off, remark, question or manager." placeholder:"ACT"`
	Commodity string   `help:"Of this grain only." placeholder:"GRAIN"`
	Factor    string   `help:"Of this factor only." placeholder:"FACTOR"`
	From      string   `help:"Least figure that passes without a word, with its unit." placeholder:"FIGURE"`
	To        string   `help:"Greatest figure that passes." placeholder:"FIGURE"`
	Reason    []string `sep:"none" help:"An answer to choose from; may be repeated." placeholder:"WORDS"`
}

func (guardSet) Help() string {
	return `A manager's act. What is not said stays as it is.

    tenth guard set bin question
    tenth guard set moisture --commodity corn --to "28 %"
    tenth guard set price --commodity corn --from "$3/bu" --to "$6/bu"
    tenth guard set light-net --from "2000 lb"`
}

func (c guardSet) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		rule, err := c.rule()
		if err != nil {
			return err
		}
		profile := p.Profile()
		profile.Guards = profile.Guards.With(rule)
		if err := scalehouse.SetProfile(p, p.Desk, profile); err != nil {
			return err
		}
		p.Say("The guard %s is set.", rule.Guard)
		return nil
	})
}

// rule returns the rule of the flags.
func (c guardSet) rule() (elevator.GuardRule, error) {
	known, ok := guard.ByID(c.Guard)
	if !ok {
		return elevator.GuardRule{}, terminal.Refusal("Known here: "+strings.Join(guardIDs(), ", "), "there is no guard %q", c.Guard)
	}
	r := elevator.GuardRule{Guard: string(known.ID), Act: elevator.GuardAct(c.Act), Factor: c.Factor, Reasons: c.Reason}
	var err error
	if r.Commodity, err = terminal.OnlyGrain(c.Commodity); err != nil {
		return r, err
	}
	for _, limit := range []struct {
		text string
		into **quantity.Amount
	}{{c.From, &r.From}, {c.To, &r.To}} {
		if limit.text == "" {
			continue
		}
		a, err := quantity.ParseAmount(limit.text)
		if err != nil {
			return r, err
		}
		*limit.into = &a
	}
	return r, r.Check()
}

func guardIDs() []string {
	var out []string
	for _, r := range guard.Rules() {
		out = append(out, string(r.ID))
	}
	return out
}

type guardList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (c guardList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		profile := p.Profile()
		rows := [][]any{}
		for _, r := range guard.Rules() {
			rows = append(rows, guardRow(r, r.At(profile, "", "")))
			for _, own := range profile.Guards {
				if own.Guard == string(r.ID) && own.Commodity+own.Factor != "" {
					rows = append(rows, guardRow(r, r.At(profile, own.Commodity, own.Factor)))
				}
			}
		}
		if err := p.Table(c.ListFlags, "Guard\tWhat\tGrain\tFactor\tAt least\tAt most\tDoes\tAnswers", rows, ""); err != nil || c.JSON {
			return err
		}
		sayRequired(p)
		return nil
	})
}

// guardRow is what a guard does, of all grain or of one that the house has set apart.
func guardRow(r guard.Rule, by elevator.GuardRule) []any {
	limit := func(a *quantity.Amount) any {
		if a == nil {
			return ""
		}
		return *a
	}
	return []any{string(r.ID), r.Name, by.Commodity, by.Factor, limit(by.From), limit(by.To), message.Words(string(by.Act)), wordsList("; ", by.Reasons)}
}

// wordsList is a list of words of the program or the elevator.
func wordsList(separator string, words []string) message.Text {
	items := make([]any, len(words))
	for i, one := range words {
		items[i] = message.Words(one)
	}
	return message.List(separator, items...)
}
