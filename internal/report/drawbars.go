package report

const (
	barsHeight = 122.0
	barsTall   = 78.0 // of the highest bar
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
	const between = 30.0
	half := (s.room() - between) / 2
	if !s.fresh() {
		s.y += gapBefore
	}
	s.need(barsHeight)
	s.bars(left, margin, half)
	s.bars(right, margin+half+between, half)
	s.y += barsHeight
	return true
}

// bars draws a chart from the pen down without moving it.
func (s *sheet) bars(b Bars, x, room float64) {
	s.write(x, s.y, b.Title, plainPen.strong())
	top := s.y + plainPen.lead() + 3
	if len(b.Labels) == 0 {
		s.write(x, top, b.Empty, smallPen)
		return
	}
	words := pen{size: 7, grey: 40}
	ground := top + words.lead() + barsTall
	slot := min(46, room/float64(len(b.Labels)))
	for i, label := range b.Labels {
		left := x + float64(i)*slot
		tall := barsTall * float64(b.Heights[i]) / 1000
		s.fill(left+slot*0.16, ground-tall, slot*0.68, tall, 110)
		s.writeMiddle(left+slot/2, ground-tall-words.lead(), b.Values[i], words)
		s.writeMiddle(left+slot/2, ground+2, label, words)
	}
	s.line(x, ground, x+slot*float64(len(b.Labels)), ground, 0.6, 0)
}
