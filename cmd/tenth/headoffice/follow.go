package headoffice

import (
	"errors"
	"os"
	"time"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/transfer"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/published"
	"tenthpoint/internal/scalehouse/publishing"
)

// follow has a site take over what the office publishes.
type follow struct {
	terminal.BookFlags
	terminal.WhoFlags
	Letters     string `arg:"" help:"The letters of the office's own book."`
	Fingerprint string `arg:"" help:"The fingerprint of the key of the office's house, all 8 groups, as the office has it on paper: \"tenth key\" shows it there."`
}

func (follow) Help() string {
	return `A manager's act. The fingerprint is compared once, by telephone or from paper; after that every card and edition is taken over only if a computer of that house signed it.

    tenth office follow HQ "5f0c 7a91 d2e4 88b1 03c6 9d17 aa40 e25b"`
}

func (c follow) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := publishing.Follow(p, p.Desk, c.Letters, c.Fingerprint); err != nil {
			return err
		}
		p.Say("This site follows %v. Take over what it publishes with \"tenth office fetch\".", c.Letters)
		return nil
	})
}

// fetch takes over what the office published.
type fetch struct {
	terminal.BookFlags
	terminal.WhoFlags
	Office string        `help:"The server of the head office." env:"TENTHPOINT_OFFICE" placeholder:"ADDRESS"`
	Schema string        `help:"The schema the office lies in." default:"head_office"`
	Stick  string        `help:"Read this instead of asking the server: the file that \"tenth office pack --published\" wrote." placeholder:"PATH"`
	Every  time.Duration `help:"Go on asking, so often, until stopped: 30s, 5m." placeholder:"TIME"`
}

func (fetch) Help() string {
	return `Each publication is checked: its hash, its place in the office's chain, the signature over it, the key that was compared. What does not hold is refused whole, and the site works on by what it has.

    tenth office fetch --office postgres://head_office_site_kh@office.example/grain
    tenth office fetch --stick /mnt/stick/HQ.published`
}

func (c fetch) Run(t *terminal.Terminal) error {
	if c.Office == "" && c.Stick == "" {
		return terminal.Refusal("Give --office, or --stick", "it is not said where to fetch from")
	}
	for {
		err := c.once(t)
		if c.Every <= 0 || err != nil && !errors.Is(err, message.Device) {
			return err
		}
		if err != nil {
			terminal.Warn(t, err)
		}
		select {
		case <-t.Done():
			return nil
		case <-time.After(c.Every):
		}
	}
}

func (c fetch) once(t *terminal.Terminal) error {
	if c.Stick == "" {
		return officeFlags{c.Office, c.Schema}.with(t, func(o *central.Office) error { return c.from(t, o) })
	}
	file, err := os.Open(c.Stick)
	if err != nil {
		return terminal.Refusal("Check --stick", "the file %s cannot be read", c.Stick)
	}
	defer file.Close()
	stick, err := transfer.ReadStick(file)
	if err != nil {
		return err
	}
	return c.from(t, stick)
}

func (c fetch) from(t *terminal.Terminal, from transfer.Publisher) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		all, err := office.RecordsOf[published.Following](p, p.Reader())
		if err != nil {
			return err
		}
		if len(all) == 0 {
			return terminal.Refusal("Begin with \"tenth office follow\"", "this site follows no head office")
		}
		came, err := transfer.Fetch(p, from, all[0])
		if err != nil {
			return err
		}
		if len(came.News) > 0 {
			if err := publishing.Receive(p, p.Desk, all[0], came.Next, came.News, came.Texts); err != nil {
				return err
			}
		}
		p.Say("%d publications of %v are new here.", len(came.News), all[0].Office)
		if came.Waiting > 0 {
			p.Say("%d more wait until a computer of the head office signs them.", came.Waiting)
		}
		return nil
	})
}

// received lists what a site took over.
type received struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (received) Help() string { return `    tenth office received` }

func (c received) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.RecordsOf[published.Received](p, p.Reader())
		if err != nil {
			return err
		}
		inForce := published.InForce(all, p.Today())
		rows := make([][]any, len(all))
		for i, one := range all {
			holds := any(message.Words("no"))
			if now, there := inForce[one.Of()]; there && now.Seq == one.Seq {
				holds = message.Words("yes")
			}
			rows[i] = append(publishedRow(one.Publication), one.Head().OnPaper(), holds)
		}
		return p.Table(c.ListFlags, publishedColumns+"\tPlace in the office's chain\tHolds today", rows, "Nothing was taken over from a head office.")
	})
}
