package rates

import (
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle/trial"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

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
	return trial.Grid(from, from.Add(gridLong), gridStep)
}

// Trial returns the load settled under the chosen edition at rising moistures. It is cached.
func (r *Rates) Trial() *Table {
	e := r.edition()
	if e == nil {
		return &Table{}
	}
	if r.trial == nil {
		r.trial = trialTable(r.session.Language, e, trial.Of(e, r.loads.on(e).under(e), grid(e)))
		r.trial.load = r.Tried()
	}
	return r.trial
}

// trialColumns are the columns of a trial. A narrow window leaves out handling
// first, then drying, points, and water.
func trialColumns(in session.Language, e *rates.Edition) model.Columns[trial.Row] {
	weight, unit := e.Units.Weight.String(), e.Units.Settle.String()
	column := func(title string, step func(trial.Row) *worksheet.Step) model.ColumnOf[trial.Row] {
		return model.Figures(title, 6, func(row trial.Row) string { return figureAlone(step(row)) }).Wishing(8)
	}
	return model.Columns[trial.Row]{
		model.Figures(in.Say("Moist"), 6, func(row trial.Row) string { return row.Moisture.Fixed(1) }).Wishing(8),
		column(in.Say("Points"), func(row trial.Row) *worksheet.Step { return row.Points }).Dropped(2),
		column(in.Say("Water %s", weight), func(row trial.Row) *worksheet.Step { return row.Settlement.Water }).Dropped(1),
		column(in.Say("Handl %s", weight), func(row trial.Row) *worksheet.Step { return row.Settlement.Handling }).Dropped(4),
		column(in.Say("Taken %"), func(row trial.Row) *worksheet.Step { return row.Taken }),
		column(in.Say("Dry %s", weight), func(row trial.Row) *worksheet.Step { return row.Settlement.Dry }),
		column(in.Say("Settled"), func(row trial.Row) *worksheet.Step { return row.Settlement.Quantity }),
		column(in.Say("Drying $"), func(row trial.Row) *worksheet.Step { return row.Settlement.Drying }).Dropped(3),
		model.Figures(in.Say("Off, on $"), 6, offAndOn).Wishing(8),
		column(in.Say("$/%s net", unit), func(row trial.Row) *worksheet.Step { return row.Each }),
	}
}

func trialTable(in session.Language, e *rates.Edition, t *trial.Trial) *Table {
	columns := trialColumns(in, e)
	out := &Table{Columns: columns.Heads(), said: map[string]string{}}
	for _, row := range t.Rows {
		key := row.Moisture.FixedString(1)
		one := model.Row{Key: key}
		if row.Settlement == nil {
			one.State = model.Stop
			one.Cells = []string{row.Moisture.Fixed(1), in.Say("no")}
			out.said[key] = in.Say("At %s: %s", key, session.OneLine(in.Text(row.Refused)))
		} else {
			one.Cells = columns.Cells(row)
			out.said[key] = trialSentence(in, key, row)
		}
		out.Rows = append(out.Rows, one)
	}
	return out
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

// offAndOn is the sum of discounts, premiums and charges, as the owner reads it: + is to the owner,
// - from the owner.
func offAndOn(row trial.Row) string {
	if row.Settlement.Adjustments.Kind() == worksheet.NotApplied {
		return session.NoFigure
	}
	return strings.Replace(session.ToOwner(row.Settlement.ToOwner()), "$", "", 1)
}

func trialSentence(in session.Language, key string, row trial.Row) string {
	s := row.Settlement
	if s.Price == nil {
		return in.Say("At %s: %s taken, %s settled, %s in charges and discounts, without a price.", key, row.Taken.Printed(), s.Quantity.Printed(), session.ToOwner(s.ToOwner()))
	}
	return in.Say("At %s: %s taken, %s settled, %s in charges and discounts, %s payable.", key, row.Taken.Printed(), s.Quantity.Printed(), session.ToOwner(s.ToOwner()), s.Payable.Printed())
}
