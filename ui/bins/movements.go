package bins

import (
	"context"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/entry/moving"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// managerField is the field that asks which manager posts what only a manager may.
const managerField = "manager"

// Move asks for a movement of a kind, from the chosen bin, and enters it.
func (b *Bins) Move(kind bin.Kind) {
	house, err := binlog.House(context.Background(), b.session.Desk, b.today())
	if err != nil {
		b.session.Fail(err)
		return
	}
	b.session.Put(model.Ask{
		Draft: "movement " + string(kind), Of: "bin " + b.chosen,
		Title: b.session.Text(kind.Name()), Text: b.cautions(kind), State: cautionState(kind),
		Fields: b.fields(kind, house), Yes: b.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, problems := moving.Read(kind, values, house)
			return ask.Sentences(b.session, problems)
		},
		Then: func(values map[string]string) { b.enter(kind, values, house) },
	})
}

// enter enters what was typed; a manager's act in the name of the manager chosen.
func (b *Bins) enter(kind bin.Kind, values map[string]string, house moving.House) {
	m, problems := moving.Read(kind, values, house)
	if err := problems.Err(moving.Fields(kind)); err != nil {
		b.session.Fail(err)
		return
	}
	act := func() (err error) {
		m, err = scalehouse.MoveGrain(context.Background(), b.session.Desk, m)
		return err
	}
	err := error(nil)
	if who := values[managerField]; who != "" && m.NeedsManager() {
		err = b.session.As(who, act)
	} else {
		err = act()
	}
	if err != nil {
		b.session.Fail(err)
		return
	}
	b.took(m)
}

// took shows the bins after a movement.
func (b *Bins) took(m bin.Movement) {
	b.session.Changed()
	b.Reload()
	said := b.session.Say("movement %d is written down: %s.", m.Number, b.session.Text(m.What.Name()))
	if note := binlog.Note(m); !note.IsZero() {
		said = b.session.Say("movement %d is written down: %s, %s.", m.Number, b.session.Text(m.What.Name()), b.session.Text(note))
	}
	b.session.Notify(model.OK, said)
	b.session.Window.Redraw()
}

// fields are the fields of a kind of movement, with the chosen bin filled in.
func (b *Bins) fields(kind bin.Kind, house moving.House) []model.AskField {
	options := func(typed.Form) []model.Option { return b.binOptions(house) }
	out := ask.Fields(b.session, moving.Fields(kind), ask.Filled{Values: map[string]string{"from": b.chosen}, Options: options, Unit: house.Unit})
	if mayNeedManager(kind) {
		out = append(out, managers(b.session))
	}
	return out
}

// managers asks who does what only a manager may.
func managers(f *session.Session) model.AskField {
	return model.AskField{ID: managerField, Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: binWidth}
}

// The widths of the fields of no table, in figures.
const (
	binWidth, wordsWidth = 24, 30
)

// mayNeedManager reports whether a movement of a kind may be a manager's act.
func mayNeedManager(kind bin.Kind) bool {
	return kind == bin.MeasureUp || bin.Movement{What: kind}.NeedsManager()
}

func (b *Bins) binOptions(house moving.House) []model.Option {
	out := make([]model.Option, 0, len(house.Bins))
	for _, one := range house.Bins {
		var lies []string
		for _, held := range one.Grain {
			lies = append(lies, b.session.Signs().Write(held.Lies.String())+" "+b.session.GrainName(held.Commodity))
		}
		out = append(out, model.Option{Code: one.ID, Name: one.Name, Detail: session.OrElse(strings.Join(lies, ", "), b.session.Say("empty"))})
	}
	return out
}

// cautions are the dangers of an act, where the act is.
func (b *Bins) cautions(kind bin.Kind) string {
	var out []string
	for _, c := range kind.Cautions() {
		out = append(out, b.session.Text(c.Said()))
	}
	return strings.Join(out, " ")
}

func cautionState(kind bin.Kind) model.State {
	if len(kind.Cautions()) > 0 {
		return model.Warn
	}
	return model.Plain
}

// Undo asks why the newest movement of the chosen bin is taken back.
func (b *Bins) Undo() {
	if b.last == nil {
		return
	}
	m := *b.last
	b.session.Put(model.Ask{
		Draft: "undo movement", Of: "bin " + b.chosen,
		Title:  b.session.Say("Take movement %d back?", m.Number),
		Text:   b.session.Say("%s of %s. The grain goes back by the same weights the other way; both movements stay in the book.", b.session.Text(m.What.Name()), m.Day),
		Fields: []model.AskField{{ID: "reason", Label: b.session.Say("Reason"), Chars: wordsWidth, Required: true}},
		Yes:    b.session.Say("Take back"),
		Then: func(values map[string]string) {
			back, err := scalehouse.UndoMovement(context.Background(), b.session.Desk, m.Number, values["reason"])
			if err != nil {
				b.session.Fail(err)
				return
			}
			b.took(back)
		},
	})
}

// CanUndo reports whether the chosen bin has a movement that can be taken back.
func (b *Bins) CanUndo() bool { return b.last != nil }

// PrintCard prints the card of the chosen bin.
func (b *Bins) PrintCard() {
	session.PrintDocument(b.session, b.card, "bin-"+b.chosen+"-"+b.today().String(), b.session.Say("the card of bin %s", b.chosen), false)
}
