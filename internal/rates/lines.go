package rates

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
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
	w.Under("shares", message.New("Shares"))
	w.Text("remainder", message.New("What rounding leaves goes to the owner"), message.Words(e.Shares.Remainder))
	return w.All()
}

func (d DockageRule) post(w *rule.Lines) {
	if d.Source.IsZero() {
		return
	}
	w.Under("dockage", message.New("Dockage"))
	w.Untested(d.MustTest)
	w.Rounded(d.Rounding, "weight")
}

func postHead(w *rule.Lines, e *Edition) {
	w.Under("edition", message.New("Edition"))
	w.Name("id", message.New("Id"), e.ID)
	w.Name("title", message.New("Title"), e.Title)
	w.Name("schedule", message.New("Schedule"), e.Schedule)
	w.Text("commodity", message.New("Commodity"), message.Words(e.Commodity.Name))
	w.Text("status", message.New("Status"), e.Status.Message())
	w.TextAt("from", "period", message.New("In force"), e.Days())
	w.Name("corrects", message.New("Corrects"), e.Corrects)
	e.Format.post(w)
	w.Name("order", message.New("Order of deductions"), strings.Join(e.Order, ", "))
}

func postOrigin(w *rule.Lines, o tomlfile.Origin) {
	w.Under("origin", message.New("Where it comes from"))
	w.Name("issued", message.New("Issued"), o.Issued.String())
	w.Name("by", message.New("By"), o.By)
	w.Name("document", message.New("Document"), o.Document)
	w.Name("note", message.New("Note"), o.Note)
}

func postUnits(w *rule.Lines, e *Edition) {
	w.Under("units", message.New("Units"))
	w.Name("weight", message.New("Weights are in"), e.Units.Weight.String())
	w.Name("settle", message.New("Settled by"), e.Units.Settle.String())
	w.Name("currency", message.New("Money"), e.Units.Currency)
	if e.Units.HasBushels() {
		w.Text("bushel", message.New("Bushel weight"), message.New("%s (%v)", e.Units.Bushel.Written(), e.Units.BushelSource))
	}
}

func postRounding(w *rule.Lines, p rule.Places) {
	w.Under("rounding", message.New("Rounding"))
	w.Rounding("moisture", message.New("Moisture"), p.Moisture)
	w.Rounding("weight", message.New("Weights"), p.Weight)
	w.Rounding("quantity", message.New("Bushels, hundredweight, tonnes"), p.Quantity)
	w.Rounding("money", message.New("Money"), p.Money)
}

// ExampleMark is shown with every example edition.
const ExampleMark = "example - not for trade"

// Message is the status for people.
func (s Status) Message() message.Text {
	switch s {
	case Example:
		return message.New(ExampleMark)
	case House:
		return message.New("posted house rates")
	}
	return message.New("restates a published rule")
}
