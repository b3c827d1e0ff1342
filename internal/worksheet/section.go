package worksheet

import "tenthpoint/internal/message"

// Section is a run of steps under one heading.
type Section struct {
	Title message.Text // empty before the first heading
	Steps []*Step
}

// Sections are the steps of the sheet under their headings.
func (s *Sheet) Sections() []Section { return Sections(s.steps) }

// Sections puts steps under their headings; neighbors under equal headings are one section.
func Sections(steps []*Step) []Section {
	var out []Section
	for _, step := range steps {
		if last := len(out) - 1; last >= 0 && out[last].Title.Equal(step.section) {
			out[last].Steps = append(out[last].Steps, step)
			continue
		}
		out = append(out, Section{step.section, []*Step{step}})
	}
	return out
}
