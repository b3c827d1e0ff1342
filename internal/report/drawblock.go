package report

const (
	gapBefore  = 8.0 // between blocks
	headBefore = 12.0
)

var headingPen = pen{size: 11, bold: true}

// block sets one part; rest are the parts after it, which a heading stays
// with.
func (s *sheet) block(b Block, rest []Block) {
	if _, newPage := b.(NewPage); newPage {
		if !s.fresh() {
			s.newPage()
		}
		return
	}
	if h, ok := b.(Heading); ok {
		s.heading(h, rest)
		return
	}
	if !s.fresh() {
		s.y += gapBefore
	}
	switch b := b.(type) {
	case Para:
		s.para(b)
	case Pairs:
		s.pairs(b)
	case Table:
		s.table(b)
	case Bars:
		s.need(barsHeight)
		s.bars(b, margin, s.room())
		s.y += barsHeight
	case Steps:
		s.steps(b)
	case Signing:
		s.signing(b)
	}
}

func (s *sheet) heading(h Heading, rest []Block) {
	height := headingPen.lead() + 2
	s.need(headBefore + height + s.first(rest))
	if !s.fresh() {
		s.y += headBefore
	}
	s.write(margin, s.y, h.Text, headingPen)
	s.y += height
	s.line(margin, s.y, s.right(), s.y, 0.5, 150)
	s.y -= gapBefore - 5
}

// first is the height that the beginning of a part needs, to keep its heading
// from standing alone at the foot of a page.
func (s *sheet) first(rest []Block) float64 {
	if len(rest) == 0 {
		return 0
	}
	switch b := rest[0].(type) {
	case Bars:
		return barsHeight
	case Signing:
		return signHeight
	case Table:
		fit := s.fit(b)
		height := fit.headHeight(s, b)
		for _, r := range b.Rows[:min(2, len(b.Rows))] {
			height += fit.rowHeight(s, b, r)
		}
		return height
	case Para:
		return 2 * plainPen.lead()
	}
	return 4 * plainPen.lead()
}

func (s *sheet) para(b Para) {
	p := plainPen
	if b.Strong {
		p = p.strong()
	}
	lines := s.wrap(b.Text, s.room(), p)
	s.need(float64(min(len(lines), 3)) * p.lead())
	for _, line := range lines {
		s.need(p.lead())
		s.write(margin, s.y, line, p)
		s.y += p.lead()
	}
}

// pairs go in two columns, down the left one first.
func (s *sheet) pairs(b Pairs) {
	const between = 24.0
	half := (s.room() - between) / 2
	label := 0.0
	for _, p := range b.Pairs {
		label = max(label, s.measure(p.Label, smallPen)+10)
	}
	label = min(label, half/2)
	down := (len(b.Pairs) + 1) / 2
	for i := range down {
		row := b.Pairs[i:min(i+1, len(b.Pairs))]
		if i+down < len(b.Pairs) {
			row = []Pair{b.Pairs[i], b.Pairs[i+down]}
		}
		s.pairRow(row, half, label, between)
	}
}

func (s *sheet) pairRow(row []Pair, half, label, between float64) {
	tallest := 0
	lines := make([][]string, len(row))
	for i, p := range row {
		lines[i] = s.wrap(p.Value, half-label, plainPen)
		tallest = max(tallest, len(lines[i]))
	}
	height := float64(tallest) * plainPen.lead()
	s.need(height)
	for i, p := range row {
		x := margin + float64(i)*(half+between)
		s.write(x, s.y+1, p.Label, smallPen)
		for n, line := range lines[i] {
			s.write(x+label, s.y+float64(n)*plainPen.lead(), line, plainPen)
		}
	}
	s.y += height + 1
}

const signHeight = 44.0

// signing puts two lines to sign on side by side.
func (s *sheet) signing(b Signing) {
	const between = 24.0
	half := (s.room() - between) / 2
	for i, name := range b.Names {
		if i%2 == 0 {
			s.need(signHeight)
			s.y += signHeight
		}
		x := margin + float64(i%2)*(half+between)
		s.line(x, s.y-14, x+half, s.y-14, 0.6, 0)
		s.write(x, s.y-12, name, smallPen)
	}
}
