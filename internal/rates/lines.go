package rates

import (
	"fmt"
	"strings"

	"tenthpoint/internal/rates/rule"
)

// Lines is the whole edition in the order of its file, for a manager to read
// and for [Diff] to compare.
func (e *Edition) Lines() []rule.Line {
	w := rule.NewLines(e.File, e.Text)
	postHead(w, e)
	postOrigin(w, e.Origin)
	postUnits(w, e)
	postRounding(w, e.Rounding)
	e.Dockage.post(w)
	e.Shrink.Post(w)
	e.Handling.Post(w)
	e.Drying.Post(w)
	for i := range e.Discounts {
		e.Discounts[i].Post(w, i)
	}
	w.Under("shares", "Shares")
	w.Text("remainder", "What rounding leaves goes to the owner", e.Shares.Remainder)
	return w.All()
}

func (d DockageRule) post(w *rule.Lines) {
	if d.Row == "" {
		return
	}
	w.Under("dockage", "Dockage")
	w.Untested(d.MustTest)
	w.Rounded(d.Rounding, "weight")
}

func postHead(w *rule.Lines, e *Edition) {
	w.Under("edition", "Edition")
	w.Text("id", "Id", e.ID)
	w.Text("title", "Title", e.Title)
	w.Text("schedule", "Schedule", e.Schedule)
	w.Text("commodity", "Commodity", e.Commodity.Name)
	w.Text("status", "Status", e.Status.Words())
	w.TextAt("from", "period", "In force", e.Period())
	w.Text("corrects", "Corrects", e.Corrects)
	w.Text("order", "Order of deductions", strings.Join(e.Order, ", "))
}

func postOrigin(w *rule.Lines, o Origin) {
	w.Under("origin", "Where it comes from")
	w.Text("issued", "Issued", o.Issued.String())
	w.Text("by", "By", o.By)
	w.Text("document", "Document", o.Document)
	w.Text("note", "Note", o.Note)
}

func postUnits(w *rule.Lines, e *Edition) {
	w.Under("units", "Units")
	w.Text("weight", "Weights are in", e.Units.Weight.String())
	w.Text("settle", "Settled by", e.Units.Settle.String())
	w.Text("currency", "Money", e.Units.Currency)
	if e.Units.HasBushels() {
		w.Text("bushel", "Bushel weight", fmt.Sprintf("%s (%s)", e.Units.Bushel.Written(), e.Units.BushelSource))
	}
}

func postRounding(w *rule.Lines, p rule.Places) {
	w.Under("rounding", "Rounding")
	w.Rounding("moisture", "Moisture", p.Moisture)
	w.Rounding("weight", "Weights", p.Weight)
	w.Rounding("quantity", "Bushels, hundredweight, tonnes", p.Quantity)
	w.Rounding("money", "Money", p.Money)
}

// ExampleMark stands wherever an example edition shows.
const ExampleMark = "example - not for trade"

// Words is the status for people.
func (s Status) Words() string {
	switch s {
	case Example:
		return ExampleMark
	case House:
		return "posted house rates"
	}
	return "restates a published rule"
}
