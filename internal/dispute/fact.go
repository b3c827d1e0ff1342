package dispute

import (
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Fact is something that happened to a dispute.
type Fact interface {
	// Kind names the fact in the journal.
	Kind() string
}

// Raised opens a dispute about a ticket. Rule is the name of the rule set that gives the days to
// ask for a test, Due the last of them.
type Raised struct {
	Ticket int64         `json:"ticket,string"`
	By     string        `json:"by"`
	About  string        `json:"about"` // "moisture", "weight", "rates", a factor's id
	Claim  string        `json:"claim"` // in the grower's words
	Day    quantity.Date `json:"day"`
	Rule   string        `json:"rule"`
	Due    quantity.Date `json:"due"`
	// Official is a doubt about an official inspection, which has days of its own; a
	// house's own grade has the house's posted ones.
	Official bool `json:"official,omitempty"`
}

// IsByLaw reports whether a published rule gives the days, and not the house.
func (r Raised) IsByLaw() bool { return r.Rule != House }

// Stated is the wording of the last day; what a published rule gives is to be confirmed.
func (r Raised) Stated(said message.Text) message.Text { return Rule{Name: r.Rule}.Stated(said) }

// Sent is the sealed sample on its way.
type Sent struct {
	Sample   string        `json:"sample"`
	SealedBy string        `json:"sealed_by"`
	Witness  string        `json:"witness"` // who certified it for the grower
	Airtight bool          `json:"airtight"`
	To       string        `json:"to"`
	Day      quantity.Date `json:"day"`
	// Seal is the number of the seal, Mass the grain sent, in g, Half where the other
	// half of the sample stays, FeeBy who pays for the test.
	Seal  string          `json:"seal,omitempty"`
	Mass  quantity.Amount `json:"mass,omitzero"`
	Half  string          `json:"half,omitempty"`
	FeeBy string          `json:"fee_by,omitempty"`
}

// Resulted is the other test's result.
type Resulted struct {
	By          string           `json:"by"`
	Certificate string           `json:"certificate"`
	Day         quantity.Date    `json:"day"`
	Figure      *quantity.Amount `json:"figure,omitempty"` // the doubted figure as tested again
	Finding     string           `json:"finding"`
}

// Decided ends the dispute: the ticket is upheld, or ticket Corrected replaces it.
type Decided struct {
	Decision  string        `json:"decision"`
	Stands    bool          `json:"stands"`
	Corrected int64         `json:"corrected,string,omitempty"`
	Day       quantity.Date `json:"day"`
}

// Kind names the fact in the journal.
func (Raised) Kind() string { return "dispute.raised" }

// Kind names the fact in the journal.
func (Sent) Kind() string { return "dispute.sent" }

// Kind names the fact in the journal.
func (Resulted) Kind() string { return "dispute.resulted" }

// Kind names the fact in the journal.
func (Decided) Kind() string { return "dispute.decided" }

var readers = map[string]func([]byte) (Fact, error){
	Raised{}.Kind():   read[Raised],
	Sent{}.Kind():     read[Sent],
	Resulted{}.Kind(): read[Resulted],
	Decided{}.Kind():  read[Decided],
}

func read[F Fact](body []byte) (Fact, error) { return journal.ReadBody[F](body) }

// Read makes a fact from its kind and body as the journal keeps them.
func Read(kind string, body []byte) (Fact, error) {
	r, ok := readers[kind]
	if !ok {
		return nil, message.WrongPhase.Errorf("%q is not a kind of fact about a dispute", kind)
	}
	return r(body)
}
