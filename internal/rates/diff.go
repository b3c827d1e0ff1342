package rates

// Change is a line on which two editions part. Before is empty for what only
// the second says, After for what only the first says.
type Change struct {
	Key, Section, Label string
	Before, After       string
}

// Diff lists the lines on which two editions part, in the order of the first,
// then those that only the second has.
func Diff(a, b *Edition) []Change {
	before, after := a.Lines(), b.Lines()
	said := map[string]string{}
	for _, l := range after {
		said[l.Key] = l.Value
	}
	var out []Change
	known := map[string]bool{}
	for _, l := range before {
		known[l.Key] = true
		if said[l.Key] != l.Value {
			out = append(out, Change{l.Key, l.Section, l.Label, l.Value, said[l.Key]})
		}
	}
	for _, l := range after {
		if !known[l.Key] {
			out = append(out, Change{Key: l.Key, Section: l.Section, Label: l.Label, After: l.Value})
		}
	}
	return out
}
