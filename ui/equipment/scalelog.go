package equipment

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office/scalelog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/truckscale"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// ScaleLogs are the logs of the scales of the elevator.
type ScaleLogs struct {
	session  *session.Session
	statuses map[string]truckscale.Status
}

// NewScaleLogs reads the logs.
func NewScaleLogs(f *session.Session) *ScaleLogs {
	l := &ScaleLogs{session: f}
	l.Read()
	return l
}

// HasScale reports whether a scale is set up.
func (l *ScaleLogs) HasScale() bool { return len(l.session.Desk.Profile().Scales) > 0 }

// status returns the status of a scale's log when the logs were last read.
func (l *ScaleLogs) status(s elevator.Scale) truckscale.Status { return l.statuses[s.ID] }

// Read loads the logs of the scales from the book.
func (l *ScaleLogs) Read() {
	l.statuses = map[string]truckscale.Status{}
	for _, s := range l.session.Desk.Profile().Scales {
		log, err := scalelog.Read(context.Background(), l.session.Desk, s.ID)
		if err != nil {
			l.session.Fail(err)
			continue
		}
		l.statuses[s.ID] = log.Status(l.session.Desk.Today())
	}
}

// lines adds the status of each scale's log.
func (l *ScaleLogs) lines(c *session.Card) {
	scales := l.session.Desk.Profile().Scales
	if len(scales) == 0 {
		return
	}
	c.Part(l.session.Say("LOGS OF THE SCALES"))
	for _, s := range scales {
		status := l.status(s)
		kind := model.CardText
		if status.State != truckscale.Good {
			kind = model.CardMark
		}
		for _, said := range status.Said {
			c.Add(kind, l.session.Text(said), "")
		}
	}
}

// The entries that can be written into the log of a scale.
const (
	zeroEntry        = "zero"
	checkEntry       = "check"
	compareEntry     = "compare"
	certificateEntry = "certificate"
	outEntry         = "out"
	backEntry        = "back"
)

// Ask asks for an entry for the log of a scale.
func (l *ScaleLogs) Ask(id string) {
	s, known := l.session.Desk.Profile().Scale(id)
	if !known {
		return
	}
	l.session.Put(model.Ask{
		Title: l.session.Say("Log of scale %s", id), Text: l.session.Say("What was looked at? See the deck clear of people and trucks before its zero is judged."),
		Fields: []model.AskField{{ID: "entry", Label: l.session.Say("Entry"), Value: zeroEntry, Chars: 28, Required: true, Options: l.entries(s)}},
		Yes:    l.session.Say("Go on"),
		Then:   func(values map[string]string) { l.askEntry(s, values["entry"]) },
	})
}

func (l *ScaleLogs) entries(s elevator.Scale) []model.Option {
	out := []model.Option{
		{Code: zeroEntry, Name: l.session.Say("zero check"), Detail: l.session.Say("the empty deck")},
		{Code: checkEntry, Name: l.session.Say("check weighing"), Detail: l.session.Say("a known weight")},
		{Code: certificateEntry, Name: l.session.Say("certificate and seals")},
	}
	if len(l.session.Desk.Profile().Scales) > 1 {
		out = append(out, model.Option{Code: compareEntry, Name: l.session.Say("two scales compared"), Detail: l.session.Say("one truck on both")})
	}
	if l.status(s).State == truckscale.Out {
		return append(out, model.Option{Code: backEntry, Name: l.session.Say("back in service")})
	}
	return append(out, model.Option{Code: outEntry, Name: l.session.Say("out of service"), Detail: l.session.Say("no weight from it")})
}

// askEntry asks for the figures of an entry and records it.
func (l *ScaleLogs) askEntry(s elevator.Scale, entry string) {
	l.session.Put(model.Ask{
		Draft: "scalelog." + entry, Of: "scale " + s.ID,
		Title: l.session.Say("Log of scale %s", s.ID), Fields: l.entryFields(s, entry), Yes: l.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, wrong := readEntry(l.session.Language, s, entry, values)
			return wrong
		},
		Then: func(values map[string]string) {
			f, _ := readEntry(l.session.Language, s, entry, values)
			l.write(s, f, values["who"])
		},
	})
}

func (l *ScaleLogs) entryFields(s elevator.Scale, entry string) []model.AskField {
	unit := s.Division.Unit().String()
	weight := func(id, label, value string) model.AskField {
		return model.AskField{ID: id, Label: label, Unit: unit, Value: value, Figures: true, Chars: 10, Required: true}
	}
	manager := model.AskField{ID: "who", Label: l.session.Say("Manager"), Options: l.session.Managers(), Value: l.session.ManagerHere(), Chars: 24, Required: true}
	switch entry {
	case zeroEntry:
		return []model.AskField{weight("shown", l.session.Say("Empty deck shows"), "0")}
	case checkEntry:
		return []model.AskField{
			weight("known", l.session.Say("Known weight"), ""), weight("shown", l.session.Say("Scale shows"), ""),
			{ID: "note", Label: l.session.Say("Weights"), Chars: 28, Hint: l.session.Say("test weights and their certificate"), Required: true},
		}
	case compareEntry:
		return []model.AskField{
			{ID: "other", Label: l.session.Say("Other scale"), Options: l.otherScales(s), Chars: 8, Required: true},
			weight("shown", l.session.Say("This scale shows"), ""), weight("othershown", l.session.Say("Other shows"), ""),
			{ID: "note", Label: l.session.Say("Truck"), Chars: 16},
		}
	case certificateEntry:
		return []model.AskField{
			{ID: "number", Label: l.session.Say("Certificate"), Chars: 16, Required: true},
			{ID: "until", Label: l.session.Say("Holds through"), Chars: 12, Hint: l.session.Say("year-month-day"), Required: true},
			{ID: "inspector", Label: l.session.Say("Inspector"), Chars: 24}, {ID: "seals", Label: l.session.Say("Seals"), Chars: 24}, manager,
		}
	case backEntry:
		return []model.AskField{{ID: "note", Label: l.session.Say("What was done"), Chars: 28, Required: true}, manager}
	}
	return []model.AskField{{ID: "note", Label: l.session.Say("Reason"), Chars: 28, Required: true}}
}

func (l *ScaleLogs) otherScales(s elevator.Scale) []model.Option {
	var out []model.Option
	for _, other := range l.session.Desk.Profile().Scales {
		if other.ID != s.ID {
			out = append(out, model.Option{Code: other.ID, Name: other.ID})
		}
	}
	return out
}

// readEntry reads an entry as typed; the faults are sentences by field.
func readEntry(in session.Language, s elevator.Scale, kind string, values map[string]string) (truckscale.Fact, map[string]string) {
	wrong := map[string]string{}
	weight := func(id, name string, least int64) quantity.Amount {
		a, err := in.ParseFigure(entry.Shown(name, s, least), values[id])
		if err != nil {
			wrong[id] = in.Sentence(err)
		}
		return a
	}
	note := strings.TrimSpace(values["note"])
	switch kind {
	case zeroEntry:
		return truckscale.Zeroed{Shown: weight("shown", in.Say("Empty deck shows"), -9_999)}, wrong
	case checkEntry:
		return truckscale.Weighed{Known: weight("known", in.Say("Known weight"), 1), Shown: weight("shown", in.Say("Scale shows"), 0), Weights: note}, wrong
	case compareEntry:
		return truckscale.Compared{Other: values["other"], Shown: weight("shown", in.Say("This scale shows"), 1), OtherShown: weight("othershown", in.Say("Other shows"), 1), What: note}, wrong
	case certificateEntry:
		until, err := quantity.ParseDate(strings.TrimSpace(values["until"]))
		if err != nil {
			wrong["until"] = in.Sentence(err)
		}
		return truckscale.Certificate{Number: strings.TrimSpace(values["number"]), Until: until, Inspector: strings.TrimSpace(values["inspector"]), Seals: strings.TrimSpace(values["seals"])}, wrong
	}
	return truckscale.Service{Out: kind == outEntry, Reason: note}, wrong
}

// write stores an entry, in a manager's name where it needs one.
func (l *ScaleLogs) write(s elevator.Scale, f truckscale.Fact, manager string) {
	act := func() error { return instruments.LogScale(context.Background(), l.session.Desk, s.ID, f) }
	var err error
	if manager == "" {
		err = act()
	} else {
		err = l.session.As(manager, act)
	}
	if err != nil {
		l.session.Fail(err)
		return
	}
	l.Read()
	l.session.Changed()
	state := model.OK
	if l.status(s).State == truckscale.Outside || l.status(s).State == truckscale.Out {
		state = model.Stop
	}
	l.session.Notify(state, l.session.Say("written into the log of scale %s.", s.ID))
	l.session.Window.Redraw()
}

// Print prints the log of a scale, for an examiner.
func (l *ScaleLogs) Print(id string) {
	log, err := scalelog.Read(context.Background(), l.session.Desk, id)
	if err != nil {
		l.session.Fail(err)
		return
	}
	p := l.session.Desk.Profile()
	pdf, err := scalelog.Paper(log, p, l.session.Desk.Today()).PDF(report.PageFor(p.Rules))
	if err != nil {
		l.session.Fail(err)
		return
	}
	session.PrintPaper(l.session, "scale-"+id, l.session.Say("the log of scale %s", id), pdf)
}
