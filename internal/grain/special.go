package grain

import "tenthpoint/internal/quantity"

// SpecialGrade is a word added to the grade for a special condition: ergoty, garlicky, infested. It
// neither lowers the number nor raises it.
type SpecialGrade struct {
	Name   string
	Source string
	// Any lists the ways to earn the word; each is a list of conditions that
	// must all hold.
	Any [][]Condition
	// Word is the tester's yes or no, used where counts were not taken.
	Word FactorID
}

// Relation compares a result with a figure.
type Relation string

// The relations special grades are written in.
const (
	Over    Relation = "over"
	AtLeast Relation = "at least"
	AtMost  Relation = "at most"
	Under   Relation = "under"
)

// Condition holds when the factor has the relation to the figure.
type Condition struct {
	Factor   FactorID
	Relation Relation
	Figure   quantity.Amount
}

// holds compares a recorded result.
func (c Condition) holds(result quantity.Amount) bool {
	switch sign := result.Cmp(c.Figure); c.Relation {
	case Over:
		return sign > 0
	case AtLeast:
		return sign >= 0
	case AtMost:
		return sign <= 0
	default:
		return sign < 0
	}
}
