package main

import (
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
)

// Growers, trucks and bins are found by what a person types: the code, or
// enough of the name.

// grower finds a grower by code, name, or the part of one name only.
func (p *post) grower(text string) (house.Grower, error) {
	all, err := office.Growers(p, p.Desk)
	if err != nil {
		return house.Grower{}, err
	}
	text = strings.TrimSpace(text)
	var like []house.Grower
	for _, g := range all {
		if strings.EqualFold(g.ID, text) || strings.EqualFold(g.Name, text) {
			return g, nil
		}
		if strings.Contains(strings.ToLower(g.Name), strings.ToLower(text)) {
			like = append(like, g)
		}
	}
	switch {
	case len(like) == 1:
		return like[0], nil
	case len(like) > 1:
		return house.Grower{}, refusal("Type the code of one: "+growerNames(like), "%q may be several growers", text)
	}
	return house.Grower{}, refusal("Look with \"tenth grower list\", or add with \"tenth grower add CODE NAME\"", "there is no grower %q here", text)
}

func growerNames(growers []house.Grower) string {
	var out []string
	for _, g := range growers[:min(len(growers), 6)] {
		out = append(out, g.ID+" "+g.Name)
	}
	return strings.Join(out, ", ")
}

// usualShares are a grower's shares as a load names them.
func (p *post) usualShares(g house.Grower) ([]load.Owner, error) {
	var out []load.Owner
	for _, s := range g.Shares {
		owner, err := p.grower(s.GrowerID)
		if err != nil {
			return nil, err
		}
		out = append(out, load.Owner{Party: load.Party{ID: owner.ID, Name: owner.Name}, Parts: s.Parts, Of: s.Of})
	}
	return out, nil
}

// truck finds a truck by its number or plate; known is false for one that has
// not been here.
func (p *post) truck(text string) (t house.Truck, known bool, err error) {
	all, err := office.Trucks(p, p.Desk)
	if err != nil {
		return t, false, err
	}
	for _, t := range all {
		if strings.EqualFold(t.ID, text) || t.Plate != "" && strings.EqualFold(t.Plate, text) {
			return t, true, nil
		}
	}
	return t, false, nil
}

// bin finds a pit or bin by its short name or its name. Where none are set up
// any word will do.
func (p *post) bin(text string) (string, error) {
	all, err := office.Bins(p, p.Desk)
	if err != nil || len(all) == 0 {
		return text, err
	}
	var known []string
	for _, b := range all {
		if strings.EqualFold(b.ID, text) || strings.EqualFold(b.Name, text) {
			return b.ID, nil
		}
		known = append(known, b.ID)
	}
	return "", refusal("Known here: "+strings.Join(known, ", "), "there is no pit or bin %q", text)
}

func (p *post) contract(number string) (house.ContractTerms, error) {
	all, err := office.Contracts(p, p.Desk)
	if err != nil {
		return house.ContractTerms{}, err
	}
	for _, c := range all {
		if strings.EqualFold(c.Number, number) {
			return c, nil
		}
	}
	return house.ContractTerms{}, refusal("Look the number up in the contract", "there is no contract %q here", number)
}
