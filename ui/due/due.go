package due

import (
	"context"
	"slices"
	"strconv"

	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/duelist"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// List is the list of what falls due in the next days, what has passed first.
type List struct {
	session *session.Session
	span    int // index of spans
	all     []duelist.Due
	chosen  string
	failed  error // why the book could not be read
}

// spans are the numbers of days ahead that the list looks.
var spans = []int{14, 30, 90}

// NewList makes the list; it is read when the screen comes to the front.
func NewList(f *session.Session) *List { return &List{session: f} }

func (l *List) days() int { return spans[l.span] }

// Further looks further ahead, or from the furthest back to the nearest.
func (l *List) Further() {
	l.span = (l.span + 1) % len(spans)
	l.Reload()
}

// Reload reads the list again.
func (l *List) Reload() {
	d := l.session.Desk
	tariffs, err := ratefiles.ReadTariffs(l.session.RatesFolder)
	if err == nil {
		today := d.Today()
		l.all, err = duelist.Until(office.ReadNow(context.Background(), d), office.DueHouse(d, tariffs), today, today.AddDays(l.days()))
	}
	l.failed = err
	l.chosen = session.KeepChosen(slices.Collect(l.keys()), func(key string) string { return key }, l.chosen)
}

// keys are the places of the lines, which name them.
func (l *List) keys() func(func(string) bool) {
	return func(yield func(string) bool) {
		for i := range l.all {
			if !yield(strconv.Itoa(i)) {
				return
			}
		}
	}
}

// line is the chosen one.
func (l *List) line() (duelist.Due, bool) {
	for i := range l.all {
		if strconv.Itoa(i) == l.chosen {
			return l.all[i], true
		}
	}
	return duelist.Due{}, false
}

// Chosen is the chosen line; empty when there is none.
func (l *List) Chosen() string { return l.chosen }

// HasChosen reports whether a line is chosen.
func (l *List) HasChosen() bool { return l.chosen != "" }

// Choose takes a line.
func (l *List) Choose(key string) { l.chosen = key }

// Empty is the sentence shown where nothing falls due.
func (l *List) Empty() string {
	if l.failed != nil {
		return l.session.Sentence(l.failed)
	}
	return l.session.Say("Nothing falls due in the next %d days.", l.days())
}

// Counted is the number of lines, in words.
func (l *List) Counted() string {
	return l.session.Say("%d in %d days", len(l.all), l.days())
}

// columns of the list.
func (l *List) columns() model.Columns[duelist.Due] {
	f := l.session
	return model.Columns[duelist.Due]{
		model.Words(f.Say("Day"), 8, func(d duelist.Due) string { return f.ShortDay(d.Day.String()) }),
		model.Words(f.Say("Grower"), 12, l.grower).Dropped(1),
		model.Words(f.Say("What"), 30, func(d duelist.Due) string { return f.Text(d.What) }).Growing(),
		model.Words(f.Say("Days left"), 12, l.left).Stated(),
	}
}

func (l *List) grower(d duelist.Due) string {
	if g, known := l.session.Known().Grower(d.Grower); known {
		return g.Name
	}
	return d.Grower
}

func (l *List) left(d duelist.Due) string {
	switch days := l.session.Desk.Today().DaysUntil(d.Day); {
	case days < 0:
		return l.session.Text(message.Count(-days, "%d day ago", "%d days ago"))
	case days == 0:
		return l.session.Say("today")
	default:
		return l.session.Text(message.Count(days, "in %d day", "in %d days"))
	}
}

// Columns are the columns of the list.
func (l *List) Columns() []model.Column { return l.columns().Heads() }

// Rows are the lines of the list.
func (l *List) Rows() []model.Row {
	columns := l.columns()
	out := make([]model.Row, len(l.all))
	for i, d := range l.all {
		out[i] = model.Row{Key: strconv.Itoa(i), State: l.state(d), Cells: columns.Cells(d)}
	}
	return out
}

// soonDays is from when a day is marked. It is a choice of this program.
const soonDays = 3

func (l *List) state(d duelist.Due) model.State {
	switch days := l.session.Desk.Today().DaysUntil(d.Day); {
	case days < 0:
		return model.Stop
	case days <= soonDays:
		return model.Warn
	}
	return model.Wait
}

// Story is the chosen line whole, with what becomes of it when its day passes.
func (l *List) Story() []model.Status {
	d, there := l.line()
	if !there {
		return nil
	}
	f := l.session
	return []model.Status{
		{State: l.state(d), Word: f.Date(d.Day), Text: session.Join(": ", l.grower(d), f.Text(d.What))},
		{State: model.Plain, Word: f.Say("If it passes"), Text: f.Text(d.IfPassed)},
		{State: model.Plain, Text: f.Say("Days of the law are those of the elevator's place, where that was read. Confirm them with the authority; the program is no legal advice.")},
	}
}

// Open goes to where the chosen line is dealt with.
func (l *List) Open() {
	d, there := l.line()
	if !there {
		return
	}
	switch d.Kind {
	case duelist.Unsigned, duelist.Undelivered:
		l.session.Open("contracts", l.grower(d))
	case duelist.Unpaid, duelist.Deferred:
		l.session.Open("payments", l.grower(d))
	case duelist.FreeUntil:
		l.session.Open("settle", d.Grower)
	case duelist.Sample:
		l.session.Go("samples")
	case duelist.Disputed:
		l.session.Go("disputes")
	default:
		l.session.Open("tickets", l.session.Say("grower")+" "+d.Grower)
	}
}
