package tariff

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
)

// Lines are everything the tariff says, as posted, each with its line of the file.
func (e *Edition) Lines() []rule.Line {
	w := rule.NewLines(e.File, e.Text)
	w.Under(headTable, message.New("Tariff"))
	w.Name("title", message.New("Title"), e.Title)
	w.Name("commodity", message.New("Grain"), e.Commodity.ID)
	w.Name("schedule", message.New("Schedule"), e.Schedule)
	w.Text("from", message.New("In force"), e.Days())
	w.Name("corrects", message.New("Corrects"), e.Corrects)
	w.Under("units", message.New("Units"))
	w.Name("settle", message.New("Charged by"), e.Settle.String())
	w.Name("currency", message.New("Currency"), e.Currency)
	w.Under("rounding", message.New("Rounding"))
	w.Rounding("money", message.New("Money"), e.Money)
	places := map[Kind]int{}
	for _, c := range e.Keeping {
		c.lines(w, places[c.Kind])
		places[c.Kind]++
	}
	e.feeLines(w)
	return w.All()
}

func (c Charge) lines(w *rule.Lines, place int) {
	w.Under(string(c.Kind)+" "+c.titles(), c.Label)
	w.In(rule.Nth(string(c.Kind), place))
	w.Text("under", message.New("For grain that is"), c.titleNames())
	if c.Free.Given() {
		key := "free"
		if !c.Free.day.IsZero() {
			key = "free_until"
		}
		w.TextAt(key, "free", message.New("Free"), c.Free.said())
	}
	w.Text("first_day", message.New("Day 1"), choice(c.FromDelivery, message.New("the day of delivery"), message.New("the day after delivery")))
	w.Text("last_day", message.New("The last day"), choice(c.LastCounts, message.New("is charged"), message.New("is free")))
	w.Text("clock", message.New("Days begin"), choice(c.ByField, message.New("with the last load of the field"), message.New("with each load")))
	for i, b := range c.Bands {
		w.TextAt(rule.Nth("band", i), rule.Nth("band", i), b.Label, b.posted())
	}
	w.Cell("least", message.New("Least charge"), c.Least)
	if c.Least.Given() {
		w.Text("least_per", message.New("Least charge is for"), choice(c.LeastPerMonth, message.New("each month begun"), message.New("the whole charge")))
	}
}

// posted is a band with its end and its charge.
func (b Band) posted() message.Text {
	if !b.End.Given() {
		return b.says()
	}
	return message.New("%s: %s", b.End.said(), b.says())
}

func choice(yes bool, then, otherwise message.Text) message.Text {
	if yes {
		return then
	}
	return otherwise
}

// titles are the titles of a charge as its key names them: two tariffs are compared by it.
func (c Charge) titles() string {
	words := make([]string, len(c.Under))
	for i, u := range c.Under {
		words[i] = string(u)
	}
	return strings.Join(words, "+")
}

func (c Charge) titleNames() message.Text {
	names := make([]any, len(c.Under))
	for i, u := range c.Under {
		names[i] = u.Name()
	}
	return message.List(", ", names...)
}

func (e *Edition) feeLines(w *rule.Lines) {
	w.Under("elevation", message.New("Elevation"))
	w.Cell("in", actLabels[Received], e.Elevation.In)
	w.Cell("out", actLabels[LoadedOut], e.Elevation.Out)
	w.Under("receipt", message.New("Warehouse receipts"))
	w.Cell("issue", actLabels[Issued], e.Receipts.Issue)
	w.Cell("renew", actLabels[Renewed], e.Receipts.Renew)
	w.Cell("replace", actLabels[Replaced], e.Receipts.Replace)
	w.Under("interest", message.New("Interest"))
	w.Cell("rate", message.New("Interest a year"), e.Interest.Rate)
	if e.Interest.Given() {
		w.Text("by", message.New("Counted in"), yearWords[e.Interest.By].said)
	}
	w.Under("origin", message.New("Origin"))
	w.Text("issued", message.New("Issued"), message.New("%s", e.Origin.Issued))
	w.Name("by", message.New("By"), e.Origin.By)
	w.Name("document", message.New("Document"), e.Origin.Document)
	w.Name("note", message.New("Note"), e.Origin.Note)
}
