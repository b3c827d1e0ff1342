package model

import "tenthpoint/internal/moisture"

// Mark is one mark on the moisture ruler, at so many thousandths of its
// length.
type Mark struct {
	At    int
	Label string
	Kind  MarkKind
	State State // the colour of a reading
}

// MarkKind says what a mark is for. The kinds are those of the ruler itself.
type MarkKind = moisture.RulerMarkKind

// The kinds of mark.
const (
	TenthMark   = moisture.TenthMark   // a short stroke, never labelled
	PointMark   = moisture.PointMark   // a long stroke, labelled below
	LimitMark   = moisture.LimitMark   // a line across with its name over it: trigger, shrink-to
	ReadingMark = moisture.ReadingMark // the pointer: the moisture of this load
)

// Ruler is moisture as a ruler: its marks, the stretch on which nothing is taken
// off, and the one in which the true moisture may lie.
type Ruler struct {
	Marks []Mark
	Bands []Band
}

// Band is a stretch of a ruler, in thousandths. It is laid in colour; with Around
// it is a clamp about the reading: how far that may be off.
type Band struct {
	From, To int
	Label    string
	Around   bool
}

// Lay adds a band, unless it has no width.
func (r *Ruler) Lay(b Band) {
	if b.To > b.From {
		r.Bands = append(r.Bands, b)
	}
}
