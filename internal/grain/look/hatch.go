package look

// Hatch is the lines by which a surface is told from others: for each of its families, parallel
// lines at equal distances. The zero Hatch is a full surface.
type Hatch struct {
	first, second family
	dots          bool // only where the two families cross
	wide          bool
}

// family is parallel lines: those on which across*x + down*y is a multiple of the distance. The zero
// family has none.
type family struct{ across, down int }

var (
	rising  = family{1, 1}
	falling = family{1, -1}
	level   = family{0, 1}
	upright = family{1, 0}
)

// The hatchings. Rising lines go up from left to right.
var (
	Full    = Hatch{}
	Rising  = Hatch{first: rising}
	Falling = Hatch{first: falling}
	Level   = Hatch{first: level}
	Upright = Hatch{first: upright}
	Cross   = Hatch{first: rising, second: falling}
	Grid    = Hatch{first: upright, second: level}
	Dots    = Hatch{first: upright, second: level, dots: true}
)

// Wide is a hatching with its lines farther apart.
func Wide(h Hatch) Hatch {
	h.wide = true
	return h
}

// IsFull reports whether the whole surface has ink.
func (h Hatch) IsFull() bool { return h.first == family{} }

// distance is the distance between lines of a thickness.
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
	step := h.distance(thick)
	first, second := h.first.through(x, y, step, thick), h.second.through(x, y, step, thick)
	if h.dots {
		return first && second
	}
	return first || second
}

// through reports whether a line of the family goes through a point.
func (f family) through(x, y, step, thick int) bool {
	return f != family{} && wrapped(f.across*x+f.down*y, step) < thick
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
	first := h.first.strokes(left, top, width, height, h.distance(thick))
	return append(first, h.second.strokes(left, top, width, height, h.distance(thick))...)
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
	if f == (family{}) {
		return nil
	}
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
