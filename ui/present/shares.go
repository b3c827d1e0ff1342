package present

import (
	"fmt"
	"strings"

	"tenthpoint/internal/entry"
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
			if err := f.setShares(values); err != nil {
				f.frame.Fail(err)
				return
			}
			f.frame.Changed()
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
		parts, of, err := entry.ParseShare(Say("Share"), text)
		if err != nil {
			faults[shareField(i)] = sentence(err)
			continue
		}
		known, err := entry.Grower(f.house(), id)
		if err != nil {
			faults[ownerField(i)] = sentence(err)
			continue
		}
		owners = append(owners, load.Owner{Party: load.Party{ID: known.ID, Name: known.Name}, Parts: parts, Of: of})
		g.Shares = append(g.Shares, house.Share{GrowerID: known.ID, Parts: parts, Of: of})
	}
	if len(faults) == 0 && len(owners) > 0 {
		if err := g.Check(); err != nil {
			faults[shareField(0)] = sentence(err)
		}
	}
	return owners, faults
}

func shareText(o load.Owner) string {
	if o.Of.Equal(quantity.Int(100, quantity.Plain)) {
		return o.Parts.Figure()
	}
	return o.Parts.Figure() + "/" + o.Of.Figure()
}

// setShares writes down who shares in the load, after what is typed.
func (f *LoadForm) setShares(values map[string]string) error {
	if err := f.Commit(); err != nil {
		return err
	}
	owners, _ := f.frame.readShares(values)
	var texts []string
	for _, o := range owners {
		texts = append(texts, fmt.Sprintf("%s=%s/%s", partyText(o.Party), bare(o.Parts), bare(o.Of)))
	}
	return f.writeDown(map[string]string{"shares": strings.Join(texts, "; ")})
}
