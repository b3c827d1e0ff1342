package rates

import (
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// trialTable is one load at a grid of moistures under one edition.
type trialTable struct {
	head []string
	rows []model.Row
	said map[string]string // what a row says in a sentence, by its key
}

// The grid of a trial: from a point under where anything is taken, by halves.
var (
	gridStep  = quantity.Of("0.5", quantity.Percent)
	gridUnder = quantity.Int(1, quantity.Percent)
	gridLong  = quantity.Int(14, quantity.Percent)
	gridFrom  = quantity.Int(12, quantity.Percent)
)

// grid is the moistures an edition is tried at.
func grid(e *rates.Edition) []quantity.Amount {
	from := gridFrom
	for i, c := range []rule.Cell{e.Shrink.To, e.Shrink.Trigger, e.Drying.Trigger} {
		if c.Given() && (i == 0 || c.Amount.Less(from)) {
			from = c.Amount
		}
	}
	from = quantity.To("0.5", quantity.Down).Apply(from.Sub(gridUnder))
	return settle.Grid(from, from.Add(gridLong), gridStep)
}

// try works the trial of the chosen edition, once.
func (r *Rates) try() *trialTable {
	e := r.edition()
	if e == nil {
		return &trialTable{}
	}
	if r.trial == nil {
		r.trial = tryTable(e, settle.Try(e, r.tryOn(e).under(e), grid(e)))
	}
	return r.trial
}

// TrialHead are the headings of the trial.
func (r *Rates) TrialHead() []string { return r.try().head }

// TrialRows are the moistures and what each comes to.
func (r *Rates) TrialRows() []model.Row { return r.try().rows }

// TrialSaid is which load is tried, and what a moisture of the trial comes to
// or why it is turned away.
func (r *Rates) TrialSaid(key string) string { return session.Join("\n", r.Tried(), r.try().said[key]) }

func tryTable(e *rates.Edition, t *settle.Trial) *trialTable {
	weight, unit := e.Units.Weight.String(), e.Units.Settle.String()
	out := &trialTable{said: map[string]string{}, head: []string{
		session.Say("Moist"), session.Say("Points"), session.Say("Water %s", weight), session.Say("Handl %s", weight), session.Say("Taken %"),
		session.Say("Dry %s", weight), session.Say("Settled"), session.Say("Drying $"), session.Say("Charges $"), session.Say("$/%s net", unit),
	}}
	for _, row := range t.Rows {
		key := row.Moisture.FixedString(1)
		one := model.Row{Key: key, Cells: []string{row.Moisture.Fixed(1)}}
		if row.Settlement == nil {
			one.State = model.Stop
			one.Cells = append(one.Cells, session.Say("no"))
			out.said[key] = session.Say("At %s: %s", key, session.OneLine(row.Refused))
		} else {
			one.Cells = append(one.Cells, trialCells(row)...)
			out.said[key] = trialSentence(key, row)
		}
		out.rows = append(out.rows, one)
	}
	return out
}

func trialCells(row settle.TrialRow) []string {
	s := row.Settlement
	steps := []*worksheet.Step{row.Points, s.Water, s.Handling, row.Taken, s.Dry, s.Quantity, s.Drying, s.Charges, row.Each}
	cells := make([]string, len(steps))
	for i, step := range steps {
		cells[i] = figureAlone(step)
	}
	return cells
}

// figureAlone is a printed figure without its unit or dollar sign.
func figureAlone(step *worksheet.Step) string {
	if step.Kind() == worksheet.NotApplied {
		return session.NoFigure
	}
	figure, _, _ := strings.Cut(step.Printed(), " ")
	figure, _, _ = strings.Cut(figure, "/")
	return strings.Replace(figure, "$", "", 1)
}

func trialSentence(key string, row settle.TrialRow) string {
	s := row.Settlement
	if s.Price == nil {
		return session.Say("At %s: %s taken, %s settled, %s in charges, price later.", key, row.Taken.Printed(), s.Quantity.Printed(), s.Charges.Printed())
	}
	return session.Say("At %s: %s taken, %s settled, %s in charges, %s payable.", key, row.Taken.Printed(), s.Quantity.Printed(), s.Charges.Printed(), s.Payable.Printed())
}
