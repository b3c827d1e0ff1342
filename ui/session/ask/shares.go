package ask

import (
	"fmt"
	"strings"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// mostOwners is the number of owners a sheet of shares has room for, unless there are more already.
const mostOwners = 4

// OwnerFields are the fields for owners of a load, their shares and terms.
func OwnerFields(f *session.Session, owners []load.Owner) []model.AskField {
	var fields []model.AskField
	for i, field := range ShareFields(f, owners) {
		fields = append(fields, field)
		if i%2 == 0 {
			continue
		}
		terms, n := "", i/2
		if n < len(owners) && owners[n].Own != nil {
			terms = entry.DealText(*owners[n].Own)
		}
		fields = append(fields, model.AskField{ID: termsField(n), Label: f.Say("is"), Options: dealOptions(f.Language), Value: terms, Chars: 20, FreeText: true, Hint: f.Say("empty: as the load")})
	}
	return fields
}

// dealOptions are the possible terms of one owner's part.
func dealOptions(in session.Language) []model.Option {
	return []model.Option{
		{Code: "stored", Name: in.Say("stored")}, {Code: "sold", Name: in.Say("sold"), Detail: in.Say("with a price: sold at 4.15")},
		{Code: "undecided", Name: in.Say("not decided")}, {Code: "bank", Name: in.Say("in the grain bank")},
	}
}

// OwnerTermsTyped are the terms of a sheet of owners as the field of the load takes
// them, owner by owner; none where all are as the load.
func OwnerTermsTyped(values map[string]string, owners []load.Owner) string {
	var out []string
	n := 0
	for i := 0; ; i++ {
		id, asked := values[ownerField(i)]
		if !asked {
			break
		}
		if id == "" || n >= len(owners) {
			continue
		}
		if terms := strings.TrimSpace(values[termsField(i)]); terms != "" {
			out = append(out, session.PartyText(owners[n].Party)+"="+terms)
		}
		n++
	}
	if len(out) == 0 {
		return "none"
	}
	return strings.Join(out, "; ")
}

// ShareFields are the fields for owners and their shares.
func ShareFields(f *session.Session, owners []load.Owner) []model.AskField {
	var fields []model.AskField
	for i := range max(mostOwners, len(owners)) {
		owner, share := "", ""
		if i < len(owners) {
			owner, share = session.PartyText(owners[i].Party), shareText(owners[i])
		}
		fields = append(fields,
			model.AskField{ID: ownerField(i), Label: f.Say("Owner %d", i+1), Options: f.Known().GrowerOptions, Value: owner, Chars: 24},
			model.AskField{ID: shareField(i), Label: f.Say("has"), Value: share, Chars: 8, Hint: f.Say("such as 1/3, or 33.5 in percent; 1/3 drying 1/2")})
	}
	return fields
}

func ownerField(i int) string { return fmt.Sprintf("owner%d", i+1) }

func shareField(i int) string { return fmt.Sprintf("share%d", i+1) }

func termsField(i int) string { return fmt.Sprintf("terms%d", i+1) }

// ReadShares reads the sheet; the faults are sentences by field.
func ReadShares(f *session.Session, values map[string]string) ([]load.Owner, map[string]string) {
	faults := map[string]string{}
	var owners []load.Owner
	g := elevator.Grower{ID: "load", Name: f.Say("this load")}
	for i := 0; ; i++ {
		id, asked := values[ownerField(i)]
		if !asked {
			break
		}
		text := strings.TrimSpace(values[shareField(i)])
		if id == "" {
			if text != "" {
				faults[ownerField(i)] = f.Say("Whose share is it?")
			}
			continue
		}
		parts, of, drying, err := entry.ParsePart(f.Say("Share"), text)
		if err != nil {
			faults[shareField(i)] = f.Sentence(err)
			continue
		}
		known, err := entry.Grower(session.House(f), id)
		if err != nil {
			faults[ownerField(i)] = f.Sentence(err)
			continue
		}
		owners = append(owners, load.Owner{Party: load.Party{ID: known.ID, Name: known.Name}, Parts: parts, Of: of, Drying: drying})
		g.Shares = append(g.Shares, elevator.Share{GrowerID: known.ID, Parts: parts, Of: of, Drying: drying})
	}
	if len(faults) == 0 && len(owners) > 0 {
		if err := g.Check(); err != nil {
			faults[shareField(0)] = f.Sentence(err)
		}
	}
	return owners, faults
}

func shareText(o load.Owner) string {
	if o.Drying != nil {
		return entry.PartText(o.Parts, o.Of, o.Drying)
	}
	if o.Of.Equal(quantity.Int(100, quantity.Plain)) {
		return o.Parts.Figure()
	}
	return o.Parts.Figure() + "/" + o.Of.Figure()
}
