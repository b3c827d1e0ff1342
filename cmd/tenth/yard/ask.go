package yard

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/rates"
)

// question is one prompt. Check returns the error of an answer; the question is repeated until
// there is none.
type question struct {
	text     string
	optional string // what Enter alone means; empty when it must be answered
	check    func(answer string) error
}

// ask repeats a question until the answer is valid. Questions are printed on standard error, so
// that the command's output can be redirected.
func ask(p *terminal.Session, q question) (string, error) {
	for {
		fmt.Fprint(p.Stderr, q.text)
		if q.optional != "" {
			fmt.Fprintf(p.Stderr, " (Enter: %s)", q.optional)
		}
		fmt.Fprint(p.Stderr, ": ")
		line, err := p.Stdin.ReadString('\n')
		answer := strings.TrimSpace(line)
		if !p.Typing {
			fmt.Fprintln(p.Stderr, answer) // a terminal has shown it already
		}
		switch {
		case err != nil && answer == "":
			return "", terminal.Refusal("Nothing was written. Give it by a flag, or answer", "the input ended before there was an answer to %q", q.text)
		case answer == "" && q.optional != "":
			return "", nil
		case answer == "":
			continue
		}
		if err := q.check(answer); err == nil {
			return answer, nil
		} else {
			for _, c := range terminal.Complaints(err) {
				fmt.Fprintln(p.Stderr, strings.TrimSpace("  "+terminal.Sentence(c.What)+" "+terminal.Sentence(c.Hint)))
			}
		}
	}
}

// right parses an answer as the text of a field, in addition to the flags.
func (c *Receive) right(p *terminal.Session, field string) func(answer string) error {
	return func(answer string) error {
		form, err := c.form(p)
		if form == nil {
			return err
		}
		form.Set(field, answer)
		return form.Refused()[field]
	}
}

// ask prompts for what the flags left out, in the order of the slip.
func (c *Receive) ask(p *terminal.Session) error {
	asked := false
	need := func(missing bool, cell *string, q question) error {
		if !missing {
			return nil
		}
		asked = true
		answer, err := ask(p, q)
		*cell = answer
		return err
	}
	if err := need(c.Grower == "", &c.Grower, question{text: "Grower, code or name", check: c.right(p, "grower")}); err != nil {
		return err
	}
	if err := need(c.Commodity == "", &c.Commodity, question{text: "Grain", check: c.settles(p)}); err != nil {
		return err
	}
	if err := need(c.Truck == "", &c.Truck, question{text: "Truck, number or plate", check: c.right(p, "truck")}); err != nil {
		return err
	}
	if err := c.askWeights(p, need); err != nil {
		return err
	}
	if err := need(c.Moisture == "", &c.Moisture, question{text: "Moisture, %", check: c.right(p, "moisture")}); err != nil {
		return err
	}
	if !asked {
		return nil
	}
	return c.askMore(p)
}

// settles asks that a grain is taken here and has rates.
func (c *Receive) settles(p *terminal.Session) func(answer string) error {
	return func(answer string) error {
		if err := c.right(p, "commodity")(answer); err != nil {
			return err
		}
		known, err := entry.CommodityHere(p.Profile(), answer)
		if err != nil {
			return err
		}
		_, err = editionOf(p, load.Details{Commodity: known.ID, Schedule: c.Schedule})
		return err
	}
}

func (c *Receive) askWeights(p *terminal.Session, need func(bool, *string, question) error) error {
	var gross, tare string
	unit := p.Profile().WeightUnit()
	if err := need(len(c.Gross) == 0, &gross, question{text: "Gross, " + unit.String(), check: c.right(p, "gross")}); err != nil {
		return err
	}
	q := question{text: "Tare, " + unit.String(), check: c.right(p, "tare")}
	h := office.NewEntering(p, p.Desk)
	if truck, known, err := entry.Truck(h, c.Truck); err == nil && known {
		if t, stored, err := entry.StoredTare(h, load.Truck{ID: truck.ID}); err == nil && stored {
			q.optional = p.Printer.Say("the stored tare, %s of %s", t.Tare, t.Taken)
		}
	}
	missing := len(c.Tare) == 0 && !c.StoredTare
	if err := need(missing, &tare, q); err != nil {
		return err
	}
	if gross != "" {
		c.Gross = []string{gross}
	}
	if tare != "" {
		c.Tare = []string{tare}
	}
	c.StoredTare = c.StoredTare || missing && tare == ""
	typed := len(c.Gross)+len(c.Tare) > 0
	return need(typed && c.Manual == "", &c.Manual, question{text: "Why are the weights typed", check: func(answer string) error {
		return guard.Typed(answer, p.Profile())
	}})
}

// askMore prompts for optional values: the factors of the rates, the price, the bin.
func (c *Receive) askMore(p *terminal.Session) error {
	form, err := c.form(p)
	if err != nil {
		return err
	}
	e, err := editionOf(p, form.Details())
	if err != nil {
		return err
	}
	if len(c.Factor) == 0 {
		if err := c.askFactors(p, e); err != nil {
			return err
		}
	}
	if c.Price == "" && c.Contract == "" {
		c.Price, err = ask(p, question{text: "Price, $/" + e.Units.Settle.String(), optional: "later", check: c.right(p, "price")})
		if err != nil {
			return err
		}
	}
	if c.Bin == "" {
		c.Bin, err = ask(p, question{text: "Pit or bin", optional: "none", check: c.right(p, "bin")})
	}
	return err
}

// askFactors prompts for each result that the rates use.
func (c *Receive) askFactors(p *terminal.Session, e *rates.Edition) error {
	for _, d := range e.Discounts {
		id := string(d.Factor.ID)
		if d.Factor.ID == grain.Moisture || strings.Contains(strings.Join(c.Factor, " "), id+"=") {
			continue
		}
		name := d.Factor.Name
		if d.Factor.YesNo {
			name += ", yes or no"
		} else {
			name += ", " + d.Factor.Unit.String()
		}
		answer, err := ask(p, question{text: name, optional: "not tested", check: c.right(p, id)})
		if err != nil {
			return err
		}
		if answer != "" {
			c.Factor = append(c.Factor, id+"="+answer)
		}
	}
	return nil
}

// editionOf are the rates a load of these details will be settled under.
func editionOf(p *terminal.Session, d load.Details) (*rates.Edition, error) {
	if d.Day.IsZero() {
		d.Day = p.Today()
	}
	return entry.EditionOf(p.Profile(), p.Rates(), d)
}
