package entry

import (
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Fault is an invalid text, by its field.
type Fault struct {
	Field string
	Err   error
}

// Error returns the message alone, without its field.
func (f Fault) Error() string { return f.Err.Error() }

// Unwrap gives the reason.
func (f Fault) Unwrap() error { return f.Err }

// Trial reads loads that are in no book, to try rates on: gross and tare, or net
// alone, with moisture, price and results by the ids of the fields of a load.
type Trial struct {
	Edition *rates.Edition
	Unit    quantity.Unit // of a weight without one; [quantity.Plain] is the edition's
	Needed  []string      // fields that may not be left out
	Source  message.Text  // where the figures come from, in words
}

// Read reads the texts. A field without a text is absent: no weights, no moisture, price later, not
// tested. The faults are in field order, and the facts leave out the invalid fields.
func (t Trial) Read(texts map[string]string) (settle.Facts, []Fault) {
	r := trialReader{Trial: t, left: map[string]string{}}
	for id, text := range texts {
		if text = strings.TrimSpace(text); text != "" {
			r.put(id, text)
		}
	}
	for _, id := range t.Needed {
		r.left[id] += "" // an empty text is read, and refused as such
	}
	r.weights()
	r.moisture()
	r.price()
	r.findings()
	return r.facts, r.faults
}

// put stores a text under the id of its field; a factor may be given by its abbreviation. Giving
// one factor under two names is a fault.
func (r *trialReader) put(id, text string) {
	if factor, known := r.Edition.Commodity.FactorCalled(id); known {
		id = string(factor.ID)
	}
	if _, twice := r.left[id]; twice {
		r.fault(id, message.Invalid.Errorf("%s is given twice. Give it once", id))
	}
	r.left[id] = text
}

type trialReader struct {
	Trial
	left   map[string]string // not read yet
	facts  settle.Facts
	faults []Fault
}

func (r *trialReader) fault(id string, err error) bool {
	if err != nil {
		r.faults = append(r.faults, Fault{id, err})
	}
	return err != nil
}

// take returns a text and marks it as read.
func (r *trialReader) take(id string) (text string, given bool) {
	text, given = r.left[id]
	delete(r.left, id)
	return text, given
}

func (r *trialReader) weight(id, name string) (a quantity.Amount, ok bool) {
	text, given := r.take(id)
	if !given {
		return a, false
	}
	unit := r.Unit
	if unit == quantity.Plain {
		unit = r.Edition.Units.Weight
	}
	a, err := ParseWeight(name, text, unit)
	return a, !r.fault(id, err)
}

// weights reads gross and tare, or a net. Rates do not depend on the truck, so for a net alone the
// tare is one unit of weight.
func (r *trialReader) weights() {
	if net, ok := r.weight("net", "Net"); ok {
		if net.Sign() <= 0 {
			r.fault("net", message.Invalid.Errorf("a load of %s has nothing to settle. Give a weight above zero", net))
			return
		}
		truck := quantity.Int(1, net.Unit())
		r.draft(net.Add(truck), truck, message.New("no truck was weighed; %s stands for it", truck))
		return
	}
	gross, okGross := r.weight("gross", "Gross")
	tare, okTare := r.weight("tare", "Tare")
	if okGross && okTare {
		r.draft(gross, tare, r.Source)
	}
}

func (r *trialReader) draft(gross, tare quantity.Amount, source message.Text) {
	r.facts.Drafts = []settle.Draft{{Gross: gross, Tare: tare, GrossSource: source, TareSource: source}}
}

func (r *trialReader) moisture() {
	if text, given := r.take(string(grain.Moisture)); given {
		a, err := Moisture().Parse(text)
		if !r.fault(string(grain.Moisture), err) {
			r.facts.Moisture = settle.Reading{Percent: a, Source: r.Source}
		}
	}
}

func (r *trialReader) price() {
	text, given := r.take("price")
	if !given || strings.EqualFold(text, LaterText) {
		return
	}
	a, err := ParsePrice(text, r.Edition.Units.Settle)
	if !r.fault("price", err) {
		r.facts.Price = &settle.Price{Amount: a, Source: r.Source}
	}
}

// findings reads the results in the order of the grain; texts left over are no results of it.
func (r *trialReader) findings() {
	for _, factor := range r.Edition.Commodity.Factors {
		text, given := r.take(string(factor.ID))
		if !given {
			continue
		}
		if measured, ok := r.Edition.Factor(factor.ID); ok {
			factor = measured
		}
		one, err := ParseFinding(factor, text)
		if r.fault(string(factor.ID), err) {
			continue
		}
		found := settle.Finding{Factor: one.Factor, Present: one.Present, Amount: quantity.Zero(quantity.Count), Source: r.Source}
		if one.Amount != nil {
			found.Amount = *one.Amount
		}
		r.facts.Findings = append(r.facts.Findings, found)
	}
	for _, id := range slices.Sorted(maps.Keys(r.left)) {
		_, err := FactorOf(r.Edition.Commodity, r.Edition, id)
		r.fault(id, err)
	}
}
