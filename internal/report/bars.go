package report

import "tenthpoint/internal/paper"

const (
	barsHeight = 122 * pt
	barsTall   = 78 * pt // of the highest bar
)

// betweenCharts is the room between two charts side by side.
const betweenCharts = 30 * pt

// half is the width of a chart that has another beside it.
func (s *sheet) half() paper.Length { return (s.Room() - betweenCharts) / 2 }

// pairOfCharts sets two charts that follow each other side by side.
func (s *sheet) pairOfCharts(blocks []Block) bool {
	if len(blocks) < 2 {
		return false
	}
	half := s.half()
	left, okLeft := s.chart(blocks[0], half)
	right, okRight := s.chart(blocks[1], half)
	if !okLeft || !okRight {
		return false
	}
	left.Above = gapBefore
	left.Beside(half+betweenCharts, right)
	s.put(left)
	return true
}

// chart is a chart of half the width of a paper; false for other blocks.
func (s *sheet) chart(b Block, room paper.Length) (paper.Block, bool) {
	switch b := b.(type) {
	case Bars:
		return s.bars(b, room), true
	case Picture:
		if !b.Wide {
			return s.picture(b, room), true
		}
	}
	return paper.Block{}, false
}

// bars is a chart of a width.
func (s *sheet) bars(b Bars, room paper.Length) paper.Block {
	out := paper.Block{Height: barsHeight}
	top := out.Paragraph(0, 0, []string{s.say.Text(b.Title)}, plainStyle.Strong()) + 3*pt
	if len(b.Labels) == 0 {
		out.Text(0, top+smallStyle.Baseline(), s.say.Text(b.Empty), smallStyle)
		return out
	}
	ground := top + barStyle.Leading() + barsTall
	slot := min(46*pt, room/paper.Length(len(b.Labels)))
	for i, label := range b.Labels {
		left := paper.Length(i) * slot
		tall := barsTall * paper.Length(b.Heights[i]) / 1000
		out.Box(left+slot*16/100, ground-tall, slot*68/100, tall, barInk, noInk)
		out.TextMiddle(left+slot/2, ground-tall-barStyle.Leading()+barStyle.Baseline(), s.say.Text(b.Values[i]), barStyle)
		out.TextMiddle(left+slot/2, ground+2*pt+barStyle.Baseline(), s.say.Text(label), barStyle)
	}
	out.Line(0, ground, slot*paper.Length(len(b.Labels)), ground, 0.6*pt, black)
	return out
}
