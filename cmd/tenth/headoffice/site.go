package headoffice

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/transfer"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// lettersFlag are the letters of the site.
type lettersFlag struct {
	Letters string `required:"" help:"The letters of this site at the head office." env:"TENTHPOINT_LETTERS" placeholder:"LETTERS"`
}

// send sends the chain of a book.
type send struct {
	terminal.BookFlags
	officeFlags
	lettersFlag
	Every time.Duration `help:"Go on sending, so often, until stopped: 10s, 5m." placeholder:"TIME"`
}

func (send) Help() string {
	return `The book stays here and is only read. What the office has already is passed over; after a cut, or days without a line, sending goes on where it stopped.

    tenth office send --office postgres://head_office_site_kh@office.example/grain --letters KH
    tenth office send --every 30s`
}

func (c send) Run(t *terminal.Terminal) error {
	if c.Every <= 0 {
		return c.once(t)
	}
	for {
		if err := c.once(t); err != nil {
			if !errors.Is(err, message.Device) {
				return err
			}
			terminal.Warn(t, err)
		}
		select {
		case <-t.Done():
			return nil
		case <-time.After(c.Every):
		}
	}
}

func (c send) once(t *terminal.Terminal) error {
	return c.with(t, func(o *central.Office) error {
		return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
			path, err := c.BookPath()
			if err != nil {
				return err
			}
			told := time.Now()
			sent, err := transfer.Send(t, p.File, o, c.Letters, transfer.Options{
				Acknowledged: readCheckpoint(path),
				Keep:         func(head journal.Head) error { return keepCheckpoint(path, head) },
				Progress: func(at, of int64) {
					if time.Since(told) > time.Second {
						told = time.Now()
						fmt.Fprintln(t.Stderr, t.Printer.Say("Fact %d of %d is there.", at, of))
					}
				},
			})
			if err != nil {
				return err
			}
			return c.report(p, sent)
		})
	})
}

func (c send) report(p *terminal.Session, sent transfer.Sent) error {
	if sent.Lost > 0 {
		p.Say("The head office had lost %d facts that it once acknowledged. They were sent again; have its server looked at.", sent.Lost)
	}
	if sent.Forked {
		p.Say("The head office has other facts after fact %d: this book was restored from an older copy and worked on. Both are kept. Ask the office under which letters it goes on.", sent.From.Seq)
	}
	if sent.Branch > 1 && sent.Letters != "" && sent.Letters != p.Profile().Letters {
		p.Say("At the head office this book goes on as %v. Let its tickets carry these letters: tenth setup --letters %v", sent.Letters, sent.Letters)
	}
	p.Say("The head office has this book up to fact %d; %d facts are new to it.", sent.To.Seq, sent.To.Seq-sent.From.Seq)
	return nil
}

// checkpointOf is the file beside a book with the last head that the office acknowledged.
func checkpointOf(book string) string { return book + ".office.txt" }

func readCheckpoint(book string) journal.Head {
	text, err := os.ReadFile(checkpointOf(book))
	if err != nil {
		return journal.Head{}
	}
	heads := journal.FindHeads(string(text))
	if len(heads) == 0 {
		return journal.Head{}
	}
	return heads[0]
}

func keepCheckpoint(book string, head journal.Head) error {
	return atomicfile.Replace(checkpointOf(book), func(w io.Writer) error {
		_, err := fmt.Fprintln(w, head)
		return err
	})
}

// pack writes a chain into a file.
type pack struct {
	terminal.BookFlags
	lettersFlag
	To        string `arg:"" help:"The file to make; one that is there already is never written over." placeholder:"PATH"`
	Published bool   `help:"At the office: only what it publishes, for sites to fetch."`
	Since     string `help:"Only what follows this head, as \"tenth office sites\" shows it. Without it, all of the book." placeholder:"N:HASH"`
}

func (pack) Help() string {
	return `    tenth office pack /mnt/stick/KH.chain --letters KH
    tenth office pack /mnt/stick/KH.chain --letters KH --since 4180:5f0c7a91d2e4
    tenth office pack /mnt/stick/HQ.published --letters HQ --published`
}

func (c pack) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		var since journal.Head
		var err error
		if c.Since != "" {
			if since, err = journal.ParseHead(c.Since); err != nil {
				return err
			}
		}
		if err := mustBeNew(c.To); err != nil {
			return err
		}
		if c.Published {
			return c.published(p)
		}
		var end journal.Head
		err = atomicfile.Replace(c.To, func(w io.Writer) error {
			end, err = transfer.Pack(t, p.File, c.Letters, since, w)
			return err
		})
		if err != nil {
			return err
		}
		p.Say("%v: facts %d to %d are in %s.", c.Letters, since.Seq+1, end.Seq, c.To)
		return nil
	})
}

// published writes what the office publishes.
func (c pack) published(p *terminal.Session) error {
	var packed int
	err := atomicfile.Replace(c.To, func(w io.Writer) (err error) {
		packed, err = transfer.PackPublished(p, p.File, c.Letters, w)
		return err
	})
	if err == nil {
		p.Say("%d publications of %v are in %s.", packed, c.Letters, c.To)
	}
	return err
}

// mustBeNew refuses the name of a file that is there.
func mustBeNew(path string) error {
	if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
		return terminal.Refusal("Choose another name", "there is a file %s already", path)
	}
	return nil
}

// take takes a file.
type take struct {
	officeFlags
	From string `arg:"" help:"The file that \"tenth office pack\" wrote." placeholder:"PATH"`
}

func (take) Help() string {
	return `    tenth office take /mnt/stick/KH.chain`
}

func (c take) Run(t *terminal.Terminal) error {
	file, err := os.Open(c.From)
	if err != nil {
		return terminal.Refusal("Check the path", "the file %s cannot be read", c.From)
	}
	defer file.Close()
	return c.with(t, func(o *central.Office) error {
		site, sent, err := transfer.Take(t, file, o, transfer.Options{})
		if err != nil {
			return err
		}
		t.Say("%v: the head office has facts up to %v.", site, sent.To.OnPaper())
		if sent.Forked {
			t.Say("They are another branch than the one that was there: look with \"tenth office sites\".")
		}
		return nil
	})
}
