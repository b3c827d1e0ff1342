package kit

import (
	"tenthpoint/internal/slip"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// picture sets a picture in the middle, with words beneath.
func (s *setting) picture(line slip.PaperLine) {
	side := s.pictureSide()
	s.pictureAt(line, (s.width-side)/2)
	s.y += side + 2*s.pad()
	if line.Left != "" {
		s.middle(line.Left, paperSmall)
	}
}

func (s *setting) pictureSide() float32 { return 6 * s.leading(paperPlain) }

func (s *setting) pictureAt(line slip.PaperLine, left float32) {
	if line.Picture == nil {
		return
	}
	img := canvas.NewImageFromImage(line.Picture)
	img.ScaleMode, img.FillMode = canvas.ImageScalePixels, canvas.ImageFillContain
	img.Resize(fyne.NewSquareSize(s.pictureSide()))
	img.Move(whole(fyne.NewPos(left, s.y+s.pad())))
	s.add(img)
}

// foot sets a picture at the right with its words beneath, and small print
// beside it.
func (s *setting) foot(picture slip.PaperLine, sentences []slip.PaperLine) {
	side := s.pictureSide()
	s.pictureAt(picture, s.right()-side)
	end := s.y + side + 2*s.pad()
	for _, l := range sentences {
		for _, text := range s.wrap(l.Left, paperSmall, s.room()-side-2*s.inner()) {
			s.add(s.write(text, paperSmall, fyne.NewPos(s.margin(), s.y)))
			s.y += s.leading(paperSmall)
		}
	}
	s.y = max(s.y, end)
	if picture.Left != "" {
		s.add(s.writeEnding(picture.Left, paperSmall, s.right(), s.y))
		s.y += s.leading(paperSmall)
	}
}
