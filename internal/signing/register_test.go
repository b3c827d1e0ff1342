package signing_test

import (
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

const (
	morning = "2026-09-01T08:00:00Z"
	noon    = "2026-09-01T12:00:00Z"
	evening = "2026-09-01T18:00:00Z"
)

// fact makes a fact of the journal, as a book holds it.
func fact(t *testing.T, at string, body journal.Kinded) journal.Fact {
	t.Helper()
	text, err := journal.Canonical(body)
	if err != nil {
		t.Fatal(err)
	}
	return journal.Link(nil, journal.Entry{At: at, Who: "A. Clerk", Desk: "desk", Kind: body.Kind(), Subject: signing.Subject, Body: text})
}

// registerOf takes facts in turn, at the time they stand at.
func registerOf(t *testing.T, facts ...journal.Fact) *signing.Register {
	t.Helper()
	r := new(signing.Register)
	for _, f := range facts {
		if err := r.Take(f); err != nil {
			t.Fatal(err)
		}
	}
	return r
}

func TestRegisterFollowsTheFacts(t *testing.T) {
	house, next, desk, office := keyOf(t, "h"), keyOf(t, "n"), keyOf(t, "d"), keyOf(t, "o")
	r := registerOf(t)
	if !r.IsEmpty() || !r.House().IsZero() || r.Counts(desk.Public()) {
		t.Error("an empty book has keys")
	}
	r = registerOf(t,
		fact(t, morning, signing.HouseKey{Key: house.Public()}),
		fact(t, morning, house.Certify("scale desk", desk.Public())),
		fact(t, noon, signing.NextHouse(house, next.Public(), "the paper was copied")),
		fact(t, noon, next.Certify("office", office.Public())),
		fact(t, evening, signing.Ended{Key: desk.Public(), Cause: signing.Stolen, Reason: "burglary", Since: noon}),
	)
	if r.House() != next.Public() || len(r.Houses()) != 2 || len(r.Computers()) != 2 {
		t.Errorf("house %v, %d computers", r.House(), len(r.Computers()))
	}
	if c, _ := r.ByID(desk.Public().ID()); r.Counts(desk.Public()) || c.Computer != "scale desk" || c.Gone != evening || c.Ended.Cause != signing.Stolen {
		t.Errorf("the stolen key: %+v", c)
	}
	c, _ := r.Find(desk.Public())
	if c.InDoubt(morning) || !c.InDoubt(noon) || !c.InDoubt(evening) {
		t.Error("signatures are in doubt from noon on")
	}
	// A certificate outlives the house key that signed it: the book says when it was signed.
	if c, _ := r.Find(office.Public()); !r.Counts(office.Public()) || c.InDoubt(evening) {
		t.Error("the office's key counts")
	}
}

func TestRegisterRefusesForgedFacts(t *testing.T) {
	house, thief, desk := keyOf(t, "h"), keyOf(t, "t"), keyOf(t, "d")
	before := house.Public()
	renamed := house.Certify("scale desk", desk.Public())
	renamed.Computer = "office"
	swapped := house.Certify("scale desk", desk.Public())
	swapped.Key = thief.Public()
	claimed := thief.Certify("scale desk", desk.Public())
	claimed.House = house.Public()
	taken := signing.NextHouse(thief, desk.Public(), "")
	taken.Before = &before
	known := []journal.Fact{fact(t, morning, signing.HouseKey{Key: house.Public()}), fact(t, morning, house.Certify("office", keyOf(t, "o").Public()))}
	ended := append(known, fact(t, noon, signing.Ended{Key: keyOf(t, "o").Public(), Cause: signing.Lost, Reason: "the disk broke"}))
	for what, c := range map[string]struct {
		before []journal.Fact
		forged journal.Kinded
		kind   message.Kind
	}{
		"a certificate with another name":         {known, renamed, message.Invalid},
		"a certificate with another key":          {known, swapped, message.Invalid},
		"a certificate in the house's name":       {known, claimed, message.Invalid},
		"a certificate of another house":          {known, thief.Certify("scale desk", desk.Public()), message.Refused},
		"a certificate before there is a house":   {nil, house.Certify("scale desk", desk.Public()), message.Refused},
		"a certificate without a name":            {known, house.Certify(" ", desk.Public()), message.Incomplete},
		"a key certified twice":                   {known, house.Certify("second", keyOf(t, "o").Public()), message.Refused},
		"a key that ended returns":                {ended, house.Certify("office", keyOf(t, "o").Public()), message.Refused},
		"a key that ended ends again":             {ended, signing.Ended{Key: keyOf(t, "o").Public(), Cause: signing.Lost, Reason: "x"}, message.WrongPhase},
		"a house key that does not follow":        {known, signing.HouseKey{Key: thief.Public()}, message.Refused},
		"a house key signed by a stranger":        {known, taken, message.Invalid},
		"a house key after one that never was":    {nil, signing.NextHouse(house, thief.Public(), ""), message.Refused},
		"a house key of before":                   {known, signing.NextHouse(house, house.Public(), ""), message.Refused},
		"a house key without signature or reason": {known, signing.HouseKey{Key: thief.Public(), Before: &before}, message.Incomplete},
		"no house key":                            {nil, signing.HouseKey{}, message.Incomplete},
		"the end of a key that is none":           {known, signing.Ended{Key: desk.Public(), Cause: signing.Lost, Reason: "x"}, message.NotFound},
		"an end without a reason":                 {known, signing.Ended{Key: keyOf(t, "o").Public(), Cause: signing.Lost}, message.Incomplete},
		"an end without a cause":                  {known, signing.Ended{Key: keyOf(t, "o").Public(), Reason: "x"}, message.Invalid},
		"an end without a key":                    {known, signing.Ended{Cause: signing.Lost, Reason: "x"}, message.Incomplete},
	} {
		r := registerOf(t, c.before...)
		houses, computers := len(r.Houses()), len(r.Computers())
		if err := r.Take(fact(t, evening, c.forged)); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v, not %v", what, err, c.kind)
		}
		if len(r.Houses()) != houses || len(r.Computers()) != computers {
			t.Errorf("%s: the register changed", what)
		}
	}
	broken := fact(t, evening, signing.HouseKey{Key: house.Public()})
	broken.Body = []byte(`{"key":"short"}`)
	if err := registerOf(t).Take(broken); err == nil {
		t.Error("a fact that cannot be read is taken")
	}
	if err := registerOf(t).Take(journal.Fact{Kind: "house.grower"}); err != nil {
		t.Errorf("a fact about something else: %v", err)
	}
}

// A lost house key is followed by one that nobody signed, for a reason that everybody sees.
func TestLostHouseKey(t *testing.T) {
	house, next := keyOf(t, "h"), keyOf(t, "n")
	before := house.Public()
	r := registerOf(t,
		fact(t, morning, signing.HouseKey{Key: house.Public()}),
		fact(t, noon, signing.HouseKey{Key: next.Public(), Before: &before, Reason: "the safe burned"}))
	if r.House() != next.Public() || r.Houses()[1].Signature != nil || r.Houses()[1].Reason == "" {
		t.Errorf("%+v", r.Houses())
	}
}

func TestSignaturesOfActs(t *testing.T) {
	house, desk, stranger := keyOf(t, "h"), keyOf(t, "d"), keyOf(t, "s")
	known := []journal.Fact{
		fact(t, morning, signing.HouseKey{Key: house.Public()}),
		fact(t, morning, house.Certify("scale desk", desk.Public())),
	}
	head := headOf(38, "fact 38")
	by := func(k signing.Key, first int64, h journal.Head) signing.Signed {
		s, err := k.SignAct(first, h)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	s := by(desk, 36, head)
	if c, err := registerOf(t, known...).Verify(s, head); err != nil || c.Computer != "scale desk" {
		t.Fatal(c.Computer, err)
	}
	forged := by(stranger, 36, head)
	forged.By = desk.Public().ID()
	moved := s
	moved.Last = 39
	none := s
	none.First = 39
	gone := append(known, fact(t, noon, signing.Ended{Key: desk.Public(), Cause: signing.Replaced, Reason: "new computer"}))
	for what, c := range map[string]struct {
		before []journal.Fact
		s      signing.Signed
		head   journal.Head
	}{
		"by a key nobody certified":     {known, by(stranger, 36, head), head},
		"in a certified key's name":     {known, forged, head},
		"of another book's fact":        {known, s, headOf(38, "fact 38 written again")},
		"said to be of the next fact":   {known, moved, headOf(39, "fact 38")},
		"of an older head":              {known, s, headOf(40, "fact 40")},
		"of no facts":                   {known, none, head},
		"by a key that counts no more":  {gone, s, head},
		"before the key was certified":  {known[:1], s, head},
		"in a book that has no key yet": {nil, s, head},
	} {
		if _, err := registerOf(t, c.before...).Verify(c.s, c.head); !errors.Is(err, message.Invalid) {
			t.Errorf("%s: %v", what, err)
		}
	}
	if _, err := desk.SignAct(1, journal.Head{Seq: 2, Hash: head.Hash[:12]}); !errors.Is(err, message.Invalid) {
		t.Errorf("a part of a hash is signed: %v", err)
	}
}

func TestSignedHeadsAreNotedOutsideTheBook(t *testing.T) {
	house, desk := keyOf(t, "h"), keyOf(t, "d")
	r := registerOf(t,
		fact(t, morning, signing.HouseKey{Key: house.Public()}),
		fact(t, morning, house.Certify("scale desk", desk.Public())))
	n, err := desk.NoteHead(headOf(38, "fact 38"))
	if err != nil {
		t.Fatal(err)
	}
	if heads := journal.FindHeads(n.String()); len(heads) != 1 || heads[0] != n.Head {
		t.Errorf("a note reads as the heads %v", heads)
	}
	paper := "Head of the book: " + strings.ReplaceAll(n.String(), " ", "\n    ") + "\nand another " + n.String() + "."
	found := signing.FindNotes(paper)
	if len(found) != 2 || found[0] != n || found[1] != n {
		t.Fatalf("found %v", found)
	}
	if c, err := r.VerifyNote(n); err != nil || c.Computer != "scale desk" {
		t.Errorf("%v, %v", c.Computer, err)
	}
	forged, unknown := n, n
	forged.Head = headOf(38, "another fact 38")
	unknown.By = house.Public().ID()
	for what, bad := range map[string]signing.Note{"another head": forged, "a key nobody certified": unknown} {
		if _, err := r.VerifyNote(bad); !errors.Is(err, message.Invalid) {
			t.Errorf("%s: %v", what, err)
		}
	}
	text := n.String()
	if got := signing.FindNotes(text[:len(text)-1] + " 38:" + n.Head.Hash[:32] + " signed"); len(got) != 0 {
		t.Errorf("half a note is found: %v", got)
	}
}
