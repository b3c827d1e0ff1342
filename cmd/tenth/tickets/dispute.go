package tickets

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/disputes"
)

// Dispute are the commands of disputes about tickets.
type Dispute struct {
	Raise  disputeRaise  `cmd:"" help:"Write a grower's doubt about a ticket down."`
	Send   disputeSend   `cmd:"" help:"Write down that the sealed sample was sent."`
	Result disputeResult `cmd:"" help:"Write down what the other test found."`
	Decide disputeDecide `cmd:"" help:"Decide a dispute."`
	List   disputeList   `cmd:"" default:"withargs" help:"List disputes, the soonest due first."`
	Show   disputeShow   `cmd:"" help:"Show the file of a dispute."`
}

// disputeName is a dispute as its id is typed: "D1", "d1" or "1".
type disputeName string

// UnmarshalText reads an id.
func (n *disputeName) UnmarshalText(text []byte) error {
	id := strings.ToUpper(strings.TrimSpace(string(text)))
	*n = disputeName("D" + strings.TrimPrefix(id, "D"))
	return nil
}

type disputeRaise struct {
	terminal.BookFlags
	terminal.WhoFlags
	Ticket   terminal.TicketNumber `arg:"" help:"Number of the ticket."`
	By       string                `required:"" help:"Who doubts it." placeholder:"NAME"`
	About    string                `required:"" help:"What about: moisture, weight, rates, or a factor such as damage." placeholder:"WHAT"`
	Claim    string                `required:"" help:"What is claimed, in the grower's words." placeholder:"WORDS"`
	Official bool                  `help:"It is about an official inspection, which has days of its own."`
}

func (disputeRaise) Help() string {
	return `    tenth dispute raise 1042 --by "Beatrix Holloway" --about moisture --claim "16.8 at home"`
}

func (c disputeRaise) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		id, err := disputes.Raise(p, p.Desk, dispute.Raised{Ticket: int64(c.Ticket), By: c.By, About: c.About, Claim: c.Claim, Official: c.Official})
		if err != nil {
			return err
		}
		one, err := office.DisputeByID(p, p.Desk, id)
		if err != nil {
			return err
		}
		p.Say("Dispute %s about ticket %d is written down.", id, c.Ticket)
		said, err := office.WhenRaised(p, p.Desk, one)
		for _, text := range said {
			p.Say("%s", text)
		}
		if !one.Raised.Day.After(one.Raised.Due) {
			p.Say("%s", one.Raised.Stated(message.New("Another test is to be asked for by %s.", one.Raised.Due)))
		}
		return err
	})
}

type disputeSend struct {
	terminal.BookFlags
	terminal.WhoFlags
	Dispute  disputeName `arg:"" help:"The dispute, such as D1."`
	Sample   string      `required:"" help:"Number of the sample." placeholder:"NUMBER"`
	To       string      `required:"" help:"Who tests it." placeholder:"NAME"`
	SealedBy string      `required:"" help:"Who sealed it." placeholder:"NAME"`
	Witness  string      `help:"Who certified it for the grower." placeholder:"NAME"`
	Seal     string      `help:"Number of the seal." placeholder:"NUMBER"`
	Mass     string      `help:"How much was sent, in g." placeholder:"GRAMS"`
	Half     string      `help:"Where the other half of the sample stays." placeholder:"PLACE"`
	FeeBy    string      `help:"Who pays for the test." placeholder:"NAME"`
	Airtight bool        `help:"It was sealed airtight, as it must be when moisture is at issue."`
	Day      string      `help:"The day it was sent. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (disputeSend) Help() string {
	return `    tenth dispute send D1 --sample 1003-12 --to "State laboratory" --sealed-by "Cal Reyes" --witness "B. Holloway" --airtight`
}

func (c disputeSend) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		f := dispute.Sent{Sample: c.Sample, SealedBy: c.SealedBy, Witness: c.Witness, Airtight: c.Airtight, To: c.To, Day: day, Seal: c.Seal, Half: c.Half, FeeBy: c.FeeBy}
		if f.Mass, err = sentMass(c.Mass); err != nil {
			return err
		}
		return goOn(p, string(c.Dispute), f)
	})
}

// sentMass reads the mass of a sample, in g; nothing where none is given.
func sentMass(text string) (quantity.Amount, error) {
	if text == "" {
		return quantity.Amount{}, nil
	}
	return moisture.MassField.Parse(text)
}

type disputeResult struct {
	terminal.BookFlags
	terminal.WhoFlags
	Dispute     disputeName `arg:"" help:"The dispute, such as D1."`
	By          string      `required:"" help:"Who tested." placeholder:"NAME"`
	Finding     string      `required:"" help:"What was found, in words." placeholder:"WORDS"`
	Figure      string      `help:"The doubted figure as tested again, with its unit." placeholder:"'16.9 %'"`
	Certificate string      `help:"Number of the certificate." placeholder:"NUMBER"`
	Day         string      `help:"The day of the test. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (disputeResult) Help() string {
	return `    tenth dispute result D1 --by "State laboratory" --figure "16.9 %" --certificate 26-4411 --finding "moisture 16.9 % by oven"`
}

func (c disputeResult) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		f := dispute.Resulted{By: c.By, Certificate: c.Certificate, Day: day, Finding: c.Finding}
		if c.Figure != "" {
			figure, err := quantity.ParseAmount(c.Figure)
			if err != nil {
				return err
			}
			f.Figure = &figure
		}
		return goOn(p, string(c.Dispute), f)
	})
}

type disputeDecide struct {
	terminal.BookFlags
	terminal.WhoFlags
	Dispute   disputeName           `arg:"" help:"The dispute, such as D1."`
	Decision  string                `required:"" help:"What was settled on, and why." placeholder:"WORDS"`
	Stands    bool                  `help:"The ticket stands." xor:"outcome"`
	Corrected terminal.TicketNumber `help:"The ticket that corrects it or was reissued for it, issued before." xor:"outcome" placeholder:"NUMBER"`
}

func (disputeDecide) Help() string {
	return `A manager's act. A ticket that does not stand is corrected first.

    tenth correct 1042 --moisture 16.9 --reason "dispute D1" --who "Mae Orton"
    tenth dispute decide D1 --corrected 1055 --decision "settled on the certificate" --who "Mae Orton"`
}

func (c disputeDecide) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		return goOn(p, string(c.Dispute), dispute.Decided{Decision: c.Decision, Stands: c.Stands, Corrected: int64(c.Corrected), Day: p.Today()})
	})
}

// goOn appends the next fact of a dispute and prints its status.
func goOn(p *terminal.Session, id string, f dispute.Fact) error {
	if err := disputes.Continue(p, p.Desk, id, f); err != nil {
		return err
	}
	one, err := office.DisputeByID(p, p.Desk, id)
	if err != nil {
		return err
	}
	p.Say("Dispute %s about ticket %d: %s.", id, one.Raised.Ticket, one.Phase)
	return nil
}

type disputeList struct {
	terminal.BookFlags
	terminal.ListFlags
	All    bool                  `help:"Also those that are decided."`
	Ticket terminal.TicketNumber `help:"Only those about this ticket." placeholder:"NUMBER"`
}

func (disputeList) Help() string {
	return `    tenth dispute list
    tenth dispute list --ticket 1042`
}

func (c disputeList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.DisputesDue(p, p.Desk)
		switch {
		case c.Ticket > 0:
			all, err = office.DisputesOf(p, p.Desk, int64(c.Ticket))
		case c.All:
			all, err = office.Disputes(p, p.Desk)
		}
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, d := range all {
			rows = append(rows, []any{d.ID, fmt.Sprint(d.Raised.Ticket), d.Raised.Day.String(), d.Raised.By, d.Raised.About, d.Raised.Due.String(), message.Words(string(d.Phase))})
		}
		if err := p.Table(c.ListFlags, "Dispute\tTicket\tRaised\tBy\tAbout\tDeadline\tStatus", rows, "There is no dispute."); err != nil {
			return err
		}
		if !c.JSON && slices.ContainsFunc(all, func(d dispute.Dispute) bool { return d.Raised.IsByLaw() }) {
			p.Say("%s", message.New(law.Confirm))
		}
		return nil
	})
}

type disputeShow struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Dispute disputeName `arg:"" help:"The dispute, such as D1."`
}

func (disputeShow) Help() string {
	return `The dispute, what each correction changed, and the proof of the ticket.

    tenth dispute show D1 --out papers`
}

func (c disputeShow) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		doc, err := office.DisputeFile(p, p.Desk, string(c.Dispute))
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, "dispute-"+terminal.FileName(string(c.Dispute)), false)
	})
}
