package tickets

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/slipcode"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// Reprint prints another copy of the chosen ticket.
func (t *Tickets) Reprint() {
	session.PrintTicket(t.session, t.Ticket.load.Number)
	t.Reload()
}

// Void asks for the reason and cancels the chosen ticket.
func (t *Tickets) Void() { ask.Void(t.session, t.Ticket.load.Number, t.Reload) }

// Correct asks for the reason and opens the load that corrects the chosen
// ticket, on the yard.
func (t *Tickets) Correct() {
	number := t.Ticket.load.Number
	correct, text := scalehouse.Correct, t.session.Say("A load opens on the yard with everything this one had. Change what was wrong and issue it: the new ticket takes this one's place, and both are kept.")
	if resting := ask.RestingOn(t.session, number); resting != "" {
		correct, text = scalehouse.CorrectWithChain, text+"\n\n"+resting
	}
	t.session.Put(model.Ask{
		Draft: "correct", Of: fmt.Sprint("ticket ", number),
		Title: t.session.Say("Correct ticket %d?", number),
		Text:  text,
		State: model.Warn, Fields: ask.ManagerFields(t.session), Yes: t.session.Say("Open the correcting load"),
		Then: func(values map[string]string) {
			if id, open := t.openInPlace(number, values, correct); open {
				t.session.Notify(model.OK, t.session.Say("load %s corrects ticket %d. Change what was wrong and issue it.", id, number))
			}
		},
	})
}

// Reissue asks for the reason, which is the void's own unless another is typed,
// and opens a load for the grain of the chosen void ticket, on the yard.
func (t *Tickets) Reissue() {
	l := t.Ticket.load
	fields := ask.ManagerFields(t.session)
	fields[0].Value = l.Ended.Reason
	number := l.Number
	t.session.Put(model.Ask{
		Draft: "reissue", Of: fmt.Sprint("ticket ", number),
		Title: t.session.Say("Reissue void ticket %d?", number),
		Text:  t.session.Say("A load opens on the yard with everything this one had. Issue it: the new ticket has its own number and names this one, which stays void on its day."),
		State: model.Warn, Fields: fields, Yes: t.session.Say("Open the load"),
		Then: func(values map[string]string) {
			if id, open := t.openInPlace(number, values, scalehouse.Reissue); open {
				t.session.Notify(model.OK, t.session.Say("load %s is the grain of ticket %d, void. Look it over and issue it.", id, number))
			}
		},
	})
}

// openInPlace opens the load that is to replace a ticket and makes it current.
func (t *Tickets) openInPlace(number int64, values map[string]string, open func(context.Context, scalehouse.Actor, int64, string) (string, error)) (id string, ok bool) {
	err := t.session.As(values["who"], func() (err error) {
		id, err = open(context.Background(), t.session.Desk, number, values["reason"])
		return err
	})
	if err != nil {
		t.session.Fail(err)
		return "", false
	}
	t.session.Changed()
	t.session.Open("yard", id)
	return id, true
}

// CheckCode asks for the code at the foot of a slip, or for the scanned QR code beside it, and
// compares the paper with the book.
func (t *Tickets) CheckCode() {
	t.session.Put(model.Ask{
		Title:  t.session.Say("Is this paper one of ours?"),
		Text:   t.session.Say("Type the code from the foot of the slip, or scan the square beside it."),
		Fields: []model.AskField{{ID: "code", Label: t.session.Say("Code"), Chars: 40, Required: true}},
		Yes:    t.session.Say("Look it up"),
		Then:   func(values map[string]string) { t.lookUp(values["code"]) },
	})
}

// slipMarks begin the text of the square on a slip, today's and the first format.
var slipMarks = []string{"TP2:", "TENTHPOINT/1 "}

// openScanned opens the ticket whose slip was put under a reader, and says whether the paper agrees with
// the book.
func (t *Tickets) openScanned(text string) {
	scanned, err := scaleticket.ReadSquare(strings.TrimSpace(text))
	if err != nil {
		t.session.Fail(err)
		return
	}
	l, err := office.TicketByCode(context.Background(), t.session.Desk, scanned.Payload.Code)
	if err != nil {
		t.session.Fail(err)
		return
	}
	book, err := square(t.session, l, scanned)
	if err != nil {
		t.session.Fail(err)
		return
	}
	t.session.Open("tickets", strconv.FormatInt(l.Number, 10))
	t.Choose(l.ID)
	t.session.Window.Redraw()
	if len(unlike(t.session.Language, scanned, book)) > 0 {
		t.tell(l, scanned, true)
		return
	}
	t.session.Notify(model.OK, t.session.Say("ticket %d: every figure in the square is the book's.", l.Number))
}

func (t *Tickets) lookUp(text string) {
	code := text
	scanned, err := scaleticket.ReadSquare(strings.TrimSpace(text))
	isScanned := err == nil
	if slipcode.Is(text) && !isScanned {
		t.session.Put(model.Ask{Title: t.session.Say("The code cannot be read"), Text: t.session.Sentence(err), State: model.Stop, Notice: true})
		return
	}
	if isScanned {
		code = scanned.Payload.Code
	}
	var found *load.Load
	t.session.Run(model.Job{
		Topic: "code", Title: t.session.Say("Looking for the code"),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			found, err = office.TicketByCode(ctx, t.session.Desk, code)
			return err
		},
		Done: func(err error) {
			if err != nil {
				t.session.Put(model.Ask{Title: t.session.Say("No such ticket"), Text: t.session.Sentence(err), State: model.Stop, Notice: true})
				return
			}
			t.tell(found, scanned, isScanned)
		},
	})
}

// tell shows the ticket of a code, and whether a scanned paper agrees.
func (t *Tickets) tell(l *load.Load, scanned scaleticket.Square, isScanned bool) {
	book, err := square(t.session, l, scanned)
	if err != nil {
		t.session.Fail(err)
		return
	}
	text := t.session.Say("Ticket %d of %s, %s, %s: net %s, moisture %s, %s.", l.Number, l.IssuedDay, l.Details.Grower.Name,
		t.session.GrainName(l.Details.Commodity), book.Net, book.Moisture, book.Dry)
	state := model.OK
	title := t.session.Say("The code is ticket %d", l.Number)
	if isScanned {
		wrong := unlike(t.session.Language, scanned, book)
		switch {
		case len(wrong) > 0:
			state, title = model.Stop, t.session.Say("The paper does not agree with the book")
			text += "\n" + strings.Join(wrong, "\n")
		default:
			text += "\n" + t.session.Say("Every figure in the square is the book's.")
		}
	} else {
		text += "\n" + t.session.Say("Hold these figures against the paper.")
	}
	if l.Phase != load.Ticketed {
		state = max(state, model.Warn)
		text += "\n" + t.session.Say("The ticket is %s.", t.session.Say(string(l.Phase)))
	}
	t.session.Put(model.Ask{Title: title, Text: text, State: state, Notice: true})
	t.Type(fmt.Sprintf("%s %d", t.session.Say("ticket"), l.Number))
}

// square is the QR code of a ticket as on the copy that a scanned one is from.
func square(f *session.Session, l *load.Load, scanned scaleticket.Square) (scaleticket.Square, error) {
	ticket, err := session.IssuedTicket(context.Background(), f, l, 0)
	if err != nil {
		return scaleticket.Square{}, err
	}
	kept := ticket.SquareLike(scanned)
	if kept.Text == "" {
		return kept, fmt.Errorf("%s", f.Say("Ticket %d has no figures to hold a paper against", l.Number))
	}
	return kept, nil
}

// unlike names the figures in which a paper and the book differ.
func unlike(language session.Language, paper, book scaleticket.Square) []string {
	var wrong []string
	for _, d := range scaleticket.Unlike(paper, book) {
		wrong = append(wrong, language.Say("%s: the paper has %s, the book %s.", d.What, d.Paper, d.Book))
	}
	return wrong
}
