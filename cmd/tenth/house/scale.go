package house

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/scalelog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/truckscale"
)

// Scale keeps the logs of the truck scales.
type Scale struct {
	List        scaleList        `cmd:"" default:"withargs" help:"List the scales and how each stands by its log."`
	Zero        scaleZero        `cmd:"" help:"Write down what the empty deck showed."`
	Check       scaleCheck       `cmd:"" help:"Write a check weighing down: a known weight, and what was shown."`
	Compare     scaleCompare     `cmd:"" help:"Write down one truck weighed on two scales."`
	Certificate scaleCertificate `cmd:"" help:"Write down the certificate of an inspection, its last day and the seals."`
	Out         scaleOut         `cmd:"" help:"Take a scale out of service; no weight is taken from it."`
	Back        scaleBack        `cmd:"" help:"Put a scale back in service."`
	Log         scaleLog         `cmd:"" help:"A scale's log as a paper."`
}

func (Scale) Help() string {
	return `    tenth scale zero
    tenth scale check 1 --known 20000 --shown 20020 --weights "20 test weights, certificate W-7"
    tenth scale compare 1 2 --shown 61240 --other 61200 --truck "truck 7"
    tenth scale certificate 1 C-118 --until 2027-05-03 --inspector "State inspector" --seals "40117, 40118"
    tenth scale out 1 "load cell 3 reads nothing"
    tenth scale log 1 --out papers`
}

// scaleFlags name a scale and who looks at it.
type scaleFlags struct {
	terminal.BookFlags
	terminal.WhoFlags
	Day string `help:"Day it was looked at. Without it, today." placeholder:"YYYY-MM-DD"`
}

// write adds an entry to the log of a scale and prints its new status.
func (f scaleFlags) write(t *terminal.Terminal, named string, entryOf func(elevator.Scale, truckscale.Made) (truckscale.Fact, error)) error {
	return f.WithBook(t, terminal.ReadWrite, f.Who, func(p *terminal.Session) error {
		scale, err := scaleNamed(p, named)
		if err != nil {
			return err
		}
		day, err := entry.ParseDay("Day", f.Day, p.Today())
		if err != nil {
			return err
		}
		fact, err := entryOf(scale, truckscale.Made{Day: day})
		if err != nil {
			return err
		}
		if err := instruments.LogScale(p, p.Desk, scale.ID, fact); err != nil {
			return err
		}
		return tellScale(p, scale.ID)
	})
}

// scaleNamed is a scale by name; without a name the first of the elevator.
func scaleNamed(p *terminal.Session, name string) (elevator.Scale, error) {
	all := p.Profile().Scales
	if name == "" && len(all) > 0 {
		return all[0], nil
	}
	if s, known := p.Profile().Scale(name); known {
		return s, nil
	}
	return elevator.Scale{}, terminal.Refusal("See \"tenth scale\" for those there are", "there is no scale %s at this elevator", name)
}

func tellScale(p *terminal.Session, id string) error {
	log, err := scalelog.Read(p, p.Desk, id)
	if err != nil {
		return err
	}
	for _, said := range log.Status(p.Today()).Said {
		p.Say("%s", said)
	}
	return nil
}

// weightOn reads a weight as a scale shows it; an empty deck may show less than 0.
func weightOn(s elevator.Scale, name, text string, least int64) (quantity.Amount, error) {
	return entry.Shown(name, s, least).Parse(text)
}

type scaleZero struct {
	scaleFlags
	Scale string `arg:"" optional:"" help:"The scale; without it, the first." placeholder:"SCALE"`
	Shown string `help:"What the empty deck showed." default:"0" placeholder:"WEIGHT"`
}

func (c scaleZero) Run(t *terminal.Terminal) error {
	return c.write(t, c.Scale, func(s elevator.Scale, m truckscale.Made) (truckscale.Fact, error) {
		shown, err := weightOn(s, "Shown", c.Shown, -9_999)
		return truckscale.Zeroed{Made: m, Shown: shown}, err
	})
}

type scaleCheck struct {
	scaleFlags
	Scale   string `arg:"" help:"The scale." placeholder:"SCALE"`
	Known   string `required:"" help:"The known weight on the deck." placeholder:"WEIGHT"`
	Shown   string `required:"" help:"What the scale showed." placeholder:"WEIGHT"`
	Weights string `required:"" help:"What was weighed: test weights and their certificate, or a truck weighed elsewhere." placeholder:"WORDS"`
}

func (c scaleCheck) Run(t *terminal.Terminal) error {
	return c.write(t, c.Scale, func(s elevator.Scale, m truckscale.Made) (truckscale.Fact, error) {
		known, err := weightOn(s, "Known", c.Known, 1)
		if err != nil {
			return nil, err
		}
		shown, err := weightOn(s, "Shown", c.Shown, 0)
		return truckscale.Weighed{Made: m, Known: known, Shown: shown, Weights: c.Weights}, err
	})
}

type scaleCompare struct {
	scaleFlags
	Scale string `arg:"" help:"The scale." placeholder:"SCALE"`
	With  string `arg:"" help:"The other scale." placeholder:"SCALE"`
	Shown string `required:"" help:"What the first scale showed." placeholder:"WEIGHT"`
	Other string `required:"" help:"What the other scale showed." placeholder:"WEIGHT"`
	Truck string `help:"What was weighed." placeholder:"WORDS"`
}

func (c scaleCompare) Run(t *terminal.Terminal) error {
	return c.write(t, c.Scale, func(s elevator.Scale, m truckscale.Made) (truckscale.Fact, error) {
		shown, err := weightOn(s, "Shown", c.Shown, 1)
		if err != nil {
			return nil, err
		}
		other, err := weightOn(s, "Other", c.Other, 1)
		return truckscale.Compared{Made: m, Other: c.With, Shown: shown, OtherShown: other, What: c.Truck}, err
	})
}

type scaleCertificate struct {
	scaleFlags
	Scale     string `arg:"" help:"The scale." placeholder:"SCALE"`
	Number    string `arg:"" help:"Number of the certificate." placeholder:"NUMBER"`
	Until     string `required:"" help:"The last day it holds." placeholder:"YYYY-MM-DD"`
	Inspector string `help:"Who inspected the scale." placeholder:"WORDS"`
	Seals     string `help:"The seals left on it." placeholder:"NUMBERS"`
}

func (c scaleCertificate) Run(t *terminal.Terminal) error {
	return c.write(t, c.Scale, func(_ elevator.Scale, m truckscale.Made) (truckscale.Fact, error) {
		until, err := quantity.ParseDate(c.Until)
		return truckscale.Certificate{Made: m, Number: c.Number, Until: until, Inspector: c.Inspector, Seals: c.Seals}, err
	})
}

type scaleOut struct {
	scaleFlags
	Scale  string `arg:"" help:"The scale." placeholder:"SCALE"`
	Reason string `arg:"" help:"Why." placeholder:"WORDS"`
}

func (c scaleOut) Run(t *terminal.Terminal) error {
	return c.write(t, c.Scale, func(_ elevator.Scale, m truckscale.Made) (truckscale.Fact, error) {
		return truckscale.Service{Made: m, Out: true, Reason: c.Reason}, nil
	})
}

type scaleBack struct {
	scaleFlags
	Scale  string `arg:"" help:"The scale." placeholder:"SCALE"`
	Reason string `arg:"" help:"What was done to it." placeholder:"WORDS"`
}

func (c scaleBack) Run(t *terminal.Terminal) error {
	return c.write(t, c.Scale, func(_ elevator.Scale, m truckscale.Made) (truckscale.Fact, error) {
		return truckscale.Service{Made: m, Reason: c.Reason}, nil
	})
}

type scaleList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (c scaleList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		rows := [][]any{}
		for _, s := range p.Profile().Scales {
			log, err := scalelog.Read(p, p.Desk, s.ID)
			if err != nil {
				return err
			}
			rows = append(rows, []any{s.ID, s.Division, s.Capacity, message.Words(string(log.Status(p.Today()).State))})
		}
		return p.Table(c.ListFlags, "Scale\tDivision\tCapacity\tState", rows, "No scale is set up yet.")
	})
}

type scaleLog struct {
	terminal.BookFlags
	terminal.LogFlags
	Scale string `arg:"" optional:"" help:"The scale; without it, the first." placeholder:"SCALE"`
}

func (c scaleLog) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		scale, err := scaleNamed(p, c.Scale)
		if err != nil {
			return err
		}
		log, err := scalelog.Read(p, p.Desk, scale.ID)
		if err != nil {
			return err
		}
		return p.ShowLog(c.LogFlags, scalelog.Paper(log, p.Profile(), p.Today()), "scale-"+scale.ID)
	})
}
