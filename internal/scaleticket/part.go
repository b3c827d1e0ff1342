package scaleticket

// part is a section while it is composed, with the facts it is composed from.
type part struct {
	*facts
	Section
}

func newPart(t *facts, id, title string, form Form) *part {
	return &part{t, Section{ID: id, Title: title, Form: form}}
}

func (p *part) put(lines ...Line) {
	for _, l := range lines {
		l.Missing = l.Missing && !p.isRefused()
		p.Lines = append(p.Lines, l)
	}
}

// fact adds a pair; without a value it prints the word for its absence.
func (p *part) fact(label, value, absent string) {
	p.known("", label, value, absent)
}

// known is a fact that the form has a field for.
func (p *part) known(field, label, value, absent string) {
	if value == "" {
		value = absent
	}
	p.put(Line{Field: field, Label: label, Value: value})
}

// need adds a pair that every ticket must have.
func (p *part) need(field, label, value, absent string) {
	if value == "" {
		p.put(Line{Field: field, Label: label, Value: absent, Missing: true})
		return
	}
	p.put(Line{Field: field, Label: label, Value: value})
}

// given adds a pair only if it has a value.
func (p *part) given(label, value string) {
	if value != "" {
		p.put(Line{Label: label, Value: value})
	}
}

func (p *part) warn(sentence string) {
	if sentence != "" {
		p.put(Line{Kind: Warning, Label: sentence})
	}
}
