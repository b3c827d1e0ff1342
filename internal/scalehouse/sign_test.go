package scalehouse_test

import (
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/signing"
)

// keyOf makes the same key of the same letter.
func keyOf(t *testing.T, letter string) signing.Key {
	t.Helper()
	k, err := signing.NewKey(strings.NewReader(strings.Repeat(letter, 32)))
	must(t, err)
	return k
}

// certified gives the scene's house a key, and its desk one certified by it.
func certified(t *testing.T, s *scene) (house, desk signing.Key) {
	t.Helper()
	house, desk = keyOf(t, "h"), keyOf(t, "d")
	s.As(housetest.Manager)
	must(t, scalehouse.RecordKey(ctx, s.Desk, signing.HouseKey{Key: house.Public()}))
	must(t, scalehouse.RecordKey(ctx, s.Desk, house.Certify("scale desk", desk.Public())))
	scalehouse.UseKey(s.Desk, desk)
	s.As(housetest.Clerk)
	return house, desk
}

// vouchedFor is who vouches for a ticket.
func vouchedFor(t *testing.T, s *scene, id string) keyring.Vouched {
	t.Helper()
	facts, err := s.Store.FactsOf(ctx, office.LoadSubject(id))
	must(t, err)
	for _, f := range facts {
		if f.Kind == (load.Issued{}).Kind() {
			v, err := keyring.Over(ctx, s.Store, f.Seq)
			must(t, err)
			return v
		}
	}
	t.Fatal("no ticket was issued")
	return keyring.Vouched{}
}

func TestTicketIsSignedWhereTheKeyIsCertified(t *testing.T) {
	s := housetest.New(t)
	before, _ := s.Ticket()
	scalehouse.UseKey(s.Desk, keyOf(t, "d"))
	keyless, _ := s.Ticket()
	for _, id := range []string{before, keyless} {
		if v := vouchedFor(t, s, id); v.HasKeys || v.Note != nil || !v.Message().IsZero() {
			t.Errorf("in a house without keys %+v vouches", v)
		}
	}
	_, desk := certified(t, s)
	signedID, _ := s.Ticket()
	v := vouchedFor(t, s, signedID)
	if v.Note == nil || v.Computer != "scale desk" || v.Note.By != desk.Public().ID() || !desk.Public().SignedHead(v.Note.Head, v.Note.Signature) {
		t.Errorf("a signed ticket: %+v", v)
	}
	if v := vouchedFor(t, s, before); v.HasKeys || v.Note != nil {
		t.Errorf("a ticket before the key: %+v", v)
	}

	scalehouse.UseKey(s.Desk, signing.Key{})
	missing, number := s.Ticket()
	scalehouse.UseKey(s.Desk, keyOf(t, "x"))
	stranger, _ := s.Ticket()
	for what, id := range map[string]string{"without a key": missing, "with a key nobody certified": stranger} {
		if v := vouchedFor(t, s, id); !v.HasKeys || v.Note != nil || v.Message().IsZero() {
			t.Errorf("a ticket %s: %+v", what, v)
		}
	}
	// A later signature covers the book, but does not make those tickets signed.
	scalehouse.UseKey(s.Desk, desk)
	last, _ := s.Ticket()
	if v := vouchedFor(t, s, missing); v.Note != nil {
		t.Errorf("a signature of a later act makes a ticket signed: %+v", v)
	}
	if v := vouchedFor(t, s, last); v.Note == nil {
		t.Errorf("the key came back: %+v", v)
	}
	sound := s.Verify()
	if len(sound.Problems) > 0 || sound.Signatures != 2 || len(sound.Remarks) != 1 {
		t.Errorf("%d signatures, problems %v, remarks %v", sound.Signatures, sound.Problems, sound.Remarks)
	}
	if args := sound.Remarks[0].Args(); args[0] != 2 || args[1] != "4-5" || number != 4 {
		t.Errorf("unsigned are %v", args)
	}
}

// One signature covers a whole list of past loads; a closed day and a void have one as well, weights
// none.
func TestActsAreSignedOnce(t *testing.T) {
	s := housetest.New(t)
	certified(t, s)
	count := func() (n int64) { return s.Verify().Signatures }
	ids := []string{s.Whole(), s.Whole(), s.Whole()}
	if n := count(); n != 0 {
		t.Errorf("loads on the yard left %d signatures", n)
	}
	must(t, s.Batch(ctx, func(w *scalehouse.Batch) error {
		for _, id := range ids {
			if _, err := scalehouse.Issue(ctx, w, id); err != nil {
				return err
			}
		}
		return nil
	}))
	if n := count(); n != 1 {
		t.Errorf("three tickets of one act left %d signatures", n)
	}
	for _, id := range ids {
		if vouchedFor(t, s, id).Note == nil {
			t.Errorf("load %s is unsigned", id)
		}
	}
	s.As(housetest.Manager)
	must(t, scalehouse.Void(ctx, s.Desk, 3, "wrong truck"))
	must(t, scalehouse.CloseDay(ctx, s.Desk, quantity.MustDate("2026-10-01"), ""))
	if n := count(); n != 3 {
		t.Errorf("with a void and a closed day there are %d signatures", n)
	}
	sheet, err := office.DaySheet(ctx, s.Desk, quantity.MustDate("2026-10-01"))
	must(t, err)
	notes := signing.FindNotes(sheet.Closed.Vouched.String())
	if len(notes) != 1 || !strings.HasPrefix(notes[0].Head.String(), sheet.Closed.Head) {
		t.Errorf("the closed sheet prints the head %s and the signature %v", sheet.Closed.Head, sheet.Closed.Vouched)
	}
}

func TestHeadIsNotedWithItsSignature(t *testing.T) {
	s := housetest.New(t)
	head := s.Noted()
	scalehouse.UseKey(s.Desk, keyOf(t, "d"))
	if got := s.HeadText(head); got != head.String() {
		t.Errorf("in a house without keys the head is noted as %q", got)
	}
	certified(t, s)
	keys, err := keyring.Read(ctx, s.Store)
	must(t, err)
	notes := signing.FindNotes(s.HeadText(head))
	if len(notes) != 1 || notes[0].Head != head {
		t.Fatalf("the head is noted as %q", s.HeadText(head))
	}
	if c, err := keys.VerifyNote(notes[0]); err != nil || c.Computer != "scale desk" {
		t.Errorf("%v, %v", c.Computer, err)
	}
}

func TestKeysAreAManagersMatter(t *testing.T) {
	s := housetest.New(t)
	house, _ := certified(t, s)
	before := s.Contents()
	if err := scalehouse.RecordKey(ctx, s.Desk, house.Certify("office", keyOf(t, "o").Public())); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk certifies: %v", err)
	}
	s.As(housetest.Manager)
	if err := scalehouse.RecordKey(ctx, s.Desk, keyOf(t, "t").Certify("office", keyOf(t, "o").Public())); !errors.Is(err, message.Refused) {
		t.Errorf("a stranger's certificate: %v", err)
	}
	if s.Contents() != before {
		t.Error("something was written")
	}
}

// A key that ended signs nothing any more, also on a desk that was open when it ended.
func TestEndedKeySignsNothing(t *testing.T) {
	s := housetest.New(t)
	_, desk := certified(t, s)
	s.Ticket()
	s.As(housetest.Manager)
	must(t, scalehouse.RecordKey(ctx, s.Desk, signing.Ended{Key: desk.Public(), Cause: signing.Lost, Reason: "the disk broke"}))
	s.As(housetest.Clerk)
	id, _ := s.Ticket()
	if v := vouchedFor(t, s, id); v.Note != nil {
		t.Errorf("a lost key signed: %+v", v)
	}
	if sound := s.Verify(); len(sound.Problems) > 0 || sound.Signatures != 1 {
		t.Errorf("%d signatures, %v", sound.Signatures, sound.Problems)
	}
}

// planted enters a fact past the desk, as somebody could who writes into the file.
func planted(t *testing.T, s *scene, subject string, f journal.Kinded) {
	t.Helper()
	body, err := journal.Canonical(f)
	must(t, err)
	must(t, s.Store.Write(ctx, func(tx book.Tx) error {
		_, err := tx.Append(journal.Entry{At: s.Now(), Who: "somebody", Desk: "elsewhere", Kind: f.Kind(), Subject: subject, Body: body})
		return err
	}))
}

func TestForgeriesInTheBookAreNamed(t *testing.T) {
	for what, plant := range map[string]func(s *scene, house, desk signing.Key){
		"a signature by a stranger's key": func(s *scene, _, _ signing.Key) {
			f, err := keyOf(t, "x").SignAct(1, s.Noted())
			must(t, err)
			planted(t, s, signing.SignatureSubject, f)
		},
		"a stranger's signature in the desk's name": func(s *scene, _, desk signing.Key) {
			f, err := keyOf(t, "x").SignAct(1, s.Noted())
			must(t, err)
			f.By = desk.Public().ID()
			planted(t, s, signing.SignatureSubject, f)
		},
		"an older signature used again": func(s *scene, _, desk signing.Key) {
			f, err := desk.SignAct(1, s.Noted())
			must(t, err)
			s.Arrive(52300)
			planted(t, s, signing.SignatureSubject, f)
		},
		"a certificate that the house did not sign": func(s *scene, _, _ signing.Key) {
			planted(t, s, signing.Subject, keyOf(t, "x").Certify("office", keyOf(t, "y").Public()))
		},
		"a signature by a key that ended": func(s *scene, _, desk signing.Key) {
			planted(t, s, signing.Subject, signing.Ended{Key: desk.Public(), Cause: signing.Stolen, Reason: "burglary"})
			f, err := desk.SignAct(1, s.Noted())
			must(t, err)
			planted(t, s, signing.SignatureSubject, f)
		},
	} {
		t.Run(what, func(t *testing.T) {
			s := housetest.New(t)
			house, desk := certified(t, s)
			s.Ticket()
			plant(s, house, desk)
			housetest.WantNamed(t, s.Desk, "Fact")
		})
	}
}

// Signatures of a stolen key count as they stood in the book, but the check says from when on they
// prove nothing.
func TestSignaturesOfAStolenKeyAreInDoubt(t *testing.T) {
	s := housetest.New(t)
	_, desk := certified(t, s)
	s.Ticket()
	s.At("2026-10-01 18:00")
	stolen := s.Now()
	s.Ticket()
	s.Ticket()
	s.As(housetest.Manager)
	must(t, scalehouse.RecordKey(ctx, s.Desk, signing.Ended{Key: desk.Public(), Cause: signing.Stolen, Reason: "burglary", Since: stolen}))
	sound := s.Verify()
	if len(sound.Problems) > 0 || len(sound.Remarks) != 1 || sound.Remarks[0].Args()[0] != 2 {
		t.Errorf("problems %v, remarks %v", sound.Problems, sound.Remarks)
	}
}
