package paperview

import (
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// picture sets a picture in the middle, with words below.
func (s *pageLayout) picture(line scaleticket.PaperLine) {
	side := s.pictureSide()
	s.pictureAt(line, (s.width-side)/2)
	s.y += side + 2*s.Pad()
	if line.Left != "" {
		s.middle(line.Left, PaperSmall)
	}
}

func (s *pageLayout) pictureSide() float32 { return 6 * s.leading(PaperPlain) }

func (s *pageLayout) pictureAt(line scaleticket.PaperLine, left float32) {
	if line.Picture == nil {
		return
	}
	img := canvas.NewImageFromImage(line.Picture)
	img.ScaleMode, img.FillMode = canvas.ImageScalePixels, canvas.ImageFillContain
	img.Resize(fyne.NewSquareSize(s.pictureSide()))
	img.Move(paint.Whole(fyne.NewPos(left, s.y+s.Pad())))
	s.add(img)
}

// foot sets a picture at the right with its words below, and small print
// beside it.
func (s *pageLayout) foot(picture scaleticket.PaperLine, sentences []scaleticket.PaperLine) {
	side := s.pictureSide()
	s.pictureAt(picture, s.right()-side)
	end := s.y + side + 2*s.Pad()
	for _, l := range sentences {
		for _, text := range s.Wrap(l.Left, PaperSmall, s.room()-side-2*s.Inner()) {
			s.add(s.Write(text, PaperSmall, fyne.NewPos(s.margin(), s.y)))
			s.y += s.leading(PaperSmall)
		}
	}
	s.y = max(s.y, end)
	if picture.Left != "" {
		s.add(s.WriteEnding(picture.Left, PaperSmall, s.right(), s.y))
		s.y += s.leading(PaperSmall)
	}
}
