package paint

import (
	"strings"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// TextStyle is the size, colour and style of a piece of text.
type TextStyle struct {
	Size  fyne.ThemeSizeName
	Color fyne.ThemeColorName
	Style fyne.TextStyle
}

var Bold = fyne.TextStyle{Bold: true}

// StandIns are letters of the typeface for signs it lacks. A sign from another typeface would be
// off the baseline.
var StandIns = strings.NewReplacer("−", "–")

// Measure returns the size of a text on one line.
func (p Painter) Measure(text string, l TextStyle) fyne.Size {
	return fyne.MeasureText(StandIns.Replace(text), p.Size(l.Size), l.Style)
}

// LineHeight is the height of one line in this lettering, in whole units: a
// line on a fraction of a unit is drawn blurred, with its descenders cut off.
func (p Painter) LineHeight(l TextStyle) float32 { return Ceil(p.Measure("0", l).Height) }

// Write puts text with its top left corner at a place, on whole units.
func (p Painter) Write(text string, l TextStyle, at fyne.Position) *canvas.Text {
	t := canvas.NewText(StandIns.Replace(text), p.Color(l.Color))
	t.TextSize, t.TextStyle = p.Size(l.Size), l.Style
	size := p.Measure(text, l)
	t.Resize(fyne.NewSize(Ceil(size.Width), Ceil(size.Height)))
	t.Move(Whole(at))
	return t
}

// WriteEnding writes right-aligned text that ends at x.
func (p Painter) WriteEnding(text string, l TextStyle, right, top float32) *canvas.Text {
	return p.Write(text, l, fyne.NewPos(right-p.Measure(text, l).Width, top))
}

// WriteMiddle puts text with its middle at x.
func (p Painter) WriteMiddle(text string, l TextStyle, middle, top float32) *canvas.Text {
	return p.Write(text, l, fyne.NewPos(middle-p.Measure(text, l).Width/2, top))
}

// Wrap breaks text into lines no wider than width, at spaces. A word wider than the line has its
// own line and overflows: figures are never split.
func (p Painter) Wrap(text string, l TextStyle, width float32) []string {
	if text == "" {
		return nil
	}
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		lines = append(lines, p.wrapOne(paragraph, l, width)...)
	}
	return lines
}

func (p Painter) wrapOne(text string, l TextStyle, width float32) []string {
	if width <= 0 || p.Measure(text, l).Width <= width {
		return []string{text}
	}
	var lines []string
	line := ""
	for _, word := range Breakable(text) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && p.Measure(longer, l).Width > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	return append(lines, line)
}

// Breakable parts a text where a line may be broken: at blanks, but not at one
// that ties two words together, as a figure and its sign.
func Breakable(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) && !strings.ContainsRune(ties, r) })
}

// ties are the blanks that no line is broken at: the wide one and the narrow one, which French has
// between thousands.
const ties = "\u00a0\u202f"

// Clip shortens text to a width and ends it with three dots.
func (p Painter) Clip(text string, l TextStyle, width float32) string {
	if p.Measure(text, l).Width <= width {
		return text
	}
	letters := []rune(text)
	short, long := 0, len(letters)
	for short < long { // the most letters that still fit
		middle := (short + long + 1) / 2
		if p.Measure(string(letters[:middle])+"…", l).Width <= width {
			short = middle
		} else {
			long = middle - 1
		}
	}
	return strings.TrimRight(string(letters[:short]), " ") + "…"
}
