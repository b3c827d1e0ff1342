package keep

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/keeping/blend"
	"tenthpoint/internal/quantity"
)

type blendLots struct {
	terminal.LanguageFlag
	Lot        []string `sep:"none" required:"" help:"A lot: name, weight (lb unless it says kg), moisture and, if it counts, test weight in lb/bu; may be repeated." placeholder:"NAME=WEIGHT,MOISTURE[,TEST-WEIGHT]"`
	Moisture   string   `required:"" help:"Highest moisture of the mix." placeholder:"PERCENT"`
	TestWeight string   `help:"Lowest test weight of the mix, in lb/bu." placeholder:"WEIGHT"`
	Whole      []string `help:"A lot to use up, with the least of the others; may be repeated." placeholder:"NAME"`
	JSON       bool     `help:"Print for programs: every figure as text."`
}

func (blendLots) Help() string {
	return `The most grain that these lots make at the moisture and test weight asked for; with --whole, that lot and the least of the others. Moisture is the mean by weight. Test weight is taken by volume, which overlooks how kernels of two sizes settle. Grain laid in layers is not blended: it keeps its own moisture for weeks.

    tenth keep blend --lot B1=30000,16.8,55 --lot B2=50000,13.2,57 --moisture 15 --test-weight 54
    tenth keep blend --lot wet=10000,17 --lot dry=50000,13 --moisture 15.5 --whole wet`
}

func (c blendLots) Run(t *terminal.Terminal) error {
	lots, target, err := c.read()
	if err != nil {
		return err
	}
	mix, err := blend.Best(lots, target)
	if err != nil {
		return err
	}
	hundredth := quantity.To("0.01", quantity.HalfUp)
	if c.JSON {
		taken := []map[string]string{}
		for i, l := range lots {
			taken = append(taken, map[string]string{"lot": l.Name, "take": mix.Take[i].String(), "of": l.Weight.String()})
		}
		out := map[string]any{"lots": taken, "weight": mix.Weight.String(), "moisture": hundredth.Apply(mix.Moisture).String()}
		if quantity.Recorded(mix.TestWeight) {
			out["test_weight"] = hundredth.Apply(mix.TestWeight).String()
		}
		return t.PrintJSON(out)
	}
	for i, l := range lots {
		t.Say("Take %s of %v, of %s there.", mix.Take[i], l.Name, l.Weight)
	}
	t.Say("The mix weighs %s and has a moisture of %s.", mix.Weight, hundredth.Apply(mix.Moisture))
	if quantity.Recorded(mix.TestWeight) {
		t.Say("Its test weight is %s, taken by volume; test the mix.", hundredth.Apply(mix.TestWeight))
	}
	t.Say("")
	t.Say("%s", t.Printer.Word(advice))
	return nil
}

func (c blendLots) read() (lots []blend.Lot, target blend.Target, err error) {
	for _, text := range c.Lot {
		l, err := lotIn(text)
		if err != nil {
			return nil, target, err
		}
		lots = append(lots, l)
	}
	for _, name := range c.Whole {
		found := false
		for i := range lots {
			if lots[i].Name == name {
				lots[i].Whole, found = true, true
			}
		}
		if !found {
			return nil, target, terminal.Refusal("Name a lot as --lot does", "there is no lot %q to use up", name)
		}
	}
	if target.Moisture, err = terminal.ParsePercent("Moisture", c.Moisture); err != nil || c.TestWeight == "" {
		return lots, target, err
	}
	target.TestWeight, err = figureIn("Test weight", c.TestWeight, quantity.LbPerBushel, 90)
	return lots, target, err
}

func lotIn(text string) (l blend.Lot, err error) {
	name, figures, ok := strings.Cut(text, "=")
	parts := strings.Split(figures, ",")
	if !ok || strings.TrimSpace(name) == "" || len(parts) < 2 || len(parts) > 3 {
		return l, terminal.Refusal("Write it like B1=30000,16.8,55, the weight without commas", "%q is not a lot", text)
	}
	l.Name = strings.TrimSpace(name)
	if l.Weight, err = entry.ParseHeld("Weight", parts[0], quantity.Lb); err != nil {
		return l, err
	}
	if l.Moisture, err = terminal.ParsePercent("Moisture", parts[1]); err != nil || len(parts) == 2 {
		return l, err
	}
	l.TestWeight, err = figureIn("Test weight", parts[2], quantity.LbPerBushel, 90)
	return l, err
}
