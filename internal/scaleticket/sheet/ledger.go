package sheet

import (
	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
)

// figureRoom is the width kept for the figures of a ledger.
const figureRoom = 84 * paper.Point

// ledger sets lines with right-aligned figures. A note is beside its label where it fits, else
// below.
func ledger(s scaleticket.Section, width paper.Length) []paper.Block {
	inner := width - gutter
	var rows []paper.Block
	for _, l := range s.Lines {
		switch l.Kind {
		case scaleticket.Warning:
			rows = append(rows, warning(l, inner))
		case scaleticket.Heading:
			rows = append(rows, subtitle(l, inner))
		default:
			rows = append(rows, ledgerRow(l, inner))
		}
	}
	return inGutter(s.Title, rows)
}

func subtitle(l scaleticket.Line, inner paper.Length) paper.Block {
	b := paper.Block{Above: 5 * paper.Point, Tied: true}
	b.Height = b.Paragraph(gutter, 0, strongStyle.Wrap(l.Label, inner), strongStyle)
	return b
}

// ledgerLine is one line of a ledger, set: where its parts go.
type ledgerLine struct {
	scaleticket.Line
	inner  paper.Length
	look   paper.Style
	label  []string
	beside string // the note, where it fits beside the label
	notes  []string
	value  []string
}

func ledgerRow(l scaleticket.Line, inner paper.Length) (b paper.Block) {
	set := ledgerLine{Line: l, inner: inner, look: plainStyle}
	if l.Kind == scaleticket.Total || l.Emphasis {
		set.look = strongStyle
	}
	if l.Emphasis && l.Kind == scaleticket.Total {
		set.look = strongStyle.Sized(9 * paper.Point)
	}
	set.value = set.look.Wrap(l.Value, max(figureRoom, inner*45/100))
	room := inner - set.valueWidth() - 8*paper.Point
	set.label = set.look.Wrap(l.Label, room)
	set.placeNotes(room)
	if l.Kind == scaleticket.Total {
		b.Above = 2.2 * paper.Point
	}
	b.Height = set.height()
	set.draw(&b.Marks)
	if l.Kind == scaleticket.Total {
		b = b.Summing()
	}
	return b.Named(l.Field)
}

// valueWidth is the width of the value with the mark before it.
func (l ledgerLine) valueWidth() paper.Length {
	w := paper.Length(0)
	for _, v := range l.value {
		w = max(w, l.look.Width(v))
	}
	if l.Mark != "" {
		w += chipWidth(l.Mark, chipStyle) + 5*paper.Point
	}
	return w
}

// placeNotes sets the note beside the label where it fits, else below.
func (l *ledgerLine) placeNotes(room paper.Length) {
	if len(l.label) == 1 && len(l.Notes) == 1 && l.look.Width(l.label[0])+6*paper.Point+noteStyle.Width(l.Notes[0]) <= room {
		l.beside = l.Notes[0]
		return
	}
	for _, note := range l.Notes {
		l.notes = append(l.notes, noteStyle.Wrap(note, l.inner-figureRoom*62/100)...)
	}
}

func (l ledgerLine) height() paper.Length {
	h := paper.Length(max(len(l.label), len(l.value))) * l.look.Leading()
	if len(l.notes) > 0 {
		h += paper.Length(len(l.notes))*noteStyle.Leading() + 1.2*paper.Point
	}
	return h + 0.6*paper.Point
}

func (l ledgerLine) draw(m *paper.Marks) {
	edge := gutter + l.inner
	if l.Kind == scaleticket.Total {
		m.Line(edge-figureRoom, -0.8*paper.Point, edge, -0.8*paper.Point, 0.5*paper.Point, black)
	}
	under := m.Paragraph(gutter, 0, l.label, l.look)
	if l.beside != "" {
		m.Text(gutter+l.look.Width(l.label[0])+6*paper.Point, l.look.Baseline(), l.beside, noteStyle)
	}
	l.drawValue(m, edge)
	m.Paragraph(gutter, max(under, paper.Length(len(l.value))*l.look.Leading()), l.notes, noteStyle)
}

func (l ledgerLine) drawValue(m *paper.Marks, edge paper.Length) {
	widest := paper.Length(0)
	for i, v := range l.value {
		at := paper.Length(i) * l.look.Leading()
		w := l.look.Width(v)
		widest = max(widest, w)
		if l.Missing {
			missing(m, edge, at, v, l.look)
			continue
		}
		m.Text(edge-w, at+l.look.Baseline(), v, l.look)
		if l.Kind == scaleticket.Struck {
			middle := at + l.look.Baseline() - l.look.Size*27/100
			m.Line(edge-w-2*paper.Point, middle, edge+1*paper.Point, middle, 0.8*paper.Point, black)
		}
	}
	if l.Mark != "" {
		x := edge - widest - 5*paper.Point - chipWidth(l.Mark, chipStyle)
		chip(m, x, 0.4*paper.Point, l.Mark, chipStyle, white)
	}
}
