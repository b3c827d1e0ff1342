package headoffice

import (
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// A Site is a house that sends its chain, by its letters.
type Site struct {
	Letters, Name string
	Role          string // the role of the server it signs in as
}

// CheckLetters returns what is wrong with the letters of a site, which has some.
func CheckLetters(letters string) error {
	if letters != "" {
		return elevator.CheckLetters(letters)
	}
	return message.Invalid.Errorf("%q are no letters of a site. Write a capital letter and up to seven more letters or digits, such as KH or ELM2", letters)
}

// A Chain is a branch of what a site wrote, as the office has it.
type Chain struct {
	Site   string
	Branch int
	// Letters are those the branch goes on under; empty for a fork that nobody gave any yet.
	Letters string
	// Parent and ParentSeq are the branch it shares its beginning with, and the last fact they share;
	// zero for a first branch.
	Parent    int
	ParentSeq int64
	Head      journal.Head
	Came      time.Time // when the last fact came
}

// Forked reports whether the chain is a second branch.
func (c Chain) Forked() bool { return c.Parent != 0 }

// An Outcome is the office's answer to lines that were sent.
type Outcome string

// The outcomes of the receiving function.
const (
	Kept    Outcome = "kept"    // now or before
	Fork    Outcome = "forked"  // kept, as the beginning of another branch
	Gap     Outcome = "gap"     // facts before them are missing
	Apart   Outcome = "apart"   // they follow a fact that the office never had
	Broken  Outcome = "broken"  // a fact is not what its hash says
	Refused Outcome = "refused" // they are not of the one who sent them
)

// A Receipt is the office's answer to lines.
type Receipt struct {
	Outcome Outcome
	// Head is the end of the chain they are in. Of a broken chain its number is that of the first
	// fact at fault, of a gap that of the fact which is due.
	Head   journal.Head
	Branch int
}

// A Fault is an error in what a site sent.
type Fault struct {
	Site, Name string
	Seq        int64
	About      string
	At         time.Time
}

// Said is the fault as a sentence.
func (f Fault) Said() message.Text {
	switch f.Name {
	case "fork":
		return message.New("%v sent another fact %d than the office has: its chain has a branch %v. Both are kept.", f.Site, f.Seq, f.About)
	case "broken":
		return message.New("%v sent fact %d, which is not what its hash says. It was not kept.", f.Site, f.Seq)
	case "foreign":
		return message.New("%v sent facts of %v. They were not kept.", f.Site, f.About)
	case "behind":
		return message.New("%v came with a book that ends with fact %d, an older copy of what the office has.", f.Site, f.Seq)
	}
	return message.New("%v: %v at fact %d.", f.Site, f.Name, f.Seq)
}
