package lab

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// benchOven works an oven test out.
type benchOven struct {
	terminal.LanguageFlag
	Wet   string         `arg:"" help:"Dish with the wet grain, in g." placeholder:"GRAMS"`
	Dried string         `arg:"" help:"Dish with the dried grain, in g." placeholder:"GRAMS"`
	Tare  string         `arg:"" help:"Empty dish, in g." placeholder:"GRAMS"`
	Round string         `help:"How the moisture is rounded." default:"0.01 half-up"`
	Width terminal.Width `help:"Width of the printed working, in letters." default:"76"`
	JSON  bool           `help:"Print for programs: every figure as text."`
}

func (benchOven) Help() string {
	return `Moisture is water lost over wet grain, (wet - dried) / (wet - empty). It is the reference that meters are checked against.

    tenth bench oven 131.4520 128.3020 116.4020`
}

func (c benchOven) Run(t *terminal.Terminal) error {
	begun := moisture.Reading{Seq: 1, Method: meter.ByOven, Crop: "any", Day: t.LocalDate(), Tester: "typed at the terminal"}
	reading, err := readTest(begun, terminal.Texts{"wet": c.Wet, "dry": c.Dried, "tare": c.Tare}, "wet", "dry", "tare")
	if err != nil {
		return err
	}
	round, err := quantity.ParseRounding(c.Round)
	if err != nil {
		return err
	}
	sheet := &worksheet.Sheet{}
	house := moisture.Procedure{Policy: moisture.DefaultPolicy(), Trust: moisture.DefaultTrust(), Rounding: round}
	result, err := moisture.Tests{Readings: []moisture.Reading{reading}}.Determine(sheet, moisture.Equipment{}, house)
	if err != nil {
		return err
	}
	if c.JSON {
		return t.PrintJSON(map[string]any{"moisture": result.Moisture.Printed(), "working": sheet})
	}
	t.Say("Moisture %s, wet basis.", result.Moisture.Printed())
	t.Say("")
	fmt.Fprint(t.Stdout, sheet.TextIn(int(c.Width), t.Printer))
	return nil
}
