package season

import (
	"fmt"
	"slices"

	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// gate is when trucks came, and how long they waited.
type gate struct{ *Facts }

// hour is the trucks of one hour of the clock: those of the day, and those of the days before it.
type hour struct {
	name          string
	trucks        int   // of the day
	waits         []int // theirs, in minutes
	before        int   // trucks of all days before
	waitsBefore   []int
	daysWithTruck int // days before on which any truck came
}

// usual is the mean number of trucks in this hour of a day on which trucks come.
func (h hour) usual() quantity.Amount {
	if h.daysWithTruck == 0 {
		return counted(0)
	}
	return tenth.Apply(counted(h.before).Div(counted(h.daysWithTruck)))
}

// hours are the hours in which trucks come, from the first to the last.
func (f gate) hours() []hour {
	byHour := map[string]*hour{}
	days := map[quantity.Date]bool{}
	for _, l := range f.Loads {
		if !l.isTruck() || l.Hour == "" || l.Came.After(f.Day) {
			continue
		}
		h := byHour[l.Hour]
		if h == nil {
			h = &hour{name: l.Hour}
			byHour[l.Hour] = h
		}
		h.add(l, l.Came == f.Day)
		if l.Came != f.Day {
			days[l.Came] = true
		}
	}
	if len(byHour) == 0 {
		return nil
	}
	return everyHour(byHour, len(days))
}

func (h *hour) add(l Load, onDay bool) {
	switch {
	case onDay:
		h.trucks++
		if l.Timed {
			h.waits = append(h.waits, l.Waited)
		}
	default:
		h.before++
		if l.Timed {
			h.waitsBefore = append(h.waitsBefore, l.Waited)
		}
	}
}

// everyHour is the hours in their order, those between that had no truck too.
func everyHour(byHour map[string]*hour, days int) []hour {
	var names []string
	for name := range byHour {
		names = append(names, name)
	}
	slices.Sort(names)
	var out []hour
	for n := 0; n < 24; n++ {
		name := fmt.Sprintf("%02d", n)
		if name < names[0] || name > names[len(names)-1] {
			continue
		}
		h := hour{name: name}
		if some := byHour[name]; some != nil {
			h = *some
		}
		h.daysWithTruck = days
		out = append(out, h)
	}
	return out
}

// median is the middle of some minutes, the lower one of two; false for none.
func median(minutes []int) (middle int, some bool) {
	if len(minutes) == 0 {
		return 0, false
	}
	sorted := slices.Sorted(slices.Values(minutes))
	return sorted[(len(sorted)-1)/2], true
}

var truckLook, waitLook = look.Kind(0), look.Kind(1)

// hoursPicture is the trucks of the day by the hour they came, against the usual.
func (f gate) hoursPicture() report.Picture {
	p := report.Picture{Title: message.New("Trucks by hour, %s", f.Day), Empty: message.New("No truck came in these days.")}
	hours := f.hours()
	if len(hours) == 0 {
		return p
	}
	var heights []quantity.Amount
	all, usual := 0, quantity.Zero(quantity.Plain)
	for _, h := range hours {
		heights = append(heights, counted(h.trucks), h.usual())
		all, usual = all+h.trucks, usual.Add(h.usual())
	}
	s := scaleFor(quantity.Plain, heights...)
	for _, h := range hours {
		stack := report.Stack{
			Label: message.Name(h.name), Stroke: s.height(h.usual()), HasStroke: h.daysWithTruck > 0, Opens: f.opensHour(h),
			Said: message.New("From %s o'clock: %s; usually %s.", message.Name(h.name), trucks(h.trucks), figure(h.usual())),
		}
		if h.trucks > 0 {
			stack.Value = count(h.trucks)
			stack.Parts = []report.Part{{Height: s.height(counted(h.trucks)), Look: truckLook}}
		}
		p.Stacks = append(p.Stacks, stack)
	}
	p.Guides, p.Stroke = s.guides(), message.New("usual")
	p.Legend = []report.Legend{{Name: message.New("trucks of the day"), Look: truckLook}}
	p.Says = message.New("%s on %s.", trucks(all), f.Day)
	if hours[0].daysWithTruck > 0 {
		p.Says = message.New("%s on %s; usually %s a day.", trucks(all), f.Day, figure(usual))
	}
	return p
}

// waitsPicture shows the waits of the day's trucks from gate to second weight, by the hour they
// came, against the usual.
func (f gate) waitsPicture() report.Picture {
	p := report.Picture{Title: message.New("Minutes from gate to tare, %s", f.Day), Empty: message.New("No truck was weighed twice in these days.")}
	hours := f.hours()
	var heights []quantity.Amount
	var waits, before []int
	for _, h := range hours {
		now, _ := median(h.waits)
		usual, _ := median(h.waitsBefore)
		heights = append(heights, counted(now), counted(usual))
		waits, before = append(waits, h.waits...), append(before, h.waitsBefore...)
	}
	if len(waits)+len(before) == 0 {
		return p
	}
	s := scaleFor(quantity.Plain, heights...)
	for _, h := range hours {
		p.Stacks = append(p.Stacks, f.waitStack(h, s))
	}
	p.Guides, p.Stroke = s.guides(), message.New("usual")
	p.Legend = []report.Legend{{Name: message.New("half of the trucks waited no longer"), Look: waitLook}}
	p.Says = waitsSay(waits, before)
	return p
}

func (f gate) waitStack(h hour, s scale) report.Stack {
	now, some := median(h.waits)
	usual, known := median(h.waitsBefore)
	out := report.Stack{Label: message.Name(h.name), Stroke: s.height(counted(usual)), HasStroke: known, Opens: f.opensHour(h)}
	if known {
		out.Said = message.New("From %s o'clock: nobody has waited; usually %s.", message.Name(h.name), minutes(usual))
	}
	if some {
		out.Value = count(now)
		out.Parts = []report.Part{{Height: s.height(counted(now)), Look: waitLook}}
		out.Said = message.New("From %s o'clock: half of %s waited no longer than %s, the longest %s; usually %s.",
			message.Name(h.name), trucks(len(h.waits)), minutes(now), minutes(slices.Max(h.waits)), minutes(usual))
	}
	return out
}

func waitsSay(waits, before []int) message.Text {
	usual, _ := median(before)
	now, some := median(waits)
	if !some {
		return message.New("Nobody has waited on this day; usually half of the trucks wait no longer than %s.", minutes(usual))
	}
	return message.New("Half of the trucks waited no longer than %s, the longest %s; usually %s.", minutes(now), minutes(slices.Max(waits)), minutes(usual))
}

// opensHour is the search for the trucks of an hour of the day.
func (f gate) opensHour(h hour) string {
	if h.trucks == 0 {
		return ""
	}
	return f.Day.String() + " hour " + h.name
}

// table is trucks and waits by the hour.
func (f gate) table() report.Table {
	right := func(title message.Text) report.Column { return report.Column{Title: title, Align: report.Right} }
	t := report.Table{Name: message.New("Trucks by hour"), Empty: message.New("No truck came in these days."), Columns: []report.Column{
		{Title: message.New("Hour")}, right(message.New("Trucks")), right(message.New("usual")),
		right(message.New("Minutes, half no longer")), right(message.New("longest")), right(message.New("usual")),
	}}
	for _, h := range f.hours() {
		row := report.Row{Cells: []message.Text{message.Name(h.name), count(h.trucks), figure(h.usual()), {}, {}, {}}}
		if now, some := median(h.waits); some {
			row.Cells[3], row.Cells[4] = count(now), count(slices.Max(h.waits))
		}
		if usual, known := median(h.waitsBefore); known {
			row.Cells[5] = count(usual)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
