package present

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// AskShares asks who shares in the load. A share is typed as a fraction, 1/3,
// or in percent, 33.5.
func (f *LoadForm) AskShares() {
	owners := f.now.load.Details.Shares
	fields := ShareFields(f.frame, owners)
	f.frame.Put(model.Ask{
		Draft: "shares", Of: f.id,
		Title:  Say("Who shares in this load?"),
		Text:   Say("Leave all owners out when the grower has all of it."),
		Fields: fields, Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, faults := ReadShares(f.frame, values)
			return faults
		},
		Then: func(values map[string]string) {
			shares, _ := ReadShares(f.frame, values)
			f.setDetails(func(d *load.Details) { d.Shares = shares })
		},
	})
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
