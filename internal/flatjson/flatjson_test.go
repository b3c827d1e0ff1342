package flatjson

import (
	"encoding/json"
	"maps"
	"strings"
	"testing"
)

func read(object string) (map[string]string, bool) {
	out := map[string]string{}
	ok := Members(object, func(name, value string) bool {
		out[name] = value
		return true
	})
	return out, ok
}

func TestMembers(t *testing.T) {
	for object, want := range map[string]map[string]string{
		`{}`:                      {},
		`{"net":"28000 lb"}`:      {"net": "28000 lb"},
		`{"a":"","b":"½ Körner"}`: {"a": "", "b": "½ Körner"},
		`{"a":{"b":"1"},"c":"2"}`: {"a": `{"b":"1"}`, "c": "2"},
	} {
		if got, ok := read(object); !ok || !maps.Equal(got, want) {
			t.Errorf("%s: %q %v", object, got, ok)
		}
	}
}

// What is not read is left to the general way, never read otherwise.
func TestLeftToTheGeneralWay(t *testing.T) {
	for _, object := range []string{
		``, `{`, `}`, `[]`, `{"a"}`, `{"a":}`, `{"a":1}`, `{"a":true}`, `{"a":["b"]}`, `{"a":"b",}`, `{"a":"b"`, `{"a":"b"}}`, `{"a":"b"} `,
		`{ "a":"b"}`, `{"a": "b"}`, `{"a":"\u0041"}`, "{\"a\":\"b\nc\"}", `{"a":{"b":"}"}}`, `{"a":{"b":"1"}`,
	} {
		if got, ok := read(object); ok {
			t.Errorf("%s was read as %q", object, got)
		}
	}
}

// Members reads the same as encoding/json.
func FuzzMembers(f *testing.F) {
	for _, seed := range []string{`{}`, `{"net":"28000 lb","share.1.net":"1/3 lb"}`, `{"a":{"b":"1"},"c":"2"}`, `{"a":"{}"}`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, object string) {
		got, ok := read(object)
		if !ok {
			return
		}
		var want map[string]json.RawMessage
		if err := json.Unmarshal([]byte(object), &want); err != nil {
			if strings.Contains(object, "{{") || strings.Count(object, "{") > 1 { // the inner object is not looked into
				return
			}
			t.Fatalf("%q is no JSON: %v", object, err)
		}
		for name, value := range got {
			var text string
			if json.Unmarshal(want[strings.ToValidUTF8(name, "\ufffd")], &text) == nil && !IsObject(value) && text != strings.ToValidUTF8(value, "\ufffd") {
				t.Fatalf("%q: %q is %q, want %q", object, name, value, text)
			}
		}
	})
}
