package dryness

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Option is one thing a grower can do with the load, and why it fits.
type Option struct {
	Name string // leave, aerate, dry, another pit, test again
	Text message.Text
}

// options lists what can be done, the least effort first. The strictest limit exceeded decides that
// grain is wet; where only long storage is exceeded, keeping the grain a short time is an option
// too.
func (r Rules) options(a Advice) []Option {
	var out []Option
	offer := func(name string, text message.Text) { out = append(out, Option{name, text}) }
	worst := a.worst()
	switch short, asked := a.verdict(ToStoreShort); {
	case len(a.Verdicts) == 0:
		offer("ask", message.New("No limit is set for this grain: a manager enters what the house calls dry."))
		return out
	case worst == nil:
		offer("leave", message.New("Leave it as it is: it is within every limit set."))
	case asked && short.Dry && worst.Purpose == ToStoreLong:
		offer("leave", message.New("Leave it for a short time: it is within %s, and must be moved or dried before it is kept long.", short.Limit))
	}
	if a.doubtful() {
		offer("test again", message.New("Test again: three times, or by oven, before anything is decided on a tenth."))
	}
	if worst == nil {
		return out
	}
	if r.mayAerate(a, *worst) {
		offer("aerate", message.New("Aerate: %s over %s, no more than the %s air may be asked to take out in dry weather.", worst.Over, worst.Limit, r.AerateWithin))
	}
	if r.Dries {
		offer("dry", r.drying(a.Band.Reading, *worst))
	}
	if r.WetPit != "" {
		offer("another pit", message.New("Dump it in %s, kept for wet grain, not on dry grain.", message.Own(r.WetPit)))
	}
	return out
}

// drying offers to dry grain to the limit it misses by most. The posted charge may end above that.
func (r Rules) drying(reading quantity.Amount, worst Verdict) message.Text {
	from, to := reading.FixedString(1), worst.Limit
	switch {
	case !quantity.Recorded(r.ChargedTo):
		return message.New("Dry it here from %s to %s, %s. The rates post no charge for it.", from, to, worst.Over)
	case r.ChargedTo.More(to):
		return message.New("Dry it here from %s to %s, %s. The posted drying charge is for drying to %s, and says nothing of the rest.", from, to, worst.Over, r.ChargedTo)
	}
	return message.New("Dry it here from %s to %s, %s, at the posted drying charge.", from, to, worst.Over)
}

// worst is the verdict missed by most, or nil when all are dry.
func (a Advice) worst() *Verdict {
	var worst *Verdict
	for i, v := range a.Verdicts {
		if !v.Dry && (worst == nil || v.Over.More(worst.Over)) {
			worst = &a.Verdicts[i]
		}
	}
	return worst
}

func (a Advice) verdict(p Purpose) (Verdict, bool) {
	for _, v := range a.Verdicts {
		if v.Purpose == p {
			return v, true
		}
	}
	return Verdict{}, false
}

func (a Advice) doubtful() bool {
	for _, v := range a.Verdicts {
		if !v.Certain {
			return true
		}
	}
	return false
}

// mayAerate reports whether to offer aeration: air dries little and slowly, so only for storage and
// only within the elevator's own limit.
func (r Rules) mayAerate(a Advice, worst Verdict) bool {
	_, stores := a.verdict(ToStoreShort)
	_, keeps := a.verdict(ToStoreLong)
	return (stores || keeps) && quantity.Recorded(r.AerateWithin) && !worst.Over.More(r.AerateWithin)
}
