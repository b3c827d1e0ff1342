package typeset

// block is a piece of a slip that stays in one piece when a page ends.
type block struct {
	above  float64 // space above, left out at the top of a page
	height float64
	// tied keeps the block on one page with the next, as a title is.
	tied bool
	draw func(c canvas, x, y float64)
}

// placed is a block with its place on a page.
type placed struct {
	block
	x, y float64
}

// layout fills pages from the top.
type layout struct {
	// wide and high are the paper at the scale the slip is set at.
	wide, high, scale float64

	pages  [][]placed
	y      float64
	isHead bool // nothing stands on the page yet
}

const (
	sideMargin   = 27.0
	topMargin    = 21.0
	bottomMargin = 23.0
	runningSpace = 15.0 // for the running head of the pages after the first
	gutter       = 58.0 // the column of section titles
)

func newLayout(size Size, scale float64) *layout {
	l := &layout{wide: size.width() / scale, high: size.height() / scale, scale: scale}
	l.newPage()
	return l
}

func (l *layout) newPage() {
	l.y = topMargin
	if len(l.pages) > 0 {
		l.y += runningSpace
	}
	l.pages = append(l.pages, nil)
	l.isHead = true
}

// foot is where a page ends.
func (l *layout) foot() float64 { return l.high - bottomMargin }

// room is the height left on the page.
func (l *layout) room() float64 { return l.foot() - l.y }

// width is the width between the margins.
func (l *layout) width() float64 { return l.wide - 2*sideMargin }

// add places blocks one under the other, each whole run of tied blocks on one
// page.
func (l *layout) add(blocks ...block) {
	for i, b := range blocks {
		if l.space(blocks[i:]) > l.room() && !l.isHead {
			l.newPage()
		}
		if !l.isHead {
			l.y += b.above
		}
		l.put(sideMargin, l.y, b)
		l.y += b.height
		l.isHead = false
	}
}

func (l *layout) put(x, y float64, b block) {
	last := len(l.pages) - 1
	l.pages[last] = append(l.pages[last], placed{b, x, y})
}

// space is what the first block needs, with those it is tied to.
func (l *layout) space(blocks []block) float64 {
	sum := 0.0
	for _, b := range blocks {
		sum += b.above + b.height
		if !b.tied {
			break
		}
	}
	return sum
}

// tie keeps the first block of a section with its second, and the last with
// the one before, so that no line is left alone.
func tie(blocks []block) []block {
	if n := len(blocks); n > 1 {
		blocks[0].tied, blocks[n-2].tied = true, true
	}
	return blocks
}
