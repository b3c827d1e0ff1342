package sheets

import (
	"cmp"
	"context"
	"slices"
	"strconv"

	"tenthpoint/internal/message"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// SheetList is the list of settlement sheets, what is to be paid first, with the sheet of the chosen
// one.
type SheetList struct {
	session *session.Session
	line    string
	all     []standing
	chosen  string // number
	page    *paper.Layout
	failed  error // why the book could not be read
}

// Payments are the acts on the sheets of the list and their payments.
type Payments struct{ *SheetList }

// standing is a settlement sheet with what is paid on it.
type standing struct {
	paysheet.Sheet
	Left     quantity.Amount
	Due      quantity.Date // the first day it may be paid
	payments []paysheet.Payment
}

// isOpen reports whether money is still to be paid on it.
func (s standing) isOpen() bool { return s.InForce() && s.Left.Sign() > 0 }

// NewPayments makes the list; it is read when the screen comes to the front.
func NewPayments(f *session.Session) *Payments {
	p := &Payments{&SheetList{session: f}}
	f.OnOpen("payments", p.Type)
	return p
}

// Reload reads sheets and payments and keeps the chosen one.
func (p *SheetList) Reload() {
	p.all, p.failed = standings(p.session)
	p.Choose(p.kept())
}

// standings are all sheets: the open ones by the day they are due, then those paid and those void, the
// newest first.
func standings(f *session.Session) ([]standing, error) {
	ctx := context.Background()
	sheets, err := money.Sheets(ctx, f.Desk)
	if err != nil {
		return nil, err
	}
	payments, err := money.Payments(ctx, f.Desk)
	if err != nil {
		return nil, err
	}
	return standingsOf(sheets, payments), nil
}

func standingsOf(sheets []paysheet.Sheet, payments []paysheet.Payment) []standing {
	of := map[int64][]paysheet.Payment{}
	for _, one := range payments {
		of[one.Sheet] = append(of[one.Sheet], one)
	}
	out, left := make([]standing, len(sheets)), paysheet.BalancesOf(sheets, payments)
	for i, s := range sheets {
		out[i] = standing{s, left[s.Number], s.PayableFrom(), of[s.Number]}
	}
	slices.SortFunc(out, compareStanding)
	return out
}

func compareStanding(a, b standing) int {
	if by := cmp.Compare(a.rank(), b.rank()); by != 0 {
		return by
	}
	if a.isOpen() {
		return cmp.Or(a.Due.Cmp(b.Due), cmp.Compare(a.Number, b.Number))
	}
	return cmp.Compare(b.Number, a.Number)
}

// rank is the place of a sheet among open, paid and void ones.
func (s standing) rank() int {
	switch {
	case s.isOpen():
		return 0
	case s.InForce():
		return 1
	}
	return 2
}

// kept is the sheet to choose after the list has changed.
func (p *SheetList) kept() string { return session.KeepChosen(p.fits(), standing.ID, p.chosen) }

// fits are the sheets that have every word of the line.
func (p *SheetList) fits() []standing {
	var out []standing
	for _, s := range p.all {
		if session.HasAll(session.Join(" ", s.ID(), s.Grower, s.Name, p.note(s)), p.line) {
			out = append(out, s)
		}
	}
	return out
}

// Line is the text of the filter.
func (p *SheetList) Line() string { return p.line }

// Type narrows the list. A sheet that stays chosen is not worked out again.
func (p *SheetList) Type(line string) {
	p.line = line
	if number := p.kept(); number != p.chosen {
		p.Choose(number)
	}
}

// Clear empties the line, and reports whether it held text.
func (p *SheetList) Clear() bool {
	if p.line == "" {
		return false
	}
	p.Type("")
	return true
}

// Chosen is the number of the chosen sheet; empty when there is none.
func (p *SheetList) Chosen() string { return p.chosen }

// HasChosen reports whether a sheet is chosen.
func (p *SheetList) HasChosen() bool { return p.chosen != "" }

// Choose takes a sheet and works it out again from its fact.
func (p *SheetList) Choose(number string) {
	p.chosen, p.page = number, nil
	one, there := p.sheet()
	if !there {
		return
	}
	worked, rules, err := money.ReworkFromBook(context.Background(), p.session.Desk, one.Sheet)
	if err != nil {
		p.session.Fail(err)
		return
	}
	doc := money.SheetPaper(one.Sheet, worked, rules, p.session.GrainName(one.Commodity), p.session.Desk, p.session.Language.Printer())
	pages := doc.Layout(report.PageFor(p.session.Desk.Profile().Rules))
	p.page = &pages
}

// sheet is the one chosen.
func (p *SheetList) sheet() (standing, bool) {
	return session.Find(p.all, func(s standing) bool { return s.ID() == p.chosen })
}

// Pages are the chosen sheet as it prints.
func (p *SheetList) Pages() *paper.Layout { return p.page }

// Headline is the paid and the open amount of the chosen sheet.
func (p *SheetList) Headline() model.Status {
	one, there := p.sheet()
	if !there {
		return model.Status{}
	}
	f := p.session
	text := p.note(one)
	for _, paid := range one.payments {
		said := f.Say("payment %d: %s %s %s, %s", paid.Number, paid.Amount, f.Text(paid.How.Said()), paid.Reference, f.Date(paid.Day))
		if !paid.InForce() {
			said = session.Join(", ", said, f.Say("void"))
		}
		text = session.Join("; ", text, said)
	}
	return model.Status{State: p.state(one), Text: text}
}

// Counted is the open amount and the number of sheets, in words.
func (p *SheetList) Counted() string {
	open, left := 0, quantity.Zero(quantity.Dollar)
	for _, s := range p.all {
		if s.isOpen() {
			open, left = open+1, left.Add(s.Left)
		}
	}
	return p.session.Say("%d open: %s", open, left.FixedString(cents))
}

// Empty is the sentence shown where no sheet is listed.
func (p *SheetList) Empty() string {
	switch {
	case p.failed != nil:
		return p.session.Sentence(p.failed)
	case len(p.all) > 0:
		return p.session.Say("No sheet fits. Take a word away.")
	}
	return p.session.Say("No settlement sheet is made yet. Settle makes the first.")
}

// columns of the list.
func (p *SheetList) columns() model.Columns[standing] {
	f := p.session
	return model.Columns[standing]{
		model.Figures(f.Say("Sheet"), 5, standing.ID),
		model.Words(f.Say("Due from"), 10, func(s standing) string { return f.ShortDay(s.Due.String()) }),
		model.Words(f.Say("Grower"), 14, func(s standing) string { return s.Name }).Growing(),
		model.Words(f.Say("Grain"), 8, func(s standing) string { return session.GrainInList(f.Language, s.Commodity) }).Dropped(1),
		model.Figures(f.Say("Payable"), 11, func(s standing) string { return f.Signs().Write(s.Figures["payable"].FixedString(cents)) }).Dropped(2),
		model.Figures(f.Say("Still open"), 11, p.open),
		model.Words(f.Say("Note"), 16, p.note).Stated(),
	}
}

// Columns are the columns of the list.
func (p *SheetList) Columns() []model.Column { return p.columns().Heads() }

// Rows are the sheets that fit the line.
func (p *SheetList) Rows() []model.Row {
	columns, fits := p.columns(), p.fits()
	out := make([]model.Row, len(fits))
	for i, s := range fits {
		out[i] = model.Row{Key: s.ID(), State: p.state(s), Struck: !s.InForce(), Cells: columns.Cells(s)}
	}
	return out
}

func (p *SheetList) open(s standing) string {
	if !s.isOpen() {
		return session.NoFigure
	}
	return p.session.Signs().Write(s.Left.FixedString(cents))
}

// note is the state of a sheet.
func (p *SheetList) note(s standing) string {
	f := p.session
	switch days := s.Due.DaysUntil(f.Desk.Today()); {
	case !s.InForce():
		return f.Say("void")
	case !s.isOpen():
		return f.Say("paid")
	case days < 0:
		return f.Say("deferred")
	case days == 0:
		return f.Say("open since today")
	default:
		return f.Text(message.Count(days, "open for %d day", "open for %d days"))
	}
}

// lateDays is the age from which an open sheet is marked. It is a choice of this program: what the law
// of the place gives stands on the due list.
const lateDays = 14

func (p *SheetList) state(s standing) model.State {
	switch {
	case !s.InForce():
		return model.Locked
	case !s.isOpen():
		return model.OK
	case s.Due.DaysUntil(p.session.Desk.Today()) >= lateDays:
		return model.Warn
	}
	return model.Wait
}

// number is the number of the chosen sheet.
func (p *SheetList) number() int64 {
	n, _ := strconv.ParseInt(p.chosen, 10, 64)
	return n
}
