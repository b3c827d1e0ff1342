package present

import (
	"context"

	"tenthpoint/internal/dispute"
	"tenthpoint/ui/model"
)

// Disputes is the list of doubted tickets: what each waits for, and until when.
type Disputes struct {
	frame  *Frame
	all    []dispute.Dispute
	chosen string
}

// NewDisputes makes the list.
func NewDisputes(f *Frame) *Disputes {
	d := &Disputes{frame: f}
	d.Refresh()
	return d
}

// Refresh reads the disputes from the book, those not decided first.
func (d *Disputes) Refresh() {
	ctx := context.Background()
	open, err := d.frame.Desk.DisputesDue(ctx)
	if err != nil {
		d.frame.Fail(err)
		return
	}
	all, err := d.frame.Desk.Disputes(ctx)
	if err != nil {
		d.frame.Fail(err)
		return
	}
	d.all = open
	for _, one := range all {
		if one.Phase == dispute.Closed {
			d.all = append(d.all, one)
		}
	}
	if _, there := d.inHand(); !there {
		d.chosen = ""
		if len(d.all) > 0 {
			d.chosen = d.all[0].ID
		}
	}
}

func (d *Disputes) inHand() (dispute.Dispute, bool) {
	return find(d.all, func(one dispute.Dispute) bool { return one.ID == d.chosen })
}

// Choose takes a dispute in hand.
func (d *Disputes) Choose(id string) { d.chosen = id }

// Chosen is the dispute in hand.
func (d *Disputes) Chosen() string { return d.chosen }

// Empty says that there is none.
func (d *Disputes) Empty() string {
	return Say("No ticket is disputed. Ctrl+E raises a dispute about one.")
}

// Rows are the disputes with what each waits for.
func (d *Disputes) Rows() []model.Row {
	var out []model.Row
	for _, one := range d.all {
		stand := d.stand(one)
		out = append(out, model.Row{Key: one.ID, State: stand.State, Cells: []string{
			one.ID, counted(one.Raised.Ticket), one.Raised.By, aboutWord(one.Raised.About), d.frame.Date(one.Raised.Day), d.frame.Date(one.Raised.Due), stand.Text,
		}})
	}
	return out
}

// stand says where a dispute stands and whether it is late.
func (d *Disputes) stand(one dispute.Dispute) model.Remark {
	late := d.frame.Desk.Today().After(one.Raised.Due)
	switch {
	case one.Phase == dispute.Closed && one.Decided.Stands:
		return model.Remark{State: model.Locked, Text: Say("decided: stands")}
	case one.Phase == dispute.Closed:
		return model.Remark{State: model.Locked, Text: Say("decided: %d", one.Decided.Corrected)}
	case one.Phase == dispute.Tested:
		return model.Remark{State: model.Warn, Text: Say("to be decided")}
	case one.Phase == dispute.Testing:
		return model.Remark{State: model.Wait, Text: Say("sample away")}
	case late:
		return model.Remark{State: model.Stop, Text: Say("past its day")}
	}
	return model.Remark{State: model.Warn, Text: Say("send the sample")}
}

// aboutWords are what a dispute may be about.
var aboutWords = map[string]string{"moisture": "moisture", "test-weight": "test weight", "weight": "weight", "rates": "rates", "grade": "grade"}

func aboutWord(about string) string {
	if word, known := aboutWords[about]; known {
		return Say(word)
	}
	return about
}

// Sayings are the story of the dispute in hand, in the order it happened.
func (d *Disputes) Sayings() []model.Remark {
	one, there := d.inHand()
	if !there {
		return []model.Remark{{State: model.Wait, Word: Say("how it goes"), Text: Say("The grower says what is wrong. The retained sample is split, sealed before both, and sent to an official or agreed laboratory. Its result decides: the ticket stands, or a corrected ticket takes its place. Both are kept.")}}
	}
	r := one.Raised
	out := []model.Remark{{State: model.Warn, Word: Say("raised"), Text: Say("%s, %s about ticket %d: %s. By the rule %s another test is asked for until %s.",
		d.frame.Date(r.Day), r.By, r.Ticket, r.Claim, r.Rule, d.frame.Date(r.Due))}}
	if s := one.Sent; s != nil {
		text := Say("%s, sample %s to %s, sealed by %s.", d.frame.Date(s.Day), s.Sample, s.To, s.SealedBy)
		if s.Witness != "" {
			text += " " + Say("Certified for the grower by %s.", s.Witness)
		}
		out = append(out, model.Remark{State: model.Wait, Word: Say("sample sent"), Text: text})
	}
	if s := one.Resulted; s != nil {
		text := Say("%s, by %s: %s", d.frame.Date(s.Day), s.By, s.Finding)
		if s.Figure != nil {
			text = join(" ", text, Say("Figure: %s.", s.Figure))
		}
		if s.Certificate != "" {
			text = join(" ", text, Say("Certificate %s.", s.Certificate))
		}
		out = append(out, model.Remark{State: model.Warn, Word: Say("result"), Text: text})
	}
	if s := one.Decided; s != nil {
		text := Say("%s: %s. The ticket stands.", d.frame.Date(s.Day), s.Decision)
		if !s.Stands {
			text = Say("%s: %s. Ticket %d takes its place.", d.frame.Date(s.Day), s.Decision, s.Corrected)
		}
		out = append(out, model.Remark{State: model.OK, Word: Say("decided"), Text: text})
	}
	return append(out, d.whatNext(one))
}

// whatNext says what the dispute waits for.
func (d *Disputes) whatNext(one dispute.Dispute) model.Remark {
	switch one.Phase {
	case dispute.Open:
		return model.Remark{State: model.Plain, Word: Say("next"), Text: Say("Split and seal the retained sample, airtight when moisture is at issue, and send it: Ctrl+K. One about rates may be decided at once: F12.")}
	case dispute.Testing:
		return model.Remark{State: model.Plain, Word: Say("next"), Text: Say("Write the result down when it comes: Ctrl+O.")}
	case dispute.Tested:
		return model.Remark{State: model.Plain, Word: Say("next"), Text: Say("Decide: F12. If the ticket is wrong, correct it first on the screen Tickets; the decision names the corrected ticket.")}
	}
	return model.Remark{State: model.Plain, Word: Say("next"), Text: Say("Nothing: a new doubt is a new dispute.")}
}

// May reports whether a step may follow now.
func (d *Disputes) May(step string) bool {
	one, there := d.inHand()
	if !there {
		return false
	}
	return map[string]bool{
		"sent":   one.Phase == dispute.Open,
		"result": one.Phase == dispute.Open || one.Phase == dispute.Testing,
		"decide": one.Phase != dispute.Closed,
	}[step]
}

// WhyNot says why a step may not follow.
func (d *Disputes) WhyNot() string {
	one, there := d.inHand()
	if !there {
		return Say("No dispute is chosen.")
	}
	return d.whatNext(one).Text
}

// HasDispute reports whether a dispute is in hand.
func (d *Disputes) HasDispute() bool {
	_, there := d.inHand()
	return there
}
