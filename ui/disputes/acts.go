package disputes

import (
	"context"
	"strings"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AskRaise asks for a new dispute about a ticket; with zero the number is typed.
func AskRaise(f *session.Session, ticket int64, then func()) {
	value := ""
	if ticket > 0 {
		value = session.Counted(ticket)
	}
	f.Put(model.Ask{
		Draft: "dispute",
		Title: session.Say("Raise a dispute"), Text: session.Say("The day until which another test can be asked for follows from the house's rules."),
		Fields: []model.AskField{
			{ID: "ticket", Label: session.Say("Ticket"), Value: value, Figures: true, Chars: 8, Required: true},
			{ID: "by", Label: session.Say("Raised by"), Chars: 28, Hint: session.Say("the grower's name"), Required: true},
			{ID: "about", Label: session.Say("About"), Options: aboutOptions(), Chars: 18, Required: true},
			{ID: "official", Label: session.Say("About an official inspection"), Tick: true},
			{ID: "claim", Label: session.Say("Claim"), Chars: 40, Most: 1000, Hint: session.Say("in the grower's words"), Required: true},
		},
		Yes: session.Say("Raise it"),
		Check: func(values map[string]string) map[string]string {
			if _, ok := session.Number(values["ticket"]); !ok {
				return map[string]string{"ticket": session.Say("Type the number as it stands on the ticket.")}
			}
			return nil
		},
		Then: func(values map[string]string) {
			n, _ := session.Number(values["ticket"])
			id, err := scalehouse.RaiseDispute(context.Background(), f.Desk, dispute.Raised{
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

// saidWhenRaised is what stands on the status line once a dispute is raised: a day
// that has passed and a sample that is gone are said at once.
func saidWhenRaised(f *session.Session, id string, ticket int64) (model.State, string) {
	ctx := context.Background()
	one, err := office.DisputeByID(ctx, f.Desk, id)
	if err != nil {
		return model.Stop, session.Sentence(err)
	}
	cautions, err := office.WhenRaised(ctx, f.Desk, one)
	if err != nil {
		return model.Stop, session.Sentence(err)
	}
	if len(cautions) == 0 {
		return model.OK, session.Say("dispute %s about ticket %d is raised. Its sample is held.", id, ticket)
	}
	said := session.Say("dispute %s about ticket %d is raised.", id, ticket)
	for _, caution := range cautions {
		said = session.Join(" ", said, session.Text(caution))
	}
	return model.Warn, said
}

func aboutOptions() []model.Option {
	var out []model.Option
	for _, about := range []string{"moisture", "test-weight", "weight", "grade", "rates"} {
		out = append(out, model.Option{Code: about, Name: aboutWord(about), ByName: true})
	}
	return out
}

// Raise asks for a new dispute.
func (d *Disputes) Raise() { AskRaise(d.session, 0, d.Refresh) }

// goOn writes the next fact of the chosen dispute down.
func (d *Disputes) goOn(f dispute.Fact, said string) {
	if err := scalehouse.ContinueDispute(context.Background(), d.session.Desk, d.chosen, f); err != nil {
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
		Title: session.Say("Dispute %s: the sample is sent", one.ID),
		Text:  session.Say("Split it before both parties and seal it. With moisture at issue it must be airtight, or it dries on the way."),
		Fields: []model.AskField{
			{ID: "sample", Label: session.Say("Sample"), Value: d.sampleNumber(one), Chars: 14, Required: true},
			{ID: "to", Label: session.Say("Sent to"), Chars: 32, Required: true},
			{ID: "sealed", Label: session.Say("Sealed by"), Value: d.session.Desk.Who().Name, Chars: 28, Required: true},
			{ID: "witness", Label: session.Say("For the grower"), Chars: 28, Hint: session.Say("who certified it")},
			{ID: "seal", Label: session.Say("Seal"), Chars: 14, Hint: session.Say("its number")},
			{ID: "mass", Label: session.Say("Mass"), Unit: "g", Figures: true, Chars: 7},
			{ID: "half", Label: session.Say("Other half at"), Chars: 20},
			{ID: "fee", Label: session.Say("Test paid by"), Chars: 20},
			{ID: "airtight", Label: session.Say("Sealed airtight"), Tick: true},
		},
		Yes:   session.Say("It is sent"),
		Check: func(values map[string]string) map[string]string { _, wrong := sentMass(values); return wrong },
		Then: func(values map[string]string) {
			mass, _ := sentMass(values)
			d.goOn(dispute.Sent{
				Sample: values["sample"], To: values["to"], SealedBy: values["sealed"], Witness: values["witness"],
				Airtight: values["airtight"] == model.TickOn, Day: d.session.Desk.Today(),
				Seal: values["seal"], Mass: mass, Half: values["half"], FeeBy: values["fee"],
			}, session.Say("the sample of dispute %s is on its way to %s.", one.ID, values["to"]))
		},
	})
}

// sentMass reads the mass that is sent; none where none is typed.
func sentMass(values map[string]string) (quantity.Amount, map[string]string) {
	if strings.TrimSpace(values["mass"]) == "" {
		return quantity.Amount{}, nil
	}
	mass, err := session.ParseFigure(moisture.MassField, values["mass"])
	if err != nil {
		return mass, map[string]string{"mass": session.Sentence(err)}
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
		{ID: "by", Label: session.Say("Tested by"), Value: to, Chars: 32, Required: true},
		{ID: "certificate", Label: session.Say("Certificate"), Chars: 16},
		{ID: "finding", Label: session.Say("Finding"), Chars: 40, Hint: session.Say("in their words"), Required: true},
	}
	if one.Raised.About == "moisture" {
		fields = append(fields, model.AskField{ID: "figure", Label: session.Say("Moisture"), Unit: "%", Figures: true, Chars: 7})
	}
	d.session.Put(model.Ask{
		Draft: "result", Of: "dispute " + one.ID,
		Title: session.Say("Dispute %s: the result", one.ID), Fields: fields, Yes: session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if _, err := session.FigureOrNone(d.session.Language, values["figure"]); err != nil {
				return map[string]string{"figure": session.Sentence(err)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			figure, _ := session.FigureOrNone(d.session.Language, values["figure"])
			d.goOn(dispute.Resulted{
				By: values["by"], Certificate: values["certificate"], Finding: values["finding"], Figure: figure, Day: d.session.Desk.Today(),
			}, session.Say("the result of dispute %s is written down.", one.ID))
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
		Title: session.Say("Decide dispute %s?", one.ID),
		Text:  session.Say("If the ticket does not stand, correct it first on the screen Tickets, and name the corrected ticket here. A decision cannot be changed."),
		State: model.Warn,
		Fields: []model.AskField{
			{ID: "who", Label: session.Say("Manager"), Options: d.session.Managers(), Value: d.session.ManagerHere(), Chars: 24, Required: true},
			{ID: "decision", Label: session.Say("Decision"), Chars: 40, Hint: session.Say("what is settled on, and why"), Required: true},
			{ID: "corrected", Label: session.Say("Corrected ticket"), Figures: true, Chars: 8, Hint: session.Say("empty: the ticket stands")},
		},
		Yes: session.Say("Decide"),
		Check: func(values map[string]string) map[string]string {
			if _, ok := session.Number(values["corrected"]); !ok && strings.TrimSpace(values["corrected"]) != "" {
				return map[string]string{"corrected": session.Say("Type the number as it stands on the ticket.")}
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
	err := d.session.As(who, func() error { return scalehouse.ContinueDispute(context.Background(), d.session.Desk, one.ID, f) })
	if err != nil {
		d.session.Fail(err)
		return
	}
	d.Refresh()
	d.session.Notify(model.OK, session.Say("dispute %s is decided by %s.", one.ID, who))
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
	session.PrintDocument(d.session, doc, "dispute-"+one.ID, session.Say("the file of dispute %s", one.ID), false)
}

// PrintProof prints the proof sheet of the disputed ticket.
func (d *Disputes) PrintProof() {
	if one, there := d.inHand(); there {
		session.AskProof(d.session, one.Raised.Ticket)
	}
}
