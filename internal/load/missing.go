package load

import "tenthpoint/internal/message"

// Missing is something a load lacks before it can be settled, named as on the slip.
type Missing struct {
	Field    string
	Sentence message.Text
}

// Missing lists what the load lacks, in the order of the slip; nil when it is complete.
func (l *Load) Missing() []Missing {
	var out []Missing
	need := func(lacking bool, field, sentence string) {
		if lacking {
			out = append(out, Missing{field, message.Words(sentence)})
		}
	}
	need(l.Details.Grower.Name == "", "grower", "No grower yet: say whose grain it is.")
	need(l.Details.Commodity == "", "commodity", "No commodity yet: say what grain it is.")
	need(l.Details.Truck == Truck{}, "truck", "No truck yet: type its number or plate.")
	out = append(out, l.missingWeights()...)
	// Grain that leaves is weighed; it is sold on the buyer's test.
	need(l.Details.Direction != Outbound && l.Sample.Moisture == nil, "moisture", "No moisture yet: test the sample.")
	return out
}

func (l *Load) missingWeights() []Missing {
	drafts := l.Drafts()
	if len(drafts) == 0 {
		drafts = []string{""}
	}
	var out []Missing
	for _, draft := range drafts {
		for _, which := range []Which{Gross, Tare} {
			if _, ok := l.Weight(which, draft); !ok {
				out = append(out, Missing{string(which), notWeighed(which, draft)})
			}
		}
	}
	return out
}

func notWeighed(which Which, draft string) message.Text {
	switch {
	case which == Gross && draft == "":
		return message.Words("No gross yet: weigh the loaded truck.")
	case which == Gross:
		return message.New("No gross of the %s yet: weigh the loaded truck.", draft)
	case draft == "":
		return message.Words("No tare yet: weigh the empty truck, or use its stored tare.")
	}
	return message.New("No tare of the %s yet: weigh the empty truck, or use its stored tare.", draft)
}
