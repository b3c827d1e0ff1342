package keeping

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Stretch is a time that grain stood at one temperature.
type Stretch struct{ Days, Temperature quantity.Amount }

// Life is what is used up of the time that grain keeps.
type Life struct {
	// Used is a percent of the whole, at most: more than 100 % is spent.
	Used quantity.Amount
	// Left is the days that remain at the temperature asked for.
	Left Days
	// Spent is true where nothing remains.
	Spent bool
	Sheet *worksheet.Sheet
}

// Use adds up what stretches of days have used of the life of grain, each a part of
// the time the table gives at its temperature, and gives the days left at another.
// Time at a temperature where the table says only "over" counts as if it gave no
// more, so what is used is at most so much. The error says what is out of reach.
func (t Table) Use(moisture quantity.Amount, stretches []Stretch, next quantity.Amount) (Life, error) {
	s := &worksheet.Sheet{}
	s.Section("Time used")
	s.Given("moisture", "Moisture", moisture, quantity.Unrounded, "")
	used := s.Given("used.0", "Used before", quantity.Zero(quantity.Percent), quantity.Unrounded, "")
	for i, stretch := range stretches {
		if stretch.Days.Sign() < 0 {
			return Life{}, message.Invalid.Errorf("grain cannot stand for %s", stretch.Days)
		}
		allowed, err := t.Days(moisture, stretch.Temperature)
		if err != nil {
			return Life{}, err
		}
		id := func(what string) string { return fmt.Sprintf("%s.%d", what, i+1) }
		stood := s.Given(id("days"), "Days at "+stretch.Temperature.String(), stretch.Days, quantity.Unrounded, "")
		keeps := t.keeps(s, id("keeps"), "Keeps at "+stretch.Temperature.String(), allowed)
		part := s.Work(id("part"), "Part of its time", worksheet.Times(worksheet.Over(stood, keeps), worksheet.Const(hundred)), tenth, "")
		used = s.Work(id("used"), "Used so far", worksheet.Sum(used, part), quantity.Unrounded, "")
	}
	return t.left(s, used, moisture, next)
}

func (t Table) keeps(s *worksheet.Sheet, id, label string, d Days) *worksheet.Step {
	step := s.Rate(id, label, tenth.Apply(d.Days), t.ID+": "+t.Source)
	if d.AtLeast {
		s.Note(step, "at least so many")
	}
	return step
}

func (t Table) left(s *worksheet.Sheet, used *worksheet.Step, moisture, next quantity.Amount) (Life, error) {
	life := Life{Used: used.Value(), Spent: !used.Value().Less(hundred), Sheet: s}
	allowed, err := t.Days(moisture, next)
	if err != nil {
		return Life{}, err
	}
	s.Section("Time left")
	keeps := t.keeps(s, "keeps.next", "Keeps at "+next.String(), allowed)
	wholeDay := quantity.To("1", quantity.Down)
	if life.Spent {
		s.Skip("left", "Days left", quantity.Day, wholeDay, "its time is used up", "")
		life.Left = Days{Days: quantity.Zero(quantity.Day)}
		return life, nil
	}
	rest := s.Work("rest", "Not used", worksheet.Less(worksheet.Const(hundred), used), quantity.Unrounded, "")
	left := s.Work("left", "Days left", worksheet.PercentOf(rest, keeps), wholeDay, "")
	life.Left = Days{left.Value(), allowed.AtLeast}
	return life, nil
}
