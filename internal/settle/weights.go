package settle

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
)

// weights writes down gross, tare and net, summing drafts where there are
// several. Weights go down as the scale gave them: rounding is the scale's.
func (d *desk) weights() {
	d.sheet.Section("Weights")
	if len(d.facts.Drafts) == 1 {
		one := d.facts.Drafts[0]
		d.out.Gross = d.sheet.Given("gross", "Gross", one.Gross, quantity.Unrounded, one.GrossSource)
		d.out.Tare = d.sheet.Given("tare", "Tare", one.Tare, quantity.Unrounded, one.TareSource)
	} else {
		d.drafts()
	}
	net := d.sheet.Work("net", "Net", working.Less(d.out.Gross, d.out.Tare), quantity.Unrounded, "")
	d.out.Net = d.inEditionUnit(net)
	d.left, d.clean = d.out.Net, d.out.Net
	d.out.Clean = d.clean
}

func (d *desk) drafts() {
	var gross, tare []working.Operand
	for i, draft := range d.facts.Drafts {
		n := i + 1
		gross = append(gross, d.sheet.Given(fmt.Sprintf("gross.%d", n), "Gross, "+draft.Name, draft.Gross, quantity.Unrounded, draft.GrossSource))
		tare = append(tare, d.sheet.Given(fmt.Sprintf("tare.%d", n), "Tare, "+draft.Name, draft.Tare, quantity.Unrounded, draft.TareSource))
	}
	d.out.Gross = d.sheet.Work("gross", "Gross", working.Sum(gross[0], gross[1:]...), quantity.Unrounded, "split-weighed")
	d.out.Tare = d.sheet.Work("tare", "Tare", working.Sum(tare[0], tare[1:]...), quantity.Unrounded, "split-weighed")
}

// inEditionUnit turns the net into the edition's unit of weight where the scale
// weighs in another.
func (d *desk) inEditionUnit(net *working.Step) *working.Step {
	unit := d.edition.Units.Weight
	if net.Value().Unit() == unit {
		return net
	}
	factor, err := quantity.MassFactor(net.Value().Unit(), unit)
	if err != nil {
		d.refuse(Problem{Field: "gross", Sentence: "Net is " + net.Value().String() + ": " + err.Error() + "."})
		return net
	}
	source := "1 lb is 0.45359237 kg by definition"
	return d.sheet.Work("net.converted", "Net in "+unit.String(), working.Times(net, working.Const(factor)), d.places().Weight, source)
}
