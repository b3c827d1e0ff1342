package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
)

// scanner tells what a reader of barcodes types from what a person types. A reader is a keyboard to the
// computer: it types what the code says, then Enter, into whatever has the keyboard. What it reads is
// known by its mark, letters that begin every code of ours and that nobody begins a text with; its speed
// says nothing, for there are slow readers and quick hands. Once a mark is complete, the place that it
// was typed into is as it was before, and the rest up to Enter is kept for the code.
type scanner struct {
	marks   []string
	scanned func(code string)

	seen    string // the letters that may yet become a mark
	restore func() // puts back the place they were typed into; nil where nothing was changed
	reading bool
	code    strings.Builder
}

// longestScan is more than any code has; a reader that goes on beyond it has lost its Enter.
const longestScan = 2000

// OnScan sets the marks that codes begin with, and what is done with a code. A box that is open takes
// the letters of a code as any others.
func (s *UIContext) OnScan(marks []string, scanned func(code string)) {
	s.scan.marks, s.scan.scanned = marks, scanned
}

// changeable is a place that letters change.
type changeable interface{ restorer() func() }

// letter takes a letter that was typed at a stop, and reports whether it belongs to a code.
func (s *scanner) letter(at any, r rune) bool {
	if s.reading {
		if s.code.Len() > longestScan {
			s.end()
			return false
		}
		s.code.WriteRune(r)
		return true
	}
	if !s.begins(s.seen + string(r)) {
		s.seen = ""
	}
	if !s.begins(s.seen + string(r)) {
		return false
	}
	if s.seen == "" {
		s.restore = nil
		if place, ok := at.(changeable); ok {
			s.restore = place.restorer()
		}
	}
	s.seen += string(r)
	for _, mark := range s.marks {
		if s.seen == mark {
			s.begin()
			return true
		}
	}
	return false
}

// begins reports whether letters are the beginning of a mark.
func (s *scanner) begins(letters string) bool {
	for _, mark := range s.marks {
		if strings.HasPrefix(mark, letters) {
			return true
		}
	}
	return false
}

func (s *scanner) begin() {
	s.reading = true
	s.code.WriteString(s.seen)
	if s.restore != nil {
		s.restore()
	}
}

// key takes a key, and reports whether it belongs to a code: Enter ends one, Escape gives it up, and
// the others are not meant for anything else.
func (s *scanner) key(name fyne.KeyName) bool {
	if !s.reading {
		if movesOrEdits[name] { // the letters so far may not be those before the next one any more
			s.seen = ""
		}
		return false
	}
	switch name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyTab:
		code := s.code.String()
		s.end()
		s.scanned(code)
	case fyne.KeyEscape:
		s.end()
	}
	return true
}

// movesOrEdits are the keys after which a mark begins anew. A letter is a key as well, before it is a
// letter.
var movesOrEdits = map[fyne.KeyName]bool{
	fyne.KeyReturn: true, fyne.KeyEnter: true, fyne.KeyTab: true, fyne.KeyEscape: true, fyne.KeyBackspace: true, fyne.KeyDelete: true,
	fyne.KeyLeft: true, fyne.KeyRight: true, fyne.KeyUp: true, fyne.KeyDown: true, fyne.KeyHome: true, fyne.KeyEnd: true,
}

func (s *scanner) end() {
	s.seen, s.reading, s.restore = "", false, nil
	s.code.Reset()
}

// scans offers a letter to the reader of codes first, and reports whether it was taken.
func (s *focusStop) scans(r rune) bool {
	return s.order != nil && s.order.ui.FrontDialog() == nil && s.order.ui.scan.letter(s.Stop, r)
}

// restorer puts back the text as it now is.
func (e *FieldEntry) restorer() func() {
	text := e.Text
	return func() {
		e.SetText(text)
		if e.OnEdit != nil {
			e.OnEdit(text)
		}
	}
}

// restorer puts back the choice, or the letters to find one by.
func (p *Autocomplete) restorer() func() {
	letters := p.FieldEntry.restorer()
	o, chosen := p.Chosen()
	return func() {
		p.hideList()
		if !chosen {
			letters()
			return
		}
		p.SetChosen(o.Code)
		if p.OnPick != nil {
			p.OnPick(o)
		}
	}
}
