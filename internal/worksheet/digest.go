package worksheet

import "strings"

// Digest writes every figure of the sheet down, a line each: id, kind, exact
// figure, rounding, rounded figure. Labels and remarks are left out, so that
// two sheets with one digest say the same in whatever words.
func (s *Sheet) Digest() string {
	var b strings.Builder
	for _, step := range s.steps {
		exact, _ := step.exact.MarshalText()
		value, _ := step.value.MarshalText()
		b.WriteString(step.id + "|" + string(step.kind) + "|")
		b.Write(exact)
		b.WriteString("|" + step.rounding.String() + "|")
		b.Write(value)
		b.WriteByte('\n')
	}
	return b.String()
}
