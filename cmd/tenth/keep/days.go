package keep

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keeping"
	"tenthpoint/internal/quantity"
)

type days struct {
	shown
	Commodity   string   `aliases:"crop" required:"" help:"The grain, by id or name." placeholder:"GRAIN"`
	Moisture    string   `required:"" help:"Moisture of the grain." placeholder:"PERCENT"`
	Temperature string   `required:"" help:"Temperature it is kept at from now on, with F or C." placeholder:"TEMPERATURE"`
	Stood       []string `sep:"none" help:"Days it has stood at a temperature since harvest; may be repeated." placeholder:"DAYS@TEMPERATURE"`
}

func (days) Help() string {
	return `A table gives the days that grain of a moisture keeps at a temperature, from fresh. Time at each temperature uses up its part of them, and the parts add up; air that cools the grain slows this and gives nothing back. Between cells a table is read on straight lines. Grain that is damaged or of poor quality keeps about half as long; seed and malting grain far less.

    tenth keep days --commodity corn --moisture 18 --temperature 40F
    tenth keep days --commodity soybeans --moisture 16 --stood 35@50F --temperature 40F`
}

func (c days) Run(t *terminal.Terminal) error {
	lives, err := c.lives()
	if err != nil {
		return err
	}
	if c.JSON {
		return t.PrintJSON(map[string]any{"tables": livesJSON(lives)})
	}
	for i, l := range lives {
		if i == 1 {
			t.Say("Other sources:")
		}
		if l.Spent {
			t.Say("By %s its time is used up (%s).", l.table.ID, l.Used)
			continue
		}
		t.Say("By %s it keeps %s more, with %s of its time used.", l.table.ID, l.Left, l.Used)
	}
	t.Say("")
	return c.sheet(t, lives[0].Sheet, advice, hotGrain, binEntry, fumigant)
}

// lifeBy is a life by one table.
type lifeBy struct {
	keeping.Life
	table keeping.Table
}

// lives are the answers of every table of the grain; one beside the first that
// does not reach so far says nothing.
func (c days) lives() ([]lifeBy, error) {
	grain, err := grainIn(c.Commodity)
	if err != nil {
		return nil, err
	}
	moisture, err := terminal.ParsePercent("Moisture", c.Moisture)
	if err != nil {
		return nil, err
	}
	next, err := temperatureIn(c.Temperature)
	if err != nil {
		return nil, err
	}
	stood, err := c.stretches()
	if err != nil {
		return nil, err
	}
	tables, err := keeping.Tables(grain)
	if err != nil {
		return nil, err
	}
	var out []lifeBy
	for i, table := range tables {
		life, err := table.Use(moisture, stood, next)
		if i == 0 && err != nil {
			return nil, err
		}
		if err == nil {
			out = append(out, lifeBy{life, table})
		}
	}
	return out, nil
}

func (c days) stretches() ([]keeping.Stretch, error) {
	var out []keeping.Stretch
	for _, text := range c.Stood {
		count, at, ok := strings.Cut(text, "@")
		if !ok {
			return nil, terminal.Refusal("Write days, @ and the temperature, like 20@60F", "%q does not say how long the grain stood at what temperature", text)
		}
		n, err := figureIn("Days", count, quantity.Day, 3660)
		if err != nil {
			return nil, err
		}
		temperature, err := temperatureIn(at)
		if err != nil {
			return nil, err
		}
		out = append(out, keeping.Stretch{Days: n, Temperature: temperature})
	}
	return out, nil
}

func livesJSON(lives []lifeBy) []map[string]any {
	out := []map[string]any{}
	for _, l := range lives {
		out = append(out, map[string]any{"table": l.table.ID, "source": l.table.Source, "used": l.Used.String(),
			"left": l.Left.Days.String(), "at_least": fmt.Sprint(l.Left.AtLeast), "spent": l.Spent, "working": l.Sheet})
	}
	return out
}
