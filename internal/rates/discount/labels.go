package discount

import "tenthpoint/internal/message"

// labels are those of a rule's steps, made once when the edition is read: every load has them.
type labels struct {
	// Limit is the result above which the load is turned away, Unit the money per unit of weight.
	Limit, Unit                        message.Text
	rate, base, per, count, each, most message.Text
}

func labelsOf(rule message.Text) labels {
	return labels{
		Limit: message.New("%s limit", rule), Unit: message.New("%s per unit", rule),
		rate: message.New("%s rate", rule), base: message.New("%s base", rule), per: message.New("%s counted per", rule),
		count: message.New("%s units", rule), each: message.New("%s for each", rule), most: message.New("%s at most", rule),
	}
}
