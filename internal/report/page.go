package report

import "tenthpoint/internal/paper"

// Paper is a size of paper.
type Paper string

// Letter is 8.5 by 11 inches; A4 is 210 by 297 millimetres.
const (
	Letter Paper = "letter"
	A4     Paper = "a4"
)

// Page is the paper a document is printed on. The zero Page is a letter sheet
// upright.
type Page struct {
	Paper     Paper
	Landscape bool
}

// PageFor returns the paper size of a rule set: A4 unless it is North American.
func PageFor(rules string) Page {
	switch rules {
	case "us", "canada", "":
		return Page{Paper: Letter}
	}
	return Page{Paper: A4}
}

// Wide is the same paper on its side.
func (p Page) Wide() Page {
	p.Landscape = true
	return p
}

// sizes of paper, upright.
var sizes = map[Paper][2]paper.Length{
	Letter: {612 * pt, 792 * pt},
	A4:     {595.28 * pt, 841.89 * pt},
}

// size returns the width and height of the page.
func (p Page) size() (width, height paper.Length) {
	size, known := sizes[p.Paper]
	if !known {
		size = sizes[Letter]
	}
	if p.Landscape {
		return size[1], size[0]
	}
	return size[0], size[1]
}
