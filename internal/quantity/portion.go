package quantity

import "strings"

// Portion is a part of something shared, Parts of Of: 1 of 3, or 33.5 of 100.
type Portion struct {
	Parts Amount `json:"parts"`
	Of    Amount `json:"of"`
}

// Fraction is the part of 1.
func (p Portion) Fraction() Amount { return p.Parts.Div(p.Of) }

// IsPart reports whether it is a part of plain numbers, not below zero.
func (p Portion) IsPart() bool {
	return p.Parts.Unit() == Plain && p.Of.Unit() == Plain && p.Parts.Sign() >= 0 && p.Of.Sign() > 0
}

// String is the part as it was agreed: "1/3", or "33.5 %" of a hundred.
func (p Portion) String() string {
	if p.Of.Equal(Int(100, Plain)) {
		return p.Parts.Figure() + " %"
	}
	return p.Text()
}

// Text is the part as it is typed: "1/3".
func (p Portion) Text() string { return p.Parts.Figure() + "/" + p.Of.Figure() }

// ParsePortion reads a part as people type it: "2/3", "33.5%", or "33.5" in percent. The name says in an
// error what the part is.
func ParsePortion(name, text string) (p Portion, err error) {
	top, bottom, isFraction := strings.Cut(text, "/")
	if !isFraction {
		top, bottom = strings.TrimSuffix(strings.TrimSpace(text), "%"), "100"
	}
	part := Field{Name: name, Places: 4, Min: Of("0.0001", Plain), Max: Int(1_000_000, Plain)}
	if p.Parts, err = part.Parse(top); err != nil {
		return p, err
	}
	p.Of, err = part.Parse(bottom)
	return p, err
}
