package sheet

import "tenthpoint/internal/paper"

// A slip has to come out of any printer, so every ink is distinct in grey as well.
var (
	noInk = paper.Ink{}
	black = paper.Colour(22, 26, 30)
	quiet = paper.Colour(92, 98, 104)
	hair  = paper.Colour(176, 182, 188)
	white = paper.Colour(255, 255, 255)
	veil  = paper.Colour(216, 221, 222)
	tint  = paper.Colour(240, 243, 242)
	leaf  = paper.Colour(28, 84, 66)
	stop  = paper.Colour(168, 40, 28)
	faint = paper.Colour(250, 222, 216)
	ghost = paper.Colour(236, 239, 240)
)

// The letters of a slip.
var (
	nameStyle    = paper.Style{Size: 13 * paper.Point, Bold: true, Ink: black}
	numberStyle  = paper.Style{Size: 23 * paper.Point, Bold: true, Ink: black}
	figureStyle  = paper.Style{Size: 17 * paper.Point, Bold: true, Ink: black}
	unitStyle    = paper.Style{Size: 8.5 * paper.Point, Bold: true, Ink: quiet}
	plainStyle   = paper.Style{Size: 7.9 * paper.Point, Ink: black}
	strongStyle  = paper.Style{Size: 7.9 * paper.Point, Bold: true, Ink: black}
	factStyle    = paper.Style{Size: 6.6 * paper.Point, Ink: quiet}
	noteStyle    = paper.Style{Size: 6.3 * paper.Point, Ink: quiet}
	addressStyle = paper.Style{Size: 7.2 * paper.Point, Ink: quiet}
	titleStyle   = paper.Style{Size: 6.4 * paper.Point, Bold: true, Ink: leaf}
	labelStyle   = paper.Style{Size: 6.0 * paper.Point, Ink: quiet}
	codeStyle    = labelStyle.In(black)
	markStyle    = paper.Style{Size: 7.0 * paper.Point, Bold: true, Ink: black}
	chipStyle    = markStyle.Sized(6.2 * paper.Point)
)

// chip draws a word in a frame, to be noticed. Its top is at y.
func chip(m *paper.Marks, x, y paper.Length, word string, s paper.Style, fill paper.Ink) {
	m.Box(x, y, chipWidth(word, s), chipHeight(s), fill, black)
	m.Text(x+s.Size*6/10, y+s.Size*11/10, word, s)
}

func chipWidth(word string, s paper.Style) paper.Length { return s.Width(word) + s.Size*12/10 }

func chipHeight(s paper.Style) paper.Length { return s.Size * 15 / 10 }
