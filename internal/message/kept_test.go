package message

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What is kept says the same in every language when it is read back.
func TestKeptTexts(t *testing.T) {
	p := french(t)
	for _, text := range []Text{
		New("%s of %v, %s", pounds("52,300 lb"), "Corn", crop("Corn")),
		Count(1, "%d test in %s", "%d tests in %s", "Corn"), Count(3, "%d test in %s", "%d tests in %s", Own("Corn")),
		List(" and ", "Corn", Name("Void"), New("%d %% of it", 5)), List("", Digits("1,624.88")),
		New("load %v: %s", "L1", Errorf("the scale is silent.")), New("load %v: %s", "L1", errors.New("foreign")),
		Words("Corn"), Words("12 % of it"), Name("Corn"), New("screen|Void"), New(""),
	} {
		data, err := json.Marshal(Kept{text})
		if err != nil {
			t.Fatal(err)
		}
		var read Kept
		if err := json.Unmarshal(data, &read); err != nil {
			t.Fatalf("%s: %v", data, err)
		}
		if read.String() != text.String() || p.Text(read) != p.Text(text) {
			t.Errorf("%s\nsays %q, %q; want %q, %q", data, read, p.Text(read), text, p.Text(text))
		}
	}
}

// A sentence of an earlier version stays; one that key and arguments would not give back is kept as
// a sentence.
func TestKeptSentences(t *testing.T) {
	var read Kept
	if err := json.Unmarshal([]byte(`"2 tests in Corn"`), &read); err != nil || !read.Equal(Words("2 tests in Corn")) {
		t.Errorf("%q, %v", read, err)
	}
	data, err := json.Marshal(Kept{New("it is %5.2f", 1.5)})
	if err != nil || string(data) != `"it is  1.50"` {
		t.Errorf("%s, %v", data, err)
	}
	if json.Unmarshal([]byte(`{"say": 3}`), &read) == nil {
		t.Error("a key that is a number is read")
	}
}

func FuzzKept(f *testing.F) {
	f.Add(`{"say":"%s of %d","one":"%s","with":[{"count":"1"},{"list":"","with":[{"own":"x"}]}]}`)
	f.Add(`{"say":"x","one":"y"}`)
	f.Fuzz(func(t *testing.T, data string) {
		var read Kept
		if json.Unmarshal([]byte(data), &read) == nil {
			_ = read.String()
		}
	})
}

// Any words survive, whatever is in them.
func TestKeptNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := strings.ToValidUTF8(rapid.String().Draw(t, "name"), "")
		text := New("load %v: %s", name, name)
		data, err := json.Marshal(Kept{text})
		var read Kept
		if err != nil || json.Unmarshal(data, &read) != nil || read.String() != text.String() {
			t.Fatalf("%q is kept as %s and says %q", name, data, read)
		}
	})
}
