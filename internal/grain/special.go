package grain

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

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

// answer is the outcome of a rule for the results.
type answer int

const (
	no answer = iota
	notTested
	yes
)

// addSpecial adds the special grades the sample earned and those that cannot be determined.
func (g *GradeResult) addSpecial(r results) {
	for _, s := range r.commodity.Special {
		found, because := s.ask(r)
		switch found {
		case yes:
			g.Special = append(g.Special, s.Name)
			g.SpecialBecause = append(g.SpecialBecause, message.New("%s: %s (%s)", s.Name, because, s.Source))
		case notTested:
			g.SpecialNotTested = append(g.SpecialNotTested, s.Name)
		}
	}
}

// ask goes through the ways to earn the word: one that holds is enough.
func (s SpecialGrade) ask(r results) (answer, message.Text) {
	out := no
	for _, way := range s.Any {
		found, because := r.askAll(way)
		if found == yes {
			return yes, because
		}
		out = max(out, found)
	}
	return s.askWord(r, out)
}

// askWord accepts the tester's own yes, and the tester's no where the counts were not taken.
func (s SpecialGrade) askWord(r results, byCount answer) (answer, message.Text) {
	word, given := r.recorded[s.Word]
	switch {
	case !given:
		return byCount, message.Text{}
	case word.Equal(Yes):
		return yes, message.New("%s: yes, by the tester", r.name(s.Word))
	}
	return no, message.Text{}
}

// askAll needs every condition of one way to hold.
func (r results) askAll(way []Condition) (answer, message.Text) {
	out := yes
	var because []message.Text
	for _, c := range way {
		result, tested := r.recorded[c.Factor]
		switch {
		case !tested:
			out = min(out, notTested)
		case !c.holds(result):
			return no, message.Text{}
		default:
			because = append(because, r.condition(c))
		}
	}
	return out, message.Texts("; ", because)
}

// condition describes a condition that holds: "Ergot 0.06 % is over 0.05 %".
func (r results) condition(c Condition) message.Text {
	if f, _ := r.commodity.Factor(c.Factor); f.YesNo {
		return message.New("%s: yes", f.Name)
	}
	return message.New("%s %s is %s %s", r.name(c.Factor), r.show(c.Factor, r.recorded[c.Factor]), string(c.Relation), r.show(c.Factor, c.Figure))
}
