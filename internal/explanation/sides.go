package explanation

import (
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// side is whose a line is: on what an owner reads + is to the owner and - from the owner.
type side int

const (
	whole     side = iota // a weight, a quantity, what is paid: neither is given nor taken
	toOwner               // a premium
	fromOwner             // water, handling, a discount, a charge
)

// sides of the lines that are added or taken off.
var sides = map[string]side{
	settle.LineWater: fromOwner, settle.LineHandling: fromOwner, settle.LineDrying: fromOwner,
	settle.LineDiscounts: fromOwner, settle.LineServices: fromOwner, settle.LinePremiums: toOwner,
}

// side is that of a line. Proofs of tickets of the first two engines print sizes, as they did.
func (c *composer) side(line string) side {
	if !c.Settlement.Engine.HasTitles() {
		return whole
	}
	return sides[line]
}

// change is a difference of a line as the owner meets it.
func (s side) change(a quantity.Amount) quantity.Amount {
	if s == fromOwner {
		return a.Neg()
	}
	return a
}

// written is the figure of a line, printed without regard to whose it is, with the sign it has for
// the owner.
func (s side) written(a quantity.Amount, printed string) string {
	size := strings.TrimPrefix(printed, "-")
	switch to := s.change(a); {
	case s == whole:
		return printed
	case to.Sign() > 0:
		return "+" + size
	case to.Sign() < 0:
		return "-" + size
	}
	return size
}
