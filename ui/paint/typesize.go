package paint

import (
	"tenthpoint/ui/apptheme"

	"fyne.io/fyne/v2"
)

// TypeSizes are the text sizes tried for a slip, relative to the ordinary one: the largest in which
// all of it shows is used.
var TypeSizes = []float32{1, 0.9, 0.8}

// leastLetters is the size below which no letters are set, in Fyne's units:
// smaller ones cannot be read at arm's length.
const leastLetters = 11

// smaller is a theme with smaller text. Line widths and spacing stay unchanged, and so does text
// that is small already.
type smaller struct {
	fyne.Theme
	by float32
}

func (s smaller) Size(name fyne.ThemeSizeName) float32 {
	size := s.Theme.Size(name)
	if _, stroke := apptheme.Strokes[name]; stroke {
		return size
	}
	return max(size*s.by, min(size, leastLetters))
}

// InSize is a painter that writes in one of the sizes of type.
func (p Painter) InSize(by float32) Painter {
	if by != 1 {
		p.Theme = smaller{p.Theme, by}
	}
	return p
}
