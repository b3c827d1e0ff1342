package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Badge says how a thing stands: icon, word and colour on a tinted ground.
type Badge struct {
	widget.BaseWidget
	state model.State
	word  string
}

// NewBadge makes a badge.
func NewBadge(state model.State, word string) *Badge {
	b := &Badge{state: state, word: word}
	b.ExtendBaseWidget(b)
	return b
}

// Say changes what the badge shows.
func (b *Badge) Say(state model.State, word string) {
	if b.state != state || b.word != word {
		b.state, b.word = state, word
		b.Refresh()
	}
}

// State is the state shown now.
func (b *Badge) State() model.State { return b.state }

// Word is the word shown now.
func (b *Badge) Word() string { return b.word }

// CreateRenderer is Fyne's way to draw the badge.
func (b *Badge) CreateRenderer() fyne.WidgetRenderer { return newDrawing(b) }

func (b *Badge) lettering() lettering {
	return lettering{size: SizeNote, color: stateInk(b.state), style: bold}
}

func (b *Badge) iconRoom(p pen) float32 {
	if StateIcon(b.state) == nil {
		return 0
	}
	return p.lineHeight(b.lettering()) + p.pad()
}

func (b *Badge) least() fyne.Size {
	p := penFor(b)
	text := p.measure(b.word, b.lettering())
	return fyne.NewSize(text.Width+b.iconRoom(p)+2*p.inner(), text.Height+p.inner())
}

func (b *Badge) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(b)
	l := b.lettering()
	least := b.least()
	y := (size.Height - least.Height) / 2
	ground := p.block(stateGround(b.state), fyne.NewPos(0, y), least)
	ground.CornerRadius = p.size(theme.SizeNameInputRadius)
	ground.StrokeColor, ground.StrokeWidth = p.color(stateInk(b.state)), 1
	objects := []fyne.CanvasObject{ground}
	if icon := StateIcon(b.state); icon != nil {
		objects = append(objects, p.icon(icon, fyne.NewPos(p.inner(), y+p.inner()/2+1), p.lineHeight(l)-2))
	}
	at := fyne.NewPos(p.inner()+b.iconRoom(p), y+p.inner()/2)
	return append(objects, p.write(b.word, l, at))
}
