package moisture

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Limit is a moisture at which something changes for the grower: a trigger, a
// shrink-to, the edge of a class.
type Limit struct {
	Name   message.Text    `json:"name"`
	At     quantity.Amount `json:"at"` // %
	Source message.Text    `json:"source,omitzero"`
}

// ClassLimits are the edges of a grain's Canadian classes, each the highest
// moisture of its class. The grain is named as in [grain.MoistureGrains].
func ClassLimits(canadaGrain string) ([]Limit, error) {
	classes, err := grain.Classes(canadaGrain)
	if err != nil {
		return nil, err
	}
	var out []Limit
	for _, c := range classes {
		if c.HasUpTo {
			out = append(out, Limit{Name: message.New("the end of %s", c.Name), At: c.UpTo, Source: message.Words(c.Source)})
		}
	}
	return out, nil
}

// isNear reports whether a moisture is within the policy's distance of the
// limit, both edges included.
func (p Policy) isNear(m quantity.Amount, l Limit) bool {
	return p.Near.Sign() > 0 && !apart(m, l.At).More(p.Near.In(quantity.Percent))
}
