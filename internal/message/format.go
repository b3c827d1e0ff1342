package message

import (
	"regexp"
	"strings"
)

// verb is one verb of a format: its position, its argument and its flags.
type verb struct {
	from, to int
	arg      int
	letter   byte
	spec     string // the verb without an argument's number: "%02d"
}

var verbPattern = regexp.MustCompile(`%(?:\[(\d)\])?([-+#0]*\d*(?:\.\d+)?)([a-zA-Z%])`)

// verbsOf are the gaps of a format in order; %% is none.
func verbsOf(format string) []verb {
	var out []verb
	next := 0
	for _, at := range verbPattern.FindAllStringSubmatchIndex(format, -1) {
		letter := format[at[6]]
		if letter == '%' {
			continue
		}
		if at[2] >= 0 {
			next = int(format[at[2]] - '1')
		}
		out = append(out, verb{at[0], at[1], next, letter, "%" + format[at[4]:at[5]] + string(letter)})
		next++
	}
	return out
}

// gap marks an argument in a key without its verb.
const gap = "\x00"

// plain is a format with its verbs taken out, by which catalogs find it: how an
// argument is set, as %s or as %v, does not make another text. A name between
// marks is the same as %q.
func plain(format string) string {
	var b strings.Builder
	at := 0
	for _, v := range verbsOf(format) {
		b.WriteString(strings.ReplaceAll(format[at:v.from], "%%", "%"))
		if v.letter == 'q' {
			b.WriteString(`"` + gap + `"`)
		} else {
			b.WriteString(gap)
		}
		at = v.to
	}
	b.WriteString(strings.ReplaceAll(format[at:], "%%", "%"))
	return b.String()
}
