package status

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Badge shows a state: icon, word and colour on a tinted background.
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

// Say sets the state and word of the badge.
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

// CreateRenderer draws the badge.
func (b *Badge) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(b) }

func (b *Badge) textStyle() paint.TextStyle {
	return paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.StateInk(b.state), Style: paint.Bold}
}

func (b *Badge) iconRoom(p paint.Painter) float32 {
	if apptheme.StateIcon(b.state) == nil {
		return 0
	}
	return p.LineHeight(b.textStyle()) + p.Pad()
}

func (b *Badge) LeastSize() fyne.Size {
	p := paint.PainterFor(b)
	text := p.Measure(b.word, b.textStyle())
	return fyne.NewSize(text.Width+b.iconRoom(p)+2*p.Inner(), text.Height+p.Inner())
}

func (b *Badge) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(b)
	l := b.textStyle()
	least := b.LeastSize()
	y := (size.Height - least.Height) / 2
	ground := p.Block(apptheme.StateGround(b.state), fyne.NewPos(0, y), least)
	ground.CornerRadius = p.Size(theme.SizeNameInputRadius)
	ground.StrokeColor, ground.StrokeWidth = p.Color(apptheme.StateInk(b.state)), 1
	objects := []fyne.CanvasObject{ground}
	if icon := apptheme.StateIcon(b.state); icon != nil {
		objects = append(objects, p.Icon(icon, fyne.NewPos(p.Inner(), y+p.Inner()/2+1), p.LineHeight(l)-2))
	}
	at := fyne.NewPos(p.Inner()+b.iconRoom(p), y+p.Inner()/2)
	return append(objects, p.Write(b.word, l, at))
}
