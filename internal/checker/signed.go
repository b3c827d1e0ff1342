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
		s.box(warn, s.say("Nobody signed this code"), s.say("Its figures can be worked again, but anybody could have written them. Hold them against the paper."))
		return
	}
	id := signing.ID(code.Signature.Key)
	if len(c.house.Keys) == 0 {
		s.box(warn, s.say("The signature was not checked"), s.say("The code is signed by the key %s, and this page knows no keys. The page of the elevator itself, made by its own program, can check it.", id))
		return
	}
	at := slices.IndexFunc(c.house.Computers, func(one signing.Computer) bool { return one.Key.ID() == id })
	if at < 0 {
		s.box(wrong, s.say("Signed by a key that is not this elevator's"), s.say("The key %s is none that %v has certified. The slip is from another house, or it is forged.", id, c.house.Business))
		return
	}
	computer := c.house.Computers[at]
	payload, err := code.Payload(code.Signature.Key)
	if err != nil || !computer.Key.SignedTicket(payload, signing.Signature(code.Signature.Bytes)) {
		s.box(wrong, s.say("The signature is false"), s.say("The figures in this code are not those that the key %s signed. Do not rely on this slip.", id))
		return
	}
	fingerprint := c.house.Keys[len(c.house.Keys)-1].Fingerprint()
	compare := s.say("The key of the house: %s. Compare it with the fingerprint on your slip and on the posted rates.", message.Own(fingerprint))
	switch {
	case computer.Check() != nil || !slices.Contains(c.house.Keys, computer.House):
		s.box(wrong, s.say("The key was not certified by this elevator"), s.say("The key %s names a house whose key is not in this page.", id))
	case computer.Ended != nil:
		s.box(warn, s.say("Signed by a key that ended"), s.say("The key %s of %v is %s. A ticket from before that is good; ask the elevator.", id, computer.Computer, computer.Ended.Cause.Message()), compare)
	default:
		s.box(good, s.say("Signed by %v", c.house.Business), s.say("The computer %v of the house signed exactly these figures.", computer.Computer), compare)
	}
}

// inBook tells whether the ticket was in the book at a head that the house signed.
func (c *Checker) inBook(s *sheet, code slipcode.Code) {
	if len(c.house.Heads) == 0 {
		return
	}
	for _, head := range c.house.Heads {
		if slices.Contains(head.Tickets, code.FindCode()) {
			s.box(good, s.say("In the book since %s", head.Day), s.say("The elevator lists this ticket up to the end of its book noted as %v.", head.Note))
			return
		}
	}
	last := c.house.Heads[len(c.house.Heads)-1]
	s.box(warn, s.say("Not in the elevator's list"), s.say("This page lists the tickets up to %s. A later one is in a newer page; an earlier one that is missing, ask about.", last.Day))
}
