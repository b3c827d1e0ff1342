package grain

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// MoistureClass is a Canadian moisture class. Up to and including UpTo the grain is in the class;
// one tenth more is the next.
type MoistureClass struct {
	// Grain is the name in the order; Name is straight, tough, damp, moist or
	// wet.
	Grain, Name string
	// Moisture is the reading as recorded, to the tenth.
	Moisture quantity.Amount
	// Over is the moisture above which the class begins; HasOver is false for straight, which has
	// no lower end.
	Over    quantity.Amount
	HasOver bool
	// UpTo is the highest moisture of the class; HasUpTo is false for the
	// last, which has no upper end.
	UpTo    quantity.Amount
	HasUpTo bool
	Source  string
}

// Interval is the class as figures: "up to 14.5 %", "14.6 % to 17.0 %", "over
// 17.0 %".
func (c MoistureClass) Interval() message.Text {
	switch {
	case !c.HasOver:
		return message.New("up to %s", c.UpTo.FixedString(1))
	case !c.HasUpTo:
		return message.New("over %s", c.Over.FixedString(1))
	}
	return message.New("%s to %s", c.Over.Add(tenthPercent).FixedString(1), c.UpTo.FixedString(1))
}

// String says class, grain and interval: "tough (Canola: 10.1 % to 12.5 %)".
func (c MoistureClass) String() string {
	return fmt.Sprintf("%s (%s: %s)", c.Name, c.Grain, c.Interval())
}

// Advisory is shown with every class.
func (c MoistureClass) Advisory() string { return Advisory }

var tenthPercent = quantity.Of("0.1", quantity.Percent)

// moistureRow is a line of the order: its classes with an upper end, driest
// first, and the name of the class after the last, which is open upwards.
type moistureRow struct {
	grain  string
	ends   []classEnd
	last   string
	source string
}

type classEnd struct {
	name    string
	highest quantity.Amount
}

// ladder lists the classes of the row, driest first.
func (row moistureRow) ladder() []MoistureClass {
	out := make([]MoistureClass, 0, len(row.ends)+1)
	below := MoistureClass{Grain: row.grain, Source: row.source}
	for _, end := range row.ends {
		c := below
		c.Name, c.UpTo, c.HasUpTo = end.name, end.highest, true
		out = append(out, c)
		below.Over, below.HasOver = c.UpTo, true
	}
	below.Name = row.last
	return append(out, below)
}

// Class returns the class of a moisture, recorded to the tenth first. grain is a name of
// [Tables.MoistureGrains]; case does not matter.
func (t *Tables) Class(grain string, reading quantity.Amount) (MoistureClass, error) {
	row, err := t.findMoistureRow(grain)
	if err != nil {
		return MoistureClass{}, err
	}
	f, _ := t.commodities[0].Factor(Moisture)
	reading, err = f.accept(reading)
	if err != nil {
		return MoistureClass{}, err
	}
	return row.class(f.Recorded(reading)), nil
}

func (row moistureRow) class(recorded quantity.Amount) MoistureClass {
	ladder := row.ladder()
	for _, c := range ladder {
		if !c.HasUpTo || !recorded.More(c.UpTo) {
			c.Moisture = recorded
			return c
		}
	}
	return MoistureClass{} // not reached: the last class is open
}

// LowestTough returns the lowest moisture at which the grain is tough; false where the order has no
// tough class for it. Grain dried for pay may not be brought below this less a tenth (order of the
// Canadian Grain Commission, SOR/2018-176).
func (t *Tables) LowestTough(grain string) (quantity.Amount, bool, error) {
	row, err := t.findMoistureRow(grain)
	if err != nil {
		return quantity.Amount{}, false, err
	}
	for _, c := range row.ladder() {
		if c.Name == "tough" {
			return c.Over.Add(tenthPercent), true, nil
		}
	}
	return quantity.Amount{}, false, nil
}

// ShrinkFloor is the lowest moisture that weight may be shrunk to: the lowest
// tough moisture less 0.1.
func (t *Tables) ShrinkFloor(grain string) (quantity.Amount, bool, error) {
	tough, ok, err := t.LowestTough(grain)
	if !ok || err != nil {
		return quantity.Amount{}, false, err
	}
	return tough.Sub(tenthPercent), true, nil
}

// Classes lists a grain's classes, driest first.
func (t *Tables) Classes(grain string) ([]MoistureClass, error) {
	row, err := t.findMoistureRow(grain)
	if err != nil {
		return nil, err
	}
	return row.ladder(), nil
}
