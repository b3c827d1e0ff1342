package yard

import (
	"tenthpoint/internal/load"
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
			shares, _ := session.ReadShares(f.session, values)
			f.setDetails(func(d *load.Details) { d.Shares = shares })
		},
	})
}

// setDetails writes a change of details into the book together with what is
// typed.
func (f *LoadForm) setDetails(change func(*load.Details)) {
	if err := f.Commit(); err != nil {
		f.session.Fail(err)
		return
	}
	d, _ := f.Read()
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
		f.session.Fail(err)
		return
	}
	f.session.Changed()
}
