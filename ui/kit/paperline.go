package kit

import "image"

// PaperKind says how a line stands on the paper.
type PaperKind int

// The kinds of line a slip has.
const (
	PaperPair    PaperKind = iota // what at the left, how much at the right
	PaperTotal                    // a pair people look for first, in bold
	PaperTitle                    // large, in the middle; with a right part, a large pair
	PaperMiddle                   // ordinary, in the middle
	PaperText                     // running text at the left, wrapped
	PaperSmall                    // a pair or running text in small print
	PaperRule                     // a ruled line across
	PaperGap                      // an empty line
	PaperMissing                  // a pair whose right part is still to come
	PaperMark                     // a pair that must be noticed: a manual weight
	PaperStamp                    // a word stamped across the line: VOID
	PaperPicture                  // a picture in the middle, such as a QR code
	PaperHeading                  // the title of a part, with a line after it
	PaperFigure                   // a large figure under its name; several stand side by side
	PaperFold                     // the title of what would be the second page
)

// PaperLine is one line of a slip, ready to show.
type PaperLine struct {
	Kind  PaperKind
	Left  string
	Right string
	Note  string // said beside or beneath, small: the working of the line
	// Beside lets a line share its row with a neighbour that may as well, where
	// the paper is wide enough: facts of little weight.
	Beside  bool
	Picture image.Image // for PaperPicture only
}
