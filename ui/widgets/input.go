package widgets

import (
	"strings"

	"tenthpoint/ui/model"
)

// Input has the event handlers of a field's entry. Each may be nil.
type Input struct {
	// Edit is called with the value as it changes: a text, the code of an option, TickOn.
	Edit func(value string)
	// Enter returns the next stop; "" is the following one.
	Enter func() (next string)
	// Leave is called with the text when the field loses focus; unfound means that nothing on its
	// list matches the text.
	Leave func(text string, unfound bool)
	// Search is called with the letters typed to find an option, while none is chosen.
	Search func(text string)
	// Refused is called with the reason why typed or pasted text was rejected.
	Refused func(why string)
}

// New makes the place to type of a field, with its value in it.
func (in Input) New(f model.Field) Keyed {
	var made Keyed
	switch f.Kind {
	case model.FindField, model.OpenField:
		made = in.autocomplete(f)
	case model.TickField:
		made = in.checkbox()
	default:
		e := in.entry(f.Kind == model.FigureField)
		e.Password = f.Kind == model.SecretField
		made = e
	}
	if e, typed := made.(interface{ body() *FieldEntry }); typed {
		e.body().OnRefuse = in.Refused
		e.body().Words = f.Words
		if f.Most > 0 {
			e.body().Most = f.Most
		}
	}
	SetInput(made, f)
	return made
}

func (in Input) edited(value string) {
	if in.Edit != nil {
		in.Edit(value)
	}
}

func (in Input) checkbox() *Checkbox {
	c := NewCheckbox("")
	c.OnToggle = func(on bool) { in.edited(ticked(on)) }
	if in.Enter != nil {
		c.OnCommit = func(bool) string { return in.Enter() }
	}
	return c
}

func (in Input) entry(figures bool) *FieldEntry {
	e := NewFieldEntry()
	if figures {
		e = NewFigureEntry()
	}
	e.OnEdit = in.edited
	if in.Enter != nil {
		e.OnCommit = func(string) string { return in.Enter() }
	}
	if in.Leave != nil {
		e.OnLeave = func(text string) { in.Leave(text, false) }
	}
	return e
}

func (in Input) autocomplete(f model.Field) *Autocomplete {
	p := NewAutocomplete(f.Options)
	p.FreeText = f.Kind == model.OpenField
	p.OnPick = func(o model.Option) { in.edited(o.Code) }
	p.OnUnpick = func() { in.edited("") }
	p.OnNoFit = in.edited
	p.OnEdit = func(text string) {
		switch {
		case p.FreeText || text == "":
			in.edited(text)
		case in.Search != nil:
			in.Search(text)
		}
	}
	if in.Enter != nil {
		p.OnCommit = func(string) string { return in.Enter() }
	}
	if in.Leave != nil {
		p.OnLeave = func(text string) {
			_, chosen := p.Chosen()
			in.Leave(text, !chosen && !p.FreeText)
		}
	}
	return p
}

func ticked(on bool) string {
	if on {
		return model.TickOn
	}
	return ""
}

// SetInput writes a field's value into its place to type. Nothing is called back.
func SetInput(place Keyed, f model.Field) {
	switch e := place.(type) {
	case *Autocomplete:
		e.SetOptions(f.Options)
		e.SetChosen(f.Value)
	case *FieldEntry:
		e.SetText(f.Value)
	case *Checkbox:
		e.SetOn(f.Value == model.TickOn)
	}
}

// InputValue is the value in a place to type: a text, the code of the option that
// is chosen or typed in full, TickOn.
func InputValue(place Keyed) string {
	switch e := place.(type) {
	case *Checkbox:
		return ticked(e.On())
	case *Autocomplete:
		if o, chosen := e.Chosen(); chosen {
			return o.Code
		}
		if o, found, _ := model.Exact(e.options, e.Text); found {
			return o.Code
		}
		if e.FreeText {
			return strings.TrimSpace(e.Text)
		}
	case *FieldEntry:
		return strings.TrimSpace(e.Text)
	}
	return ""
}
