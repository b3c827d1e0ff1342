package chart

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Set holds the charts of an elevator. The zero Set is empty, and so is a nil one.
type Set struct {
	charts []*Chart
}

// NewSet makes a set of charts. The error is a [tomlfile.Problems] naming every pair that may not
// be loaded together: one id twice, or two charts for the same grain on the same meter, mass and
// day.
func NewSet(charts ...*Chart) (*Set, error) {
	var problems tomlfile.Problems
	for i, c := range charts {
		for _, other := range charts[:i] {
			if p, ok := clash(c, other); ok {
				problems = append(problems, p)
			}
		}
	}
	if err := problems.Err(); err != nil {
		return nil, err
	}
	return &Set{charts: slices.Clone(charts)}, nil
}

func clash(c, other *Chart) (tomlfile.Problem, bool) {
	p := tomlfile.Problem{File: c.File}
	switch {
	case c.ID == other.ID:
		p.What = message.New("the id %q is also that of %v", c.ID, other.File)
		p.Remedy = message.New("Give one of them another id; a mended chart is a new chart.")
	case sameUse(c, other) && overlap(c, other):
		p.What = message.New("chart %v and chart %v (%v) are both for %s on the same days", c.ID, other.ID, other.File, c.Name())
		p.Remedy = message.New("End the older one with until, the day before the newer begins.")
	default:
		return p, false
	}
	return p, true
}

func sameUse(c, other *Chart) bool {
	return c.Crop == other.Crop && c.Meter == other.Meter && c.Calibration == other.Calibration && c.Mass.Equal(other.Mass)
}

func overlap(c, other *Chart) bool {
	startsInTime := c.Until.IsZero() || !other.From.After(c.Until)
	endsInTime := other.Until.IsZero() || !c.From.After(other.Until)
	return startsInTime && endsInTime
}

// All lists the charts in the order they were given.
func (s *Set) All() []*Chart {
	if s == nil {
		return nil
	}
	return slices.Clone(s.charts)
}

// ByID finds a chart; the error lists those there are.
func (s *Set) ByID(id string) (*Chart, error) {
	var ids []string
	for _, c := range s.All() {
		if c.ID == id {
			return c, nil
		}
		ids = append(ids, c.ID)
	}
	if len(ids) == 0 {
		return nil, message.NotFound.Errorf("there is no chart %q, and none is loaded; put the meter's charts into the folder of charts", id)
	}
	return nil, message.NotFound.Errorf("there is no chart %q; loaded are %s", id, strings.Join(ids, ", "))
}

// For lists the charts in force for a crop on a meter model and calibration,
// the one for the driest grain first.
func (s *Set) For(crop, meter, calibration string, day quantity.Date) []*Chart {
	var out []*Chart
	for _, c := range s.All() {
		if c.Crop == crop && c.Meter == meter && c.Calibration == calibration && c.InForce(day) {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b *Chart) int { return a.Moisture.Low.Cmp(b.Moisture.Low) })
	return out
}
