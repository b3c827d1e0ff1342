package journal

import (
	"strings"
	"testing"
	"time"
)

// weighed is a draft nothing is wrong with.
func weighed() Entry {
	return Entry{
		At: "2025-10-04T14:12:09Z", Who: "A. Clerk", Desk: "scale house",
		Kind: "gross weighed", Subject: "load 12", Body: []byte(`{"gross":"52300 lb"}`),
	}
}

func TestEntryProblems(t *testing.T) {
	if found := weighed().Problems(); len(found) > 0 {
		t.Fatalf("a good draft: %q", found)
	}
	cases := map[string]struct {
		spoil func(*Entry)
		want  string
	}{
		"no person":              {func(d *Entry) { d.Who = "" }, "the person, but it is empty"},
		"only a space":           {func(d *Entry) { d.Desk = " " }, "the desk, but it is empty"},
		"no kind":                {func(d *Entry) { d.Kind = "" }, "the kind of fact, but it is empty"},
		"no subject":             {func(d *Entry) { d.Subject = "" }, "the subject, but it is empty"},
		"a space before":         {func(d *Entry) { d.Subject = " load 12" }, "begins or ends with a space"},
		"a line break":           {func(d *Entry) { d.Who = "A.\nClerk" }, "control character"},
		"broken letters":         {func(d *Entry) { d.Who = "A\xff" }, "no letters"},
		"too long":               {func(d *Entry) { d.Kind = strings.Repeat("k", 201) }, "201 bytes long and the most is 200"},
		"local time":             {func(d *Entry) { d.At = "2025-10-04T14:12:09+02:00" }, "not in the form"},
		"half a second":          {func(d *Entry) { d.At = "2025-10-04T14:12:09.5Z" }, "not in the form"},
		"no such day":            {func(d *Entry) { d.At = "2025-02-30T14:12:09Z" }, "not in the form"},
		"no details":             {func(d *Entry) { d.Body = nil }, "not JSON"},
		"details with a number":  {func(d *Entry) { d.Body = []byte(`{"gross":52300}`) }, "52300 at gross is a JSON number"},
		"details loosely spaced": {func(d *Entry) { d.Body = []byte(`{"a": "b"}`) }, "canonical form"},
		"details not an object":  {func(d *Entry) { d.Body = []byte(`["a"]`) }, "not a JSON object"},
		"details cut off":        {func(d *Entry) { d.Body = []byte(`{"a":`) }, "not JSON"},
		"text after the details": {func(d *Entry) { d.Body = []byte(`{"a":"b"}{}`) }, "not JSON"},
		"details too long": {func(d *Entry) {
			d.Body = []byte(`{"a":"` + strings.Repeat("x", 1<<20) + `"}`)
		}, "the most is 1048576"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			d := weighed()
			c.spoil(&d)
			found := d.Problems()
			if len(found) != 1 || !strings.Contains(found[0].String(), c.want) {
				t.Errorf("got %q, want one sentence with %q", found, c.want)
			}
		})
	}
}

func TestEntryProblemsComeAllAtOnce(t *testing.T) {
	if found := (Entry{}).Problems(); len(found) != 6 {
		t.Errorf("an empty draft has %d problems, want 6: %q", len(found), found)
	}
}

func TestStampSortsAsText(t *testing.T) {
	west := time.FixedZone("west", -6*3600)
	early := time.Date(2025, 10, 4, 23, 59, 59, 999_999_999, west)
	late := time.Date(2025, 10, 5, 6, 0, 0, 0, time.UTC)
	if Stamp(early) != "2025-10-05T05:59:59Z" || Stamp(late) != "2025-10-05T06:00:00Z" {
		t.Errorf("got %s and %s", Stamp(early), Stamp(late))
	}
	f := Fact{At: Stamp(late)}
	if back, err := f.Time(); err != nil || !back.Equal(late) {
		t.Errorf("read back as %v, %v", back, err)
	}
}

type noted struct {
	Text string `json:"text"`
}

func (noted) Kind() string { return "noted" }

func TestReadBody(t *testing.T) {
	if n, err := ReadBody[noted]([]byte(`{"text":"x"}`)); err != nil || n.Text != "x" {
		t.Errorf("got %v, %v", n, err)
	}
	for _, body := range []string{`{"text":"x","more":"y"}`, `{"text":5}`, `[]`, ``} {
		if _, err := ReadBody[noted]([]byte(body)); err == nil {
			t.Errorf("%q was read", body)
		}
	}
}
