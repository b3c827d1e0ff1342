package tariff

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/title"
	"tenthpoint/internal/tomlfile"
)

// readKeeping reads the charges for keeping grain, storage first.
func (e *Edition) readKeeping(root *tomlfile.Table) {
	seen := map[title.Under]bool{}
	for _, kind := range []Kind{Storage, Service} {
		for _, t := range root.Tables(string(kind)) {
			c := e.readCharge(t, kind)
			for _, u := range c.Under {
				if seen[u] {
					t.AddProblem("under", message.New("two charges are for grain that is: %s", u.Name()), message.New("Name each title in one of them."))
				}
				seen[u] = true
			}
			e.Keeping = append(e.Keeping, c)
		}
	}
}

func (e *Edition) readCharge(t *tomlfile.Table, kind Kind) Charge {
	label := message.Name(t.Text("label"))
	if t.Has("label") {
		t.SetTitle(label)
	}
	c := Charge{
		Kind: kind, Label: label, Source: t.Source(""),
		Under:        readTitles(t, kind),
		Free:         readEnd(t, "free", "free_until"),
		FromDelivery: t.Choice("first_day", "delivery", "after") == "delivery",
		LastCounts:   t.Choice("last_day", "counts", "free") == "counts",
		ByField:      t.Choice("clock", "load", "field") == "field",
	}
	c.Least = fee(t, "least", quantity.Dollar)
	if t.Has("least") {
		c.LeastPerMonth = t.Choice("least_per", "charge", "month") == "month"
	}
	rows := t.Tables("band")
	if len(rows) == 0 {
		t.AddProblem("band", message.New("%s has no rows", t.Name("")), message.New("Add at least one [[%v.band]] with its charge.", string(kind)))
	}
	for i, row := range rows {
		row.SetTitle(message.New("%s, band %d", c.Label, i+1))
		c.Bands = append(c.Bands, e.readBand(row, i == len(rows)-1))
	}
	checkEnds(rows, c)
	return c
}

// readTitles reads what grain the charge is for, and holds it to its kind: storage is of a
// depositor's grain, service of the house's own.
func readTitles(t *tomlfile.Table, kind Kind) []title.Under {
	words := t.Texts("under")
	if len(words) == 0 {
		t.AddProblem("under", message.New("%s names no title", t.Name("under")), message.New("Write what grain it is for, such as [\"stored\", \"receipt\"]."))
	}
	var out []title.Under
	for _, word := range words {
		terms, known := title.Read(word)
		switch {
		case !known || terms.No != "" || word == "":
			t.AddProblem("under", message.New("%q is nothing that grain is held under", word), message.New("Write some of: stored, receipt, bank, undecided, delayed, contract."))
			continue
		case slices.Contains(out, terms.Under):
			t.AddProblem("under", message.New("%q is named twice", word), message.New("Take one out."))
		case kind == Storage && terms.Owner() == title.Houses:
			t.AddProblem("under", message.New("grain that is %s is the house's own, and nobody is charged for storing it", terms.Said()), message.New("Write a charge on it as [[service]]."))
		case kind == Service && terms.Owner() != title.Houses:
			t.AddProblem("under", message.New("grain that is %s is not the house's, so what is charged for keeping it is storage", terms.Said()), message.New("Write the charge as [[storage]]."))
		}
		out = append(out, terms.Under)
	}
	return out
}

func (e *Edition) readBand(t *tomlfile.Table, isLast bool) Band {
	b := Band{End: readEnd(t, "upto", "until"), Source: t.Source(""), Label: message.Name(t.Text("label"))}
	if !isLast && !t.Has("upto") && !t.Has("until") {
		t.AddProblem("upto", message.New("%s has no end, and a band follows it", t.Name("")), message.New("Write upto = \"60 days\" or until = \"2027-02-28\"; only the last band may go on."))
	}
	var ways []How
	for _, how := range []How{Flat, Daily, Monthly} {
		if t.Has(string(how)) {
			ways = append(ways, how)
		}
	}
	if len(ways) != 1 {
		t.AddProblem("", message.New("%s has %d charges", t.Name(""), len(ways)), message.New("Write one of flat, daily, monthly."))
		t.IgnoreRest()
		return b
	}
	b.How = ways[0]
	if b.How == Daily {
		b.Posted = readPosted(t, string(Daily), e.rate())
		rule.NotNegative(t, string(Daily), b.Posted.Cell)
		return b
	}
	b.Rate = rule.ReadCell(t, string(b.How), e.rate())
	rule.NotNegative(t, string(b.How), b.Rate)
	if b.How == Monthly {
		b.Part = Part(t.Choice("part", string(Begun), string(Complete), string(ByDay)))
	}
	return b
}

// checkEnds requires that ends of one sort rise, and that the first lies after the free time.
func checkEnds(rows []*tomlfile.Table, c Charge) {
	before := c.Free
	for i, b := range c.Bands {
		if b.End.Given() && before.Given() && !b.End.after(before) {
			rows[i].AddProblem("", message.New("%s ends %s, no later than what comes before it (%s)", rows[i].Name(""), b.End.said(), before.said()), message.New("Write the bands in the order of time, the first after the free time."))
		}
		before = b.End
	}
}

// after reports whether an end can lie after another: two of one sort are compared, those of two
// sorts depend on the day of delivery.
func (e End) after(o End) bool {
	switch {
	case e.days > 0 && o.days > 0:
		return e.days > o.days
	case e.months > 0 && o.months > 0:
		return e.months > o.months
	case !e.day.IsZero() && !o.day.IsZero():
		return e.day.After(o.day)
	}
	return true
}
