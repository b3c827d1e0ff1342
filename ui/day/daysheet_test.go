package day

import (
	"bytes"
	"context"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/examiner"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
	"tenthpoint/ui/session/sessiontest"
)

// cabinet is a folder of a test.
type cabinet map[string][]byte

func (c cabinet) SaveSet(_ context.Context, folder string, files []examiner.File) (string, error) {
	for _, f := range files {
		c[folder+"/"+f.Name] = f.Bytes
	}
	return folder, nil
}

func (c cabinet) Save(_ context.Context, name string, data []byte) (string, error) {
	c[name] = data
	return "exports/" + name, nil
}

func dayRoom(t testing.TB, loads int) (*sessiontest.Room, *DaySheet) {
	t.Helper()
	r := sessiontest.DemoRoom(t, loads)
	s := NewDaySheet(r.Session)
	s.Refresh()
	return r, s
}

// The screen shows what the paper prints: the same cells in the same rows, with the total last.
func TestDaySheetShowsThePaper(t *testing.T) {
	r, s := dayRoom(t, 160)
	s.Step(-1)
	s.Refresh()
	paper, err := office.DayPaper(t.Context(), r.Session.Desk, s.day)
	sessiontest.Must(t, err)
	table, found := paper.Table("charges")
	if !found {
		t.Fatal("the paper has no charges")
	}
	money := s.Money()[0]
	if len(money.Rows) != len(table.Rows) || len(money.Columns) != len(table.Columns) {
		t.Fatalf("%d rows by %d, the paper has %d by %d", len(money.Rows), len(money.Columns), len(table.Rows), len(table.Columns))
	}
	for i, row := range money.Rows {
		printed := make([]string, len(table.Rows[i].Cells))
		for c, cell := range table.Rows[i].Cells {
			printed[c] = r.Session.Text(cell)
		}
		if !slices.Equal(row.Cells[1:], printed[1:]) {
			t.Errorf("row %d shows %v, the paper prints %v", i, row.Cells, printed)
		}
	}
	if last := money.Rows[len(money.Rows)-1]; !last.Total {
		t.Errorf("the last row is no total: %v", last)
	}
	for name, sheets := range map[string][]Sheet{"grain": s.Grain(), "disposition": s.Dispositions(), "places": s.Places(), "position": s.Position()} {
		if len(sheets) == 0 || len(sheets[0].Rows) == 0 {
			t.Errorf("%s has no rows", name)
		}
	}
}

// The bars add up to the loads of the day, the tallest reaches the top.
func TestDayBarsAddUp(t *testing.T) {
	_, s := dayRoom(t, 160)
	s.Step(-1)
	s.Refresh()
	loads := 0
	for _, p := range s.sheet.Parts {
		loads += len(p.Tickets)
	}
	for name, b := range map[string]model.Picture{"hours": s.Hours(), "spread": s.Spread(), "bins": s.WhereTo()} {
		if len(b.Stacks) == 0 {
			t.Errorf("%s: no columns", name)
			continue
		}
		top := 0
		for _, stack := range b.Stacks {
			top = max(top, high(stack))
		}
		if top < 990 || top > 1010 { // each part is rounded
			t.Errorf("%s: the tallest column reaches %d thousandths", name, top)
		}
	}
	sum := int64(0)
	for _, bar := range s.Hours().Stacks {
		n, _ := session.Number(bar.Value)
		sum += n
	}
	if sum != int64(loads) {
		t.Errorf("the hours add to %d loads, the day has %d", sum, loads)
	}
}

// high is the height of a column.
func high(s model.Stack) (sum int) {
	for _, part := range s.Parts {
		sum += part.Height
	}
	return sum
}

// Columns are named short, and their unit stays.
func TestColumnTitles(t *testing.T) {
	for want, title := range map[string]report.Column{
		"Net lb": {Title: message.New("Net"), Unit: "lb"}, "Quality kg": {Title: message.New("Off for quality"), Unit: "kg"},
		"Later: loads": {Title: message.New("Loads without price")}, "Commodity": {Title: message.New("Commodity")},
	} {
		if got := columnTitle(session.Language{}, title); got != want {
			t.Errorf("%s is called %q, want %q", title, got, want)
		}
	}
}

// A day is chosen by its date; what is no date is said, and changes nothing.
func TestDayIsChosen(t *testing.T) {
	_, s := dayRoom(t, 120)
	today := s.day
	s.Type("yesterday")
	if f := s.DayField(); f.State != model.Stop || f.Value != "yesterday" || s.day != today {
		t.Errorf("a word for a day gives %+v", f)
	}
	s.Type(today.AddDays(-1).String())
	if f := s.DayField(); f.State != model.Plain || s.day != today.AddDays(-1) {
		t.Errorf("yesterday's date gives %+v", f)
	}
	if len(s.DayField().Options) < 2 {
		t.Error("the days closed are not offered")
	}
	if s.CanClose() || !strings.Contains(s.WhyNotClose(), "closed already") || s.Status().State != model.Locked {
		t.Errorf("yesterday stands as %v", s.Status())
	}
	s.Step(+2)
	s.Refresh()
	if s.CanClose() || !strings.Contains(s.WhyNotClose(), "not come yet") {
		t.Error("tomorrow may be closed")
	}
}

// Every number of the day is accounted for; one that is missing is told in red.
func TestNumbersAreAccountedFor(t *testing.T) {
	_, s := dayRoom(t, 120)
	s.Step(-1)
	s.Refresh()
	if n := s.Numbers(); n.State != model.OK || !strings.Contains(n.Text, "all accounted for") {
		t.Errorf("yesterday's numbers: %+v", n)
	}
	s.sheet.Numbers.Missing = []daysheet.Range{{First: 7, Last: 9}}
	if n := s.Numbers(); n.State != model.Stop || !strings.Contains(n.Text, "7 to 9") {
		t.Errorf("missing numbers: %+v", n)
	}
}

// A manager closes the day with a remark; a clerk cannot.
func TestDayIsClosed(t *testing.T) {
	r, s := dayRoom(t, 120)
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Clerk))
	s.Close()
	if text := r.Question().Text; !strings.Contains(text, "Trucks on the yard") {
		t.Errorf("trucks on the yard are not named: %q", text)
	}
	if wrong := r.Answer(map[string]string{"who": ""}); wrong["who"] == "" {
		t.Error("nobody closed the day")
	}
	r.Answer(map[string]string{"who": demo.Manager, "remark": "scale cleaned"})
	s.Refresh()
	if s.Status().State != model.Locked || !strings.Contains(s.Status().Text, demo.Manager) {
		t.Errorf("the day stands as %+v; said %q", s.Status(), r.Last())
	}
	if !slices.ContainsFunc(s.Evening(), func(x model.Status) bool { return x.Text == "scale cleaned" }) {
		t.Error("the remark is not shown")
	}
	if who := r.Session.Desk.Who().Name; who != demo.Clerk {
		t.Errorf("%s is signed in afterwards", who)
	}
}

// What a manager must see is listed: one row for each void, correction, refusal,
// typed weight.
func TestDayTellsWhatToLookAt(t *testing.T) {
	r, s := dayRoom(t, 120)
	last, _, err := office.LastTicket(t.Context(), r.Session.Desk)
	sessiontest.Must(t, err)
	sessiontest.Must(t, scalehouse.Void(t.Context(), r.Session.Desk, last, "wrong truck"))
	s.Refresh()
	rows := s.AlertRows()
	i := slices.IndexFunc(rows, func(row model.Row) bool { return row.Cells[0] == session.Counted(last) })
	if i < 0 || rows[i].State != model.Stop || !strings.Contains(rows[i].Cells[4], "wrong truck") {
		t.Fatalf("the void is not told: %v", rows)
	}
	s.Choose(rows[i].Key)
	if first := s.Evening()[0]; !strings.Contains(first.Text, "wrong truck") {
		t.Errorf("the chosen ticket is not shown in full: %+v", first)
	}
}

// The sheet is printed, and written as a workbook and as lines.
func TestDayIsPrintedAndWritten(t *testing.T) {
	r, s := dayRoom(t, 120)
	s.Step(-1)
	s.Refresh()
	s.Print()
	if len(r.Papers) != 1 {
		t.Errorf("printed %d papers; said %q", len(r.Papers), r.Last())
	}
	s.Export()
	if r.State != model.Warn {
		t.Errorf("without a folder it says %q", r.Last())
	}
	files := cabinet{}
	r.Session.Files = files
	s.Export()
	book := files["day-"+s.day.String()+".xlsx"]
	if !bytes.HasPrefix(book, []byte("PK")) || len(files) < 4 {
		t.Errorf("written are %d files, the workbook has %d bytes", len(files), len(book))
	}
}

// The papers an examiner asks for are written from the day sheet, for days that make sense.
func TestPapersForAnExaminer(t *testing.T) {
	r, s := dayRoom(t, 120)
	examination{s}.ask()
	r.Answer(nil)
	if r.State != model.Warn {
		t.Errorf("without a folder it says %q", r.Last())
	}
	files := cabinet{}
	r.Session.Files = files
	examination{s}.ask()
	if wrong := r.Answer(map[string]string{"from": s.day.String(), "to": s.day.AddDays(-1).String()}); wrong["to"] == "" {
		t.Error("a period that ends before it begins was taken")
	}
	r.Answer(map[string]string{"from": s.day.AddDays(-1).String(), "to": s.day.String()})
	folder := "examiner-" + s.day.AddDays(-1).String() + "-" + s.day.String() + "/"
	if len(files) < 10 || len(files[folder+examiner.IndexFile]) == 0 || len(files[folder+examiner.HashesFile]) == 0 {
		t.Errorf("written are %d files; said %q", len(files), r.Last())
	}
}

// A statement is asked for, for a grower and days, and printed.
func TestStatementIsPrinted(t *testing.T) {
	r, s := dayRoom(t, 120)
	ask.Statement(s.session, "")
	if wrong := r.Answer(map[string]string{"grower": "123", "from": "last week"}); wrong["from"] == "" {
		t.Error("last week was taken for a date")
	}
	files := cabinet{}
	r.Session.Files = files
	r.Answer(map[string]string{"grower": "123", "from": "2025-10-01", "files": model.TickOn})
	if len(r.Papers["account-123"]) == 0 || len(files["account-123.xlsx"]) == 0 {
		t.Errorf("printed %d papers, %d files; said %q", len(r.Papers), len(files), r.Last())
	}
}
