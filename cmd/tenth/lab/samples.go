package lab

import (
	"cmp"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
)

// benchSamples manages the retained samples.
type benchSamples struct {
	Take    samplesTake    `cmd:"" help:"Number the sample of a load that was probed."`
	List    samplesList    `cmd:"" default:"withargs" help:"List the samples kept."`
	Due     samplesDue     `cmd:"" help:"List the samples due to be discarded."`
	Discard samplesDiscard `cmd:"" help:"Write down that samples were thrown out."`
	Label   samplesLabel   `cmd:"" help:"Print the label of a sample."`
}

type samplesTake struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load   string   `arg:"" help:"The load, as \"tenth yard\" lists it." placeholder:"LOAD"`
	Probe  []string `required:"" sep:"none" help:"Where it was probed, and what was seen; may be repeated." placeholder:"PLACE[=NOTE]"`
	Keep   string   `help:"Where a part of it is kept." placeholder:"PLACE"`
	Number string   `help:"Number of the house's own roll. Without it, the next of the book." placeholder:"NUMBER"`
}

func (samplesTake) Help() string {
	return `The number goes on the can before anything is tested. Probe from the platform: nobody climbs a load.

    tenth bench samples take L12 --probe "left front" --probe "right rear=musty" --keep "Shelf A1"`
}

func (c samplesTake) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		l, err := p.LoadNamed(c.Load)
		if err != nil {
			return err
		}
		probed := scalehouse.Probed{Number: c.Number, Place: c.Keep}
		for _, text := range c.Probe {
			place, note, _ := strings.Cut(text, "=")
			probed.Probes = append(probed.Probes, moisture.Probe{Place: strings.TrimSpace(place), Note: strings.TrimSpace(note)})
		}
		number, err := scalehouse.Probe(p, p.Desk, l.ID, probed)
		if err != nil {
			return err
		}
		if l, err = office.Load(p, p.Desk, l.ID); err != nil {
			return err
		}
		if c.Keep == "" {
			p.Say("Sample %s of load %s. No part of it is kept.", number, l.ID)
			return nil
		}
		p.Say("Sample %s of load %s, kept on %s through %s.", number, l.ID, l.Sample.Kept, l.Sample.Until)
		return nil
	})
}

type samplesList struct {
	terminal.BookFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (c samplesList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.SamplesKept(p, p.Desk)
		if err != nil {
			return err
		}
		return listSamples(p, all, c.JSON, "No sample is kept.")
	})
}

type samplesDue struct {
	terminal.BookFlags
	Day  string `help:"Due on this day. Without it, today." placeholder:"YYYY-MM-DD"`
	JSON bool   `help:"Print for programs: every figure as text."`
}

func (samplesDue) Help() string {
	return `A sample may be discarded the day after the last it must be kept. One that an open dispute needs is not listed.

    tenth bench samples due
    tenth bench samples due --day 2026-11-01`
}

func (c samplesDue) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		day, err := entry.ParseDay("Day", c.Day, p.Today())
		if err != nil {
			return err
		}
		if day.IsZero() {
			day = p.Today()
		}
		due, err := office.SamplesDue(p, p.Desk, day)
		if err != nil {
			return err
		}
		return listSamples(p, due, c.JSON, "No sample is due on "+day.String()+".")
	})
}

// sampleJSON is a retained sample for programs.
type sampleJSON struct {
	Number string `json:"number"`
	Load   string `json:"load"`
	Ticket string `json:"ticket,omitempty"`
	Crop   string `json:"crop"`
	Grower string `json:"grower"`
	Place  string `json:"place"`
	Until  string `json:"kept_through"`
	Held   string `json:"held,omitempty"`
}

func samplesJSON(all []office.Retained) []sampleJSON {
	out := []sampleJSON{}
	for _, r := range all {
		out = append(out, sampleJSON{Number: r.Number, Load: r.Load, Ticket: r.Ticket, Crop: r.Crop, Grower: r.GrowerName, Place: r.Place, Until: r.Until.String(), Held: r.Held.String()})
	}
	return out
}

func listSamples(p *terminal.Session, all []office.Retained, asJSON bool, empty string) error {
	if asJSON {
		return p.PrintJSON(samplesJSON(all))
	}
	var rows [][]any
	for _, r := range all {
		rows = append(rows, []any{terminal.Or(r.Number, message.New("none")), r.Load, terminal.Or(r.Ticket, message.New("none")), message.Words(r.Crop), r.GrowerName, r.Place, r.Until, heldFor(r)})
	}
	if err := p.Columns("Sample\tLoad\tTicket\tGrain\tGrower\tPlace\tKept through\tHeld for", rows, empty); err != nil || len(all) == 0 {
		return err
	}
	keep, err := office.RetentionRule(p, p.Desk)
	if err == nil && keep.IsByLaw() {
		p.Say("%s", message.New(law.Confirm))
	}
	return err
}

type samplesDiscard struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number []string `arg:"" optional:"" help:"Numbers of the samples, or their loads." placeholder:"NUMBER"`
	AllDue bool     `help:"All that are due today."`
}

func (samplesDiscard) Help() string {
	return `One that must still be kept, or that a dispute needs, is refused.

    tenth bench samples discard S41 S42
    tenth bench samples discard --all-due`
}

func (c samplesDiscard) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		names := c.Number
		if c.AllDue {
			due, err := office.SamplesDue(p, p.Desk, p.Today())
			if err != nil {
				return err
			}
			for _, r := range due {
				names = append(names, r.Load)
			}
		}
		if len(names) == 0 {
			return terminal.Refusal("Name them, or give --all-due when some are due", "no sample is named")
		}
		kept, err := office.SamplesKept(p, p.Desk)
		if err != nil {
			return err
		}
		if err := scalehouse.DiscardSamples(p, p.Desk, names...); err != nil {
			return err
		}
		for _, name := range names {
			r, err := office.SampleNamed(kept, name)
			if err != nil {
				return err
			}
			p.Say("Sample %s of load %s is discarded.", cmp.Or(r.Number, "without number"), r.Load)
		}
		return nil
	})
}

type samplesLabel struct {
	terminal.BookFlags
	Load string `arg:"" help:"The load, or the number of its ticket." placeholder:"LOAD"`
	Out  string `required:"" help:"Write the label into this folder, as PDF." placeholder:"DIR"`
}

func (samplesLabel) Help() string {
	return `A label of 2 1/4 by 1 1/4 inches with the sample's number as a barcode.

    tenth bench samples label L12 --out labels`
}

func (c samplesLabel) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		l, err := p.LoadNamed(c.Load)
		if err != nil {
			return err
		}
		label, err := scaleticket.SampleLabel(scaleticket.Ticket{House: p.Profile(), Load: l, Zone: p.Place})
		if err != nil {
			return err
		}
		return p.WriteLabel(label, c.Out, "sample-"+label.Number)
	})
}

func heldFor(r office.Retained) message.Text {
	if r.Held.IsZero() {
		return message.New("nothing")
	}
	return r.Held.Message()
}
