// Package bins has the commands about pits and bins: what lies in them, and what is done with it.
package bins

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// Bin keeps the list of pits and bins, and moves the grain in them.
type Bin struct {
	Add  add  `cmd:"" help:"Add a pit or bin, or change one."`
	List list `cmd:"" default:"withargs" help:"List pits and bins and what lies in them."`
	Show show `cmd:"" help:"The card of a bin: its layers, its days, its movements."`

	Move         transfer     `cmd:"" help:"Move grain from one bin into another."`
	Blend        blended      `cmd:"" help:"Move grain from several bins into one, mixed."`
	Turn         turned       `cmd:"" help:"Turn a bin over: its grain is mixed."`
	Clean        cleaned      `cmd:"" help:"Clean grain; the screenings are weighed."`
	Dry          dried        `cmd:"" help:"Write down a run of the dryer."`
	Aerate       aerated      `cmd:"" help:"Write down how long the fans ran."`
	Measure      measured     `cmd:"" help:"Measure a bin up by tape, against the book."`
	Weigh        weighed      `cmd:"" name:"weigh-over" help:"Post what a bin really holds. A manager's act."`
	WriteOff     writeOff     `cmd:"" name:"write-off" help:"Write grain off. A manager's act."`
	Heat         heat         `cmd:"" name:"temperatures" help:"Write temperatures of the grain down."`
	DryingLog    dryingLog    `cmd:"" help:"The log of the dryer as a paper: runs, water, fuel, hours."`
	MeasureSheet measureSheet `cmd:"" help:"A measure-up as a paper, by the number of its movement."`
	Keeps        keeps        `cmd:"" help:"How long what lies in a bin keeps, layer by layer, and when to turn it; advice only."`
	Mix          mix          `cmd:"" help:"The mix of bins that meets a moisture and test weight, and what it is worth; advice only."`
	Undo         undo         `cmd:"" help:"Take a movement back, by its number."`
}

type add struct {
	terminal.BookFlags
	terminal.WhoFlags
	Short     string   `arg:"" help:"Short name, as clerks type it."`
	Name      string   `arg:"" help:"Name."`
	Commodity string   `help:"Grain it is kept for." placeholder:"GRAIN"`
	Lot       *string  `help:"Lot that is kept apart in it; empty for none." placeholder:"LOT"`
	Path      []string `sep:"none" help:"Where grain received here goes on to: a bin, or a bin for one grain; may be repeated, \"none\" takes all away." placeholder:"[GRAIN=]BIN"`
	Form      string   `help:"Form: round (flat floor), hopper, pile, flat (rectangular)." placeholder:"FORM"`
	Diameter  string   `help:"Diameter, in ft unless it says m." placeholder:"LENGTH"`
	Wall      string   `help:"Height of the straight wall." placeholder:"LENGTH"`
	Cone      string   `help:"Depth of the hopper below the wall." placeholder:"LENGTH"`
	Peak      string   `help:"How high grain may stand above the wall; of a pile, its height." placeholder:"LENGTH"`
	Length    string   `help:"Length of a rectangular house." placeholder:"LENGTH"`
	Across    string   `help:"Width of a rectangular house." placeholder:"LENGTH"`
}

func (add) Help() string {
	return `What is not given stays as it was. A pit with a path sends its grain on by itself: the ticket says the pit, and the grain lies in the bin.

    tenth bin add P1 "Pit 1" --path corn=B1 --path soybeans=B4
    tenth bin add B3 "Bin 3, wet corn" --commodity corn --form round --diameter 30 --wall 24 --peak 6`
}

func (c add) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		b, err := c.known(p)
		if err != nil {
			return err
		}
		if b.Paths, err = c.paths(b.Paths); err != nil {
			return err
		}
		if c.Form != "" {
			if b.Shape, err = c.shape(); err != nil {
				return err
			}
		}
		if err := scalehouse.SetBin(p, p.Desk, b); err != nil {
			return err
		}
		p.Say("%s, %s, is written down.", b.ID, b.Name)
		return nil
	})
}

// known is the bin as it is in the list, with the name and grain given.
func (c add) known(p *terminal.Session) (b elevator.Bin, err error) {
	all, err := office.Bins(p, p.Desk)
	if err != nil {
		return b, err
	}
	for _, one := range all {
		if one.ID == c.Short {
			b = one
		}
	}
	b.ID, b.Name = c.Short, c.Name
	if c.Lot != nil {
		b.Lot = strings.TrimSpace(*c.Lot)
	}
	if c.Commodity != "" {
		grain, err := entry.Commodity(c.Commodity)
		if err != nil {
			return b, err
		}
		b.Commodity = grain.ID
	}
	return b, nil
}

func (c add) paths(were []elevator.Path) ([]elevator.Path, error) {
	if len(c.Path) == 0 {
		return were, nil
	}
	var out []elevator.Path
	for _, text := range c.Path {
		grain, to, forOne := strings.Cut(text, "=")
		switch {
		case text == "none":
			continue
		case !forOne:
			out = append(out, elevator.Path{To: text})
			continue
		}
		known, err := entry.Commodity(grain)
		if err != nil {
			return nil, err
		}
		out = append(out, elevator.Path{Commodity: known.ID, To: strings.TrimSpace(to)})
	}
	return out, nil
}

func (c add) shape() (s shape.Shape, err error) {
	s.Form = shape.Form(strings.ToLower(c.Form))
	for _, one := range []struct {
		name, text string
		into       *quantity.Amount
	}{
		{"Diameter", c.Diameter, &s.Diameter}, {"Wall", c.Wall, &s.Wall}, {"Cone", c.Cone, &s.Cone},
		{"Peak", c.Peak, &s.Peak}, {"Length", c.Length, &s.Length}, {"Width", c.Across, &s.Width},
	} {
		if *one.into, err = entry.ParseLength(one.name, one.text); err != nil {
			return s, err
		}
	}
	return s, nil
}

type list struct {
	terminal.BookFlags
	terminal.ListFlags
	Day string `help:"The day whose evening is shown. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (c list) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		all, err := binlog.Bins(p, p.Desk, day)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, b := range all {
			if len(b.Grain) == 0 {
				rows = append(rows, []any{b.ID, b.Name, b.Commodity, "", "", "", "", full(b)})
			}
			for _, h := range b.Grain {
				rows = append(rows, []any{b.ID, b.Name, h.Commodity, h.Lies(), shown(h.Moisture()), shown(h.TestWeight()), h.Oldest(), full(b)})
			}
		}
		return p.Table(c.ListFlags, "Short\tName\tGrain\tLies there\tMoisture\tTest weight\tOldest\tFull", rows, "No pit or bin is written down yet.")
	})
}

// full tells the filling level of a bin; empty where nobody measured it.
func full(b binlog.Bin) any {
	level, known := b.Level()
	if !known {
		return ""
	}
	return quantity.Int(int64(level/10), quantity.Percent)
}

func shown(a quantity.Amount, known bool) any {
	if !known {
		return ""
	}
	return a
}

type show struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Bin  string `arg:"" help:"Short name of the bin."`
	From string `help:"First day to tell of. Without it, 30 days back." placeholder:"YYYY-MM-DD"`
	To   string `help:"The day whose evening is shown. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (show) Help() string {
	return `The grain in a bin layer by layer, the days on which anything happened, and the movements with their numbers.

    tenth bin show B1
    tenth bin show B1 --from 2026-10-01 --out papers`
}

// cardDays is the number of days on a card.
const cardDays = 30

func (c show) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		from, to, err := p.SpanTo(c.From, c.To, cardDays)
		if err != nil {
			return err
		}
		doc, err := binlog.Card(p, p.Desk, c.Bin, from, to)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, "bin-"+c.Bin+"-"+to.String(), false)
	})
}
