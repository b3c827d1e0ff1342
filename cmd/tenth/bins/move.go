package bins

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

type transfer struct {
	moving
	From   string `arg:"" help:"Bin it is taken from."`
	Into   string `arg:"" help:"Bin it goes into."`
	Weight string `arg:"" optional:"" help:"Weight; without it, all that lies there."`
}

func (transfer) Help() string {
	return `    tenth bin move P1 B1 48000
    tenth bin move B3 B1 --reason "B3 is wanted for wet corn"`
}

func (c transfer) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Transfer, c.From, func(p *terminal.Session, m *bin.Movement) error {
		w, err := weightOrAll(p, m, c.From, c.Weight)
		m.From, m.Into = one(c.From, w), one(c.Into, w)
		return err
	})
}

func one(name string, w quantity.Amount) []bin.Weighed { return []bin.Weighed{{Bin: name, Weight: w}} }

type blended struct {
	moving
	From []string `sep:"none" required:"" help:"A bin and how much of it; may be repeated." placeholder:"BIN=WEIGHT"`
	Into string   `required:"" help:"Bin the mix goes into." placeholder:"BIN"`
}

func (blended) Help() string {
	return `What mix meets a moisture and a test weight is found by "tenth keep blend".

    tenth bin blend --from B1=30000 --from B2=50000 --into B5`
}

func (c blended) Run(t *terminal.Terminal) error {
	first, _, _ := strings.Cut(c.From[0], "=")
	return c.enter(t, bin.Blend, first, func(p *terminal.Session, m *bin.Movement) error {
		for _, text := range c.From {
			name, figure, ok := strings.Cut(text, "=")
			if !ok {
				return terminal.Refusal("Write it like B1=30000", "%q is not a bin and a weight", text)
			}
			w, err := weight(p, "Weight", figure)
			if err != nil {
				return err
			}
			m.From = append(m.From, bin.Weighed{Bin: name, Weight: w})
		}
		m.Into = one(c.Into, m.In())
		return nil
	})
}

type turned struct {
	moving
	Bin  string `arg:"" help:"Bin that is turned."`
	Lost string `help:"Weight lost on the way, if it was found." placeholder:"WEIGHT"`
}

func (c turned) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Turn, c.Bin, func(p *terminal.Session, m *bin.Movement) error {
		w, err := all(p, m, c.Bin)
		if err != nil {
			return err
		}
		m.From, m.Into = one(c.Bin, w), one(c.Bin, w)
		if c.Lost == "" {
			return nil
		}
		lost, err := weight(p, "Weight lost", c.Lost)
		if err == nil && lost.Unit() == w.Unit() {
			m.Into = one(c.Bin, w.Sub(lost))
		}
		return err
	})
}

type cleaned struct {
	moving
	From       string `arg:"" help:"Bin it is taken from."`
	Into       string `arg:"" help:"Bin the clean grain goes into; it may be the same."`
	Weight     string `help:"Weight that went into the cleaner; without it, all that lies there." placeholder:"WEIGHT"`
	Screenings string `required:"" help:"Weight of the screenings." placeholder:"WEIGHT"`
}

func (c cleaned) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Clean, c.From, func(p *terminal.Session, m *bin.Movement) error {
		w, err := weightOrAll(p, m, c.From, c.Weight)
		if err != nil {
			return err
		}
		if m.Screenings, err = weight(p, "Screenings", c.Screenings); err != nil {
			return err
		}
		if m.Screenings.Unit() != w.Unit() {
			return terminal.Refusal("Weigh both in one unit", "%s went in and %s of screenings came out", w, m.Screenings)
		}
		m.From, m.Into = one(c.From, w), one(c.Into, w.Sub(m.Screenings))
		return nil
	})
}

type dried struct {
	moving
	From        string `arg:"" help:"Bin it is taken from."`
	Into        string `arg:"" help:"Bin the dried grain goes into."`
	WeightIn    string `required:"" help:"Weight that went into the dryer." placeholder:"WEIGHT"`
	WeightOut   string `required:"" help:"Weight that came out." placeholder:"WEIGHT"`
	MoistureIn  string `required:"" help:"Moisture going in." placeholder:"PERCENT"`
	MoistureOut string `required:"" help:"Moisture coming out." placeholder:"PERCENT"`
	TestWeight  string `help:"Test weight of the dried grain." placeholder:"WEIGHT"`
	Fuel        string `help:"Fuel: gal unless it says L or kWh." placeholder:"FUEL"`
	Power       string `help:"Power for the motors, in kWh." placeholder:"KWH"`
	Hours       string `help:"How long it ran." placeholder:"HOURS"`
}

func (dried) Help() string {
	return `A run that would have added water is refused, with its arithmetic. What of the dry matter does not come out again is dust and breakage, and stands as handling.

    tenth bin dry B3 B1 --weight-in 50000 --weight-out 47000 --moisture-in 20 --moisture-out 15 --fuel 90 --hours 4`
}

func (c dried) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Dry, c.From, func(p *terminal.Session, m *bin.Movement) error {
		in, err := weight(p, "Weight in", c.WeightIn)
		if err != nil {
			return err
		}
		out, err := weight(p, "Weight out", c.WeightOut)
		if err != nil {
			return err
		}
		m.From, m.Into = one(c.From, in), one(c.Into, out)
		m.Drying, err = c.run()
		return err
	})
}

func (c dried) run() (*bin.Run, error) {
	var r bin.Run
	var err error
	if r.MoistureIn, err = terminal.ParsePercent("Moisture in", c.MoistureIn); err != nil {
		return nil, err
	}
	if r.MoistureOut, err = terminal.ParsePercent("Moisture out", c.MoistureOut); err != nil {
		return nil, err
	}
	if r.TestWeight, err = figure("Test weight", c.TestWeight, quantity.LbPerBushel, quantity.KgPerHL); err != nil {
		return nil, err
	}
	if r.Fuel, err = figure("Fuel", c.Fuel, quantity.Gallon, quantity.Litre, quantity.KWh); err != nil {
		return nil, err
	}
	if r.Power, err = figure("Power", c.Power, quantity.KWh); err != nil {
		return nil, err
	}
	r.Hours, err = hours(c.Hours)
	return &r, err
}

type aerated struct {
	moving
	Bin   string `arg:"" help:"Bin that was aired."`
	Hours string `arg:"" help:"How long the fans ran."`
}

func (c aerated) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Aerate, c.Bin, func(p *terminal.Session, m *bin.Movement) (err error) {
		m.From = one(c.Bin, quantity.Zero(quantity.Lb))
		m.Hours, err = hours(c.Hours)
		return err
	})
}

type heat struct {
	moving
	Bin      string   `arg:"" help:"Bin whose grain was measured."`
	Readings []string `arg:"" help:"Temperatures from the floor up, with F or C."`
}

func (heat) Help() string { return `    tenth bin temperatures B1 52F 54F 61F` }

func (c heat) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Temperatures, c.Bin, func(p *terminal.Session, m *bin.Movement) error {
		m.From = one(c.Bin, quantity.Zero(quantity.Lb))
		for _, text := range c.Readings {
			reading, err := temperature(text)
			if err != nil {
				return err
			}
			m.Readings = append(m.Readings, reading)
		}
		return nil
	})
}

type undo struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number int64  `arg:"" help:"Number of the movement, as on the card of the bin."`
	Reason string `required:"" help:"Why it is taken back." placeholder:"TEXT"`
}

func (undo) Help() string {
	return `The grain goes back by the same weights the other way, on today's business day; both movements stay in the book.

    tenth bin undo 17 --reason "it was B2"`
}

func (c undo) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		m, err := scalehouse.UndoMovement(p, p.Desk, c.Number, c.Reason)
		if err != nil {
			return err
		}
		return moving{}.say(p, m)
	})
}
