// Package confirmation has the letters by which depositors confirm what a house owes them.
//
// An examiner does not take a house's word for what it owes. Of the depositors a random sample is
// drawn, each gets a letter with the balances of that day, and what they answer is written down. The
// sample is drawn by a seed that is kept: the depositors are put in the order of the SHA-256 of the
// seed and their code, and the first of them are written to. So anybody can draw it again, and nobody
// at the house chooses who is asked.
package confirmation

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Round is one sample with its letters, whole, as the journal keeps it.
type Round struct {
	Number  int64         `json:"number,string"`
	Day     quantity.Date `json:"day"` // the day whose balances are confirmed
	By      string        `json:"by"`
	Seed    string        `json:"seed"`
	Of      int           `json:"of,string"` // depositors that had a balance
	Letters []Letter      `json:"letters"`
}

// Letter is what one depositor is asked to confirm, and the answer.
type Letter struct {
	Number   int       `json:"number,string"` // in its round, from 1
	Grower   string    `json:"grower"`
	Name     string    `json:"name"`
	Address  string    `json:"address,omitempty"`
	Balances []Balance `json:"balances"`
	Answer   *Answer   `json:"answer,omitempty"`
}

// Balance is what a depositor is owed of one grain under one title.
type Balance struct {
	Commodity string          `json:"commodity"`
	Under     message.Kept    `json:"under"`
	Quantity  quantity.Amount `json:"quantity"`
}

// How is how a depositor answered.
type How string

const (
	Agrees   How = "agrees"
	Differs  How = "differs"  // another figure, which the words say
	Returned How = "returned" // the letter came back
)

// Hows are all of them.
var Hows = []How{Agrees, Differs, Returned}

var howWords = map[How]message.Text{Agrees: message.New("agrees"), Differs: message.New("does not agree"), Returned: message.New("letter came back")}

// Said is how papers say it.
func (h How) Said() message.Text { return howWords[h] }

// Answer is what came back to a letter.
type Answer struct {
	How   How           `json:"how"`
	Day   quantity.Date `json:"day"`
	By    string        `json:"by"` // who wrote it down
	Words string        `json:"words,omitempty"`
}

// Kind names the fact in the journal.
func (Round) Kind() string { return "house.confirmation" }

// ID is the round's name among the records of the book.
func (r Round) ID() string { return fmt.Sprintf("%06d", r.Number) }

// Draw is a sample of so many codes, by a seed, in the order they are drawn; all where there are no more.
func Draw(codes []string, seed string, size int) []string {
	drawn := slices.Clone(codes)
	slices.SortFunc(drawn, func(a, b string) int {
		return cmp.Or(cmp.Compare(digest.Of(seed+"\n"+a), digest.Of(seed+"\n"+b)), cmp.Compare(a, b))
	})
	return drawn[:min(max(size, 0), len(drawn))]
}

// Unanswered are the letters to which nothing came back.
func (r Round) Unanswered() []Letter {
	return slices.DeleteFunc(slices.Clone(r.Letters), func(l Letter) bool { return l.Answer != nil })
}

// Check returns what is wrong with a round, or nil.
func (r Round) Check() error {
	switch {
	case r.Number < 1 || r.Day.IsZero() || r.By == "" || r.Seed == "":
		return message.Invalid.Errorf("a sample of depositors has a number, a day, a person and a seed; one of them is empty")
	case len(r.Letters) == 0:
		return message.Refused.Errorf("nobody is written to: no depositor has a balance on %s", r.Day)
	}
	return nil
}

// Answered is the round with the answer to a letter, or why it cannot be so. A later answer stands in
// place of an earlier one; both stay in the book.
func (r Round) Answered(letter int, a Answer) (Round, error) {
	at := slices.IndexFunc(r.Letters, func(l Letter) bool { return l.Number == letter })
	a.Words = strings.TrimSpace(a.Words)
	switch {
	case at < 0:
		return r, message.NotFound.Errorf("round %d has no letter %d; it has %d", r.Number, letter, len(r.Letters))
	case !slices.Contains(Hows, a.How):
		return r, message.Invalid.Errorf("%q is no answer; write agrees, differs or returned", string(a.How))
	case a.How == Differs && a.Words == "":
		return r, message.Incomplete.Errorf("the depositor does not agree: write down what the answer says")
	case a.Day.Before(r.Day):
		return r, message.Refused.Errorf("the letter is of %s, and was not answered on %s", r.Day, a.Day)
	}
	r.Letters = slices.Clone(r.Letters)
	r.Letters[at].Answer = &a
	return r, nil
}
