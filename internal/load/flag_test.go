package load

import (
	"encoding/json"
	"testing"

	"tenthpoint/internal/message"
)

// flagged is a load with a doubt of today, one of an earlier version and one without a code.
func flagged() *Load {
	l := &Load{ID: "L1"}
	l.Sample.Flags = []Flag{
		{"cold", message.Kept{Text: message.New("The sample was at %s, below %s.", message.Digits("36 °F"), message.Digits("40 °F"))}},
		OldFlag("meter-overdue: Meter M1 was due on 2026-10-01."), OldFlag("Two tests differ: look again."),
	}
	return l
}

// A doubt is a code and a message; one that an earlier version wrote as one text is written so again.
func TestFlagsInFacts(t *testing.T) {
	data, err := json.Marshal(flagged().Sample)
	if err != nil {
		t.Fatal(err)
	}
	const want = `{"flags":[{"code":"cold","said":{"say":"The sample was at %s, below %s.","with":[{"figure":"36 °F"},{"figure":"40 °F"}]}},` +
		`"meter-overdue: Meter M1 was due on 2026-10-01.","Two tests differ: look again."],"until":""}`
	if string(data) != want {
		t.Errorf("written as\n%s\nwant\n%s", data, want)
	}
	var read Sample
	if err := json.Unmarshal(data, &read); err != nil {
		t.Fatal(err)
	}
	for i, code := range []string{"cold", "meter-overdue", ""} {
		if f := read.Flags[i]; f.Code != code || !f.Message().Equal(flagged().Sample.Flags[i].Message()) {
			t.Errorf("flag %d is read as %q, %q", i, f.Code, f.Message())
		}
	}
	if json.Unmarshal([]byte(`{"flags":[{"code":3}]}`), &read) == nil {
		t.Error("a code that is a number is read")
	}
}

// Lists hold a line for each doubt; that of an earlier version is the text the fact holds.
func TestFlagsInLists(t *testing.T) {
	l := flagged()
	flags, err := ReadFlagLines(FlagLines(l))
	if err != nil || len(flags) != 3 || flags[0].Message().Key() != "The sample was at %s, below %s." {
		t.Fatalf("read as %v, %v", flags, err)
	}
	l.Sample.Flags = l.Sample.Flags[1:]
	if got := FlagLines(l); got != "meter-overdue: Meter M1 was due on 2026-10-01.\nTwo tests differ: look again." {
		t.Errorf("listed as %q", got)
	}
	if _, err := ReadFlagLines(`{"code"`); err == nil {
		t.Error("half a line is read")
	}
}

// What somebody let pass is listed with who did; a question keeps its message.
func TestPassedInLists(t *testing.T) {
	asked := message.New("Net %s is under the smallest load of %s.", message.Digits("900 lb"), message.Digits("1,000 lb"))
	l := &Load{Accepted: []AcceptedLimit{{Accepted: Accepted{Limit: "damage", Reason: "blended: off"}, Stamp: Stamp{Who: "M. Ager"}}}}
	for _, question := range []message.Kept{{Text: asked}, message.OldWords(asked.String())} {
		l.Answers = append(l.Answers, Answer{Answered: Answered{Guard: "net", Asked: question, Reason: "part of a load"}, Stamp: Stamp{Who: "C. Lerk"}})
	}
	accepted, answered, err := ReadPassedLines(PassedLines(l))
	if err != nil || len(accepted) != 1 || len(answered) != 2 {
		t.Fatalf("read as %v and %v, %v", accepted, answered, err)
	}
	if got := accepted[0].String(); got != "damage: blended: off (M. Ager)" {
		t.Errorf("accepted %q", got)
	}
	for _, text := range answered {
		if got := text.String(); got != asked.String()+" part of a load (C. Lerk)" {
			t.Errorf("answered %q", got)
		}
		if question, is := text.Args()[0].(message.Sayable); !is || question.Message().Key() != asked.Key() {
			t.Errorf("the question of %q has lost its key: %#v", text, text.Args()[0])
		}
	}
	if _, _, err := ReadPassedLines(`{"asked"`); err == nil {
		t.Error("half a line is read")
	}
}
