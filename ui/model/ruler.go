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

// MarkKind is the kind of a mark, the same as the ruler's own.
type MarkKind = moisture.RulerMarkKind

// The kinds of mark.
const (
	TenthMark   = moisture.TenthMark   // a short stroke, never labelled
	PointMark   = moisture.PointMark   // a long stroke, labelled below
	LimitMark   = moisture.LimitMark   // a line across with its name over it: trigger, shrink-to
	ReadingMark = moisture.ReadingMark // the pointer: the moisture of this load
)

// Ruler is a moisture ruler: its marks, the range in which nothing is taken off, and the range of
// the true moisture.
type Ruler struct {
	Marks []Mark
	Bands []Band
}

// Band is a range on a ruler, in thousandths. It is drawn in colour; with Around it is a bracket
// around the reading: its tolerance.
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
