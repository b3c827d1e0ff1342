package rates

import (
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// ratesUpgrade writes an edition of format 1 anew in format 2.
type ratesUpgrade struct {
	terminal.BookFlags
	Edition  string `arg:"" help:"The edition, by file or id." placeholder:"FILE"`
	From     string `help:"First day of the new edition. Without it, tomorrow." placeholder:"YYYY-MM-DD"`
	ID       string `name:"id" help:"Id of the new edition. Without it, the old one's with a letter more." placeholder:"ID"`
	Later    string `help:"What a rule on the dry weight is taken on after a discount of the weight: dry or settled." enum:"dry,settled" default:"dry"`
	Accepted string `help:"What a load brings that is accepted in a row which turns loads away: last-row or nothing." enum:"last-row,nothing" default:"last-row"`
	Out      string `help:"The new file. Without it, beside the old one by the new id." placeholder:"FILE"`
}

func (ratesUpgrade) Help() string {
	return `Format 2 says two things that format 1 leaves out: what "dry" means once a discount has been taken of the weight, and what a load brings that a manager accepts beyond a limit. The old text is never rewritten, since its tickets keep it: the new edition is a file of its own, with a new id and a first day. What was chosen is told; read it before the day comes.

    tenth rates upgrade soybeans.toml --from 2027-01-01
    tenth rates upgrade soybeans-main-2025 --later settled --out soybeans-2027.toml`
}

func (c ratesUpgrade) Run(t *terminal.Terminal) error {
	e, err := editionNamed(t, c.BookFlags, c.Edition)
	if err != nil {
		return err
	}
	u := rates.Upgrade{ID: c.ID, LaterDry: rates.LaterDry(c.Later), AcceptedRefusal: rates.AcceptedRefusal(c.Accepted)}
	if u.From, err = c.from(t); err != nil {
		return err
	}
	if u.ID == "" {
		u.ID = rates.NextID(e.ID)
	}
	text, chosen, err := u.Text(e)
	if err != nil {
		return err
	}
	path := c.Out
	if path == "" {
		path = filepath.Join(filepath.Dir(e.File), u.ID+".toml")
	}
	if err := terminal.WriteNew(path, text); err != nil {
		return err
	}
	t.Say("Edition %v is written in format 2 to %v; %v is as it was.", u.ID, path, e.ID)
	for _, one := range chosen {
		t.Say("    %s", one)
	}
	t.Say("%s", message.New("Read it with \"tenth rates check %v\" before you put it beside the others.", path))
	return nil
}

func (c ratesUpgrade) from(t *terminal.Terminal) (quantity.Date, error) {
	if c.From != "" {
		return dayOrToday(t, c.From)
	}
	today, err := dayOrToday(t, "")
	return today.AddDays(1), err
}
