package paper

// Frame is the part of a page that blocks fill.
type Frame struct {
	Width, Height     Length // of the page
	Side, Top, Bottom Length // margins
	Running           Length // room for the head of the pages after the first
}

// Room is the width between the margins.
func (f Frame) Room() Length { return f.Width - 2*f.Side }

// Right returns the position of the right margin.
func (f Frame) Right() Length { return f.Width - f.Side }

// Foot returns the position of the bottom margin.
func (f Frame) Foot() Length { return f.Height - f.Bottom }

// Flow fills pages from the top.
type Flow struct {
	Frame
	Pages []Marks
	y     Length
	fresh bool // nothing is on the page yet
}

// NewFlow begins the first page.
func NewFlow(f Frame) *Flow {
	flow := &Flow{Frame: f}
	flow.NewPage()
	return flow
}

// NewPage begins a page.
func (f *Flow) NewPage() {
	f.y = f.Top
	if len(f.Pages) > 0 {
		f.y += f.Running
	}
	f.Pages = append(f.Pages, Marks{})
	f.fresh = true
}

// Left is the height that is left on the page.
func (f *Flow) Left() Length { return f.Foot() - f.y }

// Y returns the height of the page filled so far.
func (f *Flow) Y() Length { return f.y }

// IsFresh reports whether the page is still empty.
func (f *Flow) IsFresh() bool { return f.fresh }

// Skip leaves room, but not at the top of a page.
func (f *Flow) Skip(height Length) {
	if !f.fresh {
		f.y += height
	}
}

// Page is the page that is being filled.
func (f *Flow) Page() *Marks { return &f.Pages[len(f.Pages)-1] }

// Add places blocks one under the other, each whole run of tied blocks on one
// page. Blocks that are higher than a page run over its foot.
func (f *Flow) Add(blocks ...Block) {
	for i, b := range blocks {
		if !f.fresh && together(blocks[i:]) > f.Left() {
			f.NewPage()
			if b.Again != nil {
				f.place(*b.Again)
			}
		}
		f.Skip(b.Above)
		f.place(b)
	}
}

func (f *Flow) place(b Block) {
	f.Page().Put(f.Side, f.y, b.Marks)
	f.y += b.Height
	f.fresh = false
}

// together returns the height of the first block with those tied to it.
func together(blocks []Block) Length {
	sum := Length(0)
	for _, b := range blocks {
		sum += b.Above + b.Height
		if !b.Tied {
			break
		}
	}
	return sum
}

// Columns fills two columns with blocks, down the left one first, on as many pages as they need; on
// the last of them the columns are of equal height. It returns the place of each pair of columns,
// so that a rule can separate them.
func (f *Flow) Columns(blocks []Block, between Length) (pairs []Column) {
	width := (f.Room() - between) / 2
	for {
		height := evenHeight(blocks, f.Left())
		top := f.y
		n := fill(blocks, height)
		end := f.column(blocks[:n], f.Side)
		rest := blocks[n:]
		m := fill(rest, height)
		end = max(end, f.column(rest[:m], f.Side+width+between))
		pairs = append(pairs, Column{len(f.Pages) - 1, top, end, m > 0})
		f.y, f.fresh = end, false
		if blocks = rest[m:]; len(blocks) == 0 {
			return pairs
		}
		f.NewPage()
	}
}

// Column is a stretch of a page that is set in two columns.
type Column struct {
	Page     int
	Top, End Length
	IsPair   bool // the right column holds something
}

func (f *Flow) column(blocks []Block, x Length) Length {
	y := f.y
	for i, b := range blocks {
		if i > 0 {
			y += b.Above
		}
		f.Page().Put(x, y, b.Marks)
		y += b.Height
	}
	return y
}

// evenHeight returns the least height at which two columns hold all blocks, so that they end
// together; or most where they cannot.
func evenHeight(blocks []Block, most Length) Length {
	total := Length(0)
	for _, b := range blocks {
		total += b.Height
	}
	for height := total / 2; height < most; height += 2 * Point {
		if n := fill(blocks, height); n+fill(blocks[n:], height) == len(blocks) {
			return height
		}
	}
	return most
}

// fill returns the number of blocks that fit in a column of the height, at least 1, without leaving
// a title at its foot.
func fill(blocks []Block, height Length) int {
	y, n := Length(0), 0
	for i, b := range blocks {
		if i > 0 {
			y += b.Above
		}
		if y += b.Height; y > height && i > 0 {
			break
		}
		n = i + 1
	}
	for n > 1 && n < len(blocks) && blocks[n-1].Tied {
		n--
	}
	return n
}
