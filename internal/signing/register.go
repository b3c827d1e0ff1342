package signing

import (
	"slices"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// Register is the list of a book's keys, as far as its facts were taken. The zero Register is
// that of a book without keys.
type Register struct {
	houses    []HouseKey
	computers []Computer
}

// Computer is a certified key and what became of it.
type Computer struct {
	Certificate
	At    string // when it was certified
	Ended *Ended
	Gone  string // when it ended
}

// IsEmpty reports whether the house has no key.
func (r *Register) IsEmpty() bool { return len(r.houses) == 0 }

// House is the key of the house in force; zero where there is none.
func (r *Register) House() Public {
	if r.IsEmpty() {
		return Public{}
	}
	return r.houses[len(r.houses)-1].Key
}

// Houses are all keys the house had, in order.
func (r *Register) Houses() []HouseKey { return slices.Clone(r.houses) }

// Computers are all keys of computers, in the order they were certified.
func (r *Register) Computers() []Computer { return slices.Clone(r.computers) }

// Find is the computer with a key.
func (r *Register) Find(key Public) (Computer, bool) {
	return r.find(func(c Computer) bool { return c.Key == key })
}

// ByID is the computer with a key whose fingerprint begins so. No two keys of a house begin alike.
func (r *Register) ByID(id ID) (Computer, bool) {
	return r.find(func(c Computer) bool { return c.Key.ID() == id })
}

func (r *Register) find(is func(Computer) bool) (Computer, bool) {
	for _, c := range slices.Backward(r.computers) {
		if is(c) {
			return c, true
		}
	}
	return Computer{}, false
}

// Counts reports whether a key is certified and has not ended.
func (r *Register) Counts(key Public) bool {
	c, known := r.Find(key)
	return known && c.Ended == nil
}

// Take takes a fact of [Subject] in the order of the journal. What does not follow from the facts
// before it is refused, and the register stays as it was.
func (r *Register) Take(f journal.Fact) error {
	switch f.Kind {
	case HouseKey{}.Kind():
		return take(f, r.TakeHouse)
	case Certificate{}.Kind():
		return take(f, func(c Certificate) error { return r.TakeComputer(c, f.At) })
	case Ended{}.Kind():
		return take(f, func(e Ended) error { return r.TakeEnded(e, f.At) })
	}
	return nil
}

func take[F journal.Kinded](f journal.Fact, by func(F) error) error {
	body, err := journal.ReadBody[F](f.Body)
	if err != nil {
		return err
	}
	return by(body)
}

// TakeHouse takes the next key of the house.
func (r *Register) TakeHouse(f HouseKey) error {
	if err := f.Check(); err != nil {
		return err
	}
	switch {
	case r.IsEmpty() && f.Before != nil:
		return message.Refused.Errorf("the house key %v follows another, but the book has none yet", f.Key.Fingerprint())
	case !r.IsEmpty() && (f.Before == nil || *f.Before != r.House()):
		return message.Refused.Errorf("the house key %v does not follow %v, the one in force", f.Key.Fingerprint(), r.House().Fingerprint())
	case slices.ContainsFunc(r.houses, func(h HouseKey) bool { return h.Key == f.Key }):
		return message.Refused.Errorf("the house had the key %v before; make another", f.Key.Fingerprint())
	}
	r.houses = append(r.houses, f)
	return nil
}

// TakeComputer takes the certificate of a computer, entered at a time.
func (r *Register) TakeComputer(c Certificate, at string) error {
	if err := c.Check(); err != nil {
		return err
	}
	if r.IsEmpty() || c.House != r.House() {
		return message.Refused.Errorf("the certificate of %v was signed by %v, which is not the house's key in force", c.Computer, c.House.Fingerprint())
	}
	if _, known := r.Find(c.Key); known {
		return message.Refused.Errorf("the key %v was certified before; a key that ended does not return", c.Key.Fingerprint())
	}
	if same, known := r.ByID(c.Key.ID()); known {
		return message.Refused.Errorf("the key %v begins like that of %v; make another", c.Key.Fingerprint(), same.Computer)
	}
	r.computers = append(r.computers, Computer{Certificate: c, At: at})
	return nil
}

// TakeEnded takes the end of a computer's key, entered at a time.
func (r *Register) TakeEnded(f Ended, at string) error {
	if err := f.Check(); err != nil {
		return err
	}
	i := slices.IndexFunc(r.computers, func(c Computer) bool { return c.Key == f.Key })
	switch {
	case i < 0:
		return message.NotFound.Errorf("no computer of this house has the key %v", f.Key.Fingerprint())
	case r.computers[i].Ended != nil:
		return message.WrongPhase.Errorf("the key %v counts no more already: %s", f.Key.Fingerprint(), r.computers[i].Ended.Cause)
	}
	r.computers = slices.Clone(r.computers)
	r.computers[i].Ended, r.computers[i].Gone = &f, at
	return nil
}

// Verify returns why a signature in the book proves nothing, or nil with the computer that signed.
// It is asked in the order of the journal: head is that of the fact before the signature.
func (r *Register) Verify(s Signed, head journal.Head) (Computer, error) {
	if err := s.Check(); err != nil {
		return Computer{}, err
	}
	c, known := r.ByID(s.By)
	switch {
	case !known:
		return c, unknownKey(s.By)
	case c.Ended != nil:
		return c, message.Invalid.Errorf("the key %v of %v signed, but counts no more: %s", s.By, c.Computer, c.Ended.Cause)
	case s.Last != head.Seq || !c.Key.SignedHead(head, s.Signature):
		return c, notItsSignature(c, s.Last)
	}
	return c, nil
}

func unknownKey(id ID) error {
	return message.Invalid.Errorf("the key %v signed, which nobody certified", id)
}

func notItsSignature(c Computer, seq int64) error {
	return message.Invalid.Errorf("the signature of %v (%v) is not that of fact %d", c.Computer, c.Key.ID(), seq)
}

// InDoubt reports whether a signature of a time was made while its key was in strange hands, as was
// said later.
func (c Computer) InDoubt(at string) bool {
	return c.Ended != nil && c.Ended.Since != "" && at >= c.Ended.Since
}
