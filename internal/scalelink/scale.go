package scalelink

import (
	"errors"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Scale is a deck with its limits. Capacity and Division are weights above zero in the unit the
// indicator shows; both are on the scale's plate.
type Scale struct {
	Name     string
	Capacity quantity.Amount
	Division quantity.Amount
}

// Check returns every fault of the plate's figures at once, joined.
func (s Scale) Check() error {
	var faults []error
	if s.Name == "" {
		faults = append(faults, message.Device.Errorf("The scale has no name. Give it the one printed on tickets."))
	}
	unit := s.Capacity.Unit()
	if !unit.IsMass() || unit != s.Division.Unit() {
		return errors.Join(append(faults, message.Device.Errorf("Scale %s: capacity %s and division %s must be weights in one unit. Copy both from the scale's plate.", s.Name, s.Capacity, s.Division))...)
	}
	if s.Division.Sign() <= 0 || s.Capacity.Sign() <= 0 {
		faults = append(faults, message.Device.Errorf("Scale %s: capacity %s and division %s must be above zero. Copy both from the scale's plate.", s.Name, s.Capacity, s.Division))
	} else if !s.isWhole(s.Capacity) {
		faults = append(faults, message.Device.Errorf("Scale %s: capacity %s is not a whole number of divisions of %s. Copy both from the scale's plate.", s.Name, s.Capacity, s.Division))
	}
	return errors.Join(faults...)
}

// plate is the scale as the elevator has it: its limits are decided there.
func (s Scale) plate() elevator.Scale {
	return elevator.Scale{ID: s.Name, Capacity: s.Capacity, Division: s.Division}
}

// Most is the largest weight taken.
func (s Scale) Most() quantity.Amount { return s.plate().Largest() }

// below rounds a weight down to whole divisions.
func (s Scale) below(weight quantity.Amount) quantity.Amount { return s.plate().Below(weight) }

func (s Scale) isWhole(weight quantity.Amount) bool { return s.below(weight).Equal(weight) }

// divisions returns a weight in whole divisions.
func (s Scale) divisions(weight quantity.Amount) int64 {
	count, _ := quantity.To("1", quantity.Down).Apply(weight.Div(s.Division)).Decimal()
	return count.IntPart()
}

func (s Scale) ofDivisions(count int64) quantity.Amount {
	return s.Division.Mul(quantity.Int(count, quantity.Plain))
}
