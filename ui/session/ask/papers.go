package ask

import (
	"context"
	"strconv"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Span asks for a span of days and prints the paper about it.
type Span struct {
	Title, Text string
	Before      []model.AskField // what is asked before the days
	From, To    string           // the days at first; empty for all
	// Paper makes the paper, with the name of its file and what it is called.
	Paper func(values map[string]string, from, to quantity.Date) (doc report.Document, name, what string, err error)
}

// Ask puts the question.
func (s Span) Ask(f *session.Session) {
	f.Put(model.Ask{
		Title: s.Title, Text: s.Text, Yes: f.Say("Print"),
		Fields: append(s.Before,
			model.AskField{ID: "from", Label: f.Say("From"), Value: s.From, Chars: 12, Hint: f.Say("year-month-day, or empty")},
			model.AskField{ID: "to", Label: f.Say("Through"), Value: s.To, Chars: 12, Hint: f.Say("year-month-day, or empty")},
			model.AskField{ID: "files", Label: f.Say("Also as workbook and lines"), Checkbox: true},
		),
		Check: func(values map[string]string) map[string]string {
			wrong := map[string]string{}
			for _, id := range []string{"from", "to"} {
				if _, err := session.DateOrNone(values[id]); err != nil {
					wrong[id] = f.Sentence(err)
				}
			}
			return wrong
		},
		Then: func(values map[string]string) { s.print(f, values) },
	})
}

func (s Span) print(f *session.Session, values map[string]string) {
	from, _ := session.DateOrNone(values["from"])
	to, _ := session.DateOrNone(values["to"])
	doc, name, what, err := s.Paper(values, from, to)
	if err != nil {
		f.Fail(err)
		return
	}
	if values["files"] == model.TickOn {
		session.ExportDocument(f, doc, name, what)
	}
	session.PrintDocument(f, doc, name, what, true)
}

// Statement asks for the grower and the period of an account, and prints it.
func Statement(f *session.Session, grower string) {
	Span{
		Title:  f.Say("Statement of an account"),
		Text:   f.Say("All loads of a grower, by commodity, with shares, charges and what is payable. A landlord gets only the landlord's share."),
		Before: []model.AskField{{ID: "grower", Label: f.Say("Grower"), Options: f.Known().GrowerOptions, Value: grower, Chars: 28, Required: true}},
		Paper: func(values map[string]string, from, to quantity.Date) (report.Document, string, string, error) {
			grower := values["grower"]
			doc, err := office.Statement(context.Background(), f.Desk, grower, from, to)
			return doc, "account-" + grower, f.Say("the statement of grower %s", grower), err
		},
	}.Ask(f)
}

// Proof asks for a ticket and, if wanted, a moisture for a what-if, and prints the ticket's
// proof sheet: every step in words and figures, to be followed with a pocket calculator.
func Proof(f *session.Session, ticket int64) {
	value := ""
	if ticket > 0 {
		value = session.Counted(ticket)
	}
	f.Put(model.Ask{
		Title: f.Say("Proof of a ticket"), Text: f.Say("One or two pages a grower can follow with a pocket calculator."),
		Fields: []model.AskField{
			{ID: "ticket", Label: f.Say("Ticket"), Value: value, Figures: true, Chars: 8, Required: true},
			{ID: "figure", Label: f.Say("What if it were"), Unit: "%", Figures: true, Chars: 7, Hint: f.Say("another moisture, or empty")},
		},
		Yes: f.Say("Print"),
		Check: func(values map[string]string) map[string]string {
			wrong := map[string]string{}
			if _, ok := session.Number(values["ticket"]); !ok {
				wrong["ticket"] = f.Say("Type the number as it stands on the ticket.")
			}
			if _, err := session.FigureOrNone(f.Language, values["figure"]); err != nil {
				wrong["figure"] = f.Sentence(err)
			}
			return wrong
		},
		Then: func(values map[string]string) {
			n, _ := session.Number(values["ticket"])
			figure, _ := session.FigureOrNone(f.Language, values["figure"])
			printProof(f, n, office.ProofOptions{Moisture: figure})
		},
	})
}

func printProof(f *session.Session, n int64, o office.ProofOptions) {
	doc, err := office.Proof(context.Background(), f.Desk, n, o)
	if err != nil {
		f.Fail(err)
		return
	}
	session.PrintDocument(f, doc, "proof-"+strconv.FormatInt(n, 10), f.Say("the proof of ticket %d", n), false)
}
