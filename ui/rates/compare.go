package rates

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// others are the editions the chosen one can be set beside: those of the same
// grain, the one it corrects or follows first.
func (r *Rates) others() []*rates.Edition {
	e := r.edition()
	if e == nil {
		return nil
	}
	var near, far []*rates.Edition
	for _, o := range r.session.Desk.Rates().All() {
		switch {
		case o.ID == e.ID || o.Commodity.ID != e.Commodity.ID:
		case o.ID == e.Corrects:
			near = slices.Insert(near, 0, o)
		case o.Schedule == e.Schedule:
			near = append(near, o)
		default:
			far = append(far, o)
		}
	}
	return append(near, far...)
}

// otherEdition is the one that the chosen edition is set beside; nil when its
// grain has no other.
func (r *Rates) otherEdition() *rates.Edition {
	others := r.others()
	for _, o := range others {
		if o.ID == r.other {
			return o
		}
	}
	if len(others) == 0 {
		return nil
	}
	return others[0]
}

// HasOther reports whether there is a choice of editions to compare with.
func (r *Rates) HasOther() bool { return len(r.others()) > 1 }

// AskOther asks for the edition to compare the chosen one with.
func (r *Rates) AskOther() {
	others := r.others()
	options := make([]model.Option, len(others))
	for i, o := range others {
		options[i] = model.Option{Code: o.ID, Name: r.session.Say(o.Title), Detail: periodOf(r.session, o)}
	}
	r.session.Put(model.Ask{
		Title: r.session.Say("Set %s beside which edition?", r.chosen), Yes: r.session.Say("Compare"),
		Fields: []model.AskField{{ID: "other", Label: r.session.Say("Edition"), Options: options, Required: true}},
		Then: func(values map[string]string) {
			r.other, r.compared, r.shows = values["other"], nil, RatesCompare
			r.session.Window.Redraw()
		},
	})
}

// Compared returns the load settled under the chosen edition, another and the pure water formula,
// and the lines in which the two editions differ. It is cached.
func (r *Rates) Compared() *Table {
	e := r.edition()
	if e == nil {
		return &Table{Columns: r.comparedColumns()}
	}
	if r.compared == nil {
		r.compared = comparedTable(r.session.Language, e, r.otherEdition(), r.loads.on(e))
		r.compared.Columns, r.compared.load = r.comparedColumns(), r.Tried()
	}
	return r.compared
}

// comparedColumns are the line, the two editions with their difference, and the
// pure water formula with its. A narrow window leaves the last two out.
func (r *Rates) comparedColumns() []model.Column {
	other := r.session.Say("no other")
	if o := r.otherEdition(); o != nil {
		other = o.ID
	}
	return []model.Column{
		{Title: r.session.Say("Line"), Width: 8, Wish: 20, Grow: true, State: true},
		{Title: r.chosen, Width: 8, Wish: 13, Figures: true},
		{Title: other, Width: 8, Wish: 13, Figures: true},
		{Title: r.session.Say("±"), Width: 8, Wish: 13, Figures: true},
		{Title: r.session.Say("pure water"), Width: 8, Wish: 13, Figures: true, Drop: 1},
		{Title: r.session.Say("±"), Width: 8, Wish: 13, Figures: true, Drop: 2},
	}
}

// comparedTable adds what the edition takes beyond the water, or why nothing can be compared.
func comparedTable(in session.Language, e, other *rates.Edition, t tryLoad) *Table {
	out := &Table{said: map[string]string{}}
	mine, err := settle.Settle(t.under(e), e)
	if err != nil {
		out.says = in.Say("Under %s: %s", e.ID, session.OneLine(in.Text(message.Of(err))))
		return out
	}
	beyond, err := settle.TakenBeyondWater(mine, t.under(e))
	if err != nil {
		out.says = in.Say("Under the pure water formula: %s", session.OneLine(in.Text(message.Of(err))))
		return out
	}
	out.says = in.Say("Beyond the pure water formula %s takes %s, which is %s of the wet weight: %s in the shrink itself, %s as handling.",
		e.ID, beyond.Total.Printed(), beyond.Percent.Printed(), beyond.Hidden.Printed(), beyond.Handling.Printed())
	var theirs *settle.Settlement
	if other != nil {
		if theirs, err = settle.Settle(t.under(other), other); err != nil {
			out.says = in.Say("Under %s: %s", other.ID, session.OneLine(in.Text(message.Of(err))))
			theirs = nil
		}
	}
	out.addFigures(in, mine, theirs, beyond.Bare)
	if other != nil {
		out.addRules(in, e, other)
	}
	return out
}

// addFigures adds the lines of the settlements side by side.
func (t *Table) addFigures(in session.Language, mine, theirs, bare *settle.Settlement) {
	water := settle.Compare(mine, bare)
	seen := map[string]bool{}
	var beside *settle.Comparison
	if theirs != nil {
		beside = settle.Compare(mine, theirs)
		for _, l := range beside.Lines {
			seen[l.ID] = true
			w, _ := water.Line(l.ID)
			t.addLine(in, l.ID, l.Label, l.Before, l.After, l.Change, w)
		}
	}
	for _, w := range water.Lines {
		if !seen[w.ID] {
			t.addLine(in, w.ID, w.Label, w.Before, nil, nil, w)
		}
	}
}

func (t *Table) addLine(in session.Language, id string, label message.Text, mine, theirs, change *worksheet.Step, water settle.Line) {
	row := model.Row{Key: id, Cells: []string{in.Text(label), stepCell(in, mine), stepCell(in, theirs), changeCell(in, change), stepCell(in, water.After), changeCell(in, water.Change)}}
	if change != nil && !change.Value().IsZero() {
		row.State = model.Warn
	}
	t.Rows = append(t.Rows, row)
}

func stepCell(in session.Language, step *worksheet.Step) string {
	if step == nil {
		return session.NoFigure
	}
	if step.Kind() == worksheet.NotApplied {
		return in.Say("none")
	}
	return in.Say(step.Printed())
}

func changeCell(in session.Language, change *worksheet.Step) string {
	if change == nil || change.Value().IsZero() {
		return ""
	}
	return session.Signed(in, change)
}

// addRules adds the rules on which the two editions differ.
func (t *Table) addRules(in session.Language, e, other *rates.Edition) {
	for _, d := range rates.Diff(e, other) {
		key := "says " + d.Key
		what, before, after := session.Join(": ", in.Text(d.Section), in.Text(d.Label)), session.OrElse(in.Text(d.Before), session.NoFigure), session.OrElse(in.Text(d.After), session.NoFigure)
		t.Rows = append(t.Rows, model.Row{Key: key, State: model.Wait, Cells: []string{what, before, after}})
		t.said[key] = in.Say("%s. Under %s: %s. Under %s: %s.", what, e.ID, before, other.ID, after)
	}
}
