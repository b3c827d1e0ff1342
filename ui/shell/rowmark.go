package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
)

// doubtful is the text style of a mark's word.
var doubtful = letters{size: apptheme.SizeNote, color: apptheme.ColorWarn}

// rowMark shows within a row, where there is no line below it, that its field is missing or in
// doubt: by the icon of the state, with the word where there is room.
type rowMark struct {
	state model.State
	icon  *canvas.Image
	word  *Label
	// missing is the word of a field that is still to come.
	missing string
}

func newRowMark(missing string) *rowMark {
	m := &rowMark{missing: missing, icon: canvas.NewImageFromResource(nil), word: NewLabel("", doubtful)}
	m.icon.FillMode = canvas.ImageFillContain
	m.icon.Hide()
	m.word.Hide()
	return m
}

// say marks the row with a state, or with none, and reports whether that is
// another than before.
func (m *rowMark) say(state model.State) bool {
	if m.state == state {
		return false
	}
	m.state, m.icon.Resource = state, apptheme.StateIcon(state)
	m.word.Say("")
	if state == model.Missing {
		m.word.Say(m.missing)
	}
	return true
}

// aside is the room a mark takes beside a place for words: one that is empty has
// it within.
func (m *rowMark) aside(row *FormRow) float32 {
	if row.isFigure() || m.state == model.Plain || m.state == model.Missing {
		return 0
	}
	return row.note.MinSize().Height + theme.InnerPadding()
}

// place puts the mark after the unit, or at the right end of an empty text entry. A figure with no
// room after its unit has it inside the entry, at the left.
func (m *rowMark) place(row *FormRow, entry fyne.CanvasObject, end float32) {
	gap, side := theme.InnerPadding(), row.note.MinSize().Height
	left, right := entry.Position().X, entry.Position().X+entry.Size().Width
	from, to := right+gap, end
	switch {
	case row.isFigure():
		if unit := row.Unit.MinSize().Width; unit > 0 {
			from += unit + gap
		}
		if to-from < side {
			from, to = left+gap, left+gap+side
		}
	case m.state == model.Missing:
		to = right - gap
		from = max(left+gap, to-side-m.wordWidth())
		if row.inHand {
			from = to - side
		}
	}
	m.icon.Move(fyne.NewPos(from, (entry.Size().Height-side)/2+1))
	m.icon.Resize(fyne.NewSquareSize(side - 2))
	m.word.Move(fyne.NewPos(from+side, 0))
	m.word.Resize(fyne.NewSize(m.wordWidth(), entry.Size().Height))
	SetVisible(m.icon, m.state != model.Plain)
	SetVisible(m.word, m.word.Text != "" && to-from >= side+m.wordWidth())
}

// wordWidth is the room the word takes.
func (m *rowMark) wordWidth() float32 {
	if m.word.Text == "" {
		return 0
	}
	return m.word.MinSize().Width + theme.InnerPadding()
}
