package present

import (
	"fmt"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// mostOwners is how many owners a sheet of shares asks for, unless there are
// more already.
const mostOwners = 4

// AskShares asks who shares in the load. A share is typed as a fraction, 1/3,
// or in percent, 33.5.
func (f *LoadForm) AskShares() {
	owners := f.now.load.Details.Shares
	fields := f.frame.shareFields(owners)
	f.frame.Put(model.Ask{
		Draft: "shares", Of: f.id,
		Title:  Say("Who shares in this load?"),
		Text:   Say("Leave all owners out when the grower has all of it."),
		Fields: fields, Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, faults := f.frame.readShares(values)
			return faults
		},
		Then: func(values map[string]string) {
			shares, _ := f.frame.readShares(values)
			f.setDetails(func(d *load.Details) { d.Shares = shares })
		},
	})
}

// shareFields ask for owners and what each has.
func (f *Frame) shareFields(owners []load.Owner) []model.AskField {
	var fields []model.AskField
	for i := range max(mostOwners, len(owners)) {
		owner, share := "", ""
		if i < len(owners) {
			owner, share = partyText(owners[i].Party), shareText(owners[i])
		}
		fields = append(fields,
			model.AskField{ID: ownerField(i), Label: Say("Owner %d", i+1), Options: f.known().growerOptions, Value: owner, Chars: 24},
			model.AskField{ID: shareField(i), Label: Say("has"), Value: share, Chars: 8, Hint: Say("such as 1/3, or 33.5 in percent")})
	}
	return fields
}

func ownerField(i int) string { return fmt.Sprintf("owner%d", i+1) }
func shareField(i int) string { return fmt.Sprintf("share%d", i+1) }

// readShares reads the sheet; the faults are sentences by field.
func (f *Frame) readShares(values map[string]string) ([]load.Owner, map[string]string) {
	faults := map[string]string{}
	var owners []load.Owner
	g := house.Grower{ID: "load", Name: Say("this load")}
	for i := 0; ; i++ {
		id, asked := values[ownerField(i)]
		if !asked {
			break
		}
		text := strings.TrimSpace(values[shareField(i)])
		if id == "" {
			if text != "" {
				faults[ownerField(i)] = Say("Whose share is it?")
			}
			continue
		}
		parts, of, err := parseShare(text)
		if err != nil {
			faults[shareField(i)] = sentence(err)
			continue
		}
		party := load.Party{ID: id, Name: id}
		if known, ok := f.known().grower(id); ok {
			party.Name = known.Name
		}
		owners = append(owners, load.Owner{Party: party, Parts: parts, Of: of})
		g.Shares = append(g.Shares, house.Share{GrowerID: id, Parts: parts, Of: of})
	}
	if len(faults) == 0 && len(owners) > 0 {
		if err := g.Check(); err != nil {
			faults[shareField(0)] = sentence(err)
		}
	}
	return owners, faults
}

// parseShare reads "1/3" or a percent.
func parseShare(text string) (parts, of quantity.Amount, err error) {
	top, bottom, isFraction := strings.Cut(text, "/")
	if !isFraction {
		top, bottom = strings.TrimSuffix(text, "%"), "100"
	}
	share := quantity.Field{Name: Say("Share"), Unit: quantity.Plain, Places: 4, Min: quantity.Of("0.0001", quantity.Plain), Max: quantity.Int(10_000, quantity.Plain)}
	if parts, err = share.Parse(top); err != nil {
		return parts, of, err
	}
	of, err = share.Parse(bottom)
	return parts, of, err
}

func shareText(o load.Owner) string {
	if o.Of.Equal(quantity.Int(100, quantity.Plain)) {
		return o.Parts.Figure()
	}
	return o.Parts.Figure() + "/" + o.Of.Figure()
}

// setDetails writes a change of details into the book together with what is
// typed.
func (f *LoadForm) setDetails(change func(*load.Details)) {
	if err := f.Commit(); err != nil {
		f.frame.Fail(err)
		return
	}
	d, _ := f.read()
	change(&d.details)
	d.amended, d.sampled, d.weighed = true, false, nil
	f.save(d)
}

// save writes a draft into the book and shows what follows.
func (f *LoadForm) save(d *draft) {
	id, err := f.write(d)
	if err == nil {
		f.id = id
		err = f.Reload()
	}
	if err != nil {
		f.frame.Fail(err)
		return
	}
	f.frame.Changed()
}
