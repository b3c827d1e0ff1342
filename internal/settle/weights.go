package settle

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// workWeights records gross, tare and net, in the edition's unit where the scale weighs in another.
func workWeights(d *calculation) {
	w := weigh(d.sheet, d.facts.Drafts)
	d.out.Gross, d.out.Tare = w.Gross, w.Tare
	d.out.Net = inUnit(d.sheet, w.Net, d.edition.Units.Weight, d.places().Weight)
	d.left, d.clean, d.out.Clean = d.out.Net, d.out.Net, d.out.Net
}

// weigh records gross, tare and net, summing drafts where there are several. Weights are recorded
// as the scale gave them: rounding is the scale's.
func weigh(s *worksheet.Sheet, drafts []Draft) Weighed {
	s.Section(message.Words("Weights"))
	w := Weighed{Sheet: s}
	if len(drafts) == 1 {
		one := drafts[0]
		w.Gross = s.Given(LineGross, message.Words("Gross"), one.Gross, quantity.Unrounded, one.GrossSource)
		w.Tare = s.Given(LineTare, message.Words("Tare"), one.Tare, quantity.Unrounded, one.TareSource)
	} else {
		w.Gross, w.Tare = inDrafts(s, drafts)
	}
	w.Net = s.Work(LineNet, message.Words("Net"), worksheet.Less(w.Gross, w.Tare), quantity.Unrounded, worksheet.Unsourced)
	return w
}

func inDrafts(s *worksheet.Sheet, drafts []Draft) (gross, tare *worksheet.Step) {
	var full, empty []worksheet.Operand
	for i, draft := range drafts {
		n := i + 1
		full = append(full, s.Given(fmt.Sprintf("gross.%d", n), message.New("Gross, %s", draft.Name), draft.Gross, quantity.Unrounded, draft.GrossSource))
		empty = append(empty, s.Given(fmt.Sprintf("tare.%d", n), message.New("Tare, %s", draft.Name), draft.Tare, quantity.Unrounded, draft.TareSource))
	}
	gross = s.Work(LineGross, message.Words("Gross"), worksheet.Sum(full[0], full[1:]...), quantity.Unrounded, message.Words("split-weighed"))
	tare = s.Work(LineTare, message.Words("Tare"), worksheet.Sum(empty[0], empty[1:]...), quantity.Unrounded, message.Words("split-weighed"))
	return gross, tare
}

// inUnit converts a net weight to another unit of weight, both already checked, rounded to the
// place of weights in that unit.
func inUnit(s *worksheet.Sheet, net *worksheet.Step, unit quantity.Unit, place quantity.Rounding) *worksheet.Step {
	if net.Value().Unit() == unit {
		return net
	}
	factor, err := quantity.MassFactor(net.Value().Unit(), unit)
	if err != nil {
		panic("settle: " + err.Error())
	}
	return s.Work(LineConvertedNet, message.New("Net in %s", unit), worksheet.Times(net, worksheet.Const(factor)), place, message.Words("1 lb is 0.45359237 kg by definition"))
}
