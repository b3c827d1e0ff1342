package lab

import (
	"errors"
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// benchAirDry works out the moisture of a sample too wet for the meter.
type benchAirDry struct {
	terminal.LanguageFlag
	Wet     string `arg:"" help:"The sample before drying, in g." placeholder:"GRAMS"`
	Dried   string `arg:"" help:"The sample dried in the air, in g." placeholder:"GRAMS"`
	Reading string `arg:"" help:"What the meter reads of the dried sample." placeholder:"PERCENT"`
	Width   int    `help:"Width of the printed working, in letters." default:"76"`
	JSON    bool   `help:"Print for programs: every figure as text."`
}

func (benchAirDry) Help() string {
	return `Weigh the sample, dry it in the air until the meter can read it, weigh it again and read it. The water lost in the air and what the meter found in the rest are added, to the tenth (Official Grain Grading Guide, chapter 2).

    tenth bench air-dry 1000 800 15.0`
}

func (c benchAirDry) Run(t *terminal.Terminal) error {
	grams := func(name, text string) (quantity.Amount, error) {
		return quantity.Field{Name: name, Unit: quantity.Gram, Places: 3, Min: quantity.Zero(quantity.Gram), Max: quantity.Int(100000, quantity.Gram)}.Parse(text)
	}
	wet, wrongWet := grams("The sample before drying", c.Wet)
	dry, wrongDry := grams("The dried sample", c.Dried)
	reading, wrongReading := terminal.ParsePercent("Reading", c.Reading)
	if err := errors.Join(wrongWet, wrongDry, wrongReading); err != nil {
		return err
	}
	sample := moisture.AirDried{Wet: wet, Dry: dry, Reading: reading}
	if faults := sample.Faults(); len(faults) > 0 {
		return errors.Join(faults...)
	}
	sheet := &worksheet.Sheet{}
	result := sample.Work(sheet)
	if c.JSON {
		return t.PrintJSON(map[string]any{"moisture": result.Printed(), "working": sheet})
	}
	t.Say("Moisture %s, wet basis.", result.Printed())
	t.Say("")
	fmt.Fprint(t.Stdout, sheet.TextIn(c.Width, t.Printer))
	return nil
}
