package widgets

import (
	"strings"
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
)

// Autocomplete finds one of many by a code or a few letters. The list opens below as soon as
// something is typed, or on arrow down.
//
// A code typed in full wins at once: OnPick is called without Enter when no
// other code could follow. Enter takes the marked line, and so does leaving the
// field; Escape closes the list before it does anything else.
type Autocomplete struct {
	FieldEntry

	OnPick   func(model.Option) // an option was chosen by the person
	OnUnpick func()             // the chosen one was typed over
	OnNoFit  func(text string)  // Enter on text that fits nothing; not with FreeText

	// FreeText accepts text that matches no option, such as a truck never seen.
	FreeText bool

	options []model.Option
	fits    []model.Option
	marked  int // index in fits; -1 while nothing is marked
	chosen  *model.Option
	list    *suggestions
	shown   bool
}

var _ Keyed = (*Autocomplete)(nil)

// NewAutocomplete makes a find field over some options.
func NewAutocomplete(options []model.Option) *Autocomplete {
	p := &Autocomplete{options: options, marked: -1}
	p.prepare(p)
	p.Most = mostName
	p.list = newSuggestions(p)
	p.OnChanged = func(text string) {
		if !p.showing {
			p.typed(text)
		}
	}
	return p
}

// SetOptions replaces the options. The choice stays.
func (p *Autocomplete) SetOptions(options []model.Option) {
	p.options = options
	if p.shown {
		p.filter()
		p.showList()
	}
}

// Chosen returns the option the field holds, if any.
func (p *Autocomplete) Chosen() (model.Option, bool) {
	if p.chosen == nil {
		return model.Option{}, false
	}
	return *p.chosen, true
}

// SetChosen shows the option of a code as chosen; "" empties the field. It
// calls nothing back. A code that is not among the options is shown as text.
func (p *Autocomplete) SetChosen(code string) {
	if p.chosen != nil && p.chosen.Code == code {
		return
	}
	p.chosen = nil
	text := code
	for _, o := range p.options {
		if o.Code == code && code != "" {
			p.chosen = &o
			text = o.String()
		}
	}
	p.hideList()
	p.SetText(text)
}

// ListOpen reports whether the list is showing.
func (p *Autocomplete) ListOpen() bool { return p.shown }

// Fits returns the options listed now, and the marked index or -1.
func (p *Autocomplete) Fits() ([]model.Option, int) { return p.fits, p.marked }

// typed follows the person's typing.
func (p *Autocomplete) typed(text string) {
	if p.chosen != nil {
		p.chosen = nil
		if p.OnUnpick != nil {
			p.OnUnpick()
		}
	}
	if p.OnEdit != nil {
		p.OnEdit(text)
	}
	p.filter()
	if o, _, final := model.Exact(p.options, text); final {
		p.choose(o)
		return
	}
	if strings.TrimSpace(text) == "" {
		p.hideList()
		return
	}
	p.showList()
}

// filter finds the matching options and marks the best. Free text marks only a code typed in full,
// so that Enter keeps what was typed.
func (p *Autocomplete) filter() {
	p.fits = model.Matching(p.options, p.Text)
	p.marked = -1
	_, found, _ := model.Exact(p.options, p.Text)
	if len(p.fits) > 0 && (!p.FreeText || found) {
		p.marked = 0
	}
	p.list.top = 0
}

// choose takes an option. The text stays as typed until the field is left.
func (p *Autocomplete) choose(o model.Option) {
	p.chosen = &o
	p.hideList()
	if p.OnPick != nil {
		p.OnPick(o)
	}
}

// settle writes the chosen option out in full.
func (p *Autocomplete) settle() {
	if p.chosen != nil {
		p.SetText(p.chosen.String())
	}
}

// take is Enter: the marked line, or free text, or a complaint.
func (p *Autocomplete) take() {
	switch {
	case p.shown && p.marked >= 0:
		p.choose(p.fits[p.marked])
	case p.chosen == nil && strings.TrimSpace(p.Text) != "" && !p.FreeText:
		if fits := model.Matching(p.options, p.Text); len(fits) > 0 && !p.shown {
			p.filter()
			p.showList()
			return
		}
		if p.OnNoFit != nil {
			p.OnNoFit(p.Text)
		}
		return
	}
	p.goOn()
}

// goOn commits the choice and moves the focus on.
func (p *Autocomplete) goOn() {
	p.hideList()
	p.settle()
	p.Commit()
}

// TypedKey: the open list first, then order, commands and cursor.
func (p *Autocomplete) TypedKey(ev *fyne.KeyEvent) {
	switch {
	case p.order != nil && p.order.ui.scan.key(ev.Name): // of a code, not of a search
	case ev.Name == fyne.KeyEscape && p.shown:
		p.hideList()
	case ev.Name == fyne.KeyDown && !p.Disabled():
		p.down()
	case ev.Name == fyne.KeyUp && p.shown:
		p.mark(p.marked - 1)
	case ev.Name == fyne.KeyPageDown && p.shown:
		p.mark(p.marked + p.list.lines)
	case ev.Name == fyne.KeyPageUp && p.shown:
		p.mark(p.marked - p.list.lines)
	case (ev.Name == fyne.KeyReturn || ev.Name == fyne.KeyEnter) && !p.Disabled():
		p.take()
	default:
		p.FieldEntry.TypedKey(ev)
	}
}

// down opens the list, or moves on in it. A chosen option's own text would fit
// only itself, so then everything is listed.
func (p *Autocomplete) down() {
	if p.shown {
		p.mark(p.marked + 1)
		return
	}
	p.filter()
	if p.chosen != nil || len(p.fits) == 0 {
		p.fits = p.options
	}
	p.marked = min(0, len(p.fits)-1)
	p.showList()
}

func (p *Autocomplete) mark(i int) {
	p.marked = max(0, min(i, len(p.fits)-1))
	if len(p.fits) == 0 {
		p.marked = -1
	}
	p.showList()
}

// FocusLost commits what Enter would commit, closes the list, and shows the chosen option.
func (p *Autocomplete) FocusLost() {
	if o, found := p.meant(); found {
		p.choose(o)
	}
	p.hideList()
	p.settle()
	p.FieldEntry.FocusLost()
}

// meant returns the option the typed text selects: the line marked in the open list, a code in
// full, or the only match.
func (p *Autocomplete) meant() (model.Option, bool) {
	if p.chosen != nil || strings.TrimSpace(p.Text) == "" {
		return model.Option{}, false
	}
	if p.shown && p.marked >= 0 {
		return p.fits[p.marked], true
	}
	if o, found, _ := model.Exact(p.options, p.Text); found || p.FreeText {
		return o, found
	}
	fits := model.Matching(p.options, p.Text)
	if len(fits) == 1 {
		return fits[0], true
	}
	return model.Option{}, false
}

func (p *Autocomplete) showList() {
	if p.order == nil {
		return
	}
	p.shown = true
	p.list.fit(p.order.ui.roomAround(p))
	p.list.follow(p.marked)
	size := p.list.MinSize()
	size.Width = max(size.Width, p.Size().Width)
	p.order.ui.float(p.list, p, size)
	p.list.Refresh()
}

func (p *Autocomplete) hideList() {
	if p.shown {
		p.shown = false
		p.order.ui.sink(p.list)
	}
}
