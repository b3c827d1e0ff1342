package terminal

import (
	"strings"
	"unicode"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// listForm matches a list of values with commas between them.
type listForm struct {
	least, most int  // how many values it has
	named       bool // each begins with its name, such as spread=0.4
}

// figureLists are the placeholders of flags in which such a list is typed, after a name and "=" or
// ":".
var figureLists = map[string]listForm{
	"NAME=WEIGHT,MOISTURE[,TEST-WEIGHT]":                         {least: 2, most: 3},
	"1=20lb,120000lb":                                            {least: 2, most: 2},
	"corn:mass=250,moisture=8..20,sample=40F..100F":              {named: true},
	"corn:count=2,spread=0.4,near=0.5,near-count=3,drop=spoiled": {named: true},
	"corn:buy=15,short=15,long=13,aerate=1,pit=P2,dries":         {named: true},
}

// mostCommas bounds the readings of a list that are tried.
const mostCommas = 8

// listWithPoint converts the figures of a list to the format that commands parse. Where the language
// writes a decimal comma, semicolons part the values; commas alone are read if that is possible in
// one way, and else refused with two of the readings.
func (form listForm) listWithPoint(name, text string, signs message.Figures) (string, error) {
	if signs.Decimal != "," {
		return text, nil
	}
	at := strings.IndexAny(text, "=:") + 1
	head, list := text[:at], text[at:]
	readings := form.readings(list)
	switch {
	case len(readings) == 0:
		return text, nil // the command says what is wrong with it
	case len(readings) > 1:
		return "", message.Invalid.Errorf("%s %q may be %v or %v; write semicolons between the values", name, text,
			head+strings.Join(readings[0], ";"), head+strings.Join(readings[1], ";"))
	}
	for i, value := range readings[0] {
		plain, err := WithPoint(name, value, signs)
		if err != nil {
			return "", err
		}
		readings[0][i] = plain
	}
	return head + strings.Join(readings[0], ","), nil
}

// readings are the ways to part a list into values.
func (form listForm) readings(list string) [][]string {
	parts := strings.Split(list, ",")
	switch {
	case strings.Contains(list, ";"):
		return [][]string{strings.Split(list, ";")}
	case form.named:
		return [][]string{namedValues(parts)}
	case len(parts) > mostCommas+1:
		return nil
	}
	var out [][]string
	for _, values := range joined(parts) {
		if len(values) >= form.least && len(values) <= form.most {
			out = append(out, values)
		}
	}
	return out
}

// namedValues joins each part that begins with a digit to the one before: its comma was a decimal
// one.
func namedValues(parts []string) []string {
	out := parts[:1:1]
	for _, part := range parts[1:] {
		if trimmed := strings.TrimSpace(part); trimmed != "" && unicode.IsDigit(rune(trimmed[0])) {
			out[len(out)-1] += "," + trimmed
			continue
		}
		out = append(out, part)
	}
	return out
}

// joined are the lists that come of taking any of the commas between parts for a decimal comma, the
// one with none of them first.
func joined(parts []string) [][]string {
	if len(parts) < 2 {
		return [][]string{parts}
	}
	var out [][]string
	for _, rest := range joined(parts[1:]) {
		out = append(out, append([]string{parts[0]}, rest...))
	}
	if quantity.HasDecimalComma(parts[0] + "," + parts[1]) {
		for _, rest := range joined(parts[2:]) {
			out = append(out, append([]string{parts[0] + "," + parts[1]}, rest...))
		}
	}
	return out
}
