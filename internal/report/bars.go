package report

import "tenthpoint/internal/paper"

const (
	barsHeight = 122 * pt
	barsTall   = 78 * pt // of the highest bar
)

// pairOfCharts sets two charts that follow each other side by side.
func (s *sheet) pairOfCharts(blocks []Block) bool {
	if len(blocks) < 2 {
		return false
	}
	left, okLeft := blocks[0].(Bars)
	right, okRight := blocks[1].(Bars)
	if !okLeft || !okRight {
		return false
	}
	const between = 30 * pt
	half := (s.Room() - between) / 2
	both := s.bars(left, half)
	both.Above = gapBefore
	both.Beside(half+between, s.bars(right, half))
	s.put(both)
	return true
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
