package load

import (
	"encoding/json"
	"strings"

	"tenthpoint/internal/message"
)

// Flag is a doubt about a reading, and the code it is filed under: "too-cold".
type Flag struct {
	Code string
	Said message.Kept
}

// Message is the doubt as people read it.
func (f Flag) Message() message.Text { return f.Said.Message() }

// Filed is the doubt under its code.
func (f Flag) Filed() message.Text { return message.List(": ", message.Own(f.Code), f.Said) }

// flagFact is a flag as facts hold it. Earlier versions wrote one text, "too-cold: The sample ...".
type flagFact struct {
	Code string       `json:"code"`
	Said message.Kept `json:"said"`
}

// MarshalJSON writes code and message, or the one text that an earlier version wrote.
func (f Flag) MarshalJSON() ([]byte, error) {
	if english, is := f.Said.Sentence(); is {
		return json.Marshal(strings.TrimPrefix(f.Code+codeEnd+english, codeEnd))
	}
	return json.Marshal(flagFact(f))
}

// UnmarshalJSON reads both.
func (f *Flag) UnmarshalJSON(data []byte) error {
	english := ""
	if json.Unmarshal(data, &english) == nil {
		*f = OldFlag(english)
		return nil
	}
	return json.Unmarshal(data, (*flagFact)(f))
}

// codeEnd is the separator between code and sentence.
const codeEnd = ": "

// OldFlag is a flag as earlier versions wrote it, with its code in front if it has one.
func OldFlag(english string) Flag {
	code, sentence, filed := strings.Cut(english, codeEnd)
	if !filed || strings.Contains(code, " ") {
		code, sentence = "", english
	}
	return Flag{code, message.OldWords(sentence)}
}
