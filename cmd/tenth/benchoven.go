package main

import (
	"fmt"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
)

// benchOven works an oven test out.
type benchOven struct {
	Wet   string `arg:"" help:"Dish with the wet grain, in g." placeholder:"GRAMS"`
	Dried string `arg:"" help:"Dish with the dried grain, in g." placeholder:"GRAMS"`
	Tare  string `arg:"" help:"Empty dish, in g." placeholder:"GRAMS"`
	Round string `help:"How the moisture is rounded." default:"0.01 half-up"`
	Width int    `help:"Width of the printed working, in letters." default:"76"`
	JSON  bool   `help:"Print for programs: every figure as text."`
}

func (benchOven) Help() string {
	return `Moisture is water lost over wet grain, (wet - dried) / (wet - empty). It is the reference that meters are checked against.

    tenth bench oven 131.4520 128.3020 116.4020`
}

func (c benchOven) Run(t *terminal) error {
	dish, err := dishIn(c.Wet, c.Dried, c.Tare)
	if err != nil {
		return err
	}
	round, err := quantity.ParseRounding(c.Round)
	if err != nil {
		return err
	}
	sheet := &working.Sheet{}
	reading := moisture.Reading{Seq: 1, Method: meter.ByOven, Crop: "any", Day: t.today(), Tester: "typed at the terminal", Dish: dish}
	house := moisture.Procedure{Policy: moisture.DefaultPolicy(), Trust: moisture.DefaultTrust(), Rounding: round}
	result, err := moisture.Tests{Readings: []moisture.Reading{reading}}.Determine(sheet, moisture.Equipment{}, house)
	if err != nil {
		return err
	}
	if c.JSON {
		return t.asJSON(map[string]any{"moisture": result.Moisture.Printed(), "working": sheet})
	}
	t.say("Moisture %s, wet basis.", result.Moisture.Printed())
	t.say("")
	fmt.Fprint(t.out, sheet.Text(c.Width))
	return nil
}

// dishIn reads the three weighings of an oven test.
func dishIn(wet, dried, tare string) (moisture.Dish, error) {
	var d moisture.Dish
	for _, one := range []struct {
		name, text string
		into       *quantity.Amount
	}{{"Dish with wet grain", wet, &d.Wet}, {"Dish with dried grain", dried, &d.Dry}, {"Empty dish", tare, &d.Tare}} {
		field := moisture.DishField
		field.Name = one.name
		a, err := field.Parse(one.text)
		if err != nil {
			return d, err
		}
		*one.into = a
	}
	return d, nil
}
