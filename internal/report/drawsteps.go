package report

const (
	explainIndent = 8.0
	columnGap     = 22.0
	stepGap       = 5.0 // under a step, with its rule
)

var (
	stepPen    = pen{size: 8.5}
	explainPen = pen{size: 7, grey: 60}
	partPen    = pen{size: 9.5, bold: true}
)

// setStep is a step folded into the width of a column.
type setStep struct {
	Step
	label, explain []string
	height         float64
}

// steps sets a working in two columns, down the left one first. A step is never
// parted, and a heading stays with the step under it.
func (s *sheet) steps(b Steps) {
	width := (s.room() - columnGap) / 2
	rest := make([]setStep, len(b.Steps))
	for i, step := range b.Steps {
		rest[i] = s.setStep(step, width)
	}
	if len(rest) > 0 && s.floor-s.y < 3*rest[0].height {
		s.newPage()
	}
	for len(rest) > 0 {
		height := columnHeight(rest, s.floor-s.y)
		left, after := fill(rest, height)
		right, after := fill(after, height)
		top := s.y
		ends := s.column(left, margin, width, top)
		ends = max(ends, s.column(right, margin+width+columnGap, width, top))
		if len(right) > 0 {
			middle := margin + width + columnGap/2
			s.line(middle, top, middle, ends, 0.25, 190)
		}
		s.y = ends
		if rest = after; len(rest) > 0 {
			s.newPage()
		}
	}
}

func (s *sheet) setStep(step Step, width float64) setStep {
	if step.Part {
		return setStep{Step: step, height: partPen.lead() + 6}
	}
	figure := s.measure(step.Figure, stepPen.strong())
	out := setStep{Step: step, label: s.wrap(step.Label, width-figure-8, stepPen)}
	for _, line := range step.Explain {
		out.explain = append(out.explain, s.wrap(line, width-explainIndent, explainPen)...)
	}
	out.height = float64(len(out.label))*stepPen.lead() + float64(len(out.explain))*explainPen.lead() + stepGap
	return out
}

// columnHeight is the least height at which two columns hold all that is left,
// so that they end together; or all there is when they cannot.
func columnHeight(steps []setStep, most float64) float64 {
	total := 0.0
	for _, step := range steps {
		total += step.height
	}
	for height := total / 2; height < most; height += 2 {
		_, rest := fill(steps, height)
		if _, rest = fill(rest, height); len(rest) == 0 {
			return height
		}
	}
	return most
}

// fill takes steps into a column, at least one, and leaves no heading at its
// foot.
func fill(steps []setStep, height float64) (column, rest []setStep) {
	n, used := 0, 0.0
	for n < len(steps) && (n == 0 || used+steps[n].height <= height) {
		used += steps[n].height
		n++
	}
	for n > 1 && n < len(steps) && steps[n-1].Part {
		n--
	}
	return steps[:n], steps[n:]
}

// column sets steps from y down and tells where they end.
func (s *sheet) column(steps []setStep, x, width, y float64) float64 {
	for _, step := range steps {
		s.stepAt(step, x, width, y)
		y += step.height
	}
	return y
}

func (s *sheet) stepAt(step setStep, x, width, y float64) {
	end := y + step.height
	if step.Part {
		s.write(x, y+4, step.Label, partPen)
		s.line(x, end-1.5, x+width, end-1.5, 0.4, 120)
		return
	}
	p := stepPen
	if step.Skipped {
		p.grey = 90
	}
	s.writeRight(x+width, y, step.Figure, p.strong())
	for _, line := range step.label {
		s.write(x, y, line, p)
		y += p.lead()
	}
	for _, line := range step.explain {
		s.write(x+explainIndent, y, line, explainPen)
		y += explainPen.lead()
	}
	s.line(x, end-2, x+width, end-2, 0.25, 205)
}
