package tickets

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/slipcode"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

func TestCheckCode(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	s := openIssued(r)
	l := s.Load()
	book, err := square(r.Session, l, scaleticket.Square{})
	sessiontest.Must(t, err)
	forged := *book.Code
	forged.Drafts = []slipcode.Draft{{Gross: book.Code.Drafts[0].Gross.Add(book.Net), Tare: book.Code.Drafts[0].Tare}}
	twice := forged.Net()
	text, err := forged.Text()
	sessiontest.Must(t, err)
	first := book.Payload
	first.Net = twice
	for _, c := range []struct {
		title, typed string
		state        model.State
		says         string
	}{
		{"typed", book.Payload.Code, model.OK, "Hold these figures"},
		{"in capitals", strings.ToUpper(book.Payload.Code), model.OK, "Hold these figures"},
		{"scanned", book.Text, model.OK, "Every figure in the square is the book's"},
		{"scanned from an older slip", book.Payload.String(), model.OK, "Every figure in the square is the book's"},
		{"forged", text, model.Stop, "Net: the paper has " + twice.String()},
		{"forged in the older format", first.String(), model.Stop, "Net: the paper has " + twice.String()},
		{"torn", book.Text[:len(book.Text)-5], model.Stop, "torn"},
		{"unknown", "000000000000", model.Stop, "no ticket in this book"},
		{"too short", "12", model.Stop, "too short"},
	} {
		t.Run(c.title, func(t *testing.T) {
			r.T = t
			s.CheckCode()
			r.Answer(map[string]string{"code": c.typed})
			told := r.Question()
			if !told.Notice || told.State != c.state || !strings.Contains(told.Text, c.says) {
				t.Errorf("told %d %q: %q, want %d with %q", told.State, told.Title, told.Text, c.state, c.says)
			}
		})
	}
	if s.Load().Number != l.Number || s.Line() != fmt.Sprint("ticket ", l.Number) {
		t.Errorf("afterward the list is %q", s.Line())
	}
}
