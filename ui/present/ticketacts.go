package present

import (
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/slip"
	"tenthpoint/ui/model"
)

// Headline says in a sentence what became of the chosen ticket.
func (t *Tickets) Headline() model.Remark {
	l := t.paper.load
	if l == nil {
		return model.Remark{}
	}
	local := t.frame.Desk.Local
	switch l.Phase {
	case load.Void:
		if l.Again.By != 0 {
			return model.Remark{State: model.Stop, Text: Say("Void, reissued as ticket %d: %s", l.Again.By, l.Ended.Reason)}
		}
		return model.Remark{State: model.Stop, Text: Say("Void since %s, by %s: %s", local(l.Ended.At), l.Ended.Who, l.Ended.Reason)}
	case load.Corrected:
		return model.Remark{State: model.Locked, Text: Say("Corrected by ticket %d on %s: %s", l.Ended.By, local(l.Ended.At), l.Ended.Reason)}
	case load.TurnedAway:
		return model.Remark{State: model.Stop, Text: Say("Turned away %s by %s: %s", local(l.Ended.At), l.Ended.Who, l.Ended.Reason)}
	}
	text := Say("Issued %s by %s, %s.", local(l.Issued.At), l.Weigher, copiesText(l.Copies))
	if place := inPlaceText(l); place != "" {
		return model.Remark{State: model.Wait, Text: place + " · " + text}
	}
	return model.Remark{State: model.OK, Text: text}
}

func copiesText(copies int64) string {
	switch copies {
	case 0:
		return Say("not printed yet")
	case 1:
		return Say("printed once")
	}
	return Say("printed %d times", copies)
}

// CanReprint reports whether there is a ticket to print.
func (t *Tickets) CanReprint() bool { return t.paper.load != nil && t.paper.load.Number != 0 }

// CanChange reports whether the chosen ticket may be corrected or voided.
func (t *Tickets) CanChange() bool {
	return t.paper.load != nil && t.paper.load.Phase == load.Ticketed
}

// WhyNotChange says why the chosen ticket may not be.
func (t *Tickets) WhyNotChange() string {
	l := t.paper.load
	switch {
	case l == nil:
		return Say("There is no ticket in hand.")
	case l.Again.By != 0:
		return alreadyReissued(l)
	case l.Phase == load.Void:
		return Say("Ticket %d is void already.", l.Number)
	case l.Phase == load.Corrected:
		return Say("Ticket %d was corrected by ticket %d. Go on with that one.", l.Number, l.Ended.By)
	}
	return Say("This load has no ticket.")
}

// CanReissue reports whether the chosen ticket is void and its grain has no other
// ticket yet.
func (t *Tickets) CanReissue() bool {
	l := t.paper.load
	return l != nil && l.Phase == load.Void && l.Again.By == 0
}

// WhyNotReissue says why the chosen ticket is not to be reissued.
func (t *Tickets) WhyNotReissue() string {
	l := t.paper.load
	switch {
	case l != nil && l.Again.By != 0:
		return alreadyReissued(l)
	case t.CanChange():
		return Say("Ticket %d is in force. Only a void ticket is reissued.", l.Number)
	}
	return t.WhyNotChange()
}

func alreadyReissued(l *load.Load) string {
	return Say("Ticket %d is void and was reissued as ticket %d. Go on with that one.", l.Number, l.Again.By)
}

// Reprint prints another copy of the chosen ticket.
func (t *Tickets) Reprint() {
	PrintTicket(t.frame, t.paper.load.Number)
	t.Reload()
}

// ManagerFields ask for a manager and a reason.
func ManagerFields(f *Frame) []model.AskField {
	return []model.AskField{
		{ID: "reason", Label: Say("Reason"), Chars: 40, Required: true},
		{ID: "who", Label: Say("Manager"), Options: f.managers(), Value: f.managerHere(), Chars: 24, Required: true},
	}
}

// Void asks for the reason and cancels the chosen ticket.
func (t *Tickets) Void() {
	number := t.paper.load.Number
	t.frame.Put(model.Ask{
		Draft: "void", Of: fmt.Sprint("ticket ", number),
		Title: Say("Void ticket %d?", number),
		Text:  Say("The load counts nowhere. The number stays used, and every copy is kept. This cannot be taken back."),
		State: model.Stop, Fields: ManagerFields(t.frame), Yes: Say("Void the ticket"), Danger: true,
		Then: func(values map[string]string) {
			err := t.frame.as(values["who"], func() error {
				return t.frame.Desk.Void(context.Background(), number, values["reason"])
			})
			if err != nil {
				t.frame.Fail(err)
				return
			}
			t.frame.Say(model.OK, Say("ticket %d is void: %s", number, values["reason"]))
			t.frame.Changed()
			t.Reload()
		},
	})
}

// Correct asks for the reason and opens the load that corrects the chosen
// ticket, on the yard.
func (t *Tickets) Correct() {
	number := t.paper.load.Number
	t.frame.Put(model.Ask{
		Draft: "correct", Of: fmt.Sprint("ticket ", number),
		Title: Say("Correct ticket %d?", number),
		Text:  Say("A load opens on the yard with everything this one had. Change what was wrong and issue it: the new ticket takes this one's place, and both are kept."),
		State: model.Warn, Fields: ManagerFields(t.frame), Yes: Say("Open the correcting load"),
		Then: func(values map[string]string) {
			if id, open := t.openInPlace(number, values, t.frame.Desk.Correct); open {
				t.frame.Say(model.OK, Say("load %s corrects ticket %d. Change what was wrong and issue it.", id, number))
			}
		},
	})
}

// Reissue asks for the reason, which is the void's own unless another is typed,
// and opens a load for the grain of the chosen void ticket, on the yard.
func (t *Tickets) Reissue() {
	l := t.paper.load
	fields := ManagerFields(t.frame)
	fields[0].Value = l.Ended.Reason
	number := l.Number
	t.frame.Put(model.Ask{
		Draft: "reissue", Of: fmt.Sprint("ticket ", number),
		Title: Say("Reissue void ticket %d?", number),
		Text:  Say("A load opens on the yard with everything this one had. Issue it: the new ticket has its own number and names this one, which stays void on its day."),
		State: model.Warn, Fields: fields, Yes: Say("Open the load"),
		Then: func(values map[string]string) {
			if id, open := t.openInPlace(number, values, t.frame.Desk.Reissue); open {
				t.frame.Say(model.OK, Say("load %s is the grain of ticket %d, void. Look it over and issue it.", id, number))
			}
		},
	})
}

// openInPlace opens the load that is to take a ticket's place and takes it in
// hand.
func (t *Tickets) openInPlace(number int64, values map[string]string, open func(context.Context, int64, string) (string, error)) (id string, ok bool) {
	err := t.frame.as(values["who"], func() (err error) {
		id, err = open(context.Background(), number, values["reason"])
		return err
	})
	if err != nil {
		t.frame.Fail(err)
		return "", false
	}
	t.frame.Changed()
	t.frame.TakeUp(id)
	return id, true
}

// CheckCode asks for the code at the foot of a slip, or for what a scanner
// reads from the square beside it, and holds the paper against the book.
func (t *Tickets) CheckCode() {
	t.frame.Put(model.Ask{
		Title:  Say("Is this paper one of ours?"),
		Text:   Say("Type the code from the foot of the slip, or scan the square beside it."),
		Fields: []model.AskField{{ID: "code", Label: Say("Code"), Chars: 40, Required: true}},
		Yes:    Say("Look it up"),
		Then:   func(values map[string]string) { t.lookUp(values["code"]) },
	})
}

func (t *Tickets) lookUp(text string) {
	code := text
	scanned, err := slip.ParsePayload(strings.TrimSpace(text))
	isScanned := err == nil
	if isScanned {
		code = scanned.Code
	}
	var found *load.Load
	t.frame.Run(model.Job{
		Topic: "code", Title: Say("Looking for the code"),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			found, err = t.frame.Desk.ByCode(ctx, code)
			return err
		},
		Done: func(err error) {
			if err != nil {
				t.frame.Put(model.Ask{Title: Say("No such ticket"), Text: sentence(err), State: model.Stop, Notice: true})
				return
			}
			t.tell(found, scanned, isScanned)
		},
	})
}

// tell says what the book has under a code, and whether a scanned paper says
// the same.
func (t *Tickets) tell(l *load.Load, scanned slip.Payload, isScanned bool) {
	book, err := payload(t.frame, l)
	if err != nil {
		t.frame.Fail(err)
		return
	}
	text := Say("Ticket %d of %s, %s, %s: net %s, moisture %s, %s.", l.Number, l.IssuedDay, l.Details.Grower.Name,
		grainName(l.Details.Commodity), book.Net, book.Moisture, book.Dry)
	state := model.OK
	title := Say("The code is ticket %d", l.Number)
	if isScanned {
		wrong := unlike(scanned, book)
		switch {
		case len(wrong) > 0:
			state, title = model.Stop, Say("The paper does not agree with the book")
			text += "\n" + strings.Join(wrong, "\n")
		default:
			text += "\n" + Say("Every figure in the square is the book's.")
		}
	} else {
		text += "\n" + Say("Hold these figures against the paper.")
	}
	if l.Phase != load.Ticketed {
		state = max(state, model.Warn)
		text += "\n" + Say("The ticket is %s.", Say(string(l.Phase)))
	}
	t.frame.Put(model.Ask{Title: title, Text: text, State: state, Notice: true})
	t.Type(fmt.Sprintf("%s %d", Say("ticket"), l.Number))
}

// payload is what the square on a ticket must hold.
func payload(f *Frame, l *load.Load) (slip.Payload, error) {
	ticket, err := IssuedTicket(f, context.Background(), l, 0)
	if err != nil {
		return slip.Payload{}, err
	}
	p, ok := slip.QR(slip.Compose(ticket))
	if !ok {
		return p, fmt.Errorf("%s", Say("Ticket %d has no figures to hold a paper against", l.Number))
	}
	return p, nil
}

// unlike names the figures on which a paper and the book part.
func unlike(paper, book slip.Payload) []string {
	var wrong []string
	part := func(what, on, in string) {
		if on != in {
			wrong = append(wrong, Say("%s: the paper has %s, the book %s.", what, on, in))
		}
	}
	part(Say("Ticket"), fmt.Sprint(paper.Ticket), fmt.Sprint(book.Ticket))
	part(Say("Net"), paper.Net.String(), book.Net.String())
	part(Say("Moisture"), paper.Moisture.String(), book.Moisture.String())
	part(Say("Quantity"), paper.Dry.String(), book.Dry.String())
	return wrong
}
