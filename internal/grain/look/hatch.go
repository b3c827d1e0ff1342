package look

// Hatch is the lines by which a surface is told from others: for each of its families, parallel
// lines at equal distances. A hatching without families is a full surface.
type Hatch struct {
	families []family
	dots     bool // only where the families cross
	wide     bool
}

// family is parallel lines: those on which across*x + down*y is a multiple of the distance.
type family struct{ across, down int }

// The hatchings. Rising lines go up from left to right.
var (
	Full    = Hatch{}
	Rising  = Hatch{families: []family{{1, 1}}}
	Falling = Hatch{families: []family{{1, -1}}}
	Level   = Hatch{families: []family{{0, 1}}}
	Upright = Hatch{families: []family{{1, 0}}}
	Cross   = Hatch{families: []family{{1, 1}, {1, -1}}}
	Grid    = Hatch{families: []family{{1, 0}, {0, 1}}}
	Dots    = Hatch{families: []family{{1, 0}, {0, 1}}, dots: true}
)

// Wide is a hatching with its lines farther apart.
func Wide(h Hatch) Hatch {
	h.wide = true
	return h
}

// Equal reports whether two hatchings look the same.
func (h Hatch) Equal(o Hatch) bool {
	if len(h.families) != len(o.families) || h.dots != o.dots || h.wide != o.wide {
		return false
	}
	for i, f := range h.families {
		if f != o.families[i] {
			return false
		}
	}
	return true
}

// IsFull reports whether the whole surface has ink.
func (h Hatch) IsFull() bool { return len(h.families) == 0 }

// distance is how far apart lines are, of a thickness.
func (h Hatch) distance(thick int) int {
	if h.wide {
		return 7 * thick
	}
	return 4 * thick
}

// Inked reports whether a line of a thickness goes through a point. Points are counted in any small
// unit, such as dots of a screen.
func (h Hatch) Inked(x, y, thick int) bool {
	if h.IsFull() {
		return true
	}
	for _, f := range h.families {
		hit := wrapped(f.across*x+f.down*y, h.distance(thick)) < thick
		if hit != h.dots {
			return hit
		}
	}
	return h.dots
}

// wrapped is the remainder that is never below zero.
func wrapped(n, by int) int { return (n%by + by) % by }

// Segment is a piece of a line.
type Segment struct{ X1, Y1, X2, Y2 int }

// Strokes are the lines of a hatching inside a rectangle, for what draws lines; the lines are of a
// thickness. Dots are very short lines.
func (h Hatch) Strokes(left, top, width, height, thick int) []Segment {
	if h.dots {
		return h.specks(left, top, width, height, thick)
	}
	var out []Segment
	for _, f := range h.families {
		out = append(out, f.strokes(left, top, width, height, h.distance(thick))...)
	}
	return out
}

// specks are the dots of a hatching inside a rectangle.
func (h Hatch) specks(left, top, width, height, thick int) []Segment {
	var out []Segment
	step := h.distance(thick)
	for y := upTo(top, step); y < top+height; y += step {
		for x := upTo(left, step); x+thick <= left+width; x += step {
			out = append(out, Segment{x, y, x + thick, y})
		}
	}
	return out
}

// upTo is the first multiple of a step that is not below a number.
func upTo(n, step int) int { return n + wrapped(-n, step) }

// strokes are the lines of one family, cut off at the edges of a rectangle.
func (f family) strokes(left, top, width, height, step int) []Segment {
	right, bottom := left+width, top+height
	var out []Segment
	least, most := f.reach(left, top, right, bottom)
	for at := upTo(least, step); at <= most; at += step {
		switch {
		case f.across == 0:
			out = append(out, Segment{left, at, right, at})
		case f.down == 0:
			out = append(out, Segment{at, top, at, bottom})
		default: // x is at - down*y, since across is one
			from, to := f.within(at, left, right, top, bottom)
			if from < to {
				out = append(out, Segment{at - f.down*from, from, at - f.down*to, to})
			}
		}
	}
	return out
}

// reach is the least and greatest of across*x + down*y in a rectangle.
func (f family) reach(left, top, right, bottom int) (least, most int) {
	corner := f.across*left + f.down*top
	least, most = corner, corner
	for _, at := range []int{f.across*right + f.down*top, f.across*left + f.down*bottom, f.across*right + f.down*bottom} {
		least, most = min(least, at), max(most, at)
	}
	return least, most
}

// within is the heights between which a slanting line is inside a rectangle.
func (f family) within(at, left, right, top, bottom int) (from, to int) {
	a, b := (at-left)*f.down, (at-right)*f.down
	return max(top, min(a, b)), min(bottom, max(a, b))
}
