package grain

import "fmt"

// cautions are the faults noticed on the sample whose place in the standards
// was not read. From memory, such grain is sample grade; memory decides
// nothing here, but a better grade is not claimed over it.
func (r results) cautions() []string {
	var out []string
	for _, id := range []FactorID{Musty, Sour, OffOdor, Heating} {
		if a, tested := r.recorded[id]; tested && a.Equal(Yes) {
			out = append(out, fmt.Sprintf("%s was noticed. Such grain may be U.S. Sample grade (from memory, not read in the standards). Ask a licensed inspector", r.name(id)))
		}
	}
	return out
}
