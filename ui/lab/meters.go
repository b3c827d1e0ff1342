package lab

import (
	"context"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Meters is the list of moisture meters, and the log of the chosen one: its checks, and whether its
// readings can be trusted.
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

// Empty returns what to do while there is no meter.
func (m *Meters) Empty() string {
	return m.session.Say("No meter is set up. A manager adds one with Ctrl+E; without a meter moisture is typed, with a reason.")
}

// columns of the list.
func (m *Meters) columns() model.Columns[meter.Meter] {
	return model.Columns[meter.Meter]{
		model.Words(m.session.Say("Meter"), 8, func(one meter.Meter) string { return one.ID }),
		model.Words(m.session.Say("Model"), 16, func(one meter.Meter) string { return one.Model }).Growing(),
		model.Words(m.session.Say("Calibration"), 12, func(one meter.Meter) string { return one.Calibration }),
		model.Words(m.session.Say("Last check"), 11, func(one meter.Meter) string { return m.session.DateOr(m.status[one.ID].Last, m.session.Say("never")) }),
		model.Words(m.session.Say("Next due"), 11, func(one meter.Meter) string { return m.session.DateOr(m.status[one.ID].NextDue, session.NoFigure) }),
		model.Words(m.session.Say("Stands"), 19, func(one meter.Meter) string { return instrumentStatus(m.session.Language, m.status[one.ID].State).Text }).Stated(),
	}
}

// Columns are the columns of the list.
func (m *Meters) Columns() []model.Column { return m.columns().Heads() }

// Rows are the meters, each with the state of its checks.
func (m *Meters) Rows() []model.Row {
	columns := m.columns()
	var out []model.Row
	for _, one := range m.meters {
		out = append(out, model.Row{Key: one.ID, State: instrumentStatus(m.session.Language, m.status[one.ID].State).State, Cells: columns.Cells(one)})
	}
	return out
}

// checkColumns are the columns of the references read on the chosen meter.
func (m *Meters) checkColumns() model.Columns[meter.ErrorPoint] {
	return model.Columns[meter.ErrorPoint]{
		model.Words(m.session.Say("Day"), 10, func(p meter.ErrorPoint) string { return m.session.Date(p.Check.Day) }),
		model.Words(m.session.Say("Grain"), 9, func(p meter.ErrorPoint) string { return session.GrainInList(m.session.Language, p.Check.Crop) }),
		model.Words(m.session.Say("Ref."), 4, func(p meter.ErrorPoint) string { return p.Check.Name }),
		model.Figures(m.session.Say("Oven"), 5, func(p meter.ErrorPoint) string { return session.Bare(p.Check.Reference) }),
		model.Figures(m.session.Say("Meter"), 5, func(p meter.ErrorPoint) string { return session.Bare(p.Check.Reading) }),
		model.Figures(m.session.Say("Off"), 6, func(p meter.ErrorPoint) string { return withSign(p.Check.Error(), session.Bare(p.Check.Error())) }).Stated(),
		model.Figures(m.session.Say("May be"), 5, allowedText),
		model.Words(m.session.Say("Read by"), 8, func(p meter.ErrorPoint) string { return p.Check.By }).Growing(),
	}
}

// Checks are the reference samples read on the chosen meter, newest first.
func (m *Meters) Checks() []model.Row {
	columns, points := m.checkColumns(), m.log.Chart.Points
	var out []model.Row
	for i := len(points) - 1; i >= 0; i-- {
		p := points[i]
		row := model.Row{Key: session.Counted(int64(p.Check.Seq)), Cells: columns.Cells(p)}
		if p.Outside {
			row.State = model.Stop
		}
		out = append(out, row)
	}
	return out
}

// allowedText is the rule's tolerance of a meter, in points.
func allowedText(p meter.ErrorPoint) string {
	if !p.Limited {
		return session.NoFigure
	}
	return session.Bare(p.Limit)
}

// Statuses are the findings of the log: the state of the meter's checks, what failed, what does not
// count, and its bias with its uncertainty.
func (m *Meters) Statuses() []model.Status {
	if _, there := m.current(); !there {
		return nil
	}
	s := m.log.Standing
	status := instrumentStatus(m.session.Language, s.State)
	out := []model.Status{{State: status.State, Word: status.Text, Text: m.session.Text(s.Sentence)}}
	out = append(out, m.startRemark())
	for _, hint := range s.Hints {
		out = append(out, model.Status{State: model.Warn, Word: m.session.Say("a hint"), Text: m.session.Text(hint)})
	}
	for _, bias := range m.log.Biases {
		state := model.OK
		if bias.Shown {
			state = model.Warn
		}
		out = append(out, model.Status{State: state, Word: m.session.Say("bias, %s", m.session.GrainName(bias.Crop)), Text: m.session.Text(bias.Sentence)})
	}
	if len(m.log.Biases) == 0 {
		out = append(out, model.Status{State: model.Missing, Word: m.session.Say("no check"), Text: m.session.Say("Read oven-dried references on it: ten of them tell a bias of three tenths, one tells nothing.")})
	}
	for _, w := range m.log.Withdrawn {
		out = append(out, model.Status{State: model.Locked, Word: m.session.Say("withdrawn"), Text: m.session.Say("Check %d, on %s by %v: %v", w.Seq, m.session.Date(w.Day), w.By, w.Reason)})
	}
	for _, why := range s.Ignored {
		out = append(out, model.Status{State: model.Locked, Word: m.session.Say("does not count"), Text: m.session.Text(why)})
	}
	return append(out, model.Status{State: model.Plain, Word: m.session.Say("checked by"), Text: m.session.Say("%s: %s", m.session.Say(m.log.Authority.Name), m.session.Text(m.log.Authority.Stated()))})
}

// startRemark is the last check of the chosen meter before the first test of a day.
func (m *Meters) startRemark() model.Status {
	n := len(m.log.Starts)
	if n == 0 || m.log.Starts[n-1].Day != m.session.Desk.Today() {
		return model.Status{State: model.Missing, Word: m.session.Say("start check"), Text: m.session.Say("Not made today: battery, mark, balance, thermometer.")}
	}
	last := m.log.Starts[n-1]
	if last.Skipped != "" {
		return model.Status{State: model.Warn, Word: m.session.Say("start check"), Text: m.session.Say("Not done today, because: %v", last.Skipped)}
	}
	return model.Status{State: model.OK, Word: m.session.Say("start check"), Text: m.session.Say("Made today by %v: balance %s for %s, thermometers %s and %s.", last.By, last.Balance, last.Weight, last.Thermometer, last.Other)}
}

// AskStart asks for the check of the chosen meter before the first test of a day.
func (m *Meters) AskStart() {
	setup, err := office.BenchSetup(context.Background(), m.session.Desk)
	if err != nil {
		m.session.Fail(err)
		return
	}
	starter{m.session, setup, m.degrees()}.ask(m.chosen, m.Refresh)
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
	session.PrintPaper(m.session, "meter-"+one.ID, m.session.Say("the log of meter %s", one.ID), pdf)
}

// HasMeter reports whether a meter is chosen.
func (m *Meters) HasMeter() bool {
	_, there := m.current()
	return there
}
