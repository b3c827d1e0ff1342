package yard

import (
	"fmt"
	"strings"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AskShares asks who shares in the load. A share is typed as a fraction, 1/3,
// or in percent, 33.5.
func (f *LoadForm) AskShares() {
	owners := f.Now.Load.Details.Shares
	fields := session.ShareFields(f.session, owners)
	f.session.Put(model.Ask{
		Draft: "shares", Of: f.id,
		Title:  session.Say("Who shares in this load?"),
		Text:   session.Say("Leave all owners out when the grower has all of it."),
		Fields: fields, Yes: session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, faults := session.ReadShares(f.session, values)
			return faults
		},
		Then: func(values map[string]string) {
			if err := f.setShares(values); err != nil {
				f.session.Fail(err)
				return
			}
			f.session.Changed()
		},
	})
}

// setShares writes down who shares in the load, after what is typed.
func (f *LoadForm) setShares(values map[string]string) error {
	if err := f.Commit(); err != nil {
		return err
	}
	owners, _ := session.ReadShares(f.session, values)
	var texts []string
	for _, o := range owners {
		texts = append(texts, fmt.Sprintf("%s=%s/%s", session.PartyText(o.Party), session.Bare(o.Parts), session.Bare(o.Of)))
	}
	return f.writeDown(map[string]string{"shares": strings.Join(texts, "; ")})
}
