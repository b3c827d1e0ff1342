package scalelink

import (
	_ "embed"
	"errors"
	"strings"
	"tenthpoint/internal/message"
	"testing"

	"github.com/google/go-cmp/cmp"
)

//go:embed profiles/example-pattern.toml
var examplePattern []byte

// patternProfile is the written example with fields by regular expression.
func patternProfile() Profile { return mustShip("example-pattern.toml", examplePattern) }

func TestShippedProfilesAreMarkedExamples(t *testing.T) {
	for _, p := range []Profile{ExampleColumns(), patternProfile()} {
		if p.Note != "example - not for trade" {
			t.Errorf("profile %q is not marked as an example: %q", p.Name, p.Note)
		}
		if !p.saysMotion() {
			t.Errorf("profile %q does not tell motion", p.Name)
		}
	}
}

// One fault at a time is put into a good profile; the message names it.
func TestBrokenProfiles(t *testing.T) {
	column := func(change func(*Profile)) func() Profile {
		return func() Profile { p := ExampleColumns(); change(&p); return p }
	}
	pattern := func(change func(*Profile)) func() Profile {
		return func() Profile { p := patternProfile(); change(&p); return p }
	}
	tests := map[string]struct {
		profile func() Profile
		want    string
	}{
		"no name":            {column(func(p *Profile) { p.Name = "" }), "it has no name"},
		"no end":             {column(func(p *Profile) { p.End = "" }), "end is empty"},
		"no length":          {pattern(func(p *Profile) { p.Length = 0 }), "length is 0"},
		"long length":        {column(func(p *Profile) { p.Length = 257 }), "1 to 256"},
		"column past body":   {column(func(p *Profile) { p.Fields[4].Last = 16 }), `field "status" is in columns 15 to 16 of a body of 15`},
		"column 0":           {column(func(p *Profile) { p.Fields[0].First = 0 }), `field "sign" is in columns 0 to 1`},
		"columns backwards":  {column(func(p *Profile) { p.Fields[1].First = 10 }), `field "weight" is in columns 10 to 9`},
		"field twice":        {column(func(p *Profile) { p.Fields[0].Name = "mode" }), `field name "mode" is empty or used twice`},
		"mute field":         {column(func(p *Profile) { p.Fields[3].Means = nil }), `field "mode" has no means`},
		"no weight":          {column(func(p *Profile) { p.Fields[1].Name = "sign2" }), `no field is called "weight"`},
		"unknown word":       {column(func(p *Profile) { p.Fields[3].Means["T"] = "tare" }), `"T" in field "mode" means "tare", which is not one of: fault, gross,`},
		"unknown always":     {pattern(func(p *Profile) { p.Always = []string{"wet"} }), `always means "wet"`},
		"no unit":            {column(func(p *Profile) { p.Fields[2].Means = map[string]string{"lb": "normal"} }), "no field tells the unit"},
		"motion alone":       {column(func(p *Profile) { delete(p.Fields[4].Means, "S") }), "only one of stable and motion"},
		"stable alone":       {column(func(p *Profile) { delete(p.Fields[4].Means, "M") }), "only one of stable and motion"},
		"letter twice":       {column(func(p *Profile) { p.Fields[4].Means["S "] = "motion" }), `field "status" describes "S" twice`},
		"bit 8":              {column(func(p *Profile) { p.Fields[4].Bits = []Bit{{8, "motion", "stable"}} }), "describes bit 8"},
		"bit says nothing":   {column(func(p *Profile) { p.Fields[4].Bits = []Bit{{1, "over", ""}} }), `bit 1 of field "status" means ""`},
		"bits of two bytes":  {column(func(p *Profile) { p.Fields[2].Bits = []Bit{{1, "over", "normal"}} }), "must be one byte"},
		"bits in a pattern":  {pattern(func(p *Profile) { p.Fields[2].Bits = []Bit{{1, "over", "normal"}} }), "must be one byte"},
		"bad pattern":        {pattern(func(p *Profile) { p.Pattern = "(?P<weight>" }), "not a regular expression"},
		"missing group":      {pattern(func(p *Profile) { p.Fields[1].Name = "units" }), `no group (?P<units>...) for the field "units"`},
		"columns in pattern": {pattern(func(p *Profile) { p.Fields[0].First = 1 }), "columns beside a pattern"},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			p := tt.profile()
			err := p.Check()
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("Check() = %v, want %q in it", err, tt.want)
			}
			if _, err := NewFormat(p); err == nil {
				t.Error("NewFormat took the profile all the same")
			}
		})
	}
}

func TestParseProfileTellsAllAtOnce(t *testing.T) {
	_, err := ParseProfile("west.toml", []byte("name = \"west\"\nspeed = 9600\nlenght = 3\n"))
	for _, want := range []string{`west.toml: the key "speed"`, `the key "lenght"`, "end is empty", "length is 0", `no field is called "weight"`} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v lacks %q", err, want)
		}
	}
}

func TestParseProfileNamesTheLine(t *testing.T) {
	_, err := ParseProfile("west.toml", []byte("name = \"west\"\nend = \n"))
	if err == nil || !strings.Contains(err.Error(), "west.toml, line 2:") {
		t.Errorf("error %v, want it to name west.toml, line 2", err)
	}
}

func TestParseProfileReadsEveryKey(t *testing.T) {
	got, err := ParseProfile("t", []byte(`
name = "n"
note = "o"
start = "\u0002"
end = "\r"
length = 3
always = ["lb"]
ask = "W\r"
[[field]]
name = "weight"
first = 2
last = 3
[[field]]
name = "flags"
first = 1
last = 1
means = { "" = "gross" }
[[field.bit]]
bit = 3
set = "motion"
clear = "stable"
`))
	want := Profile{Name: "n", Note: "o", Start: "\x02", End: "\r", Length: 3, Always: []string{"lb"}, Ask: "W\r", Fields: []Field{
		{Name: "weight", First: 2, Last: 3},
		{Name: "flags", First: 1, Last: 1, Means: map[string]string{"": "gross"}, Bits: []Bit{{3, "motion", "stable"}}},
	}}
	if diff := cmp.Diff(want, got); diff != "" || err != nil {
		t.Errorf("error %v, difference (-want +got):\n%s", err, diff)
	}
}

// A file that is no profile at all is refused before it is decoded.
func TestParseProfileRefusesAFileWithoutEnd(t *testing.T) {
	for name, text := range map[string]string{
		"long": strings.Repeat("# not a profile\n", 100_000), "deep": "name = " + strings.Repeat("{ a = ", 20_000) + "1" + strings.Repeat(" }", 20_000),
	} {
		if _, err := ParseProfile("west.toml", []byte(text)); !errors.Is(err, message.Device) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
