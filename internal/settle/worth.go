package settle

import (
	"errors"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// Worth is the value of a step of moisture for one load: the load settled as it was tested, and
// settled again that much drier and that much wetter. Nothing is estimated, so a step that crosses
// a trigger shows all of the jump.
type Worth struct {
	Step          quantity.Amount // points
	Here          *Settlement
	Drier, Wetter End
}

// End is the load settled at another moisture.
type End struct {
	Moisture quantity.Amount // %
	// Settlement is nil when the load could not be settled there; Problems then say why, for
	// example that it is over the limit at which loads are turned away.
	Settlement *Settlement
	Problems   Problems
	// Change is the change of the load's figures, negative for less.
	Change Change
}

// Change is the difference between two settlements.
type Change struct {
	Weight   quantity.Amount // settled, lb or kg
	Quantity quantity.Amount // paid for, bu, cwt or t
	// ToOwner is the change of premiums less discounts and charges, in $.
	ToOwner quantity.Amount
	// Payable is nil without a price.
	Payable *quantity.Amount
}

// WorthOf settles a load and both its ends, step points to either side of the
// moisture as recorded. The error, when there is one, is a [Problems] with every
// reason why the load itself cannot be settled.
func (n Engine) WorthOf(f Facts, e *rates.Edition, step quantity.Amount) (Worth, error) {
	here, err := n.Settle(f, e)
	if err != nil {
		return Worth{}, err
	}
	w := Worth{Step: step, Here: here}
	if step.Unit() != quantity.Point || step.Sign() <= 0 {
		return w, Problems{{Field: "moisture", Sentence: message.New("The worth of %s is asked for; ask for points above zero, such as 0.1 pt.", step)}}
	}
	moisture, apart := here.Moisture.Value(), step.In(quantity.Percent)
	w.Drier = here.Supposed(f, moisture.Sub(apart))
	w.Wetter = here.Supposed(f, moisture.Add(apart))
	return w, nil
}

// Supposed settles the same facts at another moisture, by the same engine and edition.
func (here *Settlement) Supposed(f Facts, moisture quantity.Amount) End {
	f.Moisture = Reading{Percent: moisture, Source: message.Words("supposed, to see what it would be worth")}
	end := End{Moisture: moisture}
	s, err := here.Engine.Settle(f, here.Edition)
	if err != nil {
		if !errors.As(err, &end.Problems) {
			end.Problems = Problems{{Field: "edition", Sentence: message.Of(err)}}
		}
		return end
	}
	end.Settlement, end.Change = s, changeOf(here, s)
	return end
}

func changeOf(here, there *Settlement) Change {
	c := Change{
		Weight:   there.Settled.Value().Sub(here.Settled.Value()),
		Quantity: there.Quantity.Value().Sub(here.Quantity.Value()),
		ToOwner:  there.ToOwner().Sub(here.ToOwner()),
	}
	if here.Payable.Kind() != worksheet.NotApplied {
		payable := there.Payable.Value().Sub(here.Payable.Value())
		c.Payable = &payable
	}
	return c
}
