package view

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/model"
)

// setting is how close together the rows of a form stand.
type setting int

// The settings, the widest first.
const (
	airy setting = iota // under every field there is room for what is said of it
	snug                // only what is in doubt stands under its field
	lean                // all that stands in the row is a mark
	bare                // and there is no line at the foot: the status line says it
)

var settings = []setting{airy, snug, lean, bare}

// hasFoot reports whether a setting keeps a line at the foot of the form.
func (s setting) hasFoot() bool { return s == snug || s == lean }

// fieldSheet lays the rows of a form in two columns, as wide apart as the height
// allows. Where the lines under the fields are given up, what would stand there of
// the field in hand is said in one line at the foot, so that no field moves when
// the keyboard does.
type fieldSheet struct {
	columns [2][]fyne.CanvasObject // rows of fields, maybe under a heading
	said    *footLine
	inHand  *formRow
	setting setting
	shape   string // what the last layout depended on
	content *fyne.Container
	whisper func(text string) // says on the status line what has no room at the foot

	whispers bool // the status line says it now
}

func newFieldSheet() *fieldSheet {
	s := &fieldSheet{said: newFootLine(), whisper: func(string) {}}
	s.content = container.New(s, s.said.objects()...)
	return s
}

// set puts other rows into the columns.
func (s *fieldSheet) set(left, right []fyne.CanvasObject) {
	s.columns = [2][]fyne.CanvasObject{left, right}
	all := append(append([]fyne.CanvasObject{}, left...), right...)
	s.content.Objects = append(all, s.said.objects()...)
	s.shape = ""
}

// rows are the fields of both columns.
func (s *fieldSheet) rows() []*formRow {
	var out []*formRow
	for _, column := range s.columns {
		for _, o := range visible(column) {
			if row, ok := o.(*formRow); ok {
				out = append(out, row)
			}
		}
	}
	return out
}

// hold tells the sheet which field the keyboard is in; none is nil.
func (s *fieldSheet) hold(row *formRow) {
	if s.inHand != nil && s.inHand != row {
		s.inHand.take(false)
	}
	s.inHand = row
	if row != nil {
		row.take(true)
	}
	s.say()
}

// follow brings the line at the foot up to date, and reports whether the rows
// have to be laid out anew.
func (s *fieldSheet) follow() bool {
	s.say()
	var b strings.Builder
	for _, row := range s.rows() {
		b.WriteString(row.field.Label + "|" + row.field.Unit)
		if row.isDoubted() {
			b.WriteString("!")
		}
		b.WriteString("\n")
	}
	was := s.shape
	s.shape = b.String()
	return s.shape != was
}

// say says at the foot what the field in hand has no room for; where not even
// doubts stand under their fields, the first of those.
func (s *fieldSheet) say() {
	row := s.inHand
	if s.setting >= lean && (row == nil || !row.isDoubted()) {
		for _, other := range s.rows() {
			if other.isDoubted() {
				row = other
				break
			}
		}
	}
	name, state, text := "", model.Plain, ""
	if s.setting != airy && row != nil && !row.isBeneath(s.setting) {
		name = row.field.Label
		state, text = row.says()
	}
	s.said.say(name, state, text)
	if s.setting == bare {
		s.whispers = true
		s.whisper(text)
	} else if s.whispers {
		s.whispers = false
		s.whisper("")
	}
}

// MinSize is the width both columns need, and the height of the closest setting.
func (s *fieldSheet) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(s.widths((*formRow).least).sum(), s.height(bare))
}

// wish is the width at which what is chosen in the fields stands whole.
func (s *fieldSheet) wish() float32 { return s.widths((*formRow).picked).sum() }

func columnGap() float32 { return margin{}.gap() * 2 }

// pair is a width for either column.
type pair [2]float32

// sum is the width of both, with the ground between them.
func (p pair) sum() float32 { return p[0] + p[1] + columnGap() }

// widths are what the columns need when every row needs so much after its name.
func (s *fieldSheet) widths(of func(*formRow) float32) (out pair) {
	for i, column := range s.columns {
		label := labelWidth(column)
		for _, o := range visible(column) {
			if row, ok := o.(*formRow); ok {
				out[i] = max(out[i], label+of(row))
			}
		}
	}
	return out
}

// labelWidth is the room for the names of a column.
func labelWidth(column []fyne.CanvasObject) float32 {
	width := float32(0)
	for _, o := range visible(column) {
		if row, ok := o.(*formRow); ok {
			width = max(width, row.label.MinSize().Width)
		}
	}
	return width
}

// height is the least height of a setting.
func (s *fieldSheet) height(at setting) float32 {
	high := s.least(at)
	if at.hasFoot() {
		high += s.said.height()
	}
	return high
}

// least is the height the rows of a setting need, with the ground between them.
func (s *fieldSheet) least(at setting) float32 {
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

// between is the least ground between two rows: what the ring of the field in
// hand needs, unless there is a line beneath every field.
func between(at setting) float32 {
	switch at {
	case airy:
		return 0
	case bare:
		return 1
	}
	return ringRoom - 1
}

// heights are the heights of the rows. Where they stand close, the rows of both
// columns keep one height, so that they stay side by side when one grows.
func (s *fieldSheet) heights(at setting) (out [2][]float32) {
	for i, column := range s.columns {
		for _, o := range visible(column) {
			high := o.MinSize().Height
			if row, ok := o.(*formRow); ok {
				high = row.height(at)
			} else if at == bare { // a heading gives way
				high = 0
			}
			out[i] = append(out[i], high)
		}
	}
	if at == airy {
		return out
	}
	for i := range min(len(out[0]), len(out[1])) {
		high := max(out[0][i], out[1][i])
		out[0][i], out[1][i] = high, high
	}
	return out
}

// fit is the widest setting that a height has room for, or the closest of all.
func (s *fieldSheet) fit(room float32) setting {
	for _, at := range settings {
		if s.height(at) <= room {
			return at
		}
	}
	return bare
}

// mostBetween is the most ground between two rows.
const mostBetween = 38

// Layout sets the rows in the widest setting there is room for. Ground to spare
// goes between the rows, in both columns alike, so that they keep one rhythm.
func (s *fieldSheet) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	s.setting = s.fit(size.Height)
	foot := float32(0)
	if s.setting.hasFoot() {
		foot = s.said.height()
	}
	s.said.place(fyne.NewPos(0, size.Height-foot), size.Width, s.setting.hasFoot())
	spare := max(0, size.Height-foot-s.least(s.setting))
	rows := max(1, len(visible(s.columns[0])), len(visible(s.columns[1])))
	ground := between(s.setting) + min(mostBetween, spare/float32(rows))
	heights, widths := s.heights(s.setting), s.share(size.Width)
	x := float32(0)
	for i, column := range s.columns {
		y, label := float32(0), labelWidth(column)
		for at, o := range visible(column) {
			high := heights[i][at]
			o.Move(fyne.NewPos(x, y))
			if row, ok := o.(*formRow); ok {
				row.space(s.setting, label)
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

// noteRoom is how far what is said beneath a row may reach: where rows grow side
// by side and nothing is said of the one at the right, over that too.
func (s *fieldSheet) noteRoom(column, at int, own, all float32) float32 {
	if column > 0 || s.setting != snug {
		return own
	}
	if right := visible(s.columns[1]); at < len(right) {
		if row, ok := right[at].(*formRow); !ok || row.isDoubted() {
			return own
		}
	}
	return all
}

// share gives each column what it needs; then room for what is chosen from lists,
// then for words; and what is left to both alike.
func (s *fieldSheet) share(width float32) pair {
	out := s.widths((*formRow).least)
	for _, of := range []func(*formRow) float32{(*formRow).picked, (*formRow).wished} {
		next := s.widths(of)
		more := pair{max(0, next[0]-out[0]), max(0, next[1]-out[1])}
		part := min(1, max(0, width-out.sum())/max(1, more[0]+more[1]))
		out[0], out[1] = out[0]+part*more[0], out[1]+part*more[1]
	}
	left := max(0, width-out.sum()) / 2
	return pair{out[0] + left, out[1] + left}
}
