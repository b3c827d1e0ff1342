package kit

import (
	"strings"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// lettering is how a piece of text is written: how big, which colour, what style.
type lettering struct {
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
	style fyne.TextStyle
}

var bold = fyne.TextStyle{Bold: true}

// standIns are letters of the typeface for signs it lacks. A sign from another
// typeface would stand off the line.
var standIns = strings.NewReplacer("−", "–")

// measure gives the room a text needs on one line.
func (p pen) measure(text string, l lettering) fyne.Size {
	return fyne.MeasureText(standIns.Replace(text), p.size(l.size), l.style)
}

// lineHeight is the height of one line in this lettering, in whole units: a
// line on a fraction of a unit is drawn blurred, with its descenders cut off.
func (p pen) lineHeight(l lettering) float32 { return ceil(p.measure("0", l).Height) }

// write puts text with its top left corner at a place, on whole units.
func (p pen) write(text string, l lettering, at fyne.Position) *canvas.Text {
	t := canvas.NewText(standIns.Replace(text), p.color(l.color))
	t.TextSize, t.TextStyle = p.size(l.size), l.style
	size := p.measure(text, l)
	t.Resize(fyne.NewSize(ceil(size.Width), ceil(size.Height)))
	t.Move(whole(at))
	return t
}

// writeEnding puts text so that it ends at x: figures stand under figures.
func (p pen) writeEnding(text string, l lettering, right, top float32) *canvas.Text {
	return p.write(text, l, fyne.NewPos(right-p.measure(text, l).Width, top))
}

// writeMiddle puts text with its middle at x.
func (p pen) writeMiddle(text string, l lettering, middle, top float32) *canvas.Text {
	return p.write(text, l, fyne.NewPos(middle-p.measure(text, l).Width/2, top))
}

// wrap breaks text into lines no wider than width, at spaces. A word wider
// than the line stands alone and runs over: figures are never cut in two.
func (p pen) wrap(text string, l lettering, width float32) []string {
	if text == "" {
		return nil
	}
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		lines = append(lines, p.wrapOne(paragraph, l, width)...)
	}
	return lines
}

func (p pen) wrapOne(text string, l lettering, width float32) []string {
	if width <= 0 || p.measure(text, l).Width <= width {
		return []string{text}
	}
	var lines []string
	line := ""
	for _, word := range breakable(text) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && p.measure(longer, l).Width > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	return append(lines, line)
}

// breakable parts a text where a line may be broken: at blanks, but not at one
// that ties two words together, as a figure and its sign.
func breakable(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) && r != tie })
}

// tie is the blank that no line is broken at.
const tie = '\u00a0'

// clip shortens text to a width and ends it with three dots.
func (p pen) clip(text string, l lettering, width float32) string {
	if p.measure(text, l).Width <= width {
		return text
	}
	letters := []rune(text)
	short, long := 0, len(letters)
	for short < long { // the most letters that still fit
		middle := (short + long + 1) / 2
		if p.measure(string(letters[:middle])+"…", l).Width <= width {
			short = middle
		} else {
			long = middle - 1
		}
	}
	return strings.TrimRight(string(letters[:short]), " ") + "…"
}
