package lab

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/dryness"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// benchDry prints whether grain is dry enough.
type benchDry struct {
	terminal.BookFlags
	storingFlags
	Load      string `arg:"" optional:"" help:"A load, or the number of its ticket." placeholder:"LOAD"`
	Commodity string `aliases:"crop" help:"In place of a load: the grain, by id or name." placeholder:"GRAIN"`
	Class     string `help:"Class of the grain." placeholder:"CLASS"`
	Moisture  string `help:"In place of a load: its moisture." placeholder:"PERCENT"`
	Tolerance string `help:"How far the meter may be off, in points." placeholder:"POINTS"`
	JSON      bool   `help:"Print for programs: every figure as text."`
}

func (benchDry) Help() string {
	return `The house's own limits for the grain are asked, and where it has none, the moisture at which its rates begin to take something; under Canadian rules also the moisture class. An answer is never more certain than the reading: where the limit lies within the meter's tolerance it says so.

    tenth bench dry L12
    tenth bench dry 1042
    tenth bench dry --commodity wheat-hrs --moisture 14.2 --tolerance 0.2
    tenth bench dry --commodity corn --moisture 17 --until 2027-03-01 --stored-at 50F

With --until, published tables say whether it keeps so long; where it does not, the grower's ways are set side by side, as far as their figures are known.`
}

func (c benchDry) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		asked, advice, found, err := c.judge(p)
		if err != nil {
			return err
		}
		if c.Until != "" {
			return c.tellWithStoring(p, asked, advice)
		}
		if !found {
			return terminal.Refusal("A manager sets them with \"tenth bench setup --dry\"", "the house has no limits for this grain")
		}
		if c.JSON {
			return p.PrintJSON(adviceJSON(advice))
		}
		tellAdvice(p, advice)
		return nil
	})
}

func tellAdvice(p *terminal.Session, advice dryness.Advice) {
	p.Say("Read as %s.", advice.Band)
	for _, v := range advice.Verdicts {
		p.Say("%s: %s. %s", message.Own(capital(p.Printer.Text(v.Purpose))), v.Short(), v.Reason)
	}
	p.Say("What can be done:")
	for _, o := range advice.Options {
		p.Say("  %s", o.Text)
	}
}

// tellWithStoring answers whether the grain keeps, after the house's own limits where
// it has any.
func (c benchDry) tellWithStoring(p *terminal.Session, asked *load.Load, advice dryness.Advice) error {
	question, err := c.ask(p, asked, advice.Band.Reading)
	if err != nil {
		return err
	}
	stored, err := question.Answer()
	if err != nil {
		return err
	}
	if c.JSON {
		out := adviceJSON(advice)
		out["storing"] = storedJSON(stored)
		return p.PrintJSON(out)
	}
	if len(advice.Verdicts) > 0 {
		tellAdvice(p, advice)
	}
	return tellStoring(p, question, stored)
}

// judge is the load that is asked about, the advice and whether the house has limits for it.
func (c benchDry) judge(p *terminal.Session) (*load.Load, dryness.Advice, bool, error) {
	if c.Load != "" {
		l, err := p.LoadNamed(c.Load)
		if err != nil {
			return nil, dryness.Advice{}, false, err
		}
		advice, found, err := office.DryEnough(p, p.Desk, l)
		return l, advice, found, err
	}
	if c.Commodity == "" || c.Moisture == "" {
		return nil, dryness.Advice{}, false, terminal.Refusal("Give a load, or --commodity and --moisture", "it is not said what is to be judged")
	}
	crop, err := entry.Commodity(c.Commodity)
	if err != nil {
		return nil, dryness.Advice{}, false, err
	}
	percent, err := moisture.MoistureField.Parse(c.Moisture)
	if err != nil {
		return nil, dryness.Advice{}, false, err
	}
	tolerance, err := pointsIn("Tolerance", c.Tolerance)
	if err != nil {
		return nil, dryness.Advice{}, false, err
	}
	asked := &load.Load{Details: load.Details{Commodity: crop.ID, Class: c.Class, Day: p.Today()}, Sample: load.Sample{Moisture: &load.Moisture{Percent: percent}}}
	rules, found, err := office.DryRules(p, p.Desk, asked)
	if err != nil {
		return nil, dryness.Advice{}, false, err
	}
	advice, err := rules.Judge(moisture.MoistureRounding.Apply(percent), tolerance, nil)
	advice.Options = append(advice.Options, office.OverDryOptions(p.Desk, asked)...)
	return asked, advice, found, err
}

func adviceJSON(a dryness.Advice) map[string]any {
	verdicts, options := []map[string]any{}, []map[string]string{}
	for _, v := range a.Verdicts {
		verdicts = append(verdicts, map[string]any{
			"for": string(v.Purpose), "limit": v.Limit.String(), "class": v.Class, "dry": v.Dry, "certain": v.Certain,
			"over": v.Over.String(), "reason": v.Reason.String(),
		})
	}
	for _, o := range a.Options {
		options = append(options, map[string]string{"option": o.Name, "text": o.Text.String()})
	}
	return map[string]any{"reading": a.Band.Reading.String(), "low": amountOrNone(a.Band.Stated(), a.Band.Low), "high": amountOrNone(a.Band.Stated(), a.Band.High), "verdicts": verdicts, "options": options}
}

func amountOrNone(there bool, a quantity.Amount) string {
	if !there {
		return ""
	}
	return fmt.Sprint(a)
}
