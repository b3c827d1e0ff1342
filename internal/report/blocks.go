package report

import "tenthpoint/internal/paper"

const (
	gapBefore  = 8 * pt // between blocks
	headBefore = 12 * pt
	headAfter  = 5 * pt
)

// block sets one part.
func (s *sheet) block(b Block) {
	switch b := b.(type) {
	case NewPage:
		s.flush()
		if !s.IsFresh() {
			s.NewPage()
		}
	case Heading:
		s.put(s.heading(b))
	case Para:
		s.put(para(s.say.Text(b.Text), s.Room(), b.Strong)...)
	case Pairs:
		s.put(s.pairs(b)...)
	case Table:
		s.put(s.table(b.printed(s.say))...)
	case Bars:
		chart := s.bars(b, s.Room())
		chart.Above = gapBefore
		s.put(chart)
	case Picture:
		room := s.Room()
		if !b.Wide {
			room = s.half()
		}
		picture := s.picture(b, room)
		picture.Above = gapBefore
		s.put(picture)
	case Steps:
		s.steps(b)
	case Signing:
		s.put(s.signing(b)...)
	}
}

// heading is tied to the part below it, and closer to it than other parts.
func (s *sheet) heading(h Heading) paper.Block {
	b := paper.Block{Above: headBefore, Tied: true}
	under := b.Paragraph(0, 0, []string{s.say.Text(h.Text)}, headingStyle) + 2*pt
	b.Line(0, under, s.Room(), under, 0.5*pt, ruleInk)
	b.Height = under + headAfter - gapBefore
	return b
}

// para is a sentence or more; its first lines stay together.
func para(text string, room paper.Length, strong bool) []paper.Block {
	look := plainStyle
	if strong {
		look = look.Strong()
	}
	lines := wrap(text, room, look)
	out := make([]paper.Block, len(lines))
	for i, line := range lines {
		out[i].Height = out[i].Paragraph(0, 0, []string{line}, look)
		out[i].Tied = i < 2 && i+1 < len(lines)
	}
	out[0].Above = gapBefore
	return out
}

const columnBetween = 24 * pt

// pairs go in two columns, down the left one first.
func (s *sheet) pairs(b Pairs) []paper.Block {
	half := (s.Room() - columnBetween) / 2
	label := paper.Length(0)
	for _, p := range b.Pairs {
		label = max(label, smallStyle.Width(s.say.Text(p.Label))+10*pt)
	}
	label = min(label, half/2)
	down := (len(b.Pairs) + 1) / 2
	var out []paper.Block
	for i := range down {
		row := s.pair(b.Pairs[i], label, half)
		if i+down < len(b.Pairs) {
			row.Beside(half+columnBetween, s.pair(b.Pairs[i+down], label, half))
		}
		out = append(out, row)
	}
	if len(out) > 0 {
		out[0].Above = gapBefore
	}
	return out
}

func (s *sheet) pair(p Pair, label, width paper.Length) (b paper.Block) {
	b.Text(0, 1*pt+smallStyle.Baseline(), s.say.Text(p.Label), smallStyle)
	b.Height = b.Paragraph(label, 0, wrap(s.say.Text(p.Value), width-label, plainStyle), plainStyle) + 1*pt
	return b
}

const signHeight = 44 * pt

// signing puts two lines to sign on side by side.
func (s *sheet) signing(b Signing) (out []paper.Block) {
	half := (s.Room() - columnBetween) / 2
	for i, name := range b.Names {
		if i%2 == 0 {
			out = append(out, paper.Block{Height: signHeight})
		}
		row := &out[len(out)-1]
		x := paper.Length(i%2) * (half + columnBetween)
		row.Line(x, signHeight-14*pt, x+half, signHeight-14*pt, 0.6*pt, black)
		row.Text(x, signHeight-12*pt+smallStyle.Baseline(), s.say.Text(name), smallStyle)
	}
	if len(out) > 0 {
		out[0].Above = gapBefore
	}
	return out
}
