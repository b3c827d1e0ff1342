package load

import (
	"tenthpoint/internal/flatjson"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Fact is something that happened to a load.
type Fact interface {
	// Kind names the fact in the journal.
	Kind() string
}

// Opened records a truck that has come, and its details. Corrects is the number of the ticket that
// this load corrects, Reissues that of the void ticket it reissues; both are zero for any other
// truck.
type Opened struct {
	Details  Details `json:"details"`
	Corrects int64   `json:"corrects,string,omitempty"`
	Reissues int64   `json:"reissues,string,omitempty"`
	Reason   string  `json:"reason,omitempty"`
	// Chain tells that what rests on the ticket it corrects follows when this one's is issued.
	Chain bool `json:"chain,omitempty"`
}

// Amended is a change of details before the ticket.
type Amended struct {
	Details Details `json:"details"`
}

// Weighed is a weight, or a repeated weight. Carried says when and by whom it was taken, for a load
// that takes it over from the ticket it corrects or reissues; likewise for the two facts below.
type Weighed struct {
	Weighing
	Carried *Stamp `json:"carried,omitempty"`
}

// Sampled is the bench's result, or its result after another test.
type Sampled struct {
	Sample
	Carried *Stamp `json:"carried,omitempty"`
}

// Accepted is a manager's leave to settle a load beyond a limit.
type Accepted struct {
	Limit   string `json:"limit"`
	Reason  string `json:"reason"`
	Carried *Stamp `json:"carried,omitempty"`
}

// Answered is the answer to a guard's question. About are the figures compared: the answer holds
// while they are the same. Asked is the question as it was shown.
type Answered struct {
	Guard   string       `json:"guard"`
	About   string       `json:"about"`
	Asked   message.Kept `json:"asked"`
	Reason  string       `json:"reason"`
	Carried *Stamp       `json:"carried,omitempty"`
}

// Refused is a load turned away.
type Refused struct {
	Reason string        `json:"reason"`
	Day    quantity.Date `json:"day"`
}

// Withdrawn takes back a load that was written down by mistake and never weighed: no truck was
// turned away, and no sheet of a day counts it.
type Withdrawn struct{}

// Settled is the settlement of the load under an edition. Figures are the lines of the working by
// step id; Working is the SHA-256 of the whole working.
type Settled struct {
	// Engine settled it, and works it again. It is left out for the first one.
	Engine      settle.Engine `json:"engine,omitzero"`
	Edition     string        `json:"edition"`
	EditionHash string        `json:"edition_hash"`
	// Law is the hash of the published rules it was recorded and graded by. It is
	// left out for the first law, which was in force before tickets kept theirs.
	Law     string                     `json:"law,omitempty"`
	Working string                     `json:"working"`
	Figures map[string]quantity.Amount `json:"figures"`
}

// Issued is the ticket with its number. Day is the business day it counts in, as for the facts
// below: a closed day takes no more.
type Issued struct {
	Number  int64         `json:"number,string"`
	Weigher string        `json:"weigher"`
	Day     quantity.Date `json:"day"`
	// Onward is the bin that the grain went on to by the usual path of its pit.
	Onward string `json:"onward,omitempty"`
	// SlipCode is the format of the code on its slip. It is left out for the first, which tickets had
	// before slips carried their facts.
	SlipCode int64 `json:"slip_code,string,omitempty"`
	// Letters are those of the site, which stand before the number on paper.
	Letters string `json:"letters,omitempty"`
	// Slip is the paper it was entered from, where the book that issued it was lost.
	Slip *Slip `json:"slip,omitempty"`
}

// Slip is the data on the paper of a ticket that was issued by a book since lost. The ticket is
// entered again under its own number.
type Slip struct {
	// At is when it was issued by the paper, in the form of times of facts.
	At string `json:"at"`
	// Code is the short code at its foot, by which the lost book knew it.
	Code string `json:"code"`
	// Unlike says why a figure of the paper differs from the one worked out again; empty where none
	// does.
	Unlike string `json:"unlike,omitempty"`
}

// Printed is one copy of the ticket: 0 the original, then reprints by number.
type Printed struct {
	Copy int64 `json:"copy,string"`
}

// Voided is a ticket cancelled; its number stays.
type Voided struct {
	Reason string        `json:"reason"`
	Day    quantity.Date `json:"day"`
}

// Superseded is a ticket that a corrected ticket has taken the place of.
type Superseded struct {
	By     int64         `json:"by,string"`
	Reason string        `json:"reason"`
	Day    quantity.Date `json:"day"`
}

// Reissued is a void ticket whose grain has another ticket. The void one stays
// void on its day; Day is the day the other one counts in.
type Reissued struct {
	By  int64         `json:"by,string"`
	Day quantity.Date `json:"day"`
}

// Kind names the fact in the journal.
func (Opened) Kind() string { return "load.opened" }

// Kind names the fact in the journal.
func (Amended) Kind() string { return "load.amended" }

// Kind names the fact in the journal.
func (Weighed) Kind() string { return "load.weighed" }

// Kind names the fact in the journal.
func (Sampled) Kind() string { return "load.sampled" }

// Kind names the fact in the journal.
func (Accepted) Kind() string { return "load.accepted" }

// Kind names the fact in the journal.
func (Answered) Kind() string { return "load.answered" }

// Kind names the fact in the journal.
func (Refused) Kind() string { return "load.refused" }

// Kind names the fact in the journal.
func (Withdrawn) Kind() string { return "load.withdrawn" }

// Kind names the fact in the journal.
func (Settled) Kind() string { return "load.settled" }

// Kind names the fact in the journal.
func (Issued) Kind() string { return "ticket.issued" }

// Kind names the fact in the journal.
func (Printed) Kind() string { return "ticket.printed" }

// Kind names the fact in the journal.
func (Voided) Kind() string { return "ticket.voided" }

// Kind names the fact in the journal.
func (Superseded) Kind() string { return "ticket.superseded" }

// Kind names the fact in the journal.
func (Reissued) Kind() string { return "ticket.reissued" }

// readers make each kind of fact from its body.
var readers = map[string]func([]byte) (Fact, error){
	Opened{}.Kind():     read[Opened],
	Amended{}.Kind():    read[Amended],
	Weighed{}.Kind():    read[Weighed],
	Sampled{}.Kind():    read[Sampled],
	Accepted{}.Kind():   read[Accepted],
	Answered{}.Kind():   read[Answered],
	Refused{}.Kind():    read[Refused],
	Withdrawn{}.Kind():  read[Withdrawn],
	Settled{}.Kind():    readSettled,
	Issued{}.Kind():     read[Issued],
	Printed{}.Kind():    read[Printed],
	Voided{}.Kind():     read[Voided],
	Superseded{}.Kind(): read[Superseded],
	Reissued{}.Kind():   read[Reissued],
}

func read[F Fact](body []byte) (Fact, error) { return journal.ReadBody[F](body) }

// readSettled reads the largest of all facts.
func readSettled(body []byte) (Fact, error) {
	if f, ok := plainSettled(string(body)); ok {
		return f, nil
	}
	return read[Settled](body)
}

// plainSettled parses the fact in its usual form; it returns false for one that needs the full
// parser, or an error message.
func plainSettled(body string) (f Settled, ok bool) {
	texts := map[string]*string{"edition": &f.Edition, "edition_hash": &f.EditionHash, "law": &f.Law, "working": &f.Working}
	ok = flatjson.Members(body, func(name, value string) bool {
		if name == "figures" {
			f.Figures, ok = quantity.ReadFigures(value)
			return ok
		}
		if flatjson.IsObject(value) {
			return false
		}
		if name == "engine" {
			return f.Engine.UnmarshalText([]byte(value)) == nil
		}
		into, known := texts[name]
		if known {
			*into = value
		}
		return known
	})
	return f, ok
}

// Read makes a fact from its kind and body as the journal keeps them.
func Read(kind string, body []byte) (Fact, error) {
	r, ok := readers[kind]
	if !ok {
		return nil, message.WrongPhase.Errorf("%q is not a kind of fact about a load", kind)
	}
	return r(body)
}
