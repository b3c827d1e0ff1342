package report

import "tenthpoint/internal/paper"

const (
	explainIndent = 8 * pt
	columnGap     = 22 * pt
	stepGap       = 5 * pt // under a step, with its rule
)

// steps sets a working in two columns, down the left one first. A step is never split, and a
// heading stays with the step under it.
func (s *sheet) steps(b Steps) {
	width := (s.Room() - columnGap) / 2
	blocks := make([]paper.Block, len(b.Steps))
	for i, step := range b.Steps {
		blocks[i] = stepBlock(step, width)
	}
	heading := s.headingPut()
	s.flush()
	if len(blocks) > 0 && s.Left() < headBefore+heading.Height+3*blocks[0].Height && !s.IsFresh() {
		s.NewPage()
	}
	if heading.Height > 0 {
		heading.Tied = false
		s.Add(heading)
	}
	s.Skip(gapBefore)
	for _, c := range s.Columns(blocks, columnGap) {
		if c.IsPair {
			middle := margin + width + columnGap/2
			s.Pages[c.Page].Line(middle, c.Top, middle, c.End, 0.25*pt, paper.Grey(190))
		}
	}
}

// headingPut takes back the heading that was put last, if nothing was put since.
func (s *sheet) headingPut() (b paper.Block) {
	if n := len(s.pending); n > 0 && s.pending[n-1].Tied {
		b = s.pending[n-1]
		s.pending = s.pending[:n-1]
	}
	return b
}

func stepBlock(step Step, width paper.Length) (b paper.Block) {
	if step.Part {
		b.Tied, b.Height = true, partStyle.Leading()+6*pt
		b.Text(0, 4*pt+partStyle.Baseline(), step.Label, partStyle)
		b.Line(0, b.Height-1.5*pt, width, b.Height-1.5*pt, 0.4*pt, paper.Grey(120))
		return b
	}
	look := stepStyle
	if step.Skipped {
		look = skippedStyle
	}
	b.TextEnding(width, look.Baseline(), step.Figure, look.Strong())
	b.Height = b.Paragraph(0, 0, wrap(step.Label, width-look.Strong().Width(step.Figure)-8*pt, look), look)
	for _, line := range step.Explain {
		b.Height += b.Paragraph(explainIndent, b.Height, wrap(line, width-explainIndent, explainStyle), explainStyle)
	}
	b.Height += stepGap
	b.Line(0, b.Height-2*pt, width, b.Height-2*pt, 0.25*pt, rowInk)
	return b
}
