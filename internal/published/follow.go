package published

import (
	"iter"
	"slices"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// Link is a fact of the office's chain on its way to a site. Of a fact that is no business of the
// site, only Seq, Prev and Hash are told.
type Link struct {
	journal.Fact
	Withheld bool
}

// Told reports whether sites are told what a fact says: a publication, or a fact about keys.
func Told(f journal.Fact) bool {
	return f.Kind == Publication{}.Kind() || f.Subject == signing.Subject || f.Subject == signing.SignatureSubject
}

// Following is what a site knows of the office whose publications it takes over: the fingerprint by
// which somebody compared its key, and how far its chain was read.
type Following struct {
	Office      string `json:"office"`
	Fingerprint string `json:"fingerprint"` // 8 groups of 4 digits, of the key of the office's house
	// Seq and Hash are the last signed fact up to which everything was taken over.
	Seq  int64  `json:"seq,string"`
	Hash string `json:"hash,omitempty"`
	// Keys are the facts about the office's keys up to there.
	Keys []KeyFact `json:"keys,omitempty"`
}

// KeyFact is a fact about keys in the office's chain.
type KeyFact struct {
	At       string `json:"at"`
	FactKind string `json:"kind"`
	Body     string `json:"body"`
}

// Kind names the fact in the journal.
func (Following) Kind() string { return "office.following" }

// Check returns what is wrong with it, or nil.
func (f Following) Check() error {
	if f.Office == "" || len(f.Fingerprint) != fingerprintLetters {
		return message.Invalid.Errorf("a head office is followed by its letters and by the whole fingerprint of its key, 8 groups of 4 digits; got %q", f.Fingerprint)
	}
	return nil
}

// fingerprintLetters is the length of a fingerprint: 32 digits and the spaces between 8 groups.
const fingerprintLetters = 39

// Head is the last fact of the office's chain that was taken over.
func (f Following) Head() journal.Head { return journal.Head{Seq: f.Seq, Hash: f.Hash} }

// Take reads the links that follow in the office's chain. What comes back is new to the site, up to
// the last head that a computer of the office signed; with it, the site's knowledge is next. Waiting
// is the number of publications behind that head.
//
// A chain that does not go on from what the site knows, a fact that is not what its hash says, a key
// that nobody compared, a signature that is not good: each is an error, and nothing was taken.
func (f Following) Take(links iter.Seq2[Link, error]) (news []Received, next Following, waiting int, err error) {
	r := &reading{Following: f, last: journal.Fact{Seq: f.Seq, Hash: f.Hash}, next: f}
	if f.Seq == 0 {
		r.last.Hash = journal.Genesis
	}
	if err := r.known(); err != nil {
		return nil, f, 0, err
	}
	for link, err := range links {
		if err == nil {
			err = r.take(link)
		}
		if err != nil {
			return nil, f, 0, err
		}
	}
	if !r.trusted && len(r.pending) > 0 {
		return nil, f, 0, message.Refused.Errorf("the head office %v signs with another key than %v, or with none. Compare the fingerprint with the one that the office has on paper", f.Office, f.Fingerprint)
	}
	return r.news, r.next, len(r.pending), nil
}

// reading is a chain being read.
type reading struct {
	Following
	last    journal.Fact
	keys    signing.Register
	facts   []KeyFact
	trusted bool // the key that was compared is in force, or one that it signed
	pending []Received
	news    []Received
	next    Following
}

// known takes the keys that the site knows already.
func (r *reading) known() error {
	r.facts = slices.Clone(r.Keys)
	for _, k := range r.Keys {
		if err := r.key(journal.Fact{At: k.At, Kind: k.FactKind, Body: []byte(k.Body)}); err != nil {
			return err
		}
	}
	return nil
}

func (r *reading) take(l Link) error {
	if l.Seq != r.last.Seq+1 || l.Prev != r.last.Hash {
		return message.Refused.Errorf("the chain of the head office %v does not go on from fact %d as this site knows it. It was restored from an older copy, or is another office's; nothing was taken over", r.Office, r.last.Seq)
	}
	before := journal.HeadOf(r.last)
	if !l.Withheld {
		entry := journal.Entry{At: l.At, Who: l.Who, Desk: l.Desk, Kind: l.Kind, Subject: l.Subject, Body: l.Body}
		if journal.Link(&r.last, entry).Hash != l.Hash {
			return message.Invalid.Errorf("fact %d of the head office %v is not what its hash says; nothing was taken over", l.Seq, r.Office)
		}
		if err := r.told(l.Fact, before); err != nil {
			return message.Errorf("fact %d of the head office %v: %w", l.Seq, r.Office, err)
		}
	}
	r.last = journal.Fact{Seq: l.Seq, Hash: l.Hash}
	return nil
}

// told takes a fact that says something.
func (r *reading) told(f journal.Fact, before journal.Head) error {
	switch {
	case f.Subject == signing.Subject:
		r.facts = append(r.facts, KeyFact{At: f.At, FactKind: f.Kind, Body: string(f.Body)})
		return r.key(f)
	case f.Kind == Publication{}.Kind():
		p, err := journal.ReadBody[Publication](f.Body)
		if err != nil {
			return err
		}
		r.pending = append(r.pending, Received{Publication: p, Office: r.Office, Seq: f.Seq, Hash: f.Hash})
		return p.Check()
	case f.Kind == signing.Signed{}.Kind():
		return r.signed(f, before)
	}
	return nil
}

// key takes a fact about keys. The key that was compared is trusted, and so is each that was signed by
// one that is; where a key took its place without a signature, somebody has to compare again.
func (r *reading) key(f journal.Fact) error {
	if err := r.keys.Take(f); err != nil {
		return err
	}
	if f.Kind == (signing.HouseKey{}).Kind() {
		houses := r.keys.Houses()
		now := houses[len(houses)-1]
		r.trusted = now.Key.Fingerprint() == r.Fingerprint || r.trusted && now.Signature != nil
	}
	return nil
}

// signed accepts what came before a good signature under a trusted key.
func (r *reading) signed(f journal.Fact, before journal.Head) error {
	s, err := journal.ReadBody[signing.Signed](f.Body)
	if err != nil {
		return err
	}
	if _, err := r.keys.Verify(s, before); err != nil {
		return err
	}
	if r.trusted {
		r.news = append(r.news, r.pending...)
		r.pending = nil
		r.next.Seq, r.next.Hash, r.next.Keys = before.Seq, before.Hash, slices.Clone(r.facts)
	}
	return nil
}
