package shell

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/model"
)

// Setting is the vertical spacing of a form's rows.
type Setting int

// The settings, the widest first.
const (
	Airy Setting = iota // there is room for a message under every field
	Snug                // only warnings and errors are shown under their field
	Lean                // nothing is shown under fields, only a mark in the row
	bare                // and there is no line at the foot: the status line is used
)

var settings = []Setting{Airy, Snug, Lean, bare}

// hasFoot reports whether a setting keeps a line at the foot of the form.
func (s Setting) hasFoot() bool { return s == Snug || s == Lean }

// FieldSheet lays the rows of a form in two columns, as widely spaced as the height allows. Where
// the lines under the fields are dropped, the focused field's line is shown at the foot instead, so
// that no field moves when the focus does.
type FieldSheet struct {
	columns [2][]fyne.CanvasObject // Rows of fields, maybe under a heading
	said    *footLine
	inHand  *FormRow
	Setting Setting
	shape   string // the input of the last layout
	Content *fyne.Container
	Hint    func(text string) // shows on the status line what has no room at the foot

	hints bool // the status line is in use now
}

func NewFieldSheet() *FieldSheet {
	s := &FieldSheet{said: newFootLine(), Hint: func(string) {}}
	s.Content = container.New(s, s.said.objects()...)
	return s
}

// Set replaces the rows of the columns.
func (s *FieldSheet) Set(left, right []fyne.CanvasObject) {
	s.columns = [2][]fyne.CanvasObject{left, right}
	all := append(append([]fyne.CanvasObject{}, left...), right...)
	s.Content.Objects = append(all, s.said.objects()...)
	s.shape = ""
}

// Rows are the fields of both columns.
func (s *FieldSheet) Rows() []*FormRow {
	var out []*FormRow
	for _, column := range s.columns {
		for _, o := range Visible(column) {
			if row, ok := o.(*FormRow); ok {
				out = append(out, row)
			}
		}
	}
	return out
}

// Hold sets the focused field; nil for none.
func (s *FieldSheet) Hold(row *FormRow) {
	if s.inHand != nil && s.inHand != row {
		s.inHand.take(false)
	}
	s.inHand = row
	if row != nil {
		row.take(true)
	}
	s.say()
}

// Follow updates the line at the foot, and reports whether the rows have to be laid out again.
func (s *FieldSheet) Follow() bool {
	s.say()
	var b strings.Builder
	for _, row := range s.Rows() {
		b.WriteString(row.Field.Label + "|" + row.Field.Unit)
		if row.isDoubted() {
			b.WriteString("!")
		}
		b.WriteString("\n")
	}
	was := s.shape
	s.shape = b.String()
	return s.shape != was
}

// say shows at the foot what the focused field has no room for; where not even warnings are shown
// under their fields, the first of those.
func (s *FieldSheet) say() {
	row := s.inHand
	if s.Setting >= Lean && (row == nil || !row.isDoubted()) {
		for _, other := range s.Rows() {
			if other.isDoubted() {
				row = other
				break
			}
		}
	}
	name, state, text := "", model.Plain, ""
	if s.Setting != Airy && row != nil && !row.isBelow(s.Setting) {
		name = row.Field.Label
		state, text = row.says()
	}
	s.said.say(name, state, text)
	if s.Setting == bare {
		s.hints = true
		s.Hint(text)
	} else if s.hints {
		s.hints = false
		s.Hint("")
	}
}

// MinSize is the width both columns need, and the height of the closest setting.
func (s *FieldSheet) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(s.widths((*FormRow).least).sum(), s.Height(bare))
}

// wish returns the width at which no chosen value is truncated.
func (s *FieldSheet) wish() float32 { return s.widths((*FormRow).picked).sum() }

func columnGap() float32 { return Margin{}.gap() * 2 }

// pair is a width for either column.
type pair [2]float32

// sum is the width of both, with the ground between them.
func (p pair) sum() float32 { return p[0] + p[1] + columnGap() }

// widths returns the widths of the columns when every row needs so much after its name.
func (s *FieldSheet) widths(of func(*FormRow) float32) (out pair) {
	for i, column := range s.columns {
		label := labelWidth(column)
		for _, o := range Visible(column) {
			if row, ok := o.(*FormRow); ok {
				out[i] = max(out[i], label+of(row))
			}
		}
	}
	return out
}

// labelWidth is the room for the names of a column.
func labelWidth(column []fyne.CanvasObject) float32 {
	width := float32(0)
	for _, o := range Visible(column) {
		if row, ok := o.(*FormRow); ok {
			width = max(width, row.Label.MinSize().Width)
		}
	}
	return width
}

// Height is the least height of a setting.
func (s *FieldSheet) Height(at Setting) float32 {
	high := s.least(at)
	if at.hasFoot() {
		high += s.said.height()
	}
	return high
}

// least is the height the rows of a setting need, with the ground between them.
func (s *FieldSheet) least(at Setting) float32 {
	high := float32(0)
	for _, heights := range s.heights(at) {
		sum := float32(0)
		for _, h := range heights {
			if h > 0 {
				sum += h + between(at)
			}
		}
		high = max(high, sum)
	}
	return high
}

// between returns the least space between two rows: what the focus ring needs, unless there is a
// line below every field.
func between(at Setting) float32 {
	switch at {
	case Airy:
		return 0
	case bare:
		return 1
	}
	return ringRoom - 1
}

// heights returns the heights of the rows. In dense settings the rows of both columns keep one
// height, so that they stay side by side when one grows.
func (s *FieldSheet) heights(at Setting) (out [2][]float32) {
	for i, column := range s.columns {
		for _, o := range Visible(column) {
			high := o.MinSize().Height
			if row, ok := o.(*FormRow); ok {
				high = row.Height(at)
			} else if at == bare { // a heading is dropped
				high = 0
			}
			out[i] = append(out[i], high)
		}
	}
	if at == Airy {
		return out
	}
	for i := range min(len(out[0]), len(out[1])) {
		high := max(out[0][i], out[1][i])
		out[0][i], out[1][i] = high, high
	}
	return out
}

// fit is the widest setting that a height has room for, or the closest of all.
func (s *FieldSheet) fit(room float32) Setting {
	for _, at := range settings {
		if s.Height(at) <= room {
			return at
		}
	}
	return bare
}

// mostBetween is the most ground between two rows.
const mostBetween = 38

// Layout sets the rows in the widest setting there is room for. Ground to spare
// goes between the rows, in both columns alike, so that they keep one rhythm.
func (s *FieldSheet) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	s.Setting = s.fit(size.Height)
	foot := float32(0)
	if s.Setting.hasFoot() {
		foot = s.said.height()
	}
	s.said.place(fyne.NewPos(0, size.Height-foot), size.Width, s.Setting.hasFoot())
	spare := max(0, size.Height-foot-s.least(s.Setting))
	rows := max(1, len(Visible(s.columns[0])), len(Visible(s.columns[1])))
	ground := between(s.Setting) + min(mostBetween, spare/float32(rows))
	heights, widths := s.heights(s.Setting), s.share(size.Width)
	x := float32(0)
	for i, column := range s.columns {
		y, label := float32(0), labelWidth(column)
		for at, o := range Visible(column) {
			high := heights[i][at]
			o.Move(fyne.NewPos(x, y))
			if row, ok := o.(*FormRow); ok {
				row.Space(s.Setting, label)
				row.noteRoom = s.noteRoom(i, at, widths[i], size.Width)
			}
			if high == 0 {
				o.Resize(fyne.Size{})
				continue
			}
			o.Resize(fyne.NewSize(widths[i], high+ground))
			y += high + ground
		}
		x += widths[i] + columnGap()
	}
	s.say()
}

// noteRoom returns how far the text below a row may reach: where rows grow side by side and the row
// at the right has no text, over that too.
func (s *FieldSheet) noteRoom(column, at int, own, all float32) float32 {
	if column > 0 || s.Setting != Snug {
		return own
	}
	if right := Visible(s.columns[1]); at < len(right) {
		if row, ok := right[at].(*FormRow); !ok || row.isDoubted() {
			return own
		}
	}
	return all
}

// share gives each column the width it needs; then room for values chosen from lists, then for
// words; and shares the rest equally.
func (s *FieldSheet) share(width float32) pair {
	out := s.widths((*FormRow).least)
	for _, of := range []func(*FormRow) float32{(*FormRow).picked, (*FormRow).wished} {
		next := s.widths(of)
		more := pair{max(0, next[0]-out[0]), max(0, next[1]-out[1])}
		part := min(1, max(0, width-out.sum())/max(1, more[0]+more[1]))
		out[0], out[1] = out[0]+part*more[0], out[1]+part*more[1]
	}
	left := max(0, width-out.sum()) / 2
	return pair{out[0] + left, out[1] + left}
}
