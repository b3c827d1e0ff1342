package day

import (
	"slices"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office/seasons"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/season"
)

// Season shows a season in figures, and writes it with its pictures.
type Season struct {
	terminal.BookFlags
	terminal.DocumentFlags
	From  string `help:"First day; without it the first of June." placeholder:"YYYY-MM-DD"`
	To    string `help:"Last day; without it today." placeholder:"YYYY-MM-DD"`
	On    string `help:"The day that is held against the others; without it the last on which anything came in." placeholder:"YYYY-MM-DD"`
	Grain string `help:"Moistures of this grain alone, by id or name." placeholder:"GRAIN"`
}

func (Season) Help() string {
	return `What came in day by day and the year before, loads by moisture with what water took of those above the trigger, trucks and waits by the hour, income by kind from the house's side, and the meters against their references. The PDF has the pictures too.

    tenth season
    tenth season --from 2026-09-01 --on 2026-10-24 --grain corn
    tenth season --out papers --as pdf,csv`
}

func (c Season) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		from, to, day, err := c.days(p)
		if err != nil {
			return err
		}
		facts, err := seasons.NewReader(p.Desk).Read(p, from, to, day)
		if err != nil {
			return err
		}
		grain, err := c.grain(p, facts)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, facts.Paper(p.Profile(), grain, to), "season-"+to.String(), false)
	})
}

// grain is the id of the one grain asked for; empty for all.
func (c Season) grain(p *terminal.Session, f *season.Facts) (string, error) {
	if c.Grain == "" {
		return "", nil
	}
	grain, err := entry.CommodityHere(p.Profile(), c.Grain)
	if err == nil && !slices.Contains(f.Grains(), grain.ID) {
		err = terminal.Refusal("Ask for another grain, or for other days", "no load of %s has come in these days", c.Grain)
	}
	return grain.ID, err
}

// days are the first and the last day, and the one held against the others.
func (c Season) days(p *terminal.Session) (from, to, day quantity.Date, err error) {
	if from, to, err = p.Span(c.From, c.To); err != nil {
		return from, to, day, err
	}
	if to.IsZero() {
		to = p.Today()
	}
	if from.IsZero() {
		from = season.Began(to)
	}
	if from.After(to) {
		return from, to, day, terminal.Refusal("Give an earlier first day", "the first day, %s, is after the last, %s", from, to)
	}
	day, err = entry.ParseDay("On", c.On, p.Today())
	return from, to, day, err
}
