package present

import (
	"context"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/office"
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
	open, err := office.DisputesDue(ctx, d.frame.Desk)
	if err != nil {
		d.frame.Fail(err)
		return
	}
	all, err := office.Disputes(ctx, d.frame.Desk)
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
func (d *Disputes) Rows() []Row {
	var out []Row
	for _, one := range d.all {
		stand := d.stand(one)
		out = append(out, Row{Key: one.ID, State: stand.State, Cells: []string{
			one.ID, counted(one.Raised.Ticket), one.Raised.By, aboutWord(one.Raised.About), d.frame.Date(one.Raised.Day), d.frame.Date(one.Raised.Due), stand.Text,
		}})
	}
	return out
}

// stand says where a dispute stands and whether it is late.
func (d *Disputes) stand(one dispute.Dispute) Remark {
	late := d.frame.Desk.Today().After(one.Raised.Due)
	switch {
	case one.Phase == dispute.Closed && one.Decided.Stands:
		return Remark{Locked, Say("decided: stands")}
	case one.Phase == dispute.Closed:
		return Remark{Locked, Say("decided: %d", one.Decided.Corrected)}
	case one.Phase == dispute.Tested:
		return Remark{Warn, Say("to be decided")}
	case one.Phase == dispute.Testing:
		return Remark{Wait, Say("sample away")}
	case late:
		return Remark{Stop, Say("past its day")}
	}
	return Remark{Warn, Say("send the sample")}
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
func (d *Disputes) Sayings() []Saying {
	one, there := d.inHand()
	if !there {
		return []Saying{{Wait, Say("how it goes"), Say("The grower says what is wrong. The retained sample is split, sealed before both, and sent to an official or agreed laboratory. Its result decides: the ticket stands, or a corrected ticket takes its place. Both are kept.")}}
	}
	r := one.Raised
	out := []Saying{{Warn, Say("raised"), Say("%s, %s about ticket %d: %s. By the rule %s another test is asked for until %s.",
		d.frame.Date(r.Day), r.By, r.Ticket, r.Claim, r.Rule, d.frame.Date(r.Due))}}
	if s := one.Sent; s != nil {
		text := Say("%s, sample %s to %s, sealed by %s.", d.frame.Date(s.Day), s.Sample, s.To, s.SealedBy)
		if s.Witness != "" {
			text += " " + Say("Certified for the grower by %s.", s.Witness)
		}
		out = append(out, Saying{Wait, Say("sample sent"), text})
	}
	if s := one.Resulted; s != nil {
		text := Say("%s, by %s: %s", d.frame.Date(s.Day), s.By, s.Finding)
		if s.Figure != nil {
			text = join(" ", text, Say("Figure: %s.", s.Figure))
		}
		if s.Certificate != "" {
			text = join(" ", text, Say("Certificate %s.", s.Certificate))
		}
		out = append(out, Saying{Warn, Say("result"), text})
	}
	if s := one.Decided; s != nil {
		text := Say("%s: %s. The ticket stands.", d.frame.Date(s.Day), s.Decision)
		if !s.Stands {
			text = Say("%s: %s. Ticket %d takes its place.", d.frame.Date(s.Day), s.Decision, s.Corrected)
		}
		out = append(out, Saying{OK, Say("decided"), text})
	}
	return append(out, d.whatNext(one))
}

// whatNext says what the dispute waits for.
func (d *Disputes) whatNext(one dispute.Dispute) Saying {
	switch one.Phase {
	case dispute.Open:
		return Saying{Plain, Say("next"), Say("Split and seal the retained sample, airtight when moisture is at issue, and send it: Ctrl+K. One about rates may be decided at once: F12.")}
	case dispute.Testing:
		return Saying{Plain, Say("next"), Say("Write the result down when it comes: Ctrl+O.")}
	case dispute.Tested:
		return Saying{Plain, Say("next"), Say("Decide: F12. If the ticket is wrong, correct it first on the screen Tickets; the decision names the corrected ticket.")}
	}
	return Saying{Plain, Say("next"), Say("Nothing: a new doubt is a new dispute.")}
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
