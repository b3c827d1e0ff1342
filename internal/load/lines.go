package load

import (
	"encoding/json"
	"strings"

	"tenthpoint/internal/message"
)

// Lists of a book hold what is said about a load as text, a line for each thing: JSON with key and
// arguments, or the sentence that the fact of an earlier version holds.

// FlagLines are the doubts about the sample.
func FlagLines(l *Load) string {
	lines := make([]string, len(l.Sample.Flags))
	for i, f := range l.Sample.Flags {
		lines[i] = f.line()
	}
	return strings.Join(lines, "\n")
}

func (f Flag) line() string {
	data, err := f.MarshalJSON()
	if err != nil {
		return f.Filed().String()
	}
	words := ""
	if json.Unmarshal(data, &words) == nil {
		return words
	}
	return string(data)
}

// ReadFlagLines reads what FlagLines wrote.
func ReadFlagLines(text string) ([]Flag, error) {
	var out []Flag
	for _, line := range linesOf(text) {
		flag := OldFlag(line)
		if isObject(line) {
			if err := json.Unmarshal([]byte(line), &flag); err != nil {
				return nil, message.Storage.Errorf("the flag %q cannot be read: %w", line, err)
			}
		}
		out = append(out, flag)
	}
	return out, nil
}

// PassedLines are the limits accepted and the questions answered: what somebody has let pass.
func PassedLines(l *Load) string {
	var lines []string
	for _, a := range l.Accepted {
		lines = append(lines, a.Limit+": "+a.Accepted.Reason+" ("+a.Who+")")
	}
	for _, a := range l.Answers {
		lines = append(lines, a.line())
	}
	return strings.Join(lines, "\n")
}

// answerLine is an answer in a list.
type answerLine struct {
	Asked  message.Kept `json:"asked"`
	Reason string       `json:"reason"`
	Who    string       `json:"who"`
}

// answerMark begins the line of an answer to a question that an earlier version wrote. No limit is
// called so.
const answerMark = "? "

func (a Answer) line() string {
	if english, is := a.Asked.Sentence(); is {
		return answerMark + english + " " + a.Answered.Reason + " (" + a.Who + ")"
	}
	data, err := json.Marshal(answerLine{a.Asked, a.Answered.Reason, a.Who})
	if err != nil {
		return answerMark + a.Asked.String()
	}
	return string(data)
}

// ReadPassedLines reads what PassedLines wrote: limits accepted, and questions answered.
func ReadPassedLines(text string) (accepted, answered []message.Text, err error) {
	for _, line := range linesOf(text) {
		if said, old := strings.CutPrefix(line, answerMark); old {
			answered = append(answered, oldAnswer(said))
		} else if isObject(line) {
			var a answerLine
			if err := json.Unmarshal([]byte(line), &a); err != nil {
				return nil, nil, message.Storage.Errorf("the answer %q cannot be read: %w", line, err)
			}
			answered = append(answered, message.List(" ", a.Asked, a.Reason, message.Own("("+a.Who+")")))
		} else {
			limit, by, _ := strings.Cut(line, ": ")
			accepted = append(accepted, message.List(": ", limit, message.Own(by)))
		}
	}
	return accepted, answered, nil
}

// oldAnswer is a line of an earlier version: the question, which is a sentence, and the answer.
func oldAnswer(line string) message.Text {
	for at := range line {
		if !strings.HasPrefix(line[at:], ". ") {
			continue
		}
		question, answer := line[:at+1], line[at+2:]
		if asked := message.OldWords(question).Message(); asked.Key() != question {
			return message.List(" ", asked, message.Own(answer))
		}
	}
	return message.Name(line)
}

func isObject(line string) bool { return strings.HasPrefix(line, "{") }

// linesOf are the lines of a text, without empty ones.
func linesOf(text string) []string {
	var out []string
	for _, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}
