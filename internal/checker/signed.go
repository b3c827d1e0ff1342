package checker

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
	"tenthpoint/internal/slipcode"
)

// signature tells who signed a code.
func (c *Checker) signature(s *sheet, code slipcode.Code) {
	if code.Signature == nil {
		s.box(warn, s.Say("Nobody signed this code"), s.Say("Its figures can be worked again, but anybody could have written them. Hold them against the paper."))
		return
	}
	id := signing.ID(code.Signature.Key)
	if len(c.house.Keys) == 0 {
		s.box(warn, s.Say("The signature was not checked"), s.Say("The code is signed by the key %s, and this page knows no keys. The page of the elevator itself, made by its own program, can check it.", id))
		return
	}
	at := slices.IndexFunc(c.house.Computers, func(one signing.Computer) bool { return one.Key.ID() == id })
	if at < 0 {
		s.box(wrong, s.Say("Signed by a key that is not this elevator's"), s.Say("The key %s is none that %v has certified. The slip is from another house, or it is forged.", id, c.house.Business))
		return
	}
	computer := c.house.Computers[at]
	payload, err := code.Payload(code.Signature.Key)
	if err != nil || !computer.Key.SignedTicket(payload, signing.Signature(code.Signature.Bytes)) {
		s.box(wrong, s.Say("The signature is false"), s.Say("The figures in this code are not those that the key %s signed. Do not rely on this slip.", id))
		return
	}
	fingerprint := c.house.Keys[len(c.house.Keys)-1].Fingerprint()
	compare := s.Say("The key of the house: %s. Compare it with the fingerprint on your slip and on the posted rates.", message.Own(fingerprint))
	switch {
	case computer.Check() != nil || !slices.Contains(c.house.Keys, computer.House):
		s.box(wrong, s.Say("The key was not certified by this elevator"), s.Say("The key %s names a house whose key is not in this page.", id))
	case computer.Ended != nil:
		s.box(warn, s.Say("Signed by a key that ended"), s.Say("The key %s of %v is %s. A ticket from before that is good; ask the elevator.", id, computer.Computer, computer.Ended.Cause.Message()), compare)
	default:
		s.box(good, s.Say("Signed by %v", c.house.Business), s.Say("The computer %v of the house signed exactly these figures.", computer.Computer), compare)
	}
}

// inBook tells whether the ticket was in the book at a head that a computer of the house signed.
func (c *Checker) inBook(s *sheet, code slipcode.Code) {
	for _, head := range c.house.Heads {
		computer, signed := c.signerOf(head)
		switch {
		case !signed:
			s.box(wrong, s.Say("The list of tickets in this page is not signed by the house"), s.Say("Ask the elevator for another page."))
		case slices.Contains(head.Tickets, code.FindCode()):
			s.box(good, s.Say("In the book since %s", head.Day), s.Say("The elevator lists this ticket up to the end of its book that %v signed: %v.", computer, head.Note))
		default:
			s.box(warn, s.Say("Not in the elevator's list"), s.Say("This page lists the last %d tickets up to %s. A later one is in a newer page; one of that time that is missing, ask about.", len(head.Tickets), head.Day))
		}
	}
}

// signerOf is the computer that signed the head of a list.
func (c *Checker) signerOf(h Head) (computer string, signed bool) {
	for _, n := range signing.FindNotes(h.Note) {
		for _, one := range c.house.Computers {
			if one.Key.ID() == n.By && one.Key.SignedHead(n.Head, n.Signature) {
				return one.Computer, true
			}
		}
	}
	return "", false
}
