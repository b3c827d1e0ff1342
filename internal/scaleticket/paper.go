package scaleticket

import (
	"image"
	"strings"
)

// PaperKind says how a line stands on the screen's paper.
type PaperKind int

// The kinds of line on the screen's paper.
const (
	PaperPair    PaperKind = iota // what at the left, how much at the right
	PaperTotal                    // a pair people look for first, in bold
	PaperTitle                    // large, in the middle
	PaperMiddle                   // ordinary, in the middle
	PaperText                     // running text at the left
	PaperSmall                    // a pair or running text in small print
	PaperRule                     // a ruled line across
	PaperGap                      // an empty line
	PaperMissing                  // a pair whose right part is still to come
	PaperMark                     // a pair or sentence that must be noticed
	PaperStamp                    // a word stamped across: VOID
	PaperPicture                  // the QR code
	PaperHeading                  // the title of a part
	PaperFigure                   // a large figure under its name
	PaperFold                     // the title of what is the second page on paper
)

// PaperLine is one line of the slip as the screen shows it.
type PaperLine struct {
	Kind  PaperKind
	Field string // the fact the line stands for, as in Line
	Left  string
	Right string
	Note  string // said beside or below, small
	// Beside marks a fact of little weight, which may share its row with another.
	Beside bool
	// Picture is the QR code of a PaperPicture, one pixel to a module.
	Picture image.Image
}

// Paper lists the document for the screen: the same words in the same order as
// they print.
func Paper(d Document) []PaperLine {
	p := &paper{}
	for _, s := range d.Sections {
		if s.Form != SmallPrint {
			p.section(s, d)
		}
	}
	p.add(PaperGap, "", "")
	p.code(d)
	for _, sentence := range d.Footer {
		p.lines = append(p.lines, PaperLine{Kind: PaperSmall, Left: sentence, Beside: true})
	}
	for _, s := range d.Sections {
		if s.Form == SmallPrint {
			p.smallPrint(s)
		}
	}
	return p.lines
}

type paper struct{ lines []PaperLine }

func (p *paper) add(kind PaperKind, left, right string) {
	p.lines = append(p.lines, PaperLine{Kind: kind, Left: left, Right: right})
}

func (p *paper) section(s Section, d Document) {
	switch s.Form {
	case Letterhead:
		p.letterhead(s)
		return
	case Numbering:
		p.numbering(s)
		p.marks(d)
		return
	case Figures:
	case Signing:
		p.add(PaperRule, "", "")
	default:
		p.add(PaperHeading, strings.ToUpper(s.Title), "")
	}
	for _, l := range s.Lines {
		p.set(l, s.Form)
	}
}

// letterhead is the business large, and the rest of it strung together.
func (p *paper) letterhead(s Section) {
	for _, l := range s.Lines {
		line := PaperLine{Kind: PaperMiddle, Field: l.Field, Left: Joined(" ", l.Label, l.Value), Beside: true}
		switch {
		case l.Missing:
			line.Kind, line.Beside = PaperMissing, false
		case l.Emphasis:
			line.Kind, line.Beside = PaperTitle, false
		}
		p.lines = append(p.lines, line)
	}
	p.add(PaperRule, "", "")
}

// numbering is the title with the number large beside it, how the ticket
// stands, and what made it so.
func (p *paper) numbering(s Section) {
	for _, l := range s.Lines {
		switch l.Field {
		case "number":
			p.lines = append(p.lines, PaperLine{Kind: PaperTitle, Field: l.Field, Left: s.Title, Right: Joined(" ", l.Label, l.Value)})
		case "status", "copy":
			p.lines = append(p.lines, PaperLine{Kind: PaperMiddle, Field: l.Field, Left: Joined(" ", l.Label, l.Value), Beside: true})
		default:
			p.set(l, s.Form)
		}
	}
}

func (p *paper) marks(d Document) {
	for _, mark := range d.Marks {
		line := PaperLine{Kind: PaperMark, Left: mark, Beside: true}
		if mark == d.Stamp && !d.Preview {
			line = PaperLine{Kind: PaperStamp, Left: mark}
		}
		p.lines = append(p.lines, line)
	}
}

// set lists one line of a part of the ticket. Facts and names to sign by may
// share a row, and so do the figures people look for first.
func (p *paper) set(l Line, in Form) {
	line := PaperLine{
		Kind: paperKind(l), Field: l.Field, Left: l.Label,
		Right: Joined(" ", l.Mark, l.Value), Note: Joined("\n", l.Notes...),
		Beside: (in == Facts || in == Signing || in == Figures) && l.Kind != Warning && l.Kind != Heading && l.Mark == "",
	}
	if in == Figures && !l.Missing {
		line.Kind = PaperFigure
	}
	if l.Kind == Heading {
		p.add(PaperGap, "", "")
	}
	p.lines = append(p.lines, line)
}

func paperKind(l Line) PaperKind {
	switch {
	case l.Missing:
		return PaperMissing
	case l.Kind == Struck:
		return PaperSmall
	case l.Kind == Warning || l.Mark != "":
		return PaperMark
	case l.Kind == Total || l.Kind == Heading || l.Emphasis:
		return PaperTotal
	case l.Kind == Sentence:
		return PaperText
	}
	return PaperPair
}

func (p *paper) code(d Document) {
	payload, ok := QR(d)
	if !ok {
		return
	}
	if picture, err := payload.Picture(); err == nil {
		p.lines = append(p.lines, PaperLine{Kind: PaperPicture, Left: d.CodeLine, Picture: picture, Beside: true})
	}
}

func (p *paper) smallPrint(s Section) {
	p.add(PaperFold, strings.ToUpper(s.Title), "")
	for _, l := range s.Lines {
		if l.Kind == Heading {
			p.add(PaperGap, "", "")
		}
		p.lines = append(p.lines, PaperLine{Kind: PaperSmall, Left: l.Label, Right: l.Value, Note: Joined("\n", l.Notes...)})
	}
}
