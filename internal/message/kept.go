package message

import (
	"encoding/json"
	"fmt"
	"strconv"
)

// Kept is a text in a fact, which keeps its key and its arguments, so that it can be said in any
// language later. A fact of an earlier version holds the English sentence, and keeps it.
type Kept struct{ Text }

// OldWords is a sentence of an earlier version.
func OldWords(english string) Kept { return Kept{Words(english)} }

// Message is the text. That of a sentence of an earlier version is found by its format.
func (k Kept) Message() Text {
	if k.form == literal {
		if text, ok := readOld(k.key); ok {
			return text
		}
	}
	return k.Text
}

// Sentence is the English sentence that a fact holds in place of key and arguments, if it does.
func (k Kept) Sentence() (english string, is bool) {
	english = k.String()
	return english, k.form == literal || k.IsZero() || keptText(k.Text).text().String() != english
}

// Keep makes texts that facts can hold.
func Keep(texts ...Text) []Kept {
	var out []Kept
	for _, t := range texts {
		out = append(out, Kept{t})
	}
	return out
}

// kept is a text, or one of its arguments, as JSON: figures and counts too are text.
type kept struct {
	Say    string  `json:"say,omitempty"`   // the key of a format, with its arguments
	One    string  `json:"one,omitempty"`   // the format for one thing
	List   *string `json:"list,omitempty"`  // the separator of a list
	With   []kept  `json:"with,omitempty"`  // arguments, or items of the list
	Words  string  `json:"words,omitempty"` // a key without arguments
	Own    string  `json:"own,omitempty"`   // a name
	Arg    *string `json:"arg,omitempty"`   // a string argument: the key tells whether it is a name
	Figure string  `json:"figure,omitempty"`
	Count  string  `json:"count,omitempty"`
}

// MarshalJSON writes key and arguments, or the English sentence where these would not give it back.
func (k Kept) MarshalJSON() ([]byte, error) {
	if english, is := k.Sentence(); is {
		return json.Marshal(english)
	}
	return json.Marshal(keptText(k.Text))
}

// UnmarshalJSON reads both back.
func (k *Kept) UnmarshalJSON(data []byte) error {
	english := ""
	if json.Unmarshal(data, &english) == nil {
		*k = OldWords(english)
		return nil
	}
	var form kept
	err := json.Unmarshal(data, &form)
	k.Text = form.text()
	return err
}

func keptText(t Text) kept {
	switch t.form {
	case named:
		return kept{Own: t.key}
	case literal:
		return kept{Words: t.key}
	case list:
		return kept{List: &t.key, With: keptArgs(t.args)}
	case counted:
		return kept{Say: t.key, One: t.args[1].(string), With: keptArgs(t.Args())}
	}
	return kept{Say: t.key, With: keptArgs(t.args)}
}

func keptArgs(args []any) []kept {
	out := make([]kept, len(args))
	for i, arg := range args {
		out[i] = keptArg(arg)
	}
	return out
}

func keptArg(arg any) kept {
	switch arg := arg.(type) {
	case Own:
		return kept{Own: string(arg)}
	case Sayable:
		return keptText(arg.Message())
	case Figure:
		return kept{Figure: fmt.Sprint(arg)}
	case error:
		return keptText(Of(arg))
	case string:
		return kept{Arg: &arg}
	}
	if isNumber(arg) {
		return kept{Count: fmt.Sprint(arg)}
	}
	return kept{Own: fmt.Sprint(arg)}
}

// text is the text that was kept.
func (k kept) text() Text {
	switch {
	case k.List != nil:
		return List(*k.List, k.args()...)
	case k.One != "" && len(k.With) > 0:
		args := k.args()
		return Text{key: k.Say, args: append([]any{args[0], k.One}, args[1:]...), form: counted}
	case k.Say != "":
		return Text{key: k.Say, args: k.args()}
	case k.Words != "":
		return Words(k.Words)
	}
	return Name(k.Own)
}

func (k kept) args() []any {
	out := make([]any, len(k.With))
	for i, one := range k.With {
		out[i] = one.arg()
	}
	return out
}

func (k kept) arg() any {
	switch {
	case k.Arg != nil:
		return *k.Arg
	case k.Figure != "":
		return Digits(k.Figure)
	case k.Count != "":
		n, err := strconv.Atoi(k.Count)
		if err != nil {
			return Own(k.Count)
		}
		return n
	case k.Own != "":
		return Own(k.Own)
	}
	return k.text()
}
