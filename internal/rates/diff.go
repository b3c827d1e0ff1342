package rates

// Change is a line on which two editions part. Before is empty for what only
// the second says, After for what only the first says.
type Change struct {
	Key, Section, Label string
	Before, After       string
	// BeforeAt and AfterAt are the lines of the two files, 0 where one does not
	// say it.
	BeforeAt, AfterAt int
}

// Diff lists the lines on which two editions part, in the order of the first,
// then those that only the second has.
func Diff(a, b *Edition) []Change {
	before, after := a.Lines(), b.Lines()
	said := map[string]Line{}
	for _, l := range after {
		said[l.Key] = l
	}
	var out []Change
	known := map[string]bool{}
	for _, l := range before {
		known[l.Key] = true
		if other := said[l.Key]; other.Value != l.Value {
			out = append(out, Change{l.Key, l.Section, l.Label, l.Value, other.Value, l.At, other.At})
		}
	}
	for _, l := range after {
		if !known[l.Key] {
			out = append(out, Change{Key: l.Key, Section: l.Section, Label: l.Label, After: l.Value, AfterAt: l.At})
		}
	}
	return out
}
