package keep

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keeping"
	"tenthpoint/internal/quantity"
)

type equilibrium struct {
	terminal.LanguageFlag
	Commodity   string `aliases:"crop" required:"" help:"The grain, by id or name." placeholder:"GRAIN"`
	Temperature string `required:"" help:"Temperature of air and grain, with F or C." placeholder:"TEMPERATURE"`
	Humidity    string `xor:"known" required:"" help:"Relative humidity of the air: says what moisture the grain comes to." placeholder:"PERCENT"`
	Moisture    string `xor:"known" required:"" help:"Moisture of the grain: says the humidity that keeps it." placeholder:"PERCENT"`
	JSON        bool   `help:"Print for programs: every figure as text."`
}

func (equilibrium) Help() string {
	return `In air of one temperature and humidity grain comes to one moisture, and neither dries nor gets wetter. Each published curve of the grain answers; where they part, so do the sources.

    tenth keep equilibrium --commodity corn --temperature 50F --humidity 70
    tenth keep equilibrium --commodity soybeans --temperature 5C --moisture 12.5`
}

func (c equilibrium) Run(t *terminal.Terminal) error {
	answers, err := c.answers()
	if err != nil {
		return err
	}
	if c.JSON {
		return t.PrintJSON(map[string]any{"curves": equilibriaJSON(answers)})
	}
	for i, a := range answers {
		if i == 1 {
			t.Say("Other sources:")
		}
		t.Say("%s at %s and %s humidity: %s (%s).", a.Moisture, a.Temperature, a.Humidity, a.Curve.ID, a.Curve.Source)
		t.Say("  Checked: %s.", a.Curve.Checked)
		if a.Beyond {
			t.Say("  No published cell so warm or cold, dry or damp confirms this curve: take it as a guess.")
		}
		if a.Curve.Note != "" {
			t.Say("  %s", a.Curve.Note)
		}
	}
	t.Say("%s", t.Printer.Word(advice))
	return nil
}

func (c equilibrium) answers() ([]keeping.Equilibrium, error) {
	grain, err := grainIn(c.Commodity, "rice-long")
	if err != nil {
		return nil, err
	}
	temperature, err := temperatureIn(c.Temperature)
	if err != nil {
		return nil, err
	}
	if c.Humidity != "" {
		humidity, err := figureIn("Humidity", c.Humidity, quantity.Percent, 100)
		if err != nil {
			return nil, err
		}
		return keeping.EquilibriumMoisture(grain, temperature, humidity)
	}
	moisture, err := terminal.ParsePercent("Moisture", c.Moisture)
	if err != nil {
		return nil, err
	}
	return keeping.EquilibriumHumidity(grain, temperature, moisture)
}

func equilibriaJSON(answers []keeping.Equilibrium) []map[string]any {
	out := []map[string]any{}
	for _, a := range answers {
		out = append(out, map[string]any{"curve": a.Curve.ID, "source": a.Curve.Source, "temperature": a.Temperature.String(),
			"humidity": a.Humidity.String(), "moisture": a.Moisture.String(), "beyond_cells": a.Beyond})
	}
	return out
}
