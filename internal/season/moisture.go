package season

import (
	"strings"
	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// water is the distribution of a grain's moisture, and its cost to the owners.
type water struct{ *Facts }

// moistureClass is the loads from one moisture to below the next.
type moistureClass struct {
	low   quantity.Amount
	loads int
	cost  waterCost
}

// waterCost is the cost of water in some loads: as shrink, in the weight and at their own prices, and
// as drying charges.
type waterCost struct {
	loads    int
	shrink   quantity.Amount // lb or kg
	value    quantity.Amount // $ of the shrink of priced loads
	drying   quantity.Amount // $
	unpriced int             // loads whose shrink has no value yet
}

func noCost(weight quantity.Unit) waterCost {
	return waterCost{shrink: quantity.Zero(weight), value: quantity.Zero(quantity.Dollar), drying: quantity.Zero(quantity.Dollar)}
}

// dollars are shrink and drying together.
func (c waterCost) dollars() quantity.Amount { return cents.Apply(c.value).Add(c.drying) }

// add counts a load. Its shrink is worth what its settled grain is, pound for pound.
func (c *waterCost) add(l Load, f water) {
	c.loads++
	c.shrink, c.drying = c.shrink.Add(f.weighed(l.Water)), c.drying.Add(l.Drying)
	if _, _, some := l.Unpriced(); some || l.Settled.Sign() <= 0 {
		c.unpriced++
		return
	}
	c.value = c.value.Add(l.Value.Mul(l.Water).Div(l.Settled))
}

// The width of a class: half a point, or a whole one where moistures lie far apart.
var (
	halfPoint  = quantity.Of("0.5", quantity.Percent)
	wholePoint = quantity.Int(1, quantity.Percent)
	farApart   = quantity.Int(12, quantity.Percent)
)

// classes are the classes of a grain from its driest load to its wettest.
func (f water) classes(commodity string) (classes []moistureClass, width quantity.Amount) {
	var all []Load
	var low, high quantity.Amount
	for _, l := range f.inForce() {
		if l.Commodity != commodity || l.Moisture == nil {
			continue
		}
		if len(all) == 0 {
			low, high = *l.Moisture, *l.Moisture
		}
		low, high = quantity.Min(low, *l.Moisture), quantity.Max(high, *l.Moisture)
		all = append(all, l)
	}
	if len(all) == 0 {
		return nil, halfPoint
	}
	width = halfPoint
	if high.Sub(low).More(farApart) {
		width = wholePoint
	}
	down := quantity.To(width.In(quantity.Plain).Written(), quantity.Down)
	for at := down.Apply(low); !at.More(high); at = at.Add(width) {
		classes = append(classes, moistureClass{low: at, cost: noCost(f.Weight)})
	}
	first := classes[0].low
	for _, l := range all {
		n := quantity.Permille(down.Apply(*l.Moisture).Sub(first).Div(width), quantity.HalfUp) / 1000
		classes[n].loads++
		classes[n].cost.add(l, f)
	}
	return classes, width
}

// picture shows the number of loads of a grain by moisture, and what those above the trigger
// cost their owners.
func (f water) picture(commodity string) report.Picture {
	p := report.Picture{Title: message.New("Loads by moisture"), Empty: message.New("No load of these days was tested.")}
	classes, width := f.classes(commodity)
	if len(classes) == 0 {
		return p
	}
	p.Title = message.New("Loads by moisture: %s", grainName(commodity))
	var counts []quantity.Amount
	for _, c := range classes {
		counts = append(counts, counted(c.loads))
	}
	s := scaleFor(quantity.Plain, counts...)
	for i, c := range classes {
		stack := report.Stack{
			Label: report.Figure(c.low.Fixed(1)), Parts: []report.Part{{Height: s.height(counts[i]), Look: look.Of(commodity)}},
			Said: c.said(width),
		}
		if c.loads > 0 {
			stack.Value, stack.Opens = count(c.loads), f.opens(commodity, c.low, width)
		}
		p.Stacks = append(p.Stacks, stack)
	}
	p.Guides = s.guides()
	f.trigger(&p, commodity, classes, width)
	return p
}

// trigger shades what lies above the trigger, and says what it comes to.
func (f water) trigger(p *report.Picture, commodity string, classes []moistureClass, width quantity.Amount) {
	trigger, some := f.Triggers[commodity]
	if !some {
		p.Says = message.New("The rates in force have no trigger.")
		return
	}
	first, all := classes[0].low, width.Mul(quantity.Int(int64(len(classes)), quantity.Plain))
	p.Edge = report.Edge{At: max(0, min(1000, quantity.Permille(trigger.Sub(first).Div(all), quantity.HalfUp))), Label: message.New("trigger %s", report.Figure(trigger.FixedString(1)))}
	p.Says = f.above(commodity).says(trigger)
}

// above is the cost of water in the loads of a grain above its trigger.
func (f water) above(commodity string) waterCost {
	cost := noCost(f.Weight)
	trigger, some := f.Triggers[commodity]
	for _, l := range f.inForce() {
		if some && l.Commodity == commodity && l.Moisture != nil && l.Moisture.More(trigger) {
			cost.add(l, f)
		}
	}
	return cost
}

func (c waterCost) says(trigger quantity.Amount) message.Text {
	wet := report.Figure(trigger.FixedString(1))
	if c.loads == 0 {
		return message.New("No load was above %s.", wet)
	}
	says := message.New("Above %s: %s, water shrink %s, drying %s; %s together.", wet, loads(c.loads), dollars(c.value), dollars(c.drying), dollars(c.dollars()))
	if c.unpriced == 0 {
		return says
	}
	return message.List(" ", says, message.New("Without a price, so not in it: the shrink of %s.", loads(c.unpriced)))
}

func (c moistureClass) said(width quantity.Amount) message.Text {
	from, to := report.Figure(c.low.Fixed(1)), report.Figure(c.low.Add(width).FixedString(1))
	if c.loads == 0 {
		return message.New("From %s to below %s: no load.", from, to)
	}
	return message.New("From %s to below %s: %s, %s of water shrink and drying.", from, to, loads(c.loads), dollars(c.cost.dollars()))
}

// opens is the search for the loads of a class.
func (f water) opens(commodity string, low, width quantity.Amount) string {
	from, below := low.In(quantity.Plain).Written(), low.Add(width).In(quantity.Plain).Written()
	return strings.Join([]string{"grain", commodity, f.span(), "issued moisture", from + ".." + below}, " ")
}

// table is the classes of a grain, and what water took of each.
func (f water) table(commodity string) report.Table {
	t := report.Table{Name: message.New("%s by moisture", grainName(commodity)), Columns: []report.Column{
		{Title: message.New("From"), Unit: "%", Align: report.Right}, {Title: message.New("Loads"), Align: report.Right},
		weightColumn(message.New("Water shrink"), f.Weight), {Title: message.New("Water shrink"), Unit: "$", Align: report.Right},
		{Title: message.New("Drying"), Unit: "$", Align: report.Right}, {Title: message.New("Together"), Unit: "$", Align: report.Right},
	}}
	classes, _ := f.classes(commodity)
	for _, c := range classes {
		if c.loads > 0 {
			t.Rows = append(t.Rows, report.Row{Cells: append([]message.Text{report.Figure(c.low.Fixed(1)), count(c.loads)}, c.cost.cells()...)})
		}
	}
	if trigger, some := f.Triggers[commodity]; some {
		above := f.above(commodity)
		t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: append([]message.Text{message.New("above %s", report.Figure(trigger.Fixed(1))), count(above.loads)}, above.cells()...)})
	}
	return t
}

func (c waterCost) cells() []message.Text {
	return []message.Text{figure(c.shrink), money(c.value), money(c.drying), money(c.dollars())}
}

func counted(n int) quantity.Amount { return quantity.Int(int64(n), quantity.Plain) }
func count(n int) message.Text      { return figure(counted(n)) }

func loads(n int) message.Text   { return message.Count(n, "%d load", "%d loads") }
func trucks(n int) message.Text  { return message.Count(n, "%d truck", "%d trucks") }
func checks(n int) message.Text  { return message.Count(n, "%d check", "%d checks") }
func minutes(n int) message.Text { return message.New("%d min", n) }

// dollars is money in a sentence, money in a column.
func dollars(a quantity.Amount) message.Text { return report.Figure(cents.Apply(a).FixedString(2)) }
func money(a quantity.Amount) message.Text   { return report.Figure(cents.Apply(a).Fixed(2)) }
