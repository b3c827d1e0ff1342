package day

import (
	"context"
	"slices"
	"strconv"
	"strings"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// DaySheet is the sheet of a business day, as on paper: grain, money, position, and the alerts the
// manager must see before signing.
type DaySheet struct {
	session *session.Session
	day     quantity.Date
	typed   string // a day that cannot be read
	sheet   daysheet.Sheet
	paper   report.Document
	days    []quantity.Date // closed so far

	chosen string // of the tickets to look at
}

// NewDaySheet makes the sheet of today.
func NewDaySheet(f *session.Session) *DaySheet { return &DaySheet{session: f, day: f.Desk.Today()} }

// Refresh reads the day from the book.
func (s *DaySheet) Refresh() {
	ctx := context.Background()
	var err error
	if s.sheet, err = office.DaySheet(ctx, s.session.Desk, s.day); err == nil {
		s.paper, err = office.DayPaper(ctx, s.session.Desk, s.day)
	}
	if err != nil {
		s.session.Fail(err)
	}
	s.readDays(ctx)
}

func (s *DaySheet) readDays(ctx context.Context) {
	facts, err := office.DaysClosed(ctx, s.session.Desk)
	if err != nil {
		s.session.Fail(err)
		return
	}
	s.days = nil
	for _, f := range facts {
		if d, err := quantity.ParseDate(strings.TrimPrefix(f.Subject, "day ")); err == nil {
			s.days = append(s.days, d)
		}
	}
	slices.SortFunc(s.days, func(a, b quantity.Date) int { return b.Cmp(a) })
}

// DayField is the field that chooses the day.
func (s *DaySheet) DayField() model.Field {
	f := model.Field{ID: "day", Label: s.session.Say("Day"), Kind: model.OpenField, Chars: 12, Value: s.day.String(), Options: s.dayOptions()}
	if s.typed != "" {
		f.Value, f.State, f.Note = s.typed, model.Stop, s.session.Say("Write the day as year-month-day: %s.", s.session.Desk.Today())
	}
	return f
}

func (s *DaySheet) dayOptions() []model.Option {
	today := s.session.Desk.Today()
	out := []model.Option{{Code: today.String(), Detail: s.session.Say("today")}}
	for _, d := range s.days {
		if d != today {
			out = append(out, model.Option{Code: d.String(), Detail: s.session.Say("closed")})
		}
	}
	return out
}

// Type takes the text of the field of the day.
func (s *DaySheet) Type(text string) {
	day, err := quantity.ParseDate(strings.TrimSpace(text))
	if err != nil {
		s.typed = text
		return
	}
	s.typed = ""
	if day != s.day {
		s.day = day
		s.Refresh()
	}
}

// Step goes so many days on, or back.
func (s *DaySheet) Step(days int) {
	s.typed, s.day = "", s.day.AddDays(days)
	s.session.Window.Redraw()
}

// Status returns the status of the day: open or closed.
func (s *DaySheet) Status() model.Status {
	switch c := s.sheet.Closed; {
	case c == nil:
		return model.Status{State: model.Wait, Text: s.session.Say("not closed")}
	case c.Differs:
		return model.Status{State: model.Stop, Text: s.session.Say("not what was closed")}
	case c.Late:
		return model.Status{State: model.Stop, Text: s.session.Say("something came later")}
	default:
		return model.Status{State: model.Locked, Text: s.session.Say("closed by %s, %s", c.By, c.At)}
	}
}

// Numbers accounts for the ticket numbers of the day, in a sentence.
func (s *DaySheet) Numbers() model.Status {
	n := s.sheet.Numbers
	if n.Issued == 0 {
		return model.Status{State: model.Plain, Text: s.session.Say("No ticket was issued. Loads rejected: %d.", len(s.sheet.Refused))}
	}
	text := s.session.Say("Tickets %d to %d, all accounted for: %d in force, %d void, %d corrected. Loads rejected: %d.",
		n.First, n.Last, n.InForce, n.Voided, n.Corrected, len(s.sheet.Refused))
	if len(n.Missing) == 0 {
		return model.Status{State: model.OK, Text: text}
	}
	return model.Status{State: model.Stop, Text: s.session.Say("Tickets %d to %d: not of this day are %s. Check the book before anybody signs.", n.First, n.Last, message.Texts(", ", n.Missing))}
}

// Sheet is one table of the paper, ready to show.
type Sheet struct {
	Columns []model.Column
	Rows    []model.Row
	Empty   string
}

// Grain is the intake and shipments by commodity; Money the charges and payments; Dispositions the
// dispositions; Places the bins; Position the stock. An elevator that weighs in two units has two
// sheets of a kind.
func (s *DaySheet) Grain() []Sheet        { return s.sheets("grain ") }
func (s *DaySheet) Money() []Sheet        { return s.sheets("charges") }
func (s *DaySheet) Dispositions() []Sheet { return s.sheets("disposition ") }
func (s *DaySheet) Places() []Sheet       { return s.sheets("places ") }
func (s *DaySheet) Position() []Sheet     { return s.sheets("position ") }

// sheets returns the tables of the paper whose names begin so, or a text that there are none.
func (s *DaySheet) sheets(name string) []Sheet {
	var out []Sheet
	for _, t := range s.paper.Tables() {
		if strings.HasPrefix(t.Name.String(), name) {
			out = append(out, sheetOf(s.session.Language, t))
		}
	}
	if len(out) == 0 {
		return []Sheet{{Empty: s.session.Say("Nothing on this day. Choose another with Alt+Left and Alt+Right.")}}
	}
	return out
}

// mostWidth limits a column, so that one long sentence does not push the figures out of the window.
const mostWidth = 26

// sureColumns is the number of columns of a sheet that are always shown. Averages come last, and a
// narrow window leaves them out: the paper has them.
const sureColumns = 7

// sheetOf is a table of a paper in the words of this desk, each column as wide as
// its widest cell.
func sheetOf(in session.Language, t report.Table) Sheet {
	out := Sheet{Empty: in.Text(t.Empty)}
	for i, c := range t.Columns {
		column := model.Column{Title: columnTitle(in, c), Figures: c.Align == report.Right, Grow: i == 0}
		if i >= sureColumns {
			column.Drop = i
		}
		out.Columns = append(out.Columns, column)
	}
	for n, r := range t.Rows {
		row := model.Row{Key: strconv.Itoa(n), Cells: make([]string, len(r.Cells)), Total: r.Kind == report.Total, Struck: r.Kind == report.Struck}
		for i, cell := range r.Cells {
			column := &out.Columns[i]
			row.Cells[i] = in.Text(cell)
			column.Width = min(mostWidth, max(column.Width, len([]rune(row.Cells[i]))))
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// shortTitles are the titles of a paper's columns on the screen, where all of them are side by
// side.
var shortTitles = map[string]message.Text{
	"Off for quality":             message.New("Quality"),
	"Average moisture":            message.New("Moist."),
	"Average test weight":         message.New("Test wt."),
	"Loads without price":         message.New("Later: loads"),
	"Charges without price":       message.New("charges"),
	"Taken without price":         message.New("charges"),
	"Off and on without price":    message.New("charges"),
	"Quantity without price":      message.New("quantity"),
	"Tonight bu, by legal weight": message.New("Tonight bu"),
}

// columnTitle is the title of a paper's column with its unit.
func columnTitle(in session.Language, c report.Column) string {
	title := c.Title
	if short, known := shortTitles[title.String()]; known {
		title = short
	}
	return session.Join(" ", in.Text(title), c.Unit)
}
