package scalelink

import (
	"regexp"
	"strconv"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Format is a profile made ready to read frames. It does not change and may be
// used from several goroutines at once.
type Format struct {
	profile Profile
	pattern *regexp.Regexp // nil when fields are found by column
	fields  []readyField
	always  []func(*draft)
}

// readyField is a field with its letters looked up once.
type readyField struct {
	Field
	group int // of the pattern
	means map[string]func(*draft)
}

// NewFormat checks the profile and makes it ready. The error holds every fault
// of the profile.
func NewFormat(p Profile) (*Format, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	f := &Format{profile: p}
	if p.Pattern != "" {
		f.pattern = regexp.MustCompile(`^(?:` + p.Pattern + `)$`)
	}
	for _, word := range p.Always {
		f.always = append(f.always, words[word])
	}
	for _, field := range p.Fields {
		ready := readyField{Field: field, means: map[string]func(*draft){}}
		if f.pattern != nil {
			ready.group = f.pattern.SubexpIndex(field.Name)
		}
		for letters, word := range field.Means {
			ready.means[strings.TrimSpace(letters)] = words[word]
		}
		f.fields = append(f.fields, ready)
	}
	return f, nil
}

// Parse parses the body of one frame. The error says what in it could not be parsed; no part of
// such a frame is used.
func (f *Format) Parse(body []byte) (Reading, error) {
	raw := escaped(body)
	texts, err := f.split(body)
	if err != nil {
		return Reading{}, message.Errorf("frame %q: %w", raw, err)
	}
	var d draft
	for _, say := range f.always {
		say(&d)
	}
	digits := ""
	for i, field := range f.fields {
		if field.Name == weightField {
			digits = strings.TrimSpace(texts[i])
		}
		if err := field.tell(&d, texts[i]); err != nil {
			return Reading{}, message.Errorf("frame %q: %w", raw, err)
		}
	}
	r := Reading{Weight: quantity.Zero(d.unit), State: d.state, Mode: d.mode, Raw: raw}
	if r.hasWeight() {
		if r.Weight, err = weigh(digits, d); err != nil {
			return Reading{}, message.Errorf("frame %q: %w", raw, err)
		}
	}
	return r, nil
}

// split finds the text of each field, in the order of the profile.
func (f *Format) split(body []byte) ([]string, error) {
	texts := make([]string, len(f.fields))
	if f.pattern == nil {
		if len(body) != f.profile.Length {
			return nil, message.Device.Errorf("it is %d bytes long, not %d", len(body), f.profile.Length)
		}
		for i, field := range f.fields {
			texts[i] = string(body[field.First-1 : field.Last])
		}
		return texts, nil
	}
	found := f.pattern.FindSubmatch(body)
	if found == nil || len(body) > f.profile.Length {
		return nil, message.Device.Errorf("it does not match the profile's pattern")
	}
	for i, field := range f.fields {
		texts[i] = string(found[field.group])
	}
	return texts, nil
}

// tell applies the words of the field's letters and bits.
func (f readyField) tell(d *draft, text string) error {
	if len(f.means) > 0 {
		say, ok := f.means[strings.TrimSpace(text)]
		if !ok {
			return message.Device.Errorf("%q in field %q is not in the profile", strings.TrimSpace(text), f.Name)
		}
		say(d)
	}
	for _, b := range f.Bits {
		if text[0]>>b.Bit&1 == 1 {
			words[b.Set](d)
		} else {
			words[b.Clear](d)
		}
	}
	return nil
}

// mostDigits is beyond any scale: 99,999,999.99 of a unit.
const mostDigits = 10

// plainDigits is all a weight may look like: no exponent, no commas, at most
// one point with digits on both sides.
var plainDigits = regexp.MustCompile(`^([+-]?) *([0-9]+(?:\.[0-9]+)?)$`)

// weigh parses the digits, with a sign before them or from a field of its own.
func weigh(digits string, d draft) (quantity.Amount, error) {
	if d.unit == quantity.Plain {
		return quantity.Amount{}, message.Device.Errorf("it does not tell the unit")
	}
	found := plainDigits.FindStringSubmatch(digits)
	if found == nil || len(found[2]) > mostDigits+1 {
		return quantity.Amount{}, message.Device.Errorf("%q is not a weight", digits)
	}
	weight := quantity.Of(found[2], d.unit)
	if d.minus || found[1] == "-" {
		weight = weight.Neg()
	}
	return weight, nil
}

// escaped is the body as printable text, to be shown and stored.
func escaped(body []byte) string {
	quoted := strconv.QuoteToASCII(string(body))
	return quoted[1 : len(quoted)-1]
}
