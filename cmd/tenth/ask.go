package main

import (
	"fmt"
	"strings"

	"tenthpoint/internal/load"
)

// question is one thing asked for. Check says in a sentence what is wrong with
// an answer; it is asked again until nothing is.
type question struct {
	text     string
	optional string // what Enter alone means; empty when it must be answered
	check    func(answer string) error
}

// answer asks until there is an answer that is right. Questions stand on
// standard error, so that what the command prints can go elsewhere.
func (p *post) answer(q question) (string, error) {
	for {
		fmt.Fprint(p.err, q.text)
		if q.optional != "" {
			fmt.Fprintf(p.err, " (Enter: %s)", q.optional)
		}
		fmt.Fprint(p.err, ": ")
		line, err := p.in.ReadString('\n')
		answer := strings.TrimSpace(line)
		if !p.typing {
			fmt.Fprintln(p.err, answer) // a terminal has shown it already
		}
		switch {
		case err != nil && answer == "":
			return "", refusal("Nothing was written. Give it by a flag, or answer", "the input ended before there was an answer to %q", q.text)
		case answer == "" && q.optional != "":
			return "", nil
		case answer == "":
			continue
		}
		if err := q.check(answer); err == nil {
			return answer, nil
		} else {
			for _, c := range complaints(err) {
				fmt.Fprintln(p.err, strings.TrimSpace("  "+sentence(c.what)+" "+sentence(c.hint)))
			}
		}
	}
}

// ask asks for what the flags left out, in the order of the slip.
func (c *receiveCommand) ask(p *post) error {
	asked := false
	need := func(missing bool, cell *string, q question) error {
		if !missing {
			return nil
		}
		asked = true
		answer, err := p.answer(q)
		*cell = answer
		return err
	}
	if err := need(c.Grower == "", &c.Grower, question{text: "Grower, code or name", check: func(a string) error { _, err := p.grower(a); return err }}); err != nil {
		return err
	}
	if err := need(c.Commodity == "", &c.Commodity, question{text: "Grain", check: func(a string) error { return p.taken(a) }}); err != nil {
		return err
	}
	if err := need(c.Truck == "", &c.Truck, question{text: "Truck, number or plate", check: func(string) error { return nil }}); err != nil {
		return err
	}
	if err := c.askWeights(p, need); err != nil {
		return err
	}
	if err := need(c.Moisture == "", &c.Moisture, question{text: "Moisture, %", check: func(a string) error { _, err := moistureIn(a); return err }}); err != nil {
		return err
	}
	if !asked {
		return nil
	}
	return c.askMore(p)
}

// taken asks that a grain is taken here.
func (p *post) taken(text string) error {
	c, err := commodityIn(text)
	if err != nil {
		return err
	}
	_, err = p.edition(load.Details{Commodity: c.ID})
	return err
}

func (c *receiveCommand) askWeights(p *post, need func(bool, *string, question) error) error {
	var gross, tare string
	unit := p.Profile().WeightUnit()
	scale, known := p.Profile().Scale(c.Scale)
	if scales := p.Profile().Scales; !known && len(scales) > 0 {
		scale = scales[0]
	}
	weight := func(name string) func(string) error {
		return func(a string) error {
			w, err := weightIn(name, a, unit)
			if err != nil {
				return err
			}
			return scale.CheckWeight(w)
		}
	}
	if err := need(len(c.Gross) == 0, &gross, question{text: "Gross, " + unit.String(), check: weight("Gross")}); err != nil {
		return err
	}
	q := question{text: "Tare, " + unit.String(), check: weight("Tare")}
	if t, known, err := p.truck(c.Truck); err == nil && known && t.Tare != nil {
		q.optional = fmt.Sprintf("the stored tare, %s of %s", t.Tare, t.Taken)
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
	return nil
}

// askMore asks for what may be left out: the factors the rates look at, the
// price, the bin.
func (c *receiveCommand) askMore(p *post) error {
	grainTaken, err := commodityIn(c.Commodity)
	if err != nil {
		return err
	}
	e, err := p.edition(load.Details{Commodity: grainTaken.ID, Schedule: c.Schedule})
	if err != nil {
		return err
	}
	if len(c.Factor) == 0 {
		for _, d := range e.Discounts {
			id := string(d.Factor.ID)
			if id == "moisture" || strings.Contains(strings.Join(c.Factor, " "), id+"=") {
				continue
			}
			name := d.Factor.Name
			if d.Factor.YesNo {
				name += ", yes or no"
			} else {
				name += ", " + d.Factor.Unit.String()
			}
			answer, err := p.answer(question{text: name, optional: "not tested", check: func(a string) error { _, err := finding(grainTaken, e, id+"="+a); return err }})
			if err != nil {
				return err
			}
			if answer != "" {
				c.Factor = append(c.Factor, id+"="+answer)
			}
		}
	}
	if c.Price == "" && c.Contract == "" {
		c.Price, err = p.answer(question{text: "Price, $/" + e.Units.Settle.String(), optional: "later", check: func(a string) error { _, err := priceIn(a, e.Units.Settle); return err }})
		if err != nil {
			return err
		}
	}
	if c.Bin == "" {
		c.Bin, err = p.answer(question{text: "Pit or bin", optional: "none", check: func(a string) error { _, err := p.bin(a); return err }})
	}
	return err
}
