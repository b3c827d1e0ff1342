package keeping

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Stretch is a time that grain stood at one temperature.
type Stretch struct{ Days, Temperature quantity.Amount }

// Life is the used part of the time that grain keeps.
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
	s.Section(message.Words("Time used"))
	s.Given("moisture", message.Words("Moisture"), moisture, quantity.Unrounded, worksheet.Unsourced)
	used := s.Given("used.0", message.Words("Used before"), quantity.Zero(quantity.Percent), quantity.Unrounded, worksheet.Unsourced)
	for i, stretch := range stretches {
		if stretch.Days.Sign() < 0 {
			return Life{}, message.Invalid.Errorf("grain cannot stand for %s", stretch.Days)
		}
		allowed, err := t.Days(moisture, stretch.Temperature)
		if err != nil {
			return Life{}, err
		}
		id := func(what string) string { return fmt.Sprintf("%s.%d", what, i+1) }
		stood := s.Given(id("days"), message.New("Days at %s", stretch.Temperature), stretch.Days, quantity.Unrounded, worksheet.Unsourced)
		keeps := t.keeps(s, id("keeps"), message.New("Keeps at %s", stretch.Temperature), allowed)
		part := s.Work(id("part"), message.Words("Part of its time"), worksheet.Times(worksheet.Over(stood, keeps), worksheet.Const(hundred)), tenth, worksheet.Unsourced)
		used = s.Work(id("used"), message.Words("Used so far"), worksheet.Sum(used, part), quantity.Unrounded, worksheet.Unsourced)
	}
	return t.left(s, used, moisture, next)
}

func (t Table) keeps(s *worksheet.Sheet, id string, label message.Text, d Days) *worksheet.Step {
	step := s.Rate(id, label, tenth.Apply(d.Days), message.New("%v: %s", message.Own(t.ID), t.Source))
	if d.AtLeast {
		s.Note(step, message.Words("at least so many"))
	}
	return step
}

func (t Table) left(s *worksheet.Sheet, used *worksheet.Step, moisture, next quantity.Amount) (Life, error) {
	life := Life{Used: used.Value(), Spent: !used.Value().Less(hundred), Sheet: s}
	allowed, err := t.Days(moisture, next)
	if err != nil {
		return Life{}, err
	}
	s.Section(message.Words("Time left"))
	keeps := t.keeps(s, "keeps.next", message.New("Keeps at %s", next), allowed)
	wholeDay := quantity.To("1", quantity.Down)
	if life.Spent {
		s.Skip("left", message.Words("Days left"), quantity.Day, wholeDay, message.Words("its time is used up"), worksheet.Unsourced)
		life.Left = Days{Days: quantity.Zero(quantity.Day)}
		return life, nil
	}
	rest := s.Work("rest", message.Words("Not used"), worksheet.Less(worksheet.Const(hundred), used), quantity.Unrounded, worksheet.Unsourced)
	left := s.Work("left", message.Words("Days left"), worksheet.PercentOf(rest, keeps), wholeDay, worksheet.Unsourced)
	life.Left = Days{left.Value(), allowed.AtLeast}
	return life, nil
}
