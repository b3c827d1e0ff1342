package lab

import (
	"context"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Meters is the list of moisture meters, and the log of the chosen one: what its
// checks tell, and whether its readings can be trusted.
type Meters struct {
	session *session.Session
	meters  []meter.Meter
	status  map[string]meter.Status
	chosen  string
	log     office.MeterLog
}

// NewMeters makes the list with the first meter chosen.
func NewMeters(f *session.Session) *Meters {
	m := &Meters{session: f}
	m.Refresh()
	return m
}

// Refresh reads the meters and their checks from the book.
func (m *Meters) Refresh() {
	e, err := office.Equipment(context.Background(), m.session.Desk)
	if err != nil {
		m.session.Fail(err)
		return
	}
	m.meters, m.status = e.Meters, e.Statuses
	if _, there := m.current(); !there && len(m.meters) > 0 {
		m.chosen = m.meters[0].ID
	}
	m.readLog()
}

func (m *Meters) readLog() {
	m.log = office.MeterLog{}
	if _, there := m.current(); !there {
		return
	}
	var err error
	if m.log, err = office.ReadMeterLog(context.Background(), m.session.Desk, m.chosen, "", 0); err != nil {
		m.session.Fail(err)
	}
}

func (m *Meters) current() (meter.Meter, bool) {
	return session.Find(m.meters, func(one meter.Meter) bool { return one.ID == m.chosen })
}

// Choose makes a meter the chosen one.
func (m *Meters) Choose(id string) {
	m.chosen = id
	m.readLog()
}

// Chosen is the id of the chosen meter.
func (m *Meters) Chosen() string { return m.chosen }

// Empty says what to do while there is no meter.
func (m *Meters) Empty() string {
	return session.Say("No meter is set up. A manager adds one with Ctrl+E; without a meter moisture is typed, with a reason.")
}

// Rows are the meters, each with the state of its checks.
func (m *Meters) Rows() []model.Row {
	var out []model.Row
	for _, one := range m.meters {
		s := m.status[one.ID]
		stand := statusRemark(s.State)
		out = append(out, model.Row{Key: one.ID, State: stand.State, Cells: []string{
			one.ID, one.Model, one.Calibration, m.session.DateOr(s.Last, session.Say("never")), m.session.DateOr(s.NextDue, session.NoFigure), stand.Text,
		}})
	}
	return out
}

// Checks are the reference samples read on the chosen meter, newest first.
func (m *Meters) Checks() []model.Row {
	var out []model.Row
	points := m.log.Chart.Points
	for i := len(points) - 1; i >= 0; i-- {
		p := points[i]
		c := p.Check
		row := model.Row{Key: session.Counted(int64(c.Seq)), Cells: []string{
			m.session.Date(c.Day), session.GrainName(c.Crop), c.Name, session.Bare(c.Reference), session.Bare(c.Reading), withSign(c.Error(), session.Bare(c.Error())), allowedText(p), c.By,
		}}
		if p.Outside {
			row.State = model.Stop
		}
		out = append(out, row)
	}
	return out
}

// allowedText is how far off the rule lets a meter be, in points.
func allowedText(p meter.ErrorPoint) string {
	if !p.Limited {
		return session.NoFigure
	}
	return session.Bare(p.Limit)
}

// Remarks are what the log tells: the state of the meter's checks, what failed,
// what does not count, and its bias with the certainty of it.
func (m *Meters) Remarks() []model.Remark {
	if _, there := m.current(); !there {
		return nil
	}
	s := m.log.Standing
	stand := statusRemark(s.State)
	out := []model.Remark{{State: stand.State, Word: stand.Text, Text: session.Say(s.Sentence)}}
	for _, hint := range s.Hints {
		out = append(out, model.Remark{State: model.Warn, Word: session.Say("a rule not confirmed"), Text: session.Say(hint)})
	}
	if m.log.Bias.N > 0 {
		state := model.OK
		if m.log.Bias.Shown {
			state = model.Warn
		}
		out = append(out, model.Remark{State: state, Word: session.Say("bias"), Text: session.Say(m.log.Bias.Sentence)})
	} else {
		out = append(out, model.Remark{State: model.Missing, Word: session.Say("no check"), Text: session.Say("Read oven-dried references on it: ten of them tell a bias of three tenths, one tells nothing.")})
	}
	for _, why := range s.Ignored {
		out = append(out, model.Remark{State: model.Locked, Word: session.Say("does not count"), Text: session.Say(why)})
	}
	return append(out, model.Remark{State: model.Plain, Word: session.Say("checked by"), Text: session.Say("%s: %s", session.Say(m.log.Authority.Name), session.Say(m.log.Authority.Source))})
}

// PrintLog prints the log of the chosen meter, for an examiner.
func (m *Meters) PrintLog() {
	one, there := m.current()
	if !there {
		return
	}
	p := m.session.Desk.Profile()
	pdf, err := m.log.Paper(p, m.session.Desk.Today()).PDF(report.PageFor(p.Rules))
	if err != nil {
		m.session.Fail(err)
		return
	}
	session.PrintPaper(m.session, "meter-"+one.ID, session.Say("the log of meter %s", one.ID), pdf)
}

// HasMeter reports whether a meter is chosen.
func (m *Meters) HasMeter() bool {
	_, there := m.current()
	return there
}
