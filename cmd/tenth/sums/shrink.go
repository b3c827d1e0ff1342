package sums

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// Shrink is the bare formula, apart from any elevator's rates.
type Shrink struct {
	terminal.LanguageFlag
	Weight    string         `arg:"" optional:"" help:"Weight of the wet grain; lb unless it says kg. Without it, 100 lb." default:"100" placeholder:"WEIGHT"`
	From      string         `required:"" help:"Moisture the grain has." placeholder:"PERCENT"`
	To        string         `required:"" help:"Moisture it is brought down to." placeholder:"PERCENT"`
	Handling  string         `help:"Handling loss, in percent." placeholder:"PERCENT"`
	Basis     string         `help:"What handling is a percent of: the wet weight, or the dried." enum:"wet,dried" default:"wet"`
	Commodity string         `help:"Grain drier than it is brought down to: count what is given away in bushels of this grain, or in tonnes where the weight is in kg." placeholder:"GRAIN"`
	Price     string         `help:"With --commodity: price per bushel or tonne, to say what is given away in money." placeholder:"MONEY"`
	Round     string         `help:"How the results are rounded: a step and half-up, half-even, down or up." default:"0.01 half-up"`
	JSON      bool           `help:"Print for programs: every figure as text."`
	Width     terminal.Width `help:"Width of the printed working, in letters." default:"76"`
}

func (Shrink) Help() string {
	return `Water shrink is W x (Mi - Mf) / (100 - Mf): the dry matter stays, the water goes. Each result is printed rounded, and beneath it the arithmetic with its exact result, as far as six decimals show it.

    tenth shrink 56000 --from 25 --to 15
    tenth shrink 56000 --from 25 --to 15 --handling 0.5 --basis dried
    tenth shrink "25400 kg" --from 18.2 --to 14.5 --json

Grain that is drier already loses nothing more; then it is shown what the same dry matter would weigh at the moisture that is paid for, and what is given away.

    tenth shrink --from 11 --to 13
    tenth shrink 56000 --from 11 --to 13 --commodity soybeans --price 9.80

What an elevator takes may differ: its edition has a trigger, a method, a floor and roundings of its own. Use "tenth settle" for that.`
}

func (c Shrink) Run(t *terminal.Terminal) error {
	g, err := c.given()
	if err != nil {
		return err
	}
	s, err := c.work(g)
	if err != nil {
		return err
	}
	dry, err := c.overDry(g)
	if err != nil {
		return err
	}
	if c.JSON {
		out := map[string]any{"working": s}
		if dry != nil {
			out["over_dry"] = dry.Sheet
		}
		return t.PrintJSON(out)
	}
	fmt.Fprint(t.Stdout, s.TextIn(int(c.Width), t.Printer))
	if dry != nil {
		fmt.Fprint(t.Stdout, "\n", dry.Sheet.TextIn(int(c.Width), t.Printer))
	}
	return nil
}

// shrinkGiven holds the figures of the formula.
type shrinkGiven struct {
	weight, from, to, handling quantity.Amount
	rounding                   quantity.Rounding
}

func (c Shrink) given() (g shrinkGiven, err error) {
	if g.weight, err = entry.ParseWeight("Weight", c.Weight, quantity.Lb); err != nil {
		return g, err
	}
	if g.from, err = terminal.ParsePercent("From", c.From); err != nil {
		return g, err
	}
	if g.to, err = terminal.ParsePercent("To", c.To); err != nil {
		return g, err
	}
	if !g.to.Less(hundred) {
		return g, terminal.Refusal("Give a moisture below 100 %", "nothing can be brought down to 100 %%: the formula would divide by 100 - 100 = 0")
	}
	g.handling = quantity.Zero(quantity.Percent)
	if c.Handling != "" {
		if g.handling, err = terminal.ParsePercent("Handling", c.Handling); err != nil {
			return g, err
		}
	}
	g.rounding, err = quantity.ParseRounding(c.Round)
	return g, err
}

var hundred = quantity.Int(100, quantity.Percent)

// work records the formula. Each result is calculated from the given figures, not from another
// result, and rounded once.
func (c Shrink) work(g shrinkGiven) (*worksheet.Sheet, error) {
	s := &worksheet.Sheet{}
	s.Section(message.Words("Given"))
	weight := s.Given("weight", message.Words("Wet weight"), g.weight, quantity.Unrounded, worksheet.Unsourced)
	from := s.Given("from", message.Words("Moisture"), g.from, quantity.Unrounded, worksheet.Unsourced)
	to := s.Given("to", message.Words("Brought down to"), g.to, quantity.Unrounded, worksheet.Unsourced)
	rate := s.Given("handling.rate", message.Words("Handling"), g.handling, quantity.Unrounded, worksheet.Unsourced)
	s.Section(message.Words("Results"))
	water := waterShrink(s, g, weight, from, to)
	handling := handlingLoss(s, g, c.Basis, rate, weight, water)
	left := s.Work("dry", message.Words("Weight left"), worksheet.Less(weight, water, handling), g.rounding, worksheet.Unsourced)
	if left.Value().Sign() < 0 {
		return nil, terminal.Refusal("Give a smaller handling loss", "nothing would be left of %s: handling takes %s more than there is", weight.Printed(), left.Value().Neg())
	}
	return s, nil
}

// overDry returns the loss on grain drier than the base; nil for any other.
func (c Shrink) overDry(g shrinkGiven) (*settle.OverDry, error) {
	if !g.from.Less(g.to) {
		if c.Commodity+c.Price != "" {
			return nil, terminal.Refusal("Leave --commodity and --price out", "%s is not below %s: nothing is given away", g.from, g.to)
		}
		return nil, nil
	}
	terms := settle.OverDryTerms{
		Weight: g.weight, Moisture: g.from, Base: g.to,
		Weights: g.rounding, Quantities: g.rounding, Money: cents, Remark: message.New("not paid unless the rates credit it"),
	}
	if c.Commodity == "" {
		if c.Price != "" {
			return nil, terminal.Refusal("Add --commodity", "a price is per bushel, and it is not said of what grain")
		}
		return terms.Work(), nil
	}
	crop, err := entry.Commodity(c.Commodity)
	if err != nil {
		return nil, err
	}
	terms.Settle, terms.Bushel = quantity.Bushel, crop.Bushel
	switch {
	case g.weight.Unit() == quantity.Kg:
		terms.Settle = quantity.Tonne
	case !quantity.Recorded(crop.Bushel):
		return nil, terminal.Refusal("Leave --commodity out", "no bushel of %s is set by the law read", crop.ID)
	}
	if c.Price != "" {
		if terms.Price, err = entry.ParsePrice(c.Price, terms.Settle); err != nil {
			return nil, err
		}
	}
	return terms.Work(), nil
}

var cents = quantity.To("0.01", quantity.HalfUp)

// waterShrink returns the shrink as an exact operand, and records it rounded.
func waterShrink(s *worksheet.Sheet, g shrinkGiven, weight, from, to *worksheet.Step) worksheet.Operand {
	source := message.Words("W x (Mi - Mf) / (100 - Mf)")
	if !g.from.More(g.to) {
		reason := message.New("%s is not above %s", from.Printed(), to.Printed())
		return s.Skip("water", message.Words("Water shrink"), g.weight.Unit(), g.rounding, reason, source)
	}
	points, rest := worksheet.Points(from, to), worksheet.Points(worksheet.Const(hundred), to)
	s.Work("percent", message.Words("Percent of the wet weight"), worksheet.Over(worksheet.Times(points, worksheet.Const(hundred)), rest), g.rounding, source)
	water := worksheet.Over(worksheet.Times(weight, points), rest)
	s.Work("water", message.Words("Water shrink"), water, g.rounding, source)
	return water
}

// handlingLoss returns the loss as an exact operand, and records it rounded.
func handlingLoss(s *worksheet.Sheet, g shrinkGiven, basis string, rate, weight *worksheet.Step, water worksheet.Operand) worksheet.Operand {
	if g.handling.IsZero() {
		return s.Skip("handling", message.Words("Handling loss"), g.weight.Unit(), g.rounding, message.Words("none was given"), worksheet.Unsourced)
	}
	loss, source := worksheet.PercentOf(rate, weight), message.Words("percent of the wet weight, added to the water shrink")
	if basis == "dried" {
		loss, source = worksheet.PercentOf(rate, worksheet.Less(weight, water)), message.Words("percent of the weight left after water shrink, so that the two multiply")
	}
	s.Work("handling", message.Words("Handling loss"), loss, g.rounding, source)
	return loss
}
