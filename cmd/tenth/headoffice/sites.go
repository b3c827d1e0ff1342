package headoffice

import (
	"time"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/copies"
	"tenthpoint/internal/message"
)

// sites lists the sites.
type sites struct {
	officeFlags
	terminal.ListFlags
}

func (sites) Help() string {
	return `A site is behind by the facts its book had when it was last heard of, less those that are here. What was wrong with what a site sent is told under the list.

    tenth office sites`
}

func (c sites) Run(t *terminal.Terminal) error {
	return c.with(t, func(o *central.Office) error {
		all, err := o.Sites(t)
		if err != nil {
			return err
		}
		chains, err := o.Chains(t, "")
		if err != nil {
			return err
		}
		p := &terminal.Session{Terminal: t}
		var rows [][]any
		for _, s := range all {
			for _, chain := range chains {
				if chain.Site == s.Letters {
					rows = append(rows, siteRow(t, s, chain))
				}
			}
		}
		if err := p.Table(c.ListFlags, "Site\tName\tFacts\tHead\tCame\tHeard of\tBehind by", rows, "This office has no site yet: add one with \"tenth office add\"."); err != nil || c.JSON {
			return err
		}
		faults, err := o.Faults(t)
		for _, f := range faults {
			t.Say("%v  %s", f.At.In(t.Place).Format(minutes), f.Said())
		}
		return err
	})
}

const minutes = "2006-01-02 15:04"

func siteRow(t *terminal.Terminal, s central.Contact, c headoffice.Chain) []any {
	head, behind := any(""), any("")
	if c.Head.Seq > 0 {
		head = c.Head.OnPaper()
	}
	if !c.Forked() && !s.At.IsZero() {
		behind = max(s.Said.Seq-c.Head.Seq, 0)
	}
	return []any{copies.NameOf(c), s.Name, c.Head.Seq, head, moment(t, c.Came), moment(t, s.At), behind}
}

// moment is a time on the wall's clock, or the word for none.
func moment(t *terminal.Terminal, at time.Time) any {
	if at.IsZero() {
		return message.Words("never")
	}
	return at.In(t.Place).Format(minutes)
}
