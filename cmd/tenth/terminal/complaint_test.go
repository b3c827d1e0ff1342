package terminal

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// Whoever wrote it, a complaint is a sentence, and its advice a hint.
func TestComplaints(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{errors.New("there is no load L9 in this book"), "error: There is no load L9 in this book.\n"},
		{message.Errorf("a ticket is voided only with a reason; type one word"), "error: A ticket is voided only with a reason.\nhint: Type one word.\n"},
		{message.Errorf("Net would be -28,000 lb. Weigh again or swap the two."), "error: Net would be -28,000 lb.\nhint: Weigh again or swap the two.\n"},
		{message.Errorf("The disk is full. Nothing was entered."), "error: The disk is full. Nothing was entered.\n"},
		{message.Errorf("The book x.book is locked. Nothing was entered. Wait for it, then try again: the book is busy"), "error: The book x.book is locked. Nothing was entered.\nhint: Wait for it, then try again: the book is busy.\n"},
		{errors.Join(message.Errorf("one thing is wrong"), message.Errorf("and another. Mend both.")), "error: One thing is wrong.\nerror: And another.\nhint: Mend both.\n"},
		{errors.Join(errors.New("first"), Refusal("do that", "second")), "error: First.\nerror: Second.\nhint: Do that.\n"},
		{entry.Fault{Field: "gross", Err: Refusal("do that", "second")}, "error: Second.\nhint: Do that.\n"},
		{message.Errorf("house.book is a folder, not a book. Name a file in it."), "error: house.book is a folder, not a book.\nhint: Name a file in it.\n"},
		{Complaint{What: "is it?"}, "error: Is it?\n"},
	} {
		var b bytes.Buffer
		Complain(&b, nil, c.err)
		if b.String() != c.want {
			t.Errorf("%v:\n%swant\n%s", c.err, b.String(), c.want)
		}
	}
}

// Mistakes in a file of rates keep their line and its text.
func TestComplaintsOfAFile(t *testing.T) {
	_, err := rates.Read("house.toml", []byte("[edition]\nid = 5\n"))
	var b bytes.Buffer
	Complain(&b, nil, err)
	for _, want := range []string{"error: house.toml:2: ", "\n    id = 5\n", "\nhint: "} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("%q is not in:\n%s", want, b.String())
		}
	}
}

// FuzzShare: any text makes a share of a whole, or a sentence; never a panic or
// a share of nothing known.
func FuzzShare(f *testing.F) {
	for _, text := range []string{"102=2/3", "901=33.5%", "x=1/0", "=1/2", "a=1e9/3", "a=-1/3", "a=", "a=1/3/3", "é=0.1%"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := entry.ParseOwnerShare(text)
		if err != nil {
			return
		}
		if p.Owner == "" || p.Parts.Unit() != quantity.Plain || p.Of.Unit() != quantity.Plain || p.Parts.Sign() < 0 || p.Of.Sign() < 0 {
			t.Errorf("%q is read as %s of %s for %q", text, p.Parts, p.Of, p.Owner)
		}
	})
}

// FuzzFinding: any text makes a result of a factor of corn, or a sentence.
func FuzzFinding(f *testing.F) {
	corn, err := entry.Commodity("corn")
	if err != nil {
		f.Fatal(err)
	}
	for _, text := range []string{"test-weight=54.2", "musty=yes", "bcfm", "moisture=18", "bcfm=1e400", "=", "bcfm=5,1", "bcfm=٣"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		found, err := ParseFinding(corn, corn, text)
		if err != nil {
			if fmt.Sprint(err) == "" {
				t.Errorf("%q is refused without a word", text)
			}
			return
		}
		factor, known := corn.Factor(found.Factor)
		if !known || found.Amount != nil && (found.Amount.Less(factor.Min) || found.Amount.More(factor.Max)) {
			t.Errorf("%q is read as %+v", text, found)
		}
	})
}
