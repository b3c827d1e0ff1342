package ask

import (
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/office"
	"tenthpoint/internal/office/rests"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// ManagerFields ask for a manager and a reason.
func ManagerFields(f *session.Session) []model.AskField {
	return []model.AskField{
		{ID: "reason", Label: f.Say("Reason"), Chars: 40, Required: true},
		{ID: "who", Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true},
	}
}

// Void asks for the reason and cancels a ticket; then is called once it is void. Where something rests
// on the ticket, what would follow is shown and asked about before anything is written.
func Void(f *session.Session, number int64, then func()) {
	resting := RestingOn(f, number)
	f.Put(model.Ask{
		Draft: "void", Of: fmt.Sprint("ticket ", number),
		Title: f.Say("Void ticket %d?", number),
		Text:  joined(f.Say("The load counts nowhere. The number stays used, and every copy is kept. This cannot be taken back."), resting),
		State: model.Stop, Fields: ManagerFields(f), Yes: f.Say("Void the ticket"), Danger: true,
		Then: func(values map[string]string) {
			if resting == "" {
				voided(f, number, values, scalehouse.Void, then)
				return
			}
			proposeVoid(f, number, resting, values, then)
		},
	})
}

// voided cancels a ticket by an act.
func voided(f *session.Session, number int64, values map[string]string, act func(context.Context, scalehouse.Actor, int64, string) error, then func()) {
	err := f.As(values["who"], func() error { return act(context.Background(), f.Desk, number, values["reason"]) })
	if err != nil {
		f.Fail(err)
		return
	}
	f.Notify(model.OK, f.Say("ticket %d is void: %s", number, values["reason"]))
	f.Changed()
	then()
}

// proposeVoid shows what follows a ticket that is voided, and asks whether to do it all.
func proposeVoid(f *session.Session, number int64, resting string, values map[string]string, then func()) {
	var follows []rests.Remade
	err := f.As(values["who"], func() (err error) {
		follows, err = scalehouse.ProposeVoid(context.Background(), f.Desk, number, values["reason"])
		return err
	})
	if err != nil {
		f.Fail(err)
		return
	}
	f.Put(model.Ask{
		Title: f.Say("Void ticket %d with all that rests on it?", number), Text: joined(resting, strings.Join(followLines(f, follows), "\n")),
		State: model.Stop, Yes: f.Say("Void it all"), Danger: true,
		Then: func(map[string]string) { voided(f, number, values, scalehouse.VoidWithChain, then) },
	})
}

// followLines are the changes of settlement sheets, a line for each.
func followLines(f *session.Session, follows []rests.Remade) []string {
	var out []string
	for _, r := range follows {
		next := f.Say("none in its place")
		if r.Is != nil {
			next = f.Say("made anew")
		}
		out = append(out, f.Say("Settlement sheet %d, %v: %v. Quantity %s more, payable %s more; paid %s, open %s.",
			r.Was.Number, r.Was.Name, next, r.Quantity(), r.Payable(), r.Paid, r.Left))
	}
	return out
}

// RestingOn says what rests on a ticket; empty where nothing does.
func RestingOn(f *session.Session, number int64) string {
	l, err := office.Ticket(context.Background(), f.Desk, number)
	if err != nil {
		return ""
	}
	all, err := rests.On(office.ReadNow(context.Background(), f.Desk), l)
	if err != nil || len(all) == 0 {
		return ""
	}
	said := make([]string, len(all))
	for i, r := range all {
		said[i] = f.Text(r.Said)
	}
	return f.Say("On it rest: %s. They follow in the same act.", strings.Join(said, ", "))
}

func joined(a, b string) string { return strings.TrimSpace(a + "\n\n" + b) }
