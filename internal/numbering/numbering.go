// Package numbering accounts for numbers that a book did not give out itself.
//
// A book that is restored from a copy has lost what was entered after the copy was made, but the
// papers with those numbers are with drivers and growers. Such a number must never be given out
// again. So the series is moved on past them in one act, and each number that was passed is then
// entered again from its paper or declared lost. What is still missing is said until then.
package numbering

import (
	"fmt"
	"slices"

	"tenthpoint/internal/message"
)

// The series that a book numbers papers by.
const (
	Load     = "load"
	Ticket   = "ticket"
	Sample   = "sample"
	Dispute  = "dispute"
	Movement = "movement"
	Sheet    = "sheet"
	Payment  = "payment"
	Receipt  = "receipt"
	Opening  = "opening"
)

// Series are all series.
var Series = []string{Load, Ticket, Sample, Dispute, Movement, Sheet, Payment, Receipt, Opening}

// OnPaper are the series whose numbers stand on papers that leave the house, in the order in which
// they are asked for.
var OnPaper = []string{Ticket, Sample, Sheet, Payment, Receipt}

// Passed are numbers of a series that were given out where this book did not see it. The series goes
// on after the last one.
type Passed struct {
	Series string `json:"series"`
	First  int64  `json:"first,string"`
	Last   int64  `json:"last,string"`
	Reason string `json:"reason"`
	// Earlier tells that the books before this one gave them out: none of their papers is missing here.
	Earlier bool `json:"earlier,omitempty"`
}

// Kind names the fact in the journal.
func (Passed) Kind() string { return "numbers.passed" }

// ID is the id of its record.
func (p Passed) ID() string { return fmt.Sprintf("%s/%012d", p.Series, p.First) }

// Check returns what is wrong with it, or nil.
func (p Passed) Check() error {
	switch {
	case !slices.Contains(OnPaper, p.Series):
		return message.Refused.Errorf("numbers of %q are on no paper; passed over are those of %s", p.Series, message.Names(", ", OnPaper))
	case p.Reason == "":
		return message.Incomplete.Errorf("say why numbers are passed over; it is kept in the book")
	case p.Last < p.First:
		return message.Refused.Errorf("the book has given out numbers up to %d already, and the last one on paper is %d. Look for the highest number on any paper", p.First-1, p.Last)
	case p.Last-p.First >= p.most():
		return message.Refused.Errorf("%d numbers from %d to %d would be passed over, more than %d. Was the last number on paper read right?", p.Last-p.First+1, p.First, p.Last, p.most())
	}
	return nil
}

// Most is the most numbers that one act passes over, and MostEarlier the most that the books of earlier
// years may have given out: more than that was misread.
const (
	Most        = 100_000
	MostEarlier = 1_000_000
)

func (p Passed) most() int64 {
	if p.Earlier {
		return MostEarlier
	}
	return Most
}

// Covers reports whether a number of a series was passed.
func (p Passed) Covers(series string, number int64) bool {
	return p.Series == series && p.First <= number && number <= p.Last
}

// names are the names of the numbers of each series.
var names = map[string]message.Text{
	Ticket: message.New("tickets"), Sample: message.New("samples"), Sheet: message.New("settlement sheets"), Payment: message.New("payments"),
	Receipt: message.New("warehouse receipts"),
}

// Message names the numbers passed over.
func (p Passed) Message() message.Text {
	if p.Earlier {
		return message.New("Of the books before this one: %s %d to %d", names[p.Series], p.First, p.Last)
	}
	return message.New("Passed over: %s %d to %d", names[p.Series], p.First, p.Last)
}

// Lost is the number of a ticket whose paper is not to be had.
type Lost struct {
	Number int64  `json:"number,string"`
	Reason string `json:"reason"`
}

// Kind names the fact in the journal.
func (Lost) Kind() string { return "ticket.lost" }

// ID is the id of its record.
func (l Lost) ID() string { return fmt.Sprintf("%012d", l.Number) }

// Check returns what is wrong with it, or nil.
func (l Lost) Check() error {
	if l.Reason == "" {
		return message.Incomplete.Errorf("say what is known of ticket %d and why its paper is not to be had; it is kept in the book", l.Number)
	}
	return nil
}

// Absent are the tickets passed over that are not in the book: those still missing, and those
// declared lost. Has says whether the book has a number.
func Absent(passed []Passed, lost []Lost, has func(number int64) bool) (missing, gone []int64) {
	declared := map[int64]bool{}
	for _, l := range lost {
		declared[l.Number] = true
	}
	for _, p := range passed {
		if p.Series != Ticket || p.Earlier {
			continue
		}
		for n := p.First; n <= p.Last; n++ {
			switch {
			case has(n):
			case declared[n]:
				gone = append(gone, n)
			default:
				missing = append(missing, n)
			}
		}
	}
	return missing, gone
}

// Ranges are ascending numbers as people write them: "4121 to 4123, 4127".
func Ranges(numbers []int64) message.Text {
	var parts []any
	for i := 0; i < len(numbers); {
		last := i
		for last+1 < len(numbers) && numbers[last+1] == numbers[last]+1 {
			last++
		}
		if last > i {
			parts = append(parts, message.New("%d to %d", numbers[i], numbers[last]))
		} else {
			parts = append(parts, message.New("%d", numbers[i]))
		}
		i = last + 1
	}
	return message.List(", ", parts...)
}
