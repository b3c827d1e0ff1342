package typeset

import "tenthpoint/internal/scaleticket"

// figureRoom is the width kept for the figures of a ledger.
const figureRoom = 84.0

// ledger sets lines whose figures stand under each other at the right edge. A
// note stands beside its label where it fits, else below.
func ledger(s scaleticket.Section, width float64) []block {
	inner := width - gutter
	var rows []block
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

func subtitle(l scaleticket.Line, inner float64) block {
	lines := strongStyle.wrap(l.Label, inner)
	return block{above: 5, height: float64(len(lines)) * strongStyle.leading(), tied: true, draw: func(c canvas, x, y float64) {
		paragraph(c, x+gutter, y, lines, strongStyle)
	}}
}

// ledgerLine is one line of a ledger, set: where its parts go.
type ledgerLine struct {
	scaleticket.Line
	inner  float64
	look   style
	label  []string
	beside string // the note, where it fits beside the label
	notes  []string
	value  []string
}

func ledgerRow(l scaleticket.Line, inner float64) block {
	set := ledgerLine{Line: l, inner: inner, look: plainStyle}
	if l.Kind == scaleticket.Total || l.Emphasis {
		set.look = strongStyle
	}
	if l.Emphasis && l.Kind == scaleticket.Total {
		set.look = strongStyle.sized(9)
	}
	set.value = set.look.wrap(l.Value, max(figureRoom, inner*0.45))
	room := inner - set.valueWidth() - 8
	set.label = set.look.wrap(l.Label, room)
	set.placeNotes(room)
	above := 0.0
	if l.Kind == scaleticket.Total {
		above = 2.2
	}
	return block{above: above, height: set.height(), draw: set.draw}
}

// valueWidth is the width of the value with the mark before it.
func (l ledgerLine) valueWidth() float64 {
	w := 0.0
	for _, v := range l.value {
		w = max(w, l.look.width(v))
	}
	if l.Mark != "" {
		w += chipWidth(l.Mark, chipStyle) + 5
	}
	return w
}

var chipStyle = markStyle.sized(6.2)

// placeNotes sets the note beside the label where it fits, else below.
func (l *ledgerLine) placeNotes(room float64) {
	if len(l.label) == 1 && len(l.Notes) == 1 && l.look.width(l.label[0])+6+noteStyle.width(l.Notes[0]) <= room {
		l.beside = l.Notes[0]
		return
	}
	for _, note := range l.Notes {
		l.notes = append(l.notes, noteStyle.wrap(note, l.inner-figureRoom*0.62)...)
	}
}

func (l ledgerLine) height() float64 {
	lines := max(len(l.label), len(l.value))
	h := float64(lines) * l.look.leading()
	if len(l.notes) > 0 {
		h += float64(len(l.notes))*noteStyle.leading() + 1.2
	}
	return h + 0.6
}

func (l ledgerLine) draw(c canvas, x, y float64) {
	x += gutter
	edge := x + l.inner
	if l.Kind == scaleticket.Total {
		c.line(edge-figureRoom, y-0.8, edge, y-0.8, 0.5, black)
	}
	under := y + paragraph(c, x, y, l.label, l.look)
	if l.beside != "" {
		c.text(x+l.look.width(l.label[0])+6, y+l.look.baseline(), l.beside, noteStyle)
	}
	l.drawValue(c, edge, y)
	under = max(under, y+float64(len(l.value))*l.look.leading())
	paragraph(c, x, under, l.notes, noteStyle)
}

func (l ledgerLine) drawValue(c canvas, edge, y float64) {
	widest := 0.0
	for i, v := range l.value {
		at := y + float64(i)*l.look.leading()
		w := l.look.width(v)
		widest = max(widest, w)
		if l.Missing {
			missing(c, edge, at, v, l.look)
			continue
		}
		c.text(edge-w, at+l.look.baseline(), v, l.look)
		if l.Kind == scaleticket.Struck {
			middle := at + l.look.baseline() - l.look.size*0.27
			c.line(edge-w-2, middle, edge+1, middle, 0.8, black)
		}
	}
	if l.Mark != "" {
		w := chipWidth(l.Mark, chipStyle)
		chip(c, edge-widest-5-w, y+0.4, l.Mark, chipStyle, white, black)
	}
}
