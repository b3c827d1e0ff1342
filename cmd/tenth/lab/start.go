package lab

import (
	"errors"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse/instruments"
)

// benchStart writes the check of a meter before the first test of a day down.
type benchStart struct {
	terminal.BookFlags
	terminal.WhoFlags
	Meter       string `arg:"" optional:"" help:"The meter; without it, the only one there is." placeholder:"METER"`
	Battery     bool   `help:"Its battery or supply is good."`
	Mark        bool   `help:"It is set to its mark; a dial meter is nulled."`
	Weight      string `help:"The check weight put on the balance, in g." placeholder:"GRAMS"`
	Balance     string `help:"What the balance showed for it, in g." placeholder:"GRAMS"`
	Thermometer string `help:"What the bench's thermometer showed, with F or C." placeholder:"TEMPERATURE"`
	Other       string `help:"What another thermometer showed beside it." placeholder:"TEMPERATURE"`
	Skip        string `help:"Nothing was looked at, and why." placeholder:"WHY"`
}

func (benchStart) Help() string {
	return `Before the first test of a day, and again when somebody else takes the bench over. All of it is looked at.

    tenth bench start bench-1 --battery --mark --weight 250 --balance 250.1 --thermometer 68F --other 68.5F`
}

func (c benchStart) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		id, err := onlyMeter(p, c.Meter)
		if err != nil || id == "" {
			return err
		}
		check, err := c.check(id)
		if err != nil {
			return err
		}
		if err := instruments.StartMeter(p, p.Desk, check); err != nil {
			return err
		}
		setup, err := office.BenchSetup(p, p.Desk)
		if err != nil {
			return err
		}
		p.Say("The start check of meter %s is written down.", id)
		for _, doubt := range check.Doubts(setup.Trust.MassWithin) {
			p.Say("%s", doubt)
		}
		return nil
	})
}

func (c benchStart) check(id string) (meter.StartCheck, error) {
	weight, wrongWeight := optional(moisture.MassField, c.Weight)
	balance, wrongBalance := optional(moisture.MassField, c.Balance)
	thermometer, wrongThermometer := temperatureIn("Thermometer", c.Thermometer)
	other, wrongOther := temperatureIn("Other thermometer", c.Other)
	return meter.StartCheck{
		Meter: id, Skipped: c.Skip, Battery: c.Battery, Mark: c.Mark, Weight: weight, Balance: balance, Thermometer: thermometer, Other: other,
	}, errors.Join(wrongWeight, wrongBalance, wrongThermometer, wrongOther)
}

// askStart says which of the meters used had no check before the first test of
// today.
func askStart(p *terminal.Session, tests moisture.Tests) error {
	asked := map[string]bool{"": true}
	for _, r := range tests.Readings {
		if asked[r.Meter] {
			continue
		}
		asked[r.Meter] = true
		started, err := office.IsStarted(p, p.Desk, r.Meter)
		if err != nil {
			return err
		}
		if !started {
			p.Say("Meter %v has had no start check today: battery, mark, balance, thermometer. \"tenth bench start\" writes it down.", r.Meter)
		}
	}
	return nil
}
