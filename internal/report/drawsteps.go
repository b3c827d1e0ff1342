package report

const explainIndent = 12.0

// steps sets a working: each step's name with its figure at the right edge, and
// beneath it how it came about. A step is never parted between pages.
func (s *sheet) steps(b Steps) {
	for _, step := range b.Steps {
		s.step(step)
	}
}

func (s *sheet) step(step Step) {
	p := plainPen
	if step.Skipped {
		p.grey = 90
	}
	figure := s.measure(step.Figure, p.strong())
	label := s.fold(step.Label, s.room()-figure-12, p)
	var explain []string
	for _, line := range step.Explain {
		explain = append(explain, s.fold(line, s.room()-explainIndent-60, smallPen)...)
	}
	height := float64(len(label))*p.lead() + float64(len(explain))*smallPen.lead() + 3
	s.need(height)
	s.writeRight(s.right(), s.y, step.Figure, p.strong())
	for _, line := range label {
		s.write(margin, s.y, line, p)
		s.y += p.lead()
	}
	for _, line := range explain {
		s.write(margin+explainIndent, s.y, line, smallPen)
		s.y += smallPen.lead()
	}
	s.y += 1.5
	s.line(margin, s.y, s.right(), s.y, 0.25, 205)
	s.y += 1.5
}
