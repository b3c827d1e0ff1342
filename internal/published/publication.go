package published

import (
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Publication is a card or an edition that holds at all sites from a day on, or no longer.
type Publication struct {
	From    quantity.Date    `json:"from"`
	Grower  *elevator.Grower `json:"grower,omitempty"`
	Edition *Edition         `json:"edition,omitempty"`
	// Withdrawn is why it holds no longer from that day on; empty where it does.
	Withdrawn string `json:"withdrawn,omitempty"`
}

// Edition is an edition of rates by the hash of its text, which the book keeps.
type Edition struct {
	ID   string `json:"id"`
	Hash string `json:"edition_hash"`
}

// Kind names the fact in the journal.
func (Publication) Kind() string { return "office.publication" }

// Of names what is published, in all its versions: "grower 102", "edition corn-2026".
func (p Publication) Of() string {
	if p.Grower != nil {
		return "grower " + p.Grower.ID
	}
	return "edition " + p.Edition.ID
}

// ID is the id of its record: one version of what it names.
func (p Publication) ID() string { return p.Of() + " " + p.From.String() }

// Check returns what is wrong with it, or nil.
func (p Publication) Check() error {
	switch {
	case (p.Grower == nil) == (p.Edition == nil):
		return message.Invalid.Errorf("a publication is of a grower's card or of an edition of rates, one of the two")
	case p.From.IsZero():
		return message.Incomplete.Errorf("a publication says from which day on it holds")
	case p.Grower != nil:
		return p.Grower.Check()
	case strings.TrimSpace(p.Edition.ID) == "" || p.Edition.Hash == "":
		return message.Invalid.Errorf("an edition is published by its id and its text; one of them is missing")
	}
	return nil
}

// Received is a publication as a site took it over.
type Received struct {
	Publication
	Office string `json:"office"` // its letters
	// Seq and Hash are the fact in the office's chain.
	Seq  int64  `json:"seq,string"`
	Hash string `json:"hash"`
}

// Kind names the fact in the journal.
func (Received) Kind() string { return "office.received" }

// Check returns what is wrong with it, or nil.
func (r Received) Check() error {
	if r.Office == "" || r.Seq < 1 || r.Hash == "" {
		return message.Invalid.Errorf("what a site takes over has its place in the chain of the head office")
	}
	return r.Publication.Check()
}

// Head is the place in the office's chain.
func (r Received) Head() journal.Head { return journal.Head{Seq: r.Seq, Hash: r.Hash} }

// InForce are, by what they name, the publications that hold on a day: of each the latest whose day
// has come, unless that withdrew it.
func InForce(all []Received, day quantity.Date) map[string]Received {
	latest := map[string]Received{}
	for _, r := range all {
		was, there := latest[r.Of()]
		if !r.From.After(day) && (!there || r.follows(was)) {
			latest[r.Of()] = r
		}
	}
	for of, r := range latest {
		if r.Withdrawn != "" {
			delete(latest, of)
		}
	}
	return latest
}

// follows reports whether a version takes the place of another whose day has come as well.
func (r Received) follows(was Received) bool {
	if c := r.From.Cmp(was.From); c != 0 {
		return c > 0
	}
	return r.Seq > was.Seq
}
