package typeset

import (
	"image"

	"tenthpoint/internal/scaleticket"
)

// codeSide is the side of the QR code, its quiet zone not counted.
const codeSide = 50.0

var codeStyle = labelStyle.in(black)

// signing is the rules to sign on with their names below, the QR code at the
// right, and the footer.
func signing(s scaleticket.Section, d scaleticket.Document, picture image.Image, width float64) block {
	room, sentences := width, d.Footer
	if picture != nil {
		room -= codeSide + 16
	} else if d.CodeLine != "" {
		sentences = append(sentences[:len(sentences):len(sentences)], d.CodeLine)
	}
	names := signatures(s, room)
	var foot []string
	for _, sentence := range sentences {
		foot = append(foot, noteStyle.wrap(sentence, room)...)
	}
	height := names.height + float64(len(foot))*noteStyle.leading()
	if picture != nil {
		height = max(height, codeSide+3+codeStyle.leading())
	}
	return block{above: 7, height: height, draw: func(c canvas, x, y float64) {
		names.draw(c, x, y)
		paragraph(c, x, y+names.height, foot, noteStyle)
		if picture != nil {
			drawCode(c, x+width, y+2, picture, d.CodeLine)
		}
	}}
}

// signatures sets the rules side by side, each with what it is for and the
// name of who signs.
func signatures(s scaleticket.Section, width float64) block {
	const between, space, rule = 12.0, 20.0, 21.5
	each := (width - between*float64(len(s.Lines)-1)) / float64(len(s.Lines))
	names := make([][]string, len(s.Lines))
	most := 1
	for i, l := range s.Lines {
		names[i] = plainStyle.wrap(l.Value, each-labelStyle.width(l.Label)-8)
		most = max(most, len(names[i]))
	}
	return block{height: rule + float64(most)*plainStyle.leading() + 4, draw: func(c canvas, x, y float64) {
		for i, l := range s.Lines {
			c.line(x, y+space, x+each, y+space, 0.6, black)
			c.text(x, y+rule+plainStyle.baseline(), l.Label, labelStyle)
			look := plainStyle
			if l.Missing {
				look = look.in(stop)
			}
			for n, name := range names[i] {
				textRight(c, x+each, y+rule+float64(n)*look.leading()+look.baseline(), name, look)
			}
			x += each + between
		}
	}}
}

// drawCode draws the QR code so that it ends at right, and under it the code in
// letters, for whoever has no scanner.
func drawCode(c canvas, right, y float64, picture image.Image, line string) {
	modules(c, right-codeSide, y, codeSide/float64(picture.Bounds().Dx()), picture)
	look := codeStyle.fitted(line, codeSide+8, 3)
	textRight(c, right, y+codeSide+1+look.baseline(), line, look)
}

func qrPicture(d scaleticket.Document) image.Image {
	payload, ok := scaleticket.QR(d)
	if !ok {
		return nil
	}
	picture, err := payload.Picture()
	if err != nil {
		return nil
	}
	return picture
}

// modules draws the dark pixels of a code as boxes, those side by side in one
// piece, so that no hair line parts them.
func modules(c canvas, x, y, side float64, code image.Image) {
	b := code.Bounds()
	for row := b.Min.Y; row < b.Max.Y; row++ {
		for col := b.Min.X; col < b.Max.X; col++ {
			run := darkRun(code, col, row)
			if run > 0 {
				c.box(x+float64(col-b.Min.X)*side, y+float64(row-b.Min.Y)*side, float64(run)*side, side, black, noInk)
				col += run
			}
		}
	}
}

// darkRun is how many dark pixels follow each other from one to the right.
func darkRun(code image.Image, x, y int) int {
	run := 0
	for x+run < code.Bounds().Max.X && isDark(code, x+run, y) {
		run++
	}
	return run
}

func isDark(code image.Image, x, y int) bool {
	r, _, _, _ := code.At(x, y).RGBA()
	return r < 0x8000
}
