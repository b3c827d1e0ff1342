package bins

import (
	"context"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Bins is the list of pits and bins, and the card of the chosen one.
type Bins struct {
	session *session.Session
	all     []binlog.Bin // what needs looking at first
	chosen  string
	card    report.Document
	last    *bin.Movement // the newest of the chosen one that can be taken back; nil without
	opening *openingActs
	failed  error // why the book could not be read
}

// NewBins makes the list; it is read when the screen comes to the front.
func NewBins(f *session.Session) *Bins {
	b := &Bins{session: f}
	b.opening = &openingActs{session: f, reload: b.Reload}
	return b
}

// cardDays is the number of days on a card.
const cardDays = 30

// Reload reads the bins from the book and keeps the chosen one.
func (b *Bins) Reload() {
	b.all, b.failed = binlog.Bins(context.Background(), b.session.Desk, b.today())
	slices.SortStableFunc(b.all, func(x, y binlog.Bin) int { return int(stateOf(y)) - int(stateOf(x)) })
	b.chosen = session.KeepChosen(b.all, func(one binlog.Bin) string { return one.ID }, b.chosen)
	b.readCard()
	if b.failed == nil {
		b.failed = b.opening.read()
	}
}

func (b *Bins) today() quantity.Date { return b.session.Desk.Today() }

func (b *Bins) readCard() {
	b.card, b.last = report.Document{}, nil
	if b.chosen == "" || b.failed != nil {
		return
	}
	day := b.today()
	first := day.AddDays(-cardDays)
	if b.card, b.failed = binlog.Card(context.Background(), b.session.Desk, b.chosen, first, day); b.failed == nil {
		b.last, b.failed = b.lastMovement(first, day)
	}
}

// Chosen is the short name of the chosen bin; empty when there is none.
func (b *Bins) Chosen() string { return b.chosen }

// HasChosen reports whether a bin is chosen.
func (b *Bins) HasChosen() bool { return b.chosen != "" }

// Choose takes a bin.
func (b *Bins) Choose(id string) {
	b.chosen = id
	b.readCard()
}

// Empty is the sentence shown where no bin is listed.
func (b *Bins) Empty() string {
	if b.failed != nil {
		return b.session.Sentence(b.failed)
	}
	return b.session.Say("No pit or bin is written down yet. Equipment has the list of them.")
}

// Counted is the number of bins, in words.
func (b *Bins) Counted() string {
	if len(b.all) == 1 {
		return b.session.Say("1 bin")
	}
	return b.session.Say("%d bins", len(b.all))
}

// row is one bin with one grain in it.
type row struct {
	binlog.Bin
	held *binlog.Held
}

// columns of the list.
func (b *Bins) columns() model.Columns[row] {
	say := b.session.Say
	return model.Columns[row]{
		model.Words(say("Bin"), 5, func(r row) string { return r.ID }),
		model.Words(say("Grain"), 9, b.grain).Growing(),
		model.Figures(say("Lies there"), 12, b.lies),
		model.Figures(say("Full"), 6, func(r row) string { return b.full(r.Bin) }),
		model.Figures(say("Moisture"), 8, func(r row) string { return b.mean(r, binlog.Held.Moisture) }),
		model.Figures(say("Test weight"), 11, func(r row) string { return b.mean(r, binlog.Held.TestWeight) }).Dropped(2),
		model.Words(say("Oldest"), 10, oldest).Dropped(1),
		model.Words(say("Note"), 12, b.note).Stated(),
	}
}

// Columns are the columns of the list.
func (b *Bins) Columns() []model.Column { return b.columns().Heads() }

// Rows are the bins, a row for each grain in them.
func (b *Bins) Rows() []model.Row {
	columns := b.columns()
	var out []model.Row
	for _, one := range b.all {
		held := []*binlog.Held{nil}
		if len(one.Grain) > 0 {
			held = nil
			for i := range one.Grain {
				held = append(held, &one.Grain[i])
			}
		}
		for _, h := range held {
			out = append(out, model.Row{Key: one.ID, State: stateOf(one), Cells: columns.Cells(row{one, h})})
		}
	}
	return out
}

func (b *Bins) grain(r row) string {
	if r.held == nil {
		return session.GrainInList(b.session.Language, r.Commodity)
	}
	return session.GrainInList(b.session.Language, r.held.Commodity)
}

func (b *Bins) lies(r row) string {
	if r.held == nil {
		return b.session.Say("empty")
	}
	return b.session.Signs().Write(r.held.Lies().String())
}

// full tells the filling level of a bin; empty where nobody measured it.
func (b *Bins) full(one binlog.Bin) string {
	level, known := one.Level()
	if !known {
		return ""
	}
	return b.session.Signs().Write(quantity.Int(int64(level/10), quantity.Percent).String())
}

func (b *Bins) mean(r row, of func(binlog.Held) (quantity.Amount, bool)) string {
	if r.held == nil {
		return ""
	}
	m, known := of(*r.held)
	if !known {
		return ""
	}
	return b.session.Signs().Write(m.Fixed(2))
}

func oldest(r row) string {
	if r.held == nil || r.held.Oldest().IsZero() {
		return ""
	}
	return r.held.Oldest().String()
}

// note is the warning of a bin.
func (b *Bins) note(r row) string {
	switch {
	case r.Short():
		return b.session.Say("drawn below empty")
	case isFull(r.Bin):
		return b.session.Say("full")
	case len(r.Grain) > 1:
		return b.session.Say("several grains")
	}
	return ""
}

// almostFull is the level, in thousandths of the room to the eave, from which a bin is told to be
// full: a truck may not go in any more.
const almostFull = 960

func isFull(one binlog.Bin) bool {
	level, known := one.Level()
	return known && level >= almostFull
}

// stateOf is the urgency of a bin.
func stateOf(one binlog.Bin) model.State {
	switch {
	case one.Short():
		return model.Stop
	case isFull(one), len(one.Grain) > 1:
		return model.Warn
	}
	return model.Plain
}

// lastMovement is the newest movement of the chosen bin that can still be taken back; nil where there
// is none.
func (b *Bins) lastMovement(from, to quantity.Date) (*bin.Movement, error) {
	all, err := binlog.Movements(context.Background(), b.session.Desk, b.chosen, from, to)
	for _, m := range slices.Backward(all) {
		if m.What != bin.Undo && m.What != bin.Open && m.UndoneBy == 0 {
			return &m, err
		}
	}
	return nil, err
}
