package scalelink

import (
	"errors"
	"regexp"
	"slices"
	"strings"

	"tenthpoint/internal/message"
)

// longestBody bounds Length: no indicator needs more, and a wrong profile must
// not make the desk gather noise.
const longestBody = 256

// Check returns every fault of the profile at once, joined; nil when frames
// can be read with it.
func (p Profile) Check() error {
	var faults []error
	say := func(fault message.Text) {
		faults = append(faults, message.Device.Errorf("Scale profile %q: %s", p.Name, fault))
	}
	if p.Name == "" {
		say(message.New("it has no name. Give it one."))
	}
	if p.End == "" {
		say(message.New("end is empty, so frames cannot be told apart. Write the bytes each frame ends with, such as \"\\r\\n\"."))
	}
	if p.Length < 1 || p.Length > longestBody {
		say(message.New("length is %d. Write the bytes of a frame between start and end, 1 to %d.", p.Length, longestBody))
	}
	p.checkFields(say)
	p.checkPattern(say)
	p.checkWords(say)
	return errors.Join(faults...)
}

func (p Profile) checkFields(say func(message.Text)) {
	seen := map[string]bool{}
	for _, f := range p.Fields {
		if f.Name == "" || seen[f.Name] {
			say(message.New("the field name %q is empty or used twice. Give each field a name of its own.", f.Name))
		}
		seen[f.Name] = true
		if p.Pattern == "" && (f.First < 1 || f.Last < f.First || f.Last > p.Length) {
			say(message.New("field %q is in columns %d to %d of a body of %d. Count columns from 1.", f.Name, f.First, f.Last, p.Length))
		}
		if f.Name != weightField && len(f.Means)+len(f.Bits) == 0 {
			say(message.New("field %q has no means and no bit, so it says nothing. Describe its letters or remove it.", f.Name))
		}
		f.checkBits(p.Pattern == "", say)
	}
	if !seen[weightField] {
		say(message.New("no field is called %q. Say where the digits are.", weightField))
	}
}

func (f Field) checkBits(byColumn bool, say func(message.Text)) {
	for _, b := range f.Bits {
		if b.Bit < 0 || b.Bit > 7 {
			say(message.New("field %q describes bit %d; a byte has bits 0 to 7.", f.Name, b.Bit))
		}
	}
	if len(f.Bits) > 0 && (!byColumn || f.First != f.Last) {
		say(message.New("field %q has bits, so it must be one byte found by column (first and last the same).", f.Name))
	}
}

func (p Profile) checkPattern(say func(message.Text)) {
	if p.Pattern == "" {
		return
	}
	pattern, err := regexp.Compile(p.Pattern)
	if err != nil {
		say(message.New("the pattern is not a regular expression: %v.", err))
		return
	}
	for _, f := range p.Fields {
		if !slices.Contains(pattern.SubexpNames(), f.Name) {
			say(message.New("the pattern has no group (?P<%v>...) for the field %q.", f.Name, f.Name))
		}
		if f.First != 0 || f.Last != 0 {
			say(message.New("field %q has columns beside a pattern. Use one or the other.", f.Name))
		}
	}
}

func (p Profile) checkWords(say func(message.Text)) {
	said := p.vocabulary()
	for _, w := range said {
		if words[w.word] == nil {
			say(message.New("%s means %q, which is not one of: %v.", w.where, w.word, knownWords()))
		}
	}
	for _, f := range p.Fields {
		trimmed := map[string]bool{}
		for letters := range f.Means {
			key := strings.TrimSpace(letters)
			if trimmed[key] {
				say(message.New("field %q describes %q twice; blanks around it do not count.", f.Name, key))
			}
			trimmed[key] = true
		}
	}
	if !slices.ContainsFunc(said, func(w spoken) bool { return w.word == "lb" || w.word == "kg" || w.word == "t" }) {
		say(message.New("no field tells the unit. Add a unit field, or always = [\"lb\"] if the indicator can show nothing else."))
	}
	if p.saysMotion() != p.says("stable") {
		say(message.New("it tells only one of stable and motion. Describe both letters, or neither."))
	}
}

// spoken is a status word of a profile, and its place.
type spoken struct {
	where message.Text
	word  string
}

func (p Profile) vocabulary() []spoken {
	var all []spoken
	for _, word := range p.Always {
		all = append(all, spoken{message.New("always"), word})
	}
	for _, f := range p.Fields {
		for letters, word := range f.Means {
			all = append(all, spoken{message.New("%q in field %q", letters, f.Name), word})
		}
		for _, b := range f.Bits {
			where := message.New("bit %d of field %q", b.Bit, f.Name)
			all = append(all, spoken{where, b.Set}, spoken{where, b.Clear})
		}
	}
	slices.SortFunc(all, func(a, b spoken) int { return strings.Compare(a.where.String()+a.word, b.where.String()+b.word) })
	return all
}

func (p Profile) says(word string) bool {
	return slices.ContainsFunc(p.vocabulary(), func(w spoken) bool { return w.word == word })
}

// saysMotion reports whether frames tell a moving weight from one at rest.
func (p Profile) saysMotion() bool { return p.says("motion") }
