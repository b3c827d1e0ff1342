package scalelink

import (
	_ "embed"
	"errors"

	"github.com/BurntSushi/toml"

	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// Profile describes the frames of one kind of indicator, as data.
//
// A frame is Start, a body, End. Fields are found in the body either by column (First and Last of
// each field; the body is then exactly Length bytes) or by Pattern, a regular expression with one
// named group per field, which must match the whole body (then at most Length bytes). Text of a
// field is trimmed of blanks and looked up in its Means; unknown text refuses the frame. Always has
// constant values that no frame contains.
type Profile struct {
	Name    string   `toml:"name"`
	Note    string   `toml:"note"`
	Start   string   `toml:"start"` // may be empty: frames are then separated by End alone
	End     string   `toml:"end"`
	Length  int      `toml:"length"`
	Pattern string   `toml:"pattern"`
	Always  []string `toml:"always"` // words that hold unless a field says otherwise
	Ask     string   `toml:"ask"`    // bytes that ask for one frame; empty when frames come unasked
	Fields  []Field  `toml:"field"`
}

// Field is one place in the body. The field called "weight" holds the digits;
// every other field has Means, or Bits for indicators that pack several
// answers into one byte, or both.
type Field struct {
	Name  string            `toml:"name"`
	First int               `toml:"first"` // column of the first byte, counted from 1; unused with a pattern
	Last  int               `toml:"last"`
	Means map[string]string `toml:"means"` // text of the field to a word
	Bits  []Bit             `toml:"bit"`
}

// Bit is one bit of a field that is one byte wide: bit 0 is worth 1, bit 7 is worth 128. Set and
// Clear are words; "normal" has no effect.
type Bit struct {
	Bit   int    `toml:"bit"`
	Set   string `toml:"set"`
	Clear string `toml:"clear"`
}

// weightField is the name of the field that holds the digits.
const weightField = "weight"

// ParseProfile reads a profile from TOML. file is for messages. Unknown keys and every fault of
// [Profile.Check] are returned together.
func ParseProfile(file string, text []byte) (Profile, error) {
	var p Profile
	if !tomlfile.Fits(text) {
		return p, message.Device.Errorf("%s is far too long or too deep for a scale profile. Check that this is the right file.", file)
	}
	meta, err := toml.Decode(string(text), &p)
	if err != nil {
		var syntax toml.ParseError
		if errors.As(err, &syntax) {
			return Profile{}, message.Device.Errorf("%s, line %d: %s", file, syntax.Position.Line, syntax.Message)
		}
		return Profile{}, message.Errorf("%s: %w", file, err)
	}
	var faults []error
	for _, key := range meta.Undecoded() {
		faults = append(faults, message.Device.Errorf("%s: the key %q is not one of a scale profile. Remove it or mend its spelling.", file, key))
	}
	if err := errors.Join(append(faults, p.Check())...); err != nil {
		return Profile{}, err
	}
	return p, nil
}

//go:embed profiles/example-columns.toml
var exampleColumns []byte

// ExampleColumns is the shipped profile with fields by column. The simulator uses it.
func ExampleColumns() Profile { return mustShip("example-columns.toml", exampleColumns) }

// mustShip panics on a shipped profile that is broken, which a test finds.
func mustShip(file string, text []byte) Profile {
	p, err := ParseProfile(file, text)
	if err != nil {
		panic(err)
	}
	return p
}
