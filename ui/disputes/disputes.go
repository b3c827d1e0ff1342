package disputes

import (
	"context"
	"slices"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/law"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Disputes is the list of disputed tickets: what each waits for, and until when.
type Disputes struct {
	session *session.Session
	all     []dispute.Dispute
	chosen  string
}

// NewDisputes makes the list.
func NewDisputes(f *session.Session) *Disputes {
	d := &Disputes{session: f}
	d.Refresh()
	return d
}

// Refresh reads the disputes from the book, those not decided first.
func (d *Disputes) Refresh() {
	ctx := context.Background()
	open, err := office.DisputesDue(ctx, d.session.Desk)
	if err != nil {
		d.session.Fail(err)
		return
	}
	all, err := office.Disputes(ctx, d.session.Desk)
	if err != nil {
		d.session.Fail(err)
		return
	}
	d.all = open
	for _, one := range all {
		if one.Phase == dispute.Closed {
			d.all = append(d.all, one)
		}
	}
	d.chosen = session.KeepChosen(d.all, func(one dispute.Dispute) string { return one.ID }, d.chosen)
}

func (d *Disputes) inHand() (dispute.Dispute, bool) {
	return session.Find(d.all, func(one dispute.Dispute) bool { return one.ID == d.chosen })
}

// Choose takes a dispute by its number.
func (d *Disputes) Choose(id string) { d.chosen = id }

// Chosen is the number of the chosen dispute.
func (d *Disputes) Chosen() string { return d.chosen }

// Empty says that there is none.
func (d *Disputes) Empty() string {
	return d.session.Say("No ticket is disputed. Ctrl+E raises a dispute about one.")
}

// columns of the list.
func (d *Disputes) columns() model.Columns[dispute.Dispute] {
	return model.Columns[dispute.Dispute]{
		model.Words(d.session.Say("No"), 4, func(one dispute.Dispute) string { return one.ID }),
		model.Figures(d.session.Say("Ticket"), 6, func(one dispute.Dispute) string { return session.Counted(one.Raised.Ticket) }),
		model.Words(d.session.Say("Raised by"), 14, func(one dispute.Dispute) string { return one.Raised.By }).Growing(),
		model.Words(d.session.Say("About"), 9, func(one dispute.Dispute) string { return aboutWord(d.session.Language, one.Raised.About) }),
		model.Words(d.session.Say("Raised"), 10, func(one dispute.Dispute) string { return d.session.Date(one.Raised.Day) }).Dropped(1),
		model.Words(d.session.Say("Until"), 10, func(one dispute.Dispute) string { return d.session.Date(one.Raised.Due) }).Dropped(2),
		model.Words(d.session.Say("Waits for"), 14, func(one dispute.Dispute) string { return d.status(one).Text }).Stated(),
	}
}

// Columns are the columns of the list.
func (d *Disputes) Columns() []model.Column { return d.columns().Heads() }

// Rows are the disputes, those not decided first.
func (d *Disputes) Rows() []model.Row {
	columns := d.columns()
	var out []model.Row
	for _, one := range d.all {
		out = append(out, model.Row{Key: one.ID, State: d.status(one).State, Cells: columns.Cells(one)})
	}
	return out
}

// status returns the status of a dispute: what it waits for and whether it is late.
func (d *Disputes) status(one dispute.Dispute) model.Status {
	late := d.session.Desk.Today().After(one.Raised.Due)
	switch {
	case one.Phase == dispute.Closed && one.Decided.Stands:
		return model.Status{State: model.Locked, Text: d.session.Say("decided: stands")}
	case one.Phase == dispute.Closed:
		return model.Status{State: model.Locked, Text: d.session.Say("decided: %d", one.Decided.Corrected)}
	case one.Phase == dispute.Tested:
		return model.Status{State: model.Warn, Text: d.session.Say("to be decided")}
	case one.Phase == dispute.Testing:
		return model.Status{State: model.Wait, Text: d.session.Say("sample away")}
	case late:
		return model.Status{State: model.Stop, Text: d.session.Say("past its day")}
	}
	return model.Status{State: model.Warn, Text: d.session.Say("send the sample")}
}

// aboutWords are the possible subjects of a dispute.
var aboutWords = map[string]string{"moisture": "moisture", "test-weight": "test weight", "weight": "weight", "rates": "rates", "grade": "grade"}

func aboutWord(in session.Language, about string) string {
	if word, known := aboutWords[about]; known {
		return in.Say(word)
	}
	return about
}

// History are the story of the chosen dispute, in the order it happened.
func (d *Disputes) History() []model.Status {
	one, there := d.inHand()
	if !there {
		return []model.Status{{State: model.Wait, Word: d.session.Say("how it goes"), Text: d.session.Say("The grower says what is wrong. The retained sample is split, sealed before both, and sent to an official or agreed laboratory. Its result decides: the ticket stands, or a corrected ticket takes its place. Both are kept.")}}
	}
	r := one.Raised
	out := []model.Status{{State: model.Warn, Word: d.session.Say("raised"), Text: d.session.Say("%s, %s about ticket %d: %s. By the rule %s another test is asked for until %s.",
		d.session.Date(r.Day), r.By, r.Ticket, r.Claim, r.Rule, d.session.Date(r.Due))}}
	if r.IsByLaw() {
		out[0].Text = session.Join(" ", out[0].Text, d.session.Say(law.Confirm))
	}
	if s := one.Sent; s != nil {
		text := d.session.Say("%s, sample %s to %s, sealed by %s.", d.session.Date(s.Day), s.Sample, s.To, s.SealedBy)
		if s.Witness != "" {
			text += " " + d.session.Say("Certified for the grower by %s.", s.Witness)
		}
		out = append(out, model.Status{State: model.Wait, Word: d.session.Say("sample sent"), Text: text})
	}
	if s := one.Resulted; s != nil {
		text := d.session.Say("%s, by %s: %s", d.session.Date(s.Day), s.By, s.Finding)
		if s.Figure != nil {
			text = session.Join(" ", text, d.session.Say("Figure: %s.", s.Figure))
		}
		if s.Certificate != "" {
			text = session.Join(" ", text, d.session.Say("Certificate %s.", s.Certificate))
		}
		out = append(out, model.Status{State: model.Warn, Word: d.session.Say("result"), Text: text})
	}
	if s := one.Decided; s != nil {
		text := d.session.Say("%s: %s. The ticket stands.", d.session.Date(s.Day), s.Decision)
		if !s.Stands {
			text = d.session.Say("%s: %s. Ticket %d takes its place.", d.session.Date(s.Day), s.Decision, s.Corrected)
		}
		out = append(out, model.Status{State: model.OK, Word: d.session.Say("decided"), Text: text})
	}
	return append(out, d.whatNext(one))
}

// whatNext returns what the dispute waits for.
func (d *Disputes) whatNext(one dispute.Dispute) model.Status {
	switch one.Phase {
	case dispute.Open:
		return model.Status{State: model.Plain, Word: d.session.Say("next"), Text: d.session.Say("Split and seal the retained sample, airtight when moisture is at issue, and send it: Ctrl+K. One about rates may be decided at once: F12.")}
	case dispute.Testing:
		return model.Status{State: model.Plain, Word: d.session.Say("next"), Text: d.session.Say("Write the result down when it comes: Ctrl+O.")}
	case dispute.Tested:
		return model.Status{State: model.Plain, Word: d.session.Say("next"), Text: d.session.Say("Decide: F12. If the ticket is wrong, correct it first on the screen Tickets; the decision names the corrected ticket.")}
	}
	return model.Status{State: model.Plain, Word: d.session.Say("next"), Text: d.session.Say("Nothing: a new doubt is a new dispute.")}
}

// CanSend reports whether the sample may be sent away now.
func (d *Disputes) CanSend() bool { return d.isIn(dispute.Open) }

// CanResult reports whether a result may be recorded now.
func (d *Disputes) CanResult() bool { return d.isIn(dispute.Open, dispute.Testing) }

// CanDecide reports whether the dispute may be decided now.
func (d *Disputes) CanDecide() bool { return d.isIn(dispute.Open, dispute.Testing, dispute.Tested) }

// isIn reports whether the chosen dispute is in one of some phases.
func (d *Disputes) isIn(phases ...dispute.Phase) bool {
	one, there := d.inHand()
	return there && slices.Contains(phases, one.Phase)
}

// WhyNot returns why a step is not allowed.
func (d *Disputes) WhyNot() string {
	one, there := d.inHand()
	if !there {
		return d.session.Say("No dispute is chosen.")
	}
	return d.whatNext(one).Text
}

// HasDispute reports whether a dispute is chosen.
func (d *Disputes) HasDispute() bool {
	_, there := d.inHand()
	return there
}
