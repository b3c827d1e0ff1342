package scalelink

import (
	_ "embed"
	"errors"
	"strings"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
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
		want    errortest.Want
	}{
		"no name":            {column(func(p *Profile) { p.Name = "" }), errortest.Device()},
		"no end":             {column(func(p *Profile) { p.End = "" }), errortest.Device()},
		"no length":          {pattern(func(p *Profile) { p.Length = 0 }), errortest.Device("0")},
		"long length":        {column(func(p *Profile) { p.Length = 257 }), errortest.Device("256")},
		"column past body":   {column(func(p *Profile) { p.Fields[4].Last = 16 }), errortest.Device("status", "15", "16")},
		"column 0":           {column(func(p *Profile) { p.Fields[0].First = 0 }), errortest.Device("sign", "0", "1")},
		"columns backwards":  {column(func(p *Profile) { p.Fields[1].First = 10 }), errortest.Device("weight", "10", "9")},
		"field twice":        {column(func(p *Profile) { p.Fields[0].Name = "mode" }), errortest.Device("mode")},
		"mute field":         {column(func(p *Profile) { p.Fields[3].Means = nil }), errortest.Device("mode")},
		"no weight":          {column(func(p *Profile) { p.Fields[1].Name = "sign2" }), errortest.Device("weight")},
		"unknown word":       {column(func(p *Profile) { p.Fields[3].Means["T"] = "tare" }), errortest.Device("T", "mode", "tare")},
		"unknown always":     {pattern(func(p *Profile) { p.Always = []string{"wet"} }), errortest.Device("wet")},
		"no unit":            {column(func(p *Profile) { p.Fields[2].Means = map[string]string{"lb": "normal"} }), errortest.Device()},
		"motion alone":       {column(func(p *Profile) { delete(p.Fields[4].Means, "S") }), errortest.Device()},
		"stable alone":       {column(func(p *Profile) { delete(p.Fields[4].Means, "M") }), errortest.Device()},
		"letter twice":       {column(func(p *Profile) { p.Fields[4].Means["S "] = "motion" }), errortest.Device("status", "S")},
		"bit 8":              {column(func(p *Profile) { p.Fields[4].Bits = []Bit{{8, "motion", "stable"}} }), errortest.Device("8")},
		"bit says nothing":   {column(func(p *Profile) { p.Fields[4].Bits = []Bit{{1, "over", ""}} }), errortest.Device("1", "status")},
		"bits of two bytes":  {column(func(p *Profile) { p.Fields[2].Bits = []Bit{{1, "over", "normal"}} }), errortest.Device()},
		"bits in a pattern":  {pattern(func(p *Profile) { p.Fields[2].Bits = []Bit{{1, "over", "normal"}} }), errortest.Device()},
		"bad pattern":        {pattern(func(p *Profile) { p.Pattern = "(?P<weight>" }), errortest.Device()},
		"missing group":      {pattern(func(p *Profile) { p.Fields[1].Name = "units" }), errortest.Device("units")},
		"columns in pattern": {pattern(func(p *Profile) { p.Fields[0].First = 1 }), errortest.Device()},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			p := tt.profile()
			err := p.Check()
			if !tt.want.Met(err) {
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
	for _, want := range []errortest.Want{errortest.Device("west.toml", "speed"), errortest.Device("lenght"), errortest.Device(), errortest.Device("0"), errortest.Device("weight")} {
		if !want.Met(err) {
			t.Errorf("error %v lacks %q", err, want)
		}
	}
}

func TestParseProfileNamesTheLine(t *testing.T) {
	_, err := ParseProfile("west.toml", []byte("name = \"west\"\nend = \n"))
	if !errortest.Device("west.toml", "2").Met(err) {
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
