package tickets

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/scaleticket/sheet"
)

// Print writes the slips of many tickets.
type Print struct {
	terminal.BookFlags
	Out        string `help:"The folder the files go into." placeholder:"DIR" required:""`
	From       string `help:"First day of issue." placeholder:"YYYY-MM-DD"`
	To         string `help:"Last day of issue." placeholder:"YYYY-MM-DD"`
	FromTicket int64  `help:"First number." placeholder:"N" default:"1"`
	ToTicket   int64  `help:"Last number; without it, the newest." placeholder:"N"`
	PerFile    int    `help:"Tickets in a file, at most 1000." default:"1000"`
	Paper      string `help:"Size of the pages." enum:"half-letter,a5" default:"half-letter"`
	NoWorking  bool   `help:"Leave the working out."`
}

func (Print) Help() string {
	return `The slips of a season as PDF, in files of at most 1000 tickets, as each was last printed; no copy is counted. A file is there only when it is whole. Ctrl+C stops, and says which number to go on with.

    tenth print --out season
    tenth print --out october --from 2026-10-01 --to 2026-10-31
    tenth print --out rest --from-ticket 4001`
}

// mostPerFile keeps files small enough for any viewer and printer.
const mostPerFile = 1000

func (c Print) Run(t *terminal.Terminal) error {
	if c.PerFile < 1 || c.PerFile > mostPerFile {
		return terminal.Refusal("Take 1 to 1000", "%d tickets do not go into one file", c.PerFile)
	}
	for name, day := range map[string]*string{"From": &c.From, "To": &c.To} {
		read, err := entry.ParseDay(name, *day, t.LocalDate())
		if err != nil {
			return err
		}
		*day = read.String()
	}
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		if err := atomicfile.MakeFolder(c.Out); err != nil {
			return err
		}
		return c.files(p)
	})
}

// files writes file after file until no ticket is left.
func (c Print) files(p *terminal.Session) error {
	next, done := c.FromTicket, 0
	for {
		rows, err := p.File.Loads(p, book.LoadFilter{FromTicket: next, ToTicket: c.ToTicket, FromDay: c.From, ToDay: c.To, Limit: c.PerFile})
		if err != nil {
			return err
		}
		if len(rows) == 0 {
			break
		}
		path, err := c.file(p, rows)
		if err != nil {
			return c.stopped(p, err, next, done)
		}
		done += len(rows)
		next = rows[len(rows)-1].Ticket + 1
		p.Say("%s: %d tickets", path, len(rows))
	}
	p.Say("%d tickets are written.", done)
	return nil
}

// stopped reports what was printed and how to continue, when the person stopped the command.
func (c Print) stopped(p *terminal.Session, err error, next int64, done int) error {
	if p.Err() == nil && !errors.Is(err, p.Err()) {
		return err
	}
	return terminal.Advised(message.New("stopped: %d tickets are written, in whole files", done), message.New("Go on with --from-ticket %d", next))
}

// file writes the slips of one file, never over an older one.
func (c Print) file(p *terminal.Session, rows []book.LoadRow) (path string, err error) {
	path = filepath.Join(c.Out, fmt.Sprintf("tickets-%06d-%06d.pdf", rows[0].Ticket, rows[len(rows)-1].Ticket))
	if _, err := os.Stat(path); err == nil {
		return path, terminal.Refusal("Name another folder with --out", "%s is there already", path)
	}
	return path, atomicfile.Replace(path, func(w io.Writer) error {
		out := bufio.NewWriterSize(w, 1<<16)
		file := pdf.Begin(out)
		for i, row := range rows {
			if err := c.slip(p, file, row); err != nil {
				return err
			}
			if p.Typing && i%100 == 99 {
				fmt.Fprintf(p.Stderr, "%d of %d tickets of this file\n", i+1, len(rows))
			}
		}
		return errors.Join(file.Close(), out.Flush())
	})
}

// slip adds the slip of one ticket.
func (c Print) slip(p *terminal.Session, file *pdf.File, row book.LoadRow) error {
	if err := p.Err(); err != nil {
		return err
	}
	l, err := office.Load(p, p.Desk, row.ID)
	if err != nil {
		return err
	}
	doc, err := p.Slip(l, max(l.Copies-1, 0), 0)
	if err != nil {
		return err
	}
	file.Add(sheet.Layout(doc, terminal.PaperSize(c.Paper), sheet.Options{NoWorking: c.NoWorking}))
	return nil
}
