package slip

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
)

// PaperLine is one line of the slip as the screen shows it.
type PaperLine struct {
	Kind  PaperKind
	Field string // the fact the line stands for, as in Line
	Left  string
	Right string
	Note  string // said beneath, small
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
	p.code(d)
	p.add(PaperGap, "", "")
	for _, sentence := range d.Footer {
		p.add(PaperSmall, sentence, "")
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
		p.add(PaperRule, "", "")
		p.add(PaperTitle, s.Title, "")
		defer p.marks(d)
	case Figures, Signing:
		p.add(PaperRule, "", "")
	default:
		p.add(PaperGap, "", "")
		p.add(PaperSmall, strings.ToUpper(s.Title), "")
		p.add(PaperRule, "", "")
	}
	for _, l := range s.Lines {
		p.set(l)
	}
}

func (p *paper) letterhead(s Section) {
	for _, l := range s.Lines {
		kind := PaperMiddle
		switch {
		case l.Missing:
			kind = PaperMissing
		case l.Emphasis:
			kind = PaperTitle
		}
		p.lines = append(p.lines, PaperLine{Kind: kind, Field: l.Field, Left: joined(" ", l.Label, l.Value)})
	}
}

func (p *paper) marks(d Document) {
	for _, mark := range d.Marks {
		kind := PaperMark
		if mark == d.Stamp {
			kind = PaperStamp
		}
		p.add(kind, mark, "")
	}
}

// set lists one line of the ticket.
func (p *paper) set(l Line) {
	line := PaperLine{
		Kind: paperKind(l), Field: l.Field, Left: l.Label,
		Right: joined(" ", l.Mark, l.Value), Note: joined("\n", l.Notes...),
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
		p.lines = append(p.lines, PaperLine{Kind: PaperPicture, Left: d.CodeLine, Picture: picture})
	}
}

func (p *paper) smallPrint(s Section) {
	p.add(PaperGap, "", "")
	p.add(PaperSmall, strings.ToUpper(s.Title), "")
	p.add(PaperRule, "", "")
	for _, l := range s.Lines {
		if l.Kind == Heading {
			p.add(PaperGap, "", "")
		}
		p.lines = append(p.lines, PaperLine{Kind: PaperSmall, Left: l.Label, Right: l.Value, Note: joined("\n", l.Notes...)})
	}
}
