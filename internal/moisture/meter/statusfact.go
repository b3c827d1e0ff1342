package meter

import (
	"encoding/json"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// statusFact is a status as facts hold it, whose texts keep key and arguments.
type statusFact struct {
	Meter                    string
	State                    State
	Last, NextDue            quantity.Date
	Sentence                 message.Kept
	Failures, Hints, Ignored []message.Kept
}

// MarshalJSON writes the status for a fact.
func (s Status) MarshalJSON() ([]byte, error) {
	return json.Marshal(statusFact{s.Meter, s.State, s.Last, s.NextDue, message.Kept{Text: s.Sentence},
		message.Keep(s.Failures...), message.Keep(s.Hints...), message.Keep(s.Ignored...)})
}

// UnmarshalJSON reads it back, and the sentences of earlier versions.
func (s *Status) UnmarshalJSON(data []byte) error {
	var f statusFact
	err := json.Unmarshal(data, &f)
	*s = Status{f.Meter, f.State, f.Last, f.NextDue, f.Sentence.Message(), textsOf(f.Failures), textsOf(f.Hints), textsOf(f.Ignored)}
	return err
}

func textsOf(all []message.Kept) []message.Text {
	var out []message.Text
	for _, one := range all {
		out = append(out, one.Message())
	}
	return out
}
