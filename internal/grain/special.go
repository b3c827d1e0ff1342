package grain

import "tenthpoint/internal/quantity"

// SpecialGrade is a word added to the grade for something that stands out:
// ergoty, garlicky, infested. It neither lowers the number nor raises it.
type SpecialGrade struct {
	Name   string
	Source string
	// Any lists the ways to earn the word; each is a list of conditions that
	// must all hold.
	Any [][]Condition
	// Word is a yes or no of the tester that stands in for counts not taken.
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

// Condition holds when the factor stands in the relation to the figure.
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

// special makes a special grade earned in one way.
func special(name, source string, all ...Condition) SpecialGrade {
	return SpecialGrade{Name: name, Source: source, Any: [][]Condition{all}}
}

// or adds another way to earn the word.
func (s SpecialGrade) or(all ...Condition) SpecialGrade {
	s.Any = append(s.Any, all)
	return s
}

func percentIs(id FactorID, r Relation, figure string) Condition {
	return Condition{Factor: id, Relation: r, Figure: quantity.Of(figure, quantity.Percent)}
}

func countIs(id FactorID, r Relation, figure string) Condition {
	return Condition{Factor: id, Relation: r, Figure: quantity.Of(figure, quantity.Count)}
}

func weighs(r Relation, figure string) Condition {
	return Condition{Factor: TestWeight, Relation: r, Figure: lbPerBu(figure)}
}

func isPresent(id FactorID) Condition {
	return Condition{Factor: id, Relation: AtLeast, Figure: Yes}
}

// infestedBreadGrain is the rule for wheat, rye and triticale.
func infestedBreadGrain() SpecialGrade { return infested("7 CFR 810.107(a)(1)", "1", "2") }

// infestedOtherGrain is the rule for barley, canola, corn, oats, sorghum,
// soybeans and sunflower seed.
func infestedOtherGrain() SpecialGrade { return infested("7 CFR 810.107(b)(1)", "5", "10") }

// infested counts live insects in the representative sample: two weevils, or
// one weevil with so many others, or so many others alone.
func infested(source, othersWithWeevil, othersAlone string) SpecialGrade {
	s := special("Infested", source, countIs(Weevils, AtLeast, "2")).
		or(countIs(Weevils, AtLeast, "1"), countIs(Insects, AtLeast, othersWithWeevil)).
		or(countIs(Insects, AtLeast, othersAlone))
	s.Word = Infested
	return s
}
