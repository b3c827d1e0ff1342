package disputes

import (
	"context"
	"strings"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// AskRaise asks for a new dispute about a ticket; with zero the number is typed.
func AskRaise(f *session.Session, ticket int64, then func()) {
	value := ""
	if ticket > 0 {
		value = session.Counted(ticket)
	}
	f.Put(model.Ask{
		Draft: "dispute",
		Title: f.Say("Raise a dispute"), Text: f.Say("The day until which another test can be asked for follows from the house's rules."),
		Fields: []model.AskField{
			{ID: "ticket", Label: f.Say("Ticket"), Value: value, Figures: true, Chars: 8, Required: true},
			{ID: "by", Label: f.Say("Raised by"), Chars: 28, Hint: f.Say("the grower's name"), Required: true},
			{ID: "about", Label: f.Say("About"), Options: aboutOptions(f.Language), Chars: 18, Required: true},
			{ID: "official", Label: f.Say("About an official inspection"), Checkbox: true},
			{ID: "claim", Label: f.Say("Claim"), Chars: 40, Most: 1000, Hint: f.Say("in the grower's words"), Required: true},
		},
		Yes: f.Say("Raise it"),
		Check: func(values map[string]string) map[string]string {
			if _, ok := session.Number(values["ticket"]); !ok {
				return map[string]string{"ticket": f.Say("Type the number as it stands on the ticket.")}
			}
			return nil
		},
		Then: func(values map[string]string) {
			n, _ := session.Number(values["ticket"])
			id, err := disputes.Raise(context.Background(), f.Desk, dispute.Raised{
				Ticket: n, By: strings.TrimSpace(values["by"]), About: values["about"], Claim: strings.TrimSpace(values["claim"]), Official: values["official"] == model.TickOn,
			})
			if err != nil {
				f.Fail(err)
				return
			}
			f.Notify(saidWhenRaised(f, id, n))
			if then != nil {
				then()
			}
			f.Changed()
		},
	})
}

// saidWhenRaised is the status line once a dispute is raised: a day
// that has passed and a sample that is gone are said at once.
func saidWhenRaised(f *session.Session, id string, ticket int64) (model.State, string) {
	ctx := context.Background()
	one, err := office.DisputeByID(ctx, f.Desk, id)
	if err != nil {
		return model.Stop, f.Sentence(err)
	}
	cautions, err := office.WhenRaised(ctx, f.Desk, one)
	if err != nil {
		return model.Stop, f.Sentence(err)
	}
	if len(cautions) == 0 {
		return model.OK, f.Say("dispute %s about ticket %d is raised. Its sample is held.", id, ticket)
	}
	said := f.Say("dispute %s about ticket %d is raised.", id, ticket)
	for _, caution := range cautions {
		said = session.Join(" ", said, f.Text(caution))
	}
	return model.Warn, said
}

func aboutOptions(in session.Language) []model.Option {
	var out []model.Option
	for _, about := range []string{"moisture", "test-weight", "weight", "grade", "rates"} {
		out = append(out, model.Option{Code: about, Name: aboutWord(in, about), ByName: true})
	}
	return out
}

// Raise asks for a new dispute.
func (d *Disputes) Raise() { AskRaise(d.session, 0, d.Refresh) }

// goOn writes the next fact of the chosen dispute down.
func (d *Disputes) goOn(f dispute.Fact, said string) {
	if err := disputes.Continue(context.Background(), d.session.Desk, d.chosen, f); err != nil {
		d.session.Fail(err)
		return
	}
	d.Refresh()
	d.session.Notify(model.OK, said)
	d.session.Changed()
}

// AskSent asks where the sealed sample goes.
func (d *Disputes) AskSent() {
	one, there := d.inHand()
	if !there {
		return
	}
	d.session.Put(model.Ask{
		Draft: "sent", Of: "dispute " + one.ID,
		Title: d.session.Say("Dispute %s: the sample is sent", one.ID),
		Text:  d.session.Say("Split it before both parties and seal it. With moisture at issue it must be airtight, or it dries on the way."),
		Fields: []model.AskField{
			{ID: "sample", Label: d.session.Say("Sample"), Value: d.sampleNumber(one), Chars: 14, Required: true},
			{ID: "to", Label: d.session.Say("Sent to"), Chars: 32, Required: true},
			{ID: "sealed", Label: d.session.Say("Sealed by"), Value: d.session.Desk.Who().Name, Chars: 28, Required: true},
			{ID: "witness", Label: d.session.Say("For the grower"), Chars: 28, Hint: d.session.Say("who certified it")},
			{ID: "seal", Label: d.session.Say("Seal"), Chars: 14, Hint: d.session.Say("its number")},
			{ID: "mass", Label: d.session.Say("Mass"), Unit: "g", Figures: true, Chars: 7},
			{ID: "half", Label: d.session.Say("Other half at"), Chars: 20},
			{ID: "fee", Label: d.session.Say("Test paid by"), Chars: 20},
			{ID: "airtight", Label: d.session.Say("Sealed airtight"), Checkbox: true},
		},
		Yes: d.session.Say("It is sent"),
		Check: func(values map[string]string) map[string]string {
			_, wrong := sentMass(d.session.Language, values)
			return wrong
		},
		Then: func(values map[string]string) {
			mass, _ := sentMass(d.session.Language, values)
			d.goOn(dispute.Sent{
				Sample: values["sample"], To: values["to"], SealedBy: values["sealed"], Witness: values["witness"],
				Airtight: values["airtight"] == model.TickOn, Day: d.session.Desk.Today(),
				Seal: values["seal"], Mass: mass, Half: values["half"], FeeBy: values["fee"],
			}, d.session.Say("the sample of dispute %s is on its way to %s.", one.ID, values["to"]))
		},
	})
}

// sentMass reads the mass that is sent; none where none is typed.
func sentMass(in session.Language, values map[string]string) (quantity.Amount, map[string]string) {
	if strings.TrimSpace(values["mass"]) == "" {
		return quantity.Amount{}, nil
	}
	mass, err := in.ParseFigure(moisture.MassField, values["mass"])
	if err != nil {
		return mass, map[string]string{"mass": in.Sentence(err)}
	}
	return mass, nil
}

// sampleNumber is the number of the disputed ticket's sample.
func (d *Disputes) sampleNumber(one dispute.Dispute) string {
	l, err := office.Ticket(context.Background(), d.session.Desk, one.Raised.Ticket)
	if err != nil {
		return ""
	}
	return l.Sample.Number
}

// AskResult asks for the other test's result.
func (d *Disputes) AskResult() {
	one, there := d.inHand()
	if !there {
		return
	}
	to := ""
	if one.Sent != nil {
		to = one.Sent.To
	}
	fields := []model.AskField{
		{ID: "by", Label: d.session.Say("Tested by"), Value: to, Chars: 32, Required: true},
		{ID: "certificate", Label: d.session.Say("Certificate"), Chars: 16},
		{ID: "finding", Label: d.session.Say("Finding"), Chars: 40, Hint: d.session.Say("in their words"), Required: true},
	}
	if one.Raised.About == "moisture" {
		fields = append(fields, model.AskField{ID: "figure", Label: d.session.Say("Moisture"), Unit: "%", Figures: true, Chars: 7})
	}
	d.session.Put(model.Ask{
		Draft: "result", Of: "dispute " + one.ID,
		Title: d.session.Say("Dispute %s: the result", one.ID), Fields: fields, Yes: d.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if _, err := session.FigureOrNone(d.session.Language, values["figure"]); err != nil {
				return map[string]string{"figure": d.session.Sentence(err)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			figure, _ := session.FigureOrNone(d.session.Language, values["figure"])
			d.goOn(dispute.Resulted{
				By: values["by"], Certificate: values["certificate"], Finding: values["finding"], Figure: figure, Day: d.session.Desk.Today(),
			}, d.session.Say("the result of dispute %s is written down.", one.ID))
		},
	})
}

// AskDecide asks a manager for the decision.
func (d *Disputes) AskDecide() {
	one, there := d.inHand()
	if !there {
		return
	}
	d.session.Put(model.Ask{
		Draft: "decide", Of: "dispute " + one.ID,
		Title: d.session.Say("Decide dispute %s?", one.ID),
		Text:  d.session.Say("If the ticket does not stand, correct it first on the screen Tickets, and name the corrected ticket here. A decision cannot be changed."),
		State: model.Warn,
		Fields: []model.AskField{
			{ID: "who", Label: d.session.Say("Manager"), Options: d.session.Managers(), Value: d.session.ManagerHere(), Chars: 24, Required: true},
			{ID: "decision", Label: d.session.Say("Decision"), Chars: 40, Hint: d.session.Say("what is settled on, and why"), Required: true},
			{ID: "corrected", Label: d.session.Say("Corrected ticket"), Figures: true, Chars: 8, Hint: d.session.Say("empty: the ticket stands")},
		},
		Yes: d.session.Say("Decide"),
		Check: func(values map[string]string) map[string]string {
			if _, ok := session.Number(values["corrected"]); !ok && strings.TrimSpace(values["corrected"]) != "" {
				return map[string]string{"corrected": d.session.Say("Type the number as it stands on the ticket.")}
			}
			return nil
		},
		Then: func(values map[string]string) {
			corrected, _ := session.Number(values["corrected"])
			d.decide(one, values["who"], dispute.Decided{
				Decision: values["decision"], Stands: corrected == 0, Corrected: corrected, Day: d.session.Desk.Today(),
			})
		},
	})
}

func (d *Disputes) decide(one dispute.Dispute, who string, f dispute.Decided) {
	err := d.session.As(who, func() error { return disputes.Continue(context.Background(), d.session.Desk, one.ID, f) })
	if err != nil {
		d.session.Fail(err)
		return
	}
	d.Refresh()
	d.session.Notify(model.OK, d.session.Say("dispute %s is decided by %s.", one.ID, who))
	d.session.Changed()
}

// PrintFile prints everything about the chosen dispute.
func (d *Disputes) PrintFile() {
	one, there := d.inHand()
	if !there {
		return
	}
	doc, err := office.DisputeFile(context.Background(), d.session.Desk, one.ID)
	if err != nil {
		d.session.Fail(err)
		return
	}
	session.PrintDocument(d.session, doc, "dispute-"+one.ID, d.session.Say("the file of dispute %s", one.ID), false)
}

// PrintProof prints the proof sheet of the disputed ticket.
func (d *Disputes) PrintProof() {
	if one, there := d.inHand(); there {
		ask.Proof(d.session, one.Raised.Ticket)
	}
}
