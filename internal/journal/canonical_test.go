package journal

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestCanonicalForm(t *testing.T) {
	type weighed struct {
		Truck string   `json:"truck"`
		Gross string   `json:"gross"`
		Notes []string `json:"notes"`
		Hand  bool     `json:"by_hand"`
		Pit   *string  `json:"pit"`
	}
	cases := map[string]struct {
		in   any
		want string
	}{
		"a struct's names are sorted": {
			weighed{Truck: "blue", Gross: "52300 lb"},
			`{"by_hand":false,"gross":"52300 lb","notes":null,"pit":null,"truck":"blue"}`,
		},
		"a map gives the same text": {
			map[string]any{"truck": "blue", "pit": nil, "notes": nil, "gross": "52300 lb", "by_hand": false},
			`{"by_hand":false,"gross":"52300 lb","notes":null,"pit":null,"truck":"blue"}`,
		},
		"spaces and needless escapes go": {
			json.RawMessage(" { \"b\" : [ \"\\u0041\\/\" , true ] , \"a\" : {} } "),
			`{"a":{},"b":["A/",true]}`,
		},
		"letters beyond ASCII stay": {[]string{"½ < Ä & \u2028"}, "[\"½ < Ä & \u2028\"]"},
		"control characters":        {"a\"b\\c\n\t\x01", `"a\"b\\c\n\t\u0001"`},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got, err := Canonical(c.in)
			if err != nil || string(got) != c.want {
				t.Errorf("got %s, %v\nwant %s", got, err, c.want)
			}
		})
	}
}

func TestCanonicalRefuses(t *testing.T) {
	cases := map[string]struct {
		in   any
		want []string // all must be in the one message
	}{
		"a number":            {map[string]any{"gross": 52300}, []string{`52300 at gross`, `"52300"`}},
		"a fraction":          {map[string]any{"moisture": json.Number("15.3")}, []string{"15.3 at moisture"}},
		"a bare number":       {7, []string{"The figure 7 is a JSON number"}},
		"numbers far down":    {map[string]any{"a": []any{"x", map[string]any{"b": 1}}, "c": 2}, []string{"1 at a[1].b", "2 at c"}},
		"a name twice":        {json.RawMessage(`{"x":{"a":"1","a":"2"}}`), []string{`"a" occurs twice at x`}},
		"bytes no letters":    {map[string]string{"who": "\xff"}, []string{"at who", "no letters"}},
		"a name no letters":   {map[string]string{"\xff": "who"}, []string{"no letters"}},
		"half a surrogate":    {json.RawMessage(`{"who":"\ud800"}`), []string{"no letters"}},
		"what JSON cannot be": {func() {}, []string{"cannot be written as JSON"}},
		"nested without end":  {json.RawMessage(strings.Repeat("[", 20_000) + strings.Repeat("]", 20_000)), []string{"max depth"}},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got, err := Canonical(c.in)
			if err == nil {
				t.Fatalf("accepted as %s", got)
			}
			for _, want := range c.want {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("%q does not say %q", err, want)
				}
			}
		})
	}
}

// However a set of details is spelled, the canonical bytes are the same, and
// nothing is lost on the way.
func TestCanonicalIsOneFormForOneMeaning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		details := rapid.MapOf(
			rapid.StringMatching(`[a-zA-Zäö_" ]{0,6}`),
			rapid.OneOf(
				rapid.Just[any](nil), rapid.Just[any](true),
				rapid.StringMatching(`[ -~½€\n\x{1F33E}]{0,9}`).AsAny(),
				rapid.SliceOfN(rapid.StringMatching(`[a-z\\]{0,3}`), 1, 3).AsAny(),
			),
		).Draw(t, "details")
		first, err := Canonical(details)
		if err != nil {
			t.Fatal(err)
		}
		indented, err := json.MarshalIndent(details, " ", "\t")
		if err != nil {
			t.Fatal(err)
		}
		second, err := Canonical(json.RawMessage(indented))
		if err != nil || !bytes.Equal(first, second) {
			t.Fatalf("two forms:\n%s\n%s (%v)", first, second, err)
		}
		if !reflect.DeepEqual(meaning(t, first), meaning(t, indented)) {
			t.Fatalf("%s lost something of %s", first, indented)
		}
	})
}

func meaning(t interface{ Fatal(...any) }, text []byte) any {
	var v any
	if err := json.Unmarshal(text, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// Whatever text arrives, what is accepted is valid, without numbers, and
// already in its final form.
func FuzzCanonicalText(f *testing.F) {
	for _, text := range []string{
		`{"b":"1","a":["x",null,true]}`, `{"a":1}`, `{"a":"1","a":"2"}`, `"\ud800"`, `[`, `{}{}`,
		`{"a" "b"}`, `[,]`, `{"a":"` + "\xff" + `"}`, ``, `[[[["deep"]]]]`, `{"a":tru}`, `]`,
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		out, err := canonicalText(text)
		if err != nil {
			return
		}
		if !json.Valid(text) || !json.Valid(out) {
			t.Fatalf("%q was accepted as %q", text, out)
		}
		if again, err := canonicalText(out); err != nil || !bytes.Equal(again, out) {
			t.Fatalf("%q becomes %q: %v", out, again, err)
		}
		if hasNumber(meaning(t, out)) {
			t.Fatalf("%q holds a number", out)
		}
	})
}

func hasNumber(v any) bool {
	switch v := v.(type) {
	case map[string]any:
		for _, inner := range v {
			if hasNumber(inner) {
				return true
			}
		}
	case []any:
		for _, inner := range v {
			if hasNumber(inner) {
				return true
			}
		}
	case string, bool, nil:
	default:
		return true
	}
	return false
}
